// A source plays protected content, and a port on the way may not have it: no picture from there on.
#include "core/analysis/picture_help.h"
#include "core/analysis/protected_way.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::hdcp_chain_breaks {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 plays protected content of %2, which asks for HDCP %3 or later; %4 speaks %5: no picture at "
                      "%6."),
    STREAMWRIGHT_TEXT("%1 plays protected content of %2; %4 speaks no HDCP: no picture at %6."),
    STREAMWRIGHT_TEXT("%1 plays protected content of %2; %4 records or sends on in the clear, and so gets no picture "
                      "of it."),
    STREAMWRIGHT_TEXT("%1 plays protected content of %2; the codec of %4 carries no protected picture: no picture at "
                      "%6."),
    STREAMWRIGHT_TEXT("%1 plays protected content of %2; the type of %4 does not state what it does with it: whether "
                      "there is a picture is not known.")};

constexpr standards::Citation sources[] = {standards::hdcp_stream_type_source};

constexpr RuleWords words{
    .id = "hdcp-chain-breaks",
    .theme = Theme::signals,
    .title = "Protected content that may not pass",
    .meaning =
        "The menu of the player shows, the film does not: a screen, a converter, a recorder or a codec on the way "
        "speaks an HDCP version that the content does not trust.",
    .measured =
        "The type of content that the source is said to play against the HDCP version of every port on the "
        "way, and against what codecs and recorders do with protected pictures. Type 0 asks for 1.4, type 1 "
        "for 2.2; content of HDCP 1.x counts as type 0. A silent type gives advice.",
    .remedy =
        "Replace what is too old, or lead a second path around it with content that it may have; record before "
        "the protection, or not at all.",
    .patterns = patterns,
    .sources = sources};

std::string least_version(standards::HdcpContent content) {
    for (const auto& [version, name] : base::EnumText<standards::HdcpVersion>::names)
        if (standards::may_leave_on(content, version)) return std::string(name);
    return {};
}

int variant_of(const ProtectionStop& stop, standards::HdcpVersion version) {
    switch (stop.why) {
        case ProtectionEnd::version:
            return version == standards::HdcpVersion::none ? 1 : 0;
        case ProtectionEnd::captures:
            return 2;
        case ProtectionEnd::codec:
            return 3;
        case ProtectionEnd::not_stated:
            return 4;
    }
    return 0;
}

void say(const graph::Wiring& wiring, const PictureOrigin& origin, standards::HdcpContent content,
         const ProtectionStop& stop, Findings& out) {
    const auto& facts = wiring.port_type(stop.at).picture;
    const auto version = facts && facts->hdcp ? *facts->hdcp : standards::HdcpVersion::none;
    const bool known = stop.why != ProtectionEnd::not_stated;
    auto finding = found(words.id, known ? Severity::error : Severity::advice, {},
                         {port_ref(wiring, origin.out), std::string(base::enum_text(content)), least_version(content),
                          port_ref(wiring, stop.at), std::string(base::enum_text(version)), places(wiring, stop.dark)},
                         variant_of(stop, version));
    finding.subjects = {port_subject(wiring, stop.at)};
    if (known) finding.subjects.insert(finding.subjects.begin(), port_subject(wiring, origin.out));
    if (known) say_how_many(stop.dark, finding);
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals,
           const VideoChains& chains, Findings& out) {
    std::optional<PictureWays> ways;  // made when first needed: few sources are said to be protected
    for (const auto& origin : chains.origins) {
        const auto content = protected_content(wiring, origin);
        if (!content) continue;
        if (!ways) ways.emplace(wiring, runs, signals);
        for (const auto& stop : protection_stops(*ways, origin, *content)) {
            const auto before = out.size();
            say(wiring, origin, *content, stop, out);
            // A silent port is named once, whoever plays.
            const auto same = [&](const Finding& each) { return each.subjects == out.back().subjects; };
            if (std::any_of(out.begin(), out.begin() + static_cast<std::ptrdiff_t>(before), same)) out.pop_back();
        }
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::hdcp_chain_breaks
