// Sound over RTP: linear PCM as AES67 and SMPTE ST 2110-30 send it and AES3 frames as SMPTE ST 2110-31 does, what a
// packet holds, what the stream takes on the wire, and which level of receiver takes it.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/rate.h"
#include "core/base/result.h"
#include "core/standards/citation.h"
#include "core/standards/hertz.h"

#include <optional>
#include <span>
#include <string_view>

namespace streamwright::standards {

/// l16, l24: linear PCM of 16 and 24 bits; am824: AES3 subframes of 4 octets.
enum class AudioCoding { l16, l24, am824 };

/// The packet times of AES67; 1 ms is the one that every device must have. Each is so many samples at 48 kHz, and the
/// same at 44.1 kHz, where it lasts a little longer.
enum class PacketTime { us_125, us_250, us_333, ms_1, ms_4 };

struct AudioStream {
    std::int64_t sampling_hz = 48'000;
    AudioCoding coding = AudioCoding::l24;
    int channels = 2;
    PacketTime packet_time = PacketTime::ms_1;
    friend bool operator==(const AudioStream&, const AudioStream&) = default;
};

/// Most octets of sound in one packet: the standard UDP limit of SMPTE ST 2110-10 less UDP and RTP headers.
inline constexpr std::int64_t most_audio_octets = 1440;
inline constexpr Citation audio_packet_limit_source{"SMPTE", "ST 2110-10", "6.3"};
inline constexpr Citation packet_time_source{"AES", "AES67-2018", "7.2"};

/// Nothing where the stream is sound; else one sentence naming the field (sampling rate, channels, packet time).
/// 16 bits at 96 kHz and 24 bits at 44.1 kHz are outside AES67 in SMPTE ST 2110-30 (6.2.1).
std::optional<base::Error> contradiction(const AudioStream& stream);

std::int64_t octets_per_sample(AudioCoding coding);
/// Of each channel.
std::int64_t samples_per_packet(const AudioStream& stream);
std::int64_t audio_payload_octets(const AudioStream& stream);
Hertz packets_a_second(const AudioStream& stream);

/// The most channels that one packet of that kind holds. A level may stop earlier.
std::int64_t most_channels_in_packet(const AudioStream& stream);

/// IPv4 packets; Ethernet frames with FCS; and all on the wire with preamble and gap. Exact.
base::Rate audio_ip_rate(const AudioStream& stream);
base::Rate audio_frame_rate(const AudioStream& stream, int tags = 0);
base::Rate audio_wire_rate(const AudioStream& stream, int tags = 0);

/// Packet times that a receiver is planned to hold back (link offset); a remembered habit, to be set per device.
inline constexpr int least_link_offset_packets = 1;
inline constexpr int most_link_offset_packets = 3;
inline constexpr Citation link_offset_source{"AES", "AES67", "7.2.2", Standing::memory};

/// Levels of receivers: what every device of the level takes.
struct AudioLevel {
    std::string_view name;  // "A"
    std::int64_t sampling_hz;
    PacketTime packet_time;
    int most_channels;
    Citation source;
};
std::span<const AudioLevel> audio_levels();
/// The first level that takes the stream; null: none does.
const AudioLevel* audio_level(const AudioStream& stream);

}  // namespace streamwright::standards

template <>
struct streamwright::base::EnumText<streamwright::standards::AudioCoding> {
    using E = streamwright::standards::AudioCoding;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::l16, "L16"}, {E::l24, "L24"}, {E::am824, "AM824"}}};
};

template <>
struct streamwright::base::EnumText<streamwright::standards::PacketTime> {
    using E = streamwright::standards::PacketTime;
    static constexpr std::array<std::pair<E, std::string_view>, 5> names{
        {{E::us_125, "125 us"}, {E::us_250, "250 us"}, {E::us_333, "333 us"}, {E::ms_1, "1 ms"}, {E::ms_4, "4 ms"}}};
};
