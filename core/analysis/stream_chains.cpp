// A stream: how its rate on the wire comes about, and where it is heaviest to carry.
#include "core/analysis/chain_parts.h"
#include "core/analysis/rule_help.h"
#include "core/standards/wire_overhead.h"

#include <algorithm>

namespace streamwright::analysis {

void add_stream_chains(const Facts& facts, int stream, std::vector<NumberChain>& out) {
    const auto& row = *facts.get<graph::Wiring>().streams[at(stream)].row;
    NumberChain chain{line(STREAMWRIGHT_TEXT("Rate of %1"), {named(row.id)}), {}};
    const std::int64_t payload = std::clamp(row.payload_octets, 1, 65535);
    tell(chain, STREAMWRIGHT_TEXT("Payload"), {}, row.payload_rate);
    tell(chain, STREAMWRIGHT_TEXT("Octets of payload in a full packet"), {}, payload);
    tell(chain, STREAMWRIGHT_TEXT("Octets of that packet on the wire"), {},
         standards::packet_wire_octets(payload, row.rtp, 0));
    tell(chain, STREAMWRIGHT_TEXT("On the wire"), {}, wire_rate(row, false).ceil(), true);
    tell(chain, STREAMWRIGHT_TEXT("On the wire with a VLAN tag"), {}, wire_rate(row, true).ceil());
    keep(std::move(chain), out);
}

}  // namespace streamwright::analysis
