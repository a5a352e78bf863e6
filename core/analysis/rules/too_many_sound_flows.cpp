// A device of network audio sends and receives so many flows at once, and no more. Judged where its type states how
// many.
#include "core/analysis/facts/twins.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis::rules::too_many_sound_flows {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 sends %2 flows of sound, and its type sends %3 at once: %4 too many."),
    STREAMWRIGHT_TEXT("%1 receives %2 flows of sound in preset %5, and its type takes %3 at once: %4 too many.")};

constexpr standards::Citation sources[] = {
    {"trade", "devices of network audio", "send and take a limited number of flows", standards::Standing::practice}};

constexpr RuleWords words{
    .id = "too-many-sound-flows",
    .theme = Theme::signals,
    .title = "More flows of sound than the device has",
    .meaning = "The flows above the limit cannot be set up: their channels stay silent.",
    .measured =
        "The streams of sound that the device sends, and those it receives in the preset that has most, are held "
        "against the numbers that its type states. The two twins of a protected flow count once.",
    .remedy = "Put more channels into one flow, as far as the receivers take it, or spread them over more devices.",
    .patterns = patterns,
    .sources = sources};

/// By the index of its stream; a flow and its twin are one.
using Flows = std::set<int>;

void judge(model::DeviceId id, std::int64_t flows, std::int64_t limit, std::optional<model::PresetId> preset,
           Findings& out) {
    if (flows <= limit) return;
    std::vector<base::Value> values{named(id), flows, limit, flows - limit};
    if (preset) values.emplace_back(named(*preset));
    std::vector<Subject> subjects{id};
    if (preset) subjects.emplace_back(*preset);
    auto finding = found(words.id, Severity::error, std::move(subjects), std::move(values), preset ? 1 : 0);
    finding.measured = flows;
    finding.limit = limit;
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 - %2 = %3"), {flows, limit, flows - limit}));
    out.push_back(std::move(finding));
}

void judge_received(const graph::Wiring& wiring, const std::map<int, std::map<model::PresetId, Flows>>& received,
                    Findings& out) {
    for (const auto& [device, presets] : received) {
        const auto most = std::max_element(presets.begin(), presets.end(), [](const auto& a, const auto& b) {
            return a.second.size() < b.second.size();
        });
        judge(device_id(wiring, device), static_cast<std::int64_t>(most->second.size()),
              *wiring.devices[at(device)].type->codec->sound_flows->most_in, most->first, out);
    }
}

void check(const graph::Wiring& wiring, Findings& out) {
    const auto stated = [&](int device) -> const catalogue::SoundFlows* {
        const auto* type = wiring.devices[at(device)].type;
        return type && type->codec && type->codec->sound_flows ? &*type->codec->sound_flows : nullptr;
    };
    const auto rows = streams_by_index(wiring);
    const auto twins = twin_streams(wiring);
    const auto flow_of = [&](int stream) {
        const int twin = twins[at(stream)];
        return twin >= 0 ? std::min(stream, twin) : stream;
    };
    const auto is_sound = [](const model::Stream& row) { return row.kind == catalogue::StreamKind::audio; };
    std::map<model::StreamId, int> index;
    std::map<int, Flows> sent;
    for (int i = 0; i < static_cast<int>(rows.size()); ++i) {
        if (!is_sound(*rows[at(i)])) continue;
        index.emplace(rows[at(i)]->id, i);
        const auto device = wiring.device_index(rows[at(i)]->encoder);
        if (device && stated(*device) && stated(*device)->most_out) sent[*device].insert(flow_of(i));
    }
    for (const auto& [device, flows] : sent)
        judge(device_id(wiring, device), static_cast<std::int64_t>(flows.size()), *stated(device)->most_out, {}, out);
    if (index.empty()) return;
    std::map<int, std::map<model::PresetId, Flows>> received;
    for (const auto& row : wiring.design.subscriptions) {
        const auto device = wiring.device_index(row.decoder);
        if (!device || !stated(*device) || !stated(*device)->most_in) continue;
        const auto stream = index.find(row.stream);
        if (stream != index.end()) received[*device][row.preset].insert(flow_of(stream->second));
    }
    judge_received(wiring, received, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::too_many_sound_flows
