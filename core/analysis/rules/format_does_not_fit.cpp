// A source sends a picture that some part of the way does not carry or take: what is behind it stays black.
#include "core/analysis/picture_help.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace streamwright::analysis::rules::format_does_not_fit {

// Three of each kind: what would fit is known; nothing would; the source offers nothing in common with what is behind.
constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 sends %2, which needs %3; the weakest link on the way, %6 at %4, carries %5: no picture at "
                      "%7. %8 fits."),
    STREAMWRIGHT_TEXT("%1 sends %2, which needs %3; the weakest link on the way, %6 at %4, carries %5: no picture at "
                      "%7. Nothing that it gives fits."),
    STREAMWRIGHT_TEXT("%1 sends %2, which the link at %3, %4, has no form for: no picture at %5."),
    STREAMWRIGHT_TEXT("%1 sends %2, which needs %3; cable %4 is made for %6, which carries %5: no picture at %7."),
    STREAMWRIGHT_TEXT("%1 sends %2, which %3 does not take: no picture at %4. It takes %5."),
    STREAMWRIGHT_TEXT("%1 sends %2, which %3 does not take: no picture at %4. Nothing that is sent here fits."),
    STREAMWRIGHT_TEXT("%1 sends %2, which %3 does not give: no picture at %4."),
    STREAMWRIGHT_TEXT("%1 sends %2, which the codec behind %3 does not take: no picture at %4."),
    STREAMWRIGHT_TEXT("%1 and what is before %2 have no picture format in common: no picture at %3.")};

constexpr standards::Citation sources[] = {
    standards::tmds_character_source, {"CTA", "861", "table of video formats"}, standards::hdr_depth_source};

constexpr RuleWords words{
    .id = "format-does-not-fit",
    .theme = Theme::signals,
    .title = "Picture format that does not fit the way",
    .meaning =
        "The screen stays black, or shows snow now and then, though every lamp is green. The picture has more "
        "bits than a link, a cable or an extender on the way carries, or a form that the display does not know.",
    .measured =
        "The format that is set at the source, or the best that it gives of what the input before it "
        "announces, against every link, cable, codec and input of the way. A format that only the type's own "
        "EDID calls for gives a warning. What a type does not state is not held against it.",
    .remedy =
        "Set the source, or the EDID of the input, to a format that fits; scale at the decoder; or replace the "
        "weakest link.",
    .offers = "To set the source to the best format that fits, or to announce only what every display takes.",
    .patterns = patterns,
    .sources = sources};

/// Places that break alike are told together: the same port of the same type, for the same reason.
using Alike = std::tuple<const catalogue::DeviceType*, int, BreakKind, int>;

/// What breaks at one place or at others like it, and how many pictures.
struct Broken {
    PictureBreak at;
    std::size_t arrival = 0;
    std::vector<graph::PortAt> dark;
};

void say_link(PictureWays& ways, const PictureOrigin& origin, const Broken& broken, std::optional<int> fits,
              Finding& finding) {
    const auto& wiring = ways.wiring();
    const auto& told = broken.at;
    const auto from = port_ref(wiring, origin.out);
    const auto format = standards::text(told.asked);
    const auto dark = places(wiring, broken.dark);
    if (!told.fit || told.fit->verdict == standards::Fit::no_mapping) {
        finding.values = {from, format, port_ref(wiring, told.at), told.link, dark};
        finding.variant = 2;
        return;
    }
    const auto needed = told.fit->needed.ceil(), carried = told.fit->carried.ceil();
    finding.measured = needed;
    finding.limit = carried;
    finding.terms = link_terms(told.asked, *told.fit, told.link);
    if (told.kind == BreakKind::cable) {
        finding.values = {from, format, needed, named(cable_id(wiring, told.cable)), carried, told.link, dark};
        finding.variant = 3;
        return;
    }
    finding.values = {from, format, needed, port_ref(wiring, told.at), carried, told.link, dark};
    finding.variant = fits ? 0 : 1;
    if (fits) finding.values.emplace_back(standards::text(ways.space().format(*fits)));
}

void say_refused(PictureWays& ways, const PictureOrigin& origin, const Broken& broken, std::optional<int> fits,
                 Finding& finding) {
    const auto& wiring = ways.wiring();
    finding.values = {port_ref(wiring, origin.out), standards::text(broken.at.asked), port_ref(wiring, broken.at.at),
                      places(wiring, broken.dark)};
    if (broken.at.kind == BreakKind::not_given) {
        finding.variant = 6;
    } else if (broken.at.kind == BreakKind::not_encoded) {
        finding.variant = 7;
    } else {
        finding.variant = fits ? 4 : 5;
        if (fits) finding.values.emplace_back(standards::text(ways.space().format(*fits)));
    }
}

void add_remedies(PictureWays& ways, const PictureOrigin& origin, std::optional<int> fits, Finding& finding) {
    if (origin.because == SentBecause::set) {
        if (fits) finding.remedies.push_back(set_format(ways.wiring(), origin.out, ways.space().format(*fits)));
        return;
    }
    const auto in = ways.signals().hops[at(origin.hop)].to;
    const auto settings = port_settings(ways.wiring(), in);
    const bool merged = settings.edid && settings.edid->way == model::EdidWay::merged;
    if (!merged) finding.remedies.push_back(announce_merged(ways.wiring(), in));
}

/// Somebody decided what is sent: at the source, or by an EDID that is not the type's own.
bool decided(const PictureWays& ways, const PictureOrigin& origin) {
    const auto* before = ways.wiring().port_override(ways.signals().hops[at(origin.hop)].to);
    return origin.because == SentBecause::set || (before && before->edid);
}

void say(PictureWays& ways, const PictureOrigin& origin, const Broken& broken, Findings& out) {
    const auto& wiring = ways.wiring();
    const auto fits = fitting(ways, origin, broken.arrival, *origin.sent);
    auto finding = found(words.id, decided(ways, origin) ? Severity::error : Severity::warning,
                         {port_subject(wiring, origin.out), port_subject(wiring, broken.at.at)}, {});
    if (broken.at.kind == BreakKind::cable) finding.subjects.emplace_back(cable_id(wiring, broken.at.cable));
    if (broken.at.kind == BreakKind::link || broken.at.kind == BreakKind::cable)
        say_link(ways, origin, broken, fits, finding);
    else
        say_refused(ways, origin, broken, fits, finding);
    add_remedies(ways, origin, fits, finding);
    say_how_many(broken.dark, finding);
    out.push_back(std::move(finding));
}

void judge(PictureWays& ways, const PictureOrigin& origin, Findings& out) {
    const auto& wiring = ways.wiring();
    if (origin.because == SentBecause::nothing_common) {
        const auto in = ways.signals().hops[at(origin.hop)].to;
        std::vector<graph::PortAt> dark;
        for (const auto& arrival : origin.arrivals) dark.push_back(arrival.at);
        auto finding = found(words.id, Severity::error, {port_subject(wiring, origin.out), port_subject(wiring, in)},
                             {port_ref(wiring, origin.out), port_ref(wiring, in), places(wiring, dark)}, 8);
        say_how_many(dark, finding);
        out.push_back(std::move(finding));
        return;
    }
    std::map<Alike, Broken> broken;
    for (std::size_t i = 0; i < origin.arrivals.size(); ++i) {
        if (origin.arrivals[i].left) continue;
        const auto way = follow(ways, origin, i, *origin.sent);
        if (!way.broken) continue;
        const auto port = way.broken->at;
        const Alike alike{wiring.devices[at(port.device)].type, port.port, way.broken->kind, way.broken->cable};
        auto& held = broken.try_emplace(alike, Broken{*way.broken, i, {}}).first->second;
        if (std::ranges::find(held.dark, origin.arrivals[i].at) == held.dark.end())
            held.dark.push_back(origin.arrivals[i].at);
    }
    for (const auto& [key, each] : broken) say(ways, origin, each, out);
}

bool dark(const PictureOrigin& origin) {
    if (origin.because == SentBecause::nothing_common) return true;
    return origin.sent && std::ranges::any_of(origin.arrivals, [](const auto& each) { return !each.left; });
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals,
           const VideoChains& chains, Findings& out) {
    if (std::ranges::none_of(chains.origins, dark)) return;
    PictureWays ways(wiring, runs, signals);
    for (const auto& origin : chains.origins)
        if (dark(origin)) judge(ways, origin, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::format_does_not_fit
