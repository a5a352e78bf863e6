#include "core/analysis/picture_help.h"

#include "core/analysis/rule_help.h"

namespace streamwright::analysis {

std::vector<base::Text> link_terms(const standards::VideoFormat& asked, const standards::LinkFit& fit,
                                   const std::string& link) {
    std::vector<base::Text> terms;
    const auto clock = standards::print(fit.pixel_clock);
    if (fit.coding == standards::LinkCoding::tmds)
        terms.push_back(line(
            STREAMWRIGHT_TEXT("%1: pixel clock %2, so %3 of characters on each of three channels; x 10 bits x 3: %4"),
            {standards::text(asked), clock, standards::print(fit.character_rate), fit.needed.ceil()}));
    else
        terms.push_back(line(STREAMWRIGHT_TEXT("%1: pixel clock %2 x %3 bits a pixel: %4"),
                             {standards::text(asked), clock, std::int64_t{fit.bits}, fit.needed.ceil()}));
    terms.push_back(line(STREAMWRIGHT_TEXT("%1 carries %2"), {link, fit.carried.ceil()}));
    return terms;
}

base::Text break_line(const graph::Wiring& wiring, const PictureBreak& broken) {
    const auto port = port_ref(wiring, broken.at);
    switch (broken.kind) {
        case BreakKind::link:
        case BreakKind::cable:
            if (!broken.fit) return line(STREAMWRIGHT_TEXT("%1 at %2 does not carry it"), {broken.link, port});
            return line(STREAMWRIGHT_TEXT("%1 at %2: %3 needed, %4 carried"),
                        {broken.link, port, broken.fit->needed.ceil(), broken.fit->carried.ceil()});
        case BreakKind::not_given:
            return line(STREAMWRIGHT_TEXT("%1 does not give it"), {port});
        case BreakKind::not_taken:
            return line(STREAMWRIGHT_TEXT("%1 does not take it"), {port});
        case BreakKind::not_encoded:
            return line(STREAMWRIGHT_TEXT("The codec at %1 does not take it"), {port});
        case BreakKind::together:
            break;
    }
    return line(STREAMWRIGHT_TEXT("Nothing in common on the way to %1"), {port});
}

std::optional<int> fitting(PictureWays& ways, const PictureOrigin& origin, std::size_t arrival, int sent) {
    const auto end = ways.ends_by(origin.hop)[arrival];
    const auto passes = ways.sets().set(ways.sets().accepted(end.left, true));
    const auto raster = at(FormatSpace::raster_of(sent));
    FormatSet same = ways.space().none();
    same[raster] = passes[raster] & made_of(FormatSpace::colour_of(sent));
    if (const auto best = best_of(same)) return best;
    return best_of(passes);
}

namespace picture_help_detail {
constexpr std::size_t most_named = 3;
}

base::Value places(const graph::Wiring& wiring, const std::vector<graph::PortAt>& ports) {
    std::vector<base::Ref> refs;
    for (const auto port : ports)
        if (refs.size() < picture_help_detail::most_named) refs.push_back(port_ref(wiring, port));
    return refs;
}

void say_how_many(const std::vector<graph::PortAt>& ports, Finding& finding) {
    if (ports.size() > picture_help_detail::most_named)
        finding.terms.push_back(line(
            STREAMWRIGHT_TEXT("In all %1 places, of which the first %2 are named"),
            {static_cast<std::int64_t>(ports.size()), static_cast<std::int64_t>(picture_help_detail::most_named)}));
}

Remedy set_format(const graph::Wiring& wiring, graph::PortAt out, const standards::VideoFormat& format) {
    auto row = port_settings(wiring, out);
    row.picture = format;
    return {line(STREAMWRIGHT_TEXT("Set %1 to %2"), {port_ref(wiring, out), standards::text(format)}),
            model::ConfigurePort{row, nullptr}};
}

Remedy announce_merged(const graph::Wiring& wiring, graph::PortAt in) {
    auto row = port_settings(wiring, in);
    row.edid = model::EdidPolicy{model::EdidWay::merged, {}, {}, {}};
    return {line(STREAMWRIGHT_TEXT("Let %1 announce only what every display behind it takes"), {port_ref(wiring, in)}),
            model::ConfigurePort{row, nullptr}};
}

}  // namespace streamwright::analysis
