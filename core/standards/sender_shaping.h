// How evenly a sender of pictures must send, and how much a receiver must hold: the traffic models of SMPTE
// ST 2110-21, and those of VSF TR-10 (IPMX).
#pragma once

#include "core/base/enum_text.h"
#include "core/base/units.h"
#include "core/standards/citation.h"
#include "core/standards/packet_delay.h"
#include "core/standards/video_format.h"

#include <cstdint>
#include <optional>

namespace streamwright::standards {

/// narrow: gapped, packets only while lines are active; narrow_linear: evenly over the whole frame; wide.
enum class SenderType { narrow, narrow_linear, wide };

/// What a sender makes of each picture: N packets of a frame or field, so many pictures a second.
struct Cadence {
    std::int64_t packets;
    Hertz pictures;
};

/// The share of the frame in which lines are active, as a fraction. Nothing for interlaced rasters that the standard
/// does not have.
struct ActiveShare {
    std::int64_t over, under;
};
std::optional<ActiveShare> active_share(const VideoFormat& format);

/// Packets that may stand in the network buffer of the model (CMAX).
std::int64_t most_burst(SenderType sender, const Cadence& cadence, const ActiveShare& share);
inline constexpr Citation burst_source{"SMPTE", "ST 2110-21", "7.1.2 to 7.1.4"};

/// Packets that a receiver must hold (VRX full), by the largest IP packet sent.
std::int64_t receiver_buffer(SenderType sender, const Cadence& cadence, std::int64_t most_ip_octets = 1500);
inline constexpr Citation receiver_buffer_source{"SMPTE", "ST 2110-21", "7.1"};

/// Time between packets of a gapped sender (TRS): picture time x active share / N. Nearest picosecond.
Picoseconds gapped_spacing(const Cadence& cadence, const ActiveShare& share);

/// From the start of the frame to its first packet where nothing else is declared (TRO default). Nearest picosecond;
/// nothing for rasters that the standard does not have.
std::optional<Picoseconds> default_offset(const VideoFormat& format);
inline constexpr Citation offset_source{"SMPTE", "ST 2110-21", "6.3.2 and 6.3.3"};

/// Whether a receiver made for one type takes a sender of another: a narrow one takes linear senders but no wide ones.
bool receives(SenderType receiver, SenderType sender);
inline constexpr Citation receiver_source{"SMPTE", "ST 2110-21", "7.2", Standing::memory};

/// IPMX baseband video: the burst of a wide sender, and twice that to hold.
std::int64_t ipmx_most_burst(const Cadence& cadence);
std::int64_t ipmx_receiver_buffer(const Cadence& cadence);
inline constexpr Citation ipmx_shaping_source{"VSF", "TR-10-1", "8.1"};
/// The first packets of frames may wander by so much within 2 s.
inline constexpr base::Duration ipmx_frame_wander = base::Duration::from_count(2'000'000);
inline constexpr Citation ipmx_wander_source{"VSF", "TR-10-9", "11.2"};

}  // namespace streamwright::standards

/// The tokens of a session description (SMPTE ST 2110-21 section 8.1).
template <>
struct streamwright::base::EnumText<streamwright::standards::SenderType> {
    using E = streamwright::standards::SenderType;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::narrow, "2110TPN"}, {E::narrow_linear, "2110TPNL"}, {E::wide, "2110TPW"}}};
};
