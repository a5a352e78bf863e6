// A picture from the output where it begins to each place that shows it: what it is on every part of the way.
#include "core/analysis/chain_parts.h"
#include "core/analysis/picture_help.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis {

namespace picture_chains_detail {

constexpr std::size_t most_ways = 24;  // of one output; the schedules list all

void add_part(const PictureWays& ways, const WayPart& part, NumberChain& chain) {
    if (part.ports.empty()) return;
    const auto from = port_ref(ways.wiring(), part.ports.front()), to = port_ref(ways.wiring(), part.ports.back());
    const auto format =
        part.format ? standards::text(ways.space().format(*part.format)) : std::string(STREAMWRIGHT_TEXT("no picture"));
    if (part.stream < 0) return tell(chain, STREAMWRIGHT_TEXT("%1 to %2"), {from, to}, format, false, !part.format);
    const auto stream = ways.wiring().streams[at(part.stream)].row->id;
    tell(chain, STREAMWRIGHT_TEXT("out of stream %3, %1 to %2"), {from, to, named(stream)}, format, false,
         !part.format);
}

void add_break(const PictureWays& ways, const PictureBreak& broken, NumberChain& chain) {
    auto words = break_line(ways.wiring(), broken);
    tell(chain, std::move(words.pattern), std::move(words.values), std::string(), false, true);
    if (!broken.fit) return;
    for (auto& term : link_terms(broken.asked, *broken.fit, broken.link))
        tell(chain, std::move(term.pattern), std::move(term.values), std::string());
}

NumberChain way_to(PictureWays& ways, const PictureOrigin& origin, std::size_t index) {
    const auto& arrival = origin.arrivals[index];
    NumberChain chain{line(STREAMWRIGHT_TEXT("Picture from %1 at %2"),
                           {port_ref(ways.wiring(), origin.out), port_ref(ways.wiring(), arrival.at)}),
                      {}};
    const auto way = follow(ways, origin, index, *origin.sent);
    for (const auto& part : way.parts) add_part(ways, part, chain);
    if (way.broken) add_break(ways, *way.broken, chain);
    if (arrival.left && arrival.best && *arrival.best > *arrival.left && arrival.best_by)
        tell(chain, STREAMWRIGHT_TEXT("%1 sent would arrive as"),
             {standards::text(ways.space().format(*arrival.best_by))},
             standards::text(ways.space().format(*arrival.best)));
    return chain;
}

}  // namespace picture_chains_detail

void add_picture_chains(const Facts& facts, graph::PortAt output, std::vector<NumberChain>& out) {
    std::optional<PictureWays> ways;
    for (const auto& origin : facts.get<VideoChains>().origins) {
        if (origin.out != output || !origin.sent) continue;
        if (!ways) ways.emplace(facts.get<graph::Wiring>(), facts.get<graph::Runs>(), facts.get<graph::SignalGraph>());
        std::size_t told = 0;
        for (std::size_t i = 0; i < origin.arrivals.size() && told < picture_chains_detail::most_ways; ++i) {
            if (!origin.arrivals[i].shows) continue;
            keep(picture_chains_detail::way_to(*ways, origin, i), out);
            ++told;
        }
    }
}

}  // namespace streamwright::analysis
