// A source sends HDR, and something on the way or the display makes SDR of it, or leaves it less than 10 bits.
#include "core/analysis/picture_help.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>

namespace streamwright::analysis::rules::hdr_not_passed {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 sends %2, but HDR does not come through to %3: what is left is %4."),
    STREAMWRIGHT_TEXT("%1 sends %2; the picture at %3 has 8 bits, and HDR needs 10 at least: it shows bands.")};

constexpr standards::Citation sources[] = {standards::hdr_depth_source};

constexpr RuleWords words{
    .id = "hdr-not-passed",
    .severity = Severity::warning,
    .theme = Theme::signals,
    .title = "HDR that does not come through",
    .meaning =
        "The picture comes, but pale or with bands in skies and walls: it was made for more brightness steps than "
        "arrive.",
    .measured =
        "The range and depth that the source sends against what is left of them at each display. HDR takes 10 "
        "bits a component at least.",
    .remedy = "Set the source to SDR, or take codecs and displays that pass HDR at 10 bits.",
    .offers = "To set the source to the best format that comes through whole.",
    .patterns = patterns,
    .sources = sources};

bool hdr(const Colour& colour) { return colour.range != standards::DynamicRange::sdr; }

/// By stream, or by place where cables alone lead there: one finding each.
using Group = std::pair<int, graph::PortAt>;

void judge(PictureWays& ways, const PictureOrigin& origin, const std::vector<std::size_t>& arrivals, bool shallow,
           Findings& out) {
    const auto& wiring = ways.wiring();
    const auto& first = origin.arrivals[arrivals.front()];
    std::vector<graph::PortAt> ports;
    for (const auto index : arrivals) ports.push_back(origin.arrivals[index].at);
    std::vector<Subject> subjects{port_subject(wiring, origin.out)};
    if (first.stream >= 0)
        subjects.emplace_back(wiring.streams[at(first.stream)].row->id);
    else
        subjects.push_back(port_subject(wiring, first.at));
    const auto sent = ways.space().format(*origin.sent);
    auto finding = found(words.id, Severity::warning, std::move(subjects),
                         {port_ref(wiring, origin.out), standards::text(sent), places(wiring, ports)}, shallow ? 1 : 0);
    if (!shallow) finding.values.emplace_back(standards::text(ways.space().format(*first.left)));
    if (const auto fits = fitting(ways, origin, arrivals.front(), *origin.sent))
        finding.remedies.push_back(set_format(wiring, origin.out, ways.space().format(*fits)));
    say_how_many(ports, finding);
    out.push_back(std::move(finding));
}

void judge_origin(PictureWays& ways, const PictureOrigin& origin, Findings& out) {
    std::map<std::pair<bool, Group>, std::vector<std::size_t>> lost;
    for (std::size_t i = 0; i < origin.arrivals.size(); ++i) {
        const auto& arrival = origin.arrivals[i];
        if (!arrival.left || !arrival.shows) continue;
        const auto& left = colour_form(FormatSpace::colour_of(*arrival.left));
        const bool shallow = hdr(left) && left.depth < standards::least_hdr_depth;
        if (hdr(left) && !shallow) continue;
        lost[{shallow, {arrival.stream, arrival.stream >= 0 ? graph::PortAt{} : arrival.at}}].push_back(i);
    }
    for (const auto& [key, arrivals] : lost) judge(ways, origin, arrivals, key.first, out);
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals,
           const VideoChains& chains, Findings& out) {
    const auto sends_hdr = [](const PictureOrigin& origin) {
        return origin.sent && hdr(colour_form(FormatSpace::colour_of(*origin.sent)));
    };
    if (std::ranges::none_of(chains.origins, sends_hdr)) return;
    PictureWays ways(wiring, runs, signals);
    for (const auto& origin : chains.origins)
        if (sends_hdr(origin)) judge_origin(ways, origin, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::hdr_not_passed
