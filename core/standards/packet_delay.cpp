#include "core/standards/packet_delay.h"

namespace streamwright::standards {

namespace packet_delay_detail {

__extension__ using Wide = __int128;

Picoseconds divided_up(Wide value, std::int64_t by) { return static_cast<Picoseconds>((value + by - 1) / by); }

}  // namespace packet_delay_detail

Picoseconds serialisation(std::int64_t octets, base::BitRate rate) {
    constexpr packet_delay_detail::Wide bits_per_second = 8'000'000'000'000;
    return packet_delay_detail::divided_up(bits_per_second * octets, rate.count());
}

Picoseconds propagation(base::Length length, Picoseconds per_metre) {
    constexpr std::int64_t micrometres = 1'000'000;
    return packet_delay_detail::divided_up(packet_delay_detail::Wide{length.count()} * per_metre, micrometres);
}

}  // namespace streamwright::standards
