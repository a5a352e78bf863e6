// A source counts the receivers and the levels of repeaters below it, and stops where there are more than it may have.
#include "core/analysis/protected_way.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <set>

namespace streamwright::analysis::rules::hdcp_too_many_devices {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 has %2 HDCP receivers below it and takes %3 at most: it stops the picture."),
    STREAMWRIGHT_TEXT("%1 has %2 levels of HDCP repeaters below it and takes %3 at most: it stops the picture."),
    STREAMWRIGHT_TEXT("%1 has %2 levels of HDCP repeaters below it; HDCP is said to take %3 (a remembered figure): "
                      "ask the makers before you rely on it.")};

constexpr standards::Citation sources[] = {{"HDCP", "1.4", "Bstatus, seven bits of device count"},
                                           {"HDCP", "2.2", "receiver identifiers of a repeater list"},
                                           standards::hdcp_exceeded_source};

constexpr RuleWords words{
    .id = "hdcp-too-many-devices",
    .theme = Theme::signals,
    .title = "More HDCP devices than a source takes",
    .meaning =
        "The picture comes with ten displays and goes black with the eleventh: the source counts what is below it.",
    .measured =
        "Receivers and levels of repeaters below each output that plays protected content, against what its "
        "HDCP version holds, or less where its type says so. Levels beyond the version's give a warning, for "
        "they are remembered figures; endpoints that are no repeaters end the count.",
    .remedy =
        "Split the displays over several outputs, take repeaters out of the row, or distribute by endpoints that "
        "end the count.",
    .patterns = patterns,
    .sources = sources};

Finding about(const graph::Wiring& wiring, const HdcpLoad& load, int have, int limit, int variant) {
    auto finding =
        found(words.id, variant == 2 ? Severity::warning : Severity::error, {port_subject(wiring, load.from)},
              {port_ref(wiring, load.from), std::int64_t{have}, std::int64_t{limit}}, variant);
    finding.measured = std::int64_t{have};
    finding.limit = std::int64_t{limit};
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 receivers, %2 levels of repeaters below %3"),
                                 {std::int64_t{load.devices}, std::int64_t{load.levels}, port_ref(wiring, load.from)}));
    return finding;
}

void judge(const graph::Wiring& wiring, const HdcpLoad& load, standards::HdcpContent content, Findings& out) {
    const auto& facts = wiring.port_type(load.from).picture;
    auto version = facts ? facts->hdcp : std::nullopt;
    if (!version && content == standards::HdcpContent::type_1) version = standards::HdcpVersion::hdcp_2_2;
    const auto standard = version ? standards::hdcp_limits(*version) : std::nullopt;
    const auto of_type = [&](auto member) { return facts ? (*facts).*member : std::optional<int>(); };
    auto devices = of_type(&catalogue::PictureFacts::hdcp_most_devices);
    if (standard) devices = std::min(devices.value_or(standard->devices), standard->devices);
    if (devices && load.devices > *devices) return out.push_back(about(wiring, load, load.devices, *devices, 0));
    if (const auto levels = of_type(&catalogue::PictureFacts::hdcp_most_levels); levels && load.levels > *levels)
        return out.push_back(about(wiring, load, load.levels, *levels, 1));
    if (standard && load.levels > standard->levels)
        out.push_back(about(wiring, load, load.levels, standard->levels, 2));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals,
           const VideoChains& chains, Findings& out) {
    std::optional<PictureWays> ways;
    std::set<graph::PortAt> judged;
    for (const auto& origin : chains.origins) {
        const auto content = protected_content(wiring, origin);
        if (!content) continue;
        if (!ways) ways.emplace(wiring, runs, signals);
        for (const auto& load : hdcp_loads(*ways, origin))
            if (judged.insert(load.from).second) judge(wiring, load, *content, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::hdcp_too_many_devices
