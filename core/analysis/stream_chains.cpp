// A stream: how its rate on the wire comes about.
#include "core/analysis/chain_parts.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/stream_chain.h"

namespace streamwright::analysis {

void add_stream_chains(const Facts& facts, int stream, std::vector<NumberChain>& out) {
    const auto& row = *facts.get<graph::Wiring>().streams[at(stream)].row;
    NumberChain chain{line(STREAMWRIGHT_TEXT("Rate of %1"), {named(row.id)}), stream_chain(row)};
    tell(chain, STREAMWRIGHT_TEXT("On the wire with a VLAN tag"), {}, wire_rate(row, true).ceil());
    keep(std::move(chain), out);
}

}  // namespace streamwright::analysis
