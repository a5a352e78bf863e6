#include "core/standards/sender_shaping.h"

#include <algorithm>

namespace streamwright::standards {

namespace sender_shaping_detail {

__extension__ using Wide = __int128;

/// int(N / (divisor x share x picture time)).
std::int64_t packets_over(const Cadence& cadence, std::int64_t divisor, const ActiveShare& share = {1, 1}) {
    const Wide over = Wide{cadence.packets} * cadence.pictures.num() * share.under;
    const Wide under = Wide{divisor} * share.over * cadence.pictures.den();
    return static_cast<std::int64_t>(over / under);
}

/// over / under of a second, nearest picosecond.
Picoseconds picoseconds(Wide over, Wide under) {
    constexpr Wide second = 1'000'000'000'000;
    return static_cast<Picoseconds>((second * over + under / 2) / under);
}

}  // namespace sender_shaping_detail

std::optional<ActiveShare> active_share(const VideoFormat& format) {
    if (!format.interlaced) return ActiveShare{1080, 1125};
    if (format.height == 480) return ActiveShare{487, 525};
    if (format.height == 576) return ActiveShare{576, 625};
    if (format.height == 1080) return ActiveShare{1080, 1125};
    return std::nullopt;
}

std::int64_t most_burst(SenderType sender, const Cadence& cadence, const ActiveShare& share) {
    constexpr std::int64_t narrow_divisor = 43'200, wide_divisor = 21'600;
    switch (sender) {
        case SenderType::narrow:
            return std::max<std::int64_t>(4, sender_shaping_detail::packets_over(cadence, narrow_divisor, share));
        case SenderType::narrow_linear:
            return std::max<std::int64_t>(4, sender_shaping_detail::packets_over(cadence, narrow_divisor));
        case SenderType::wide:
            return std::max<std::int64_t>(16, sender_shaping_detail::packets_over(cadence, wide_divisor));
    }
    return 0;
}

std::int64_t receiver_buffer(SenderType sender, const Cadence& cadence, std::int64_t most_ip_octets) {
    constexpr std::int64_t usual_ip_octets = 1500, narrow_packets = 8, wide_packets = 720;
    constexpr std::int64_t narrow_divisor = 27'000, wide_divisor = 300;
    const bool wide = sender == SenderType::wide;
    return std::max(usual_ip_octets * (wide ? wide_packets : narrow_packets) / most_ip_octets,
                    sender_shaping_detail::packets_over(cadence, wide ? wide_divisor : narrow_divisor));
}

Picoseconds gapped_spacing(const Cadence& cadence, const ActiveShare& share) {
    using sender_shaping_detail::Wide;
    return sender_shaping_detail::picoseconds(Wide{cadence.pictures.den()} * share.over,
                                              Wide{cadence.pictures.num()} * share.under * cadence.packets);
}

std::optional<Picoseconds> default_offset(const VideoFormat& format) {
    const auto lines = [&](std::int64_t over, std::int64_t under) {
        using sender_shaping_detail::Wide;
        return sender_shaping_detail::picoseconds(Wide{over} * format.frame_rate.den(),
                                                  Wide{under} * format.frame_rate.num());
    };
    if (!format.interlaced) return format.height >= 1080 ? lines(43, 1125) : lines(28, 750);
    if (format.height == 480) return lines(20, 525);
    if (format.height == 576) return lines(26, 625);
    if (format.height == 1080) return lines(22, 1125);
    return std::nullopt;
}

bool receives(SenderType receiver, SenderType sender) {
    return receiver == SenderType::wide || sender != SenderType::wide;
}

std::int64_t ipmx_most_burst(const Cadence& cadence) { return most_burst(SenderType::wide, cadence, {1, 1}); }

std::int64_t ipmx_receiver_buffer(const Cadence& cadence) { return 2 * ipmx_most_burst(cadence); }

}  // namespace streamwright::standards
