#include "core/standards/audio_streams.h"

#include "core/standards/wire_overhead.h"

#include <algorithm>

namespace streamwright::standards {

namespace audio_streams_detail {

constexpr std::int64_t bits_per_octet = 8;

constexpr Citation table(Standing standing) { return {"SMPTE", "ST 2110-30", "Table 2", standing}; }

constexpr std::array levels{
    AudioLevel{"A", 48'000, PacketTime::ms_1, 8, table(Standing::read)},
    AudioLevel{"B", 48'000, PacketTime::us_125, 8, table(Standing::memory)},
    AudioLevel{"C", 48'000, PacketTime::us_125, 64, table(Standing::memory)},
    AudioLevel{"AX", 96'000, PacketTime::ms_1, 4, table(Standing::read)},
    AudioLevel{"BX", 96'000, PacketTime::us_125, 8, table(Standing::memory)},
    AudioLevel{"CX", 96'000, PacketTime::us_125, 32, table(Standing::memory)},
};

constexpr std::array<std::int64_t, 4> sampling_rates{44'100, 48'000, 88'200, 96'000};

std::int64_t samples_at_48k(PacketTime time) {
    switch (time) {
        case PacketTime::us_125:
            return 6;
        case PacketTime::us_250:
            return 12;
        case PacketTime::us_333:
            return 16;
        case PacketTime::ms_1:
            return 48;
        case PacketTime::ms_4:
            return 192;
    }
    return 0;
}

std::optional<base::Error> rate_fault(const AudioStream& stream) {
    if (std::find(sampling_rates.begin(), sampling_rates.end(), stream.sampling_hz) == sampling_rates.end())
        return base::Error{"The sampling rate of a sound stream is 44.1, 48, 88.2 or 96 kHz, not %1 Hz.",
                           {std::to_string(stream.sampling_hz)}};
    const bool l16_fast = stream.coding == AudioCoding::l16 && stream.sampling_hz == 96'000;
    const bool l24_slow = stream.coding == AudioCoding::l24 && stream.sampling_hz == 44'100;
    if (l16_fast || l24_slow)
        return base::Error{"The sampling rate of %1 cannot be %2 Hz: that pair is outside AES67.",
                           {std::string(base::enum_text(stream.coding)), std::to_string(stream.sampling_hz)}};
    return std::nullopt;
}

}  // namespace audio_streams_detail

std::optional<base::Error> contradiction(const AudioStream& stream) {
    if (auto fault = audio_streams_detail::rate_fault(stream)) return fault;
    if (stream.channels < 1)
        return base::Error{"A sound stream has at least 1 channel, not %1.", {std::to_string(stream.channels)}};
    if (audio_payload_octets(stream) <= most_audio_octets) return std::nullopt;
    return base::Error{"%1 channels do not go into one packet of %2: %3 at most.",
                       {std::to_string(stream.channels), std::string(base::enum_text(stream.packet_time)),
                        std::to_string(most_channels_in_packet(stream))}};
}

std::int64_t octets_per_sample(AudioCoding coding) {
    return coding == AudioCoding::l16 ? 2 : (coding == AudioCoding::l24 ? 3 : 4);
}

std::int64_t samples_per_packet(const AudioStream& stream) {
    const bool twice = stream.sampling_hz == 88'200 || stream.sampling_hz == 96'000;
    return audio_streams_detail::samples_at_48k(stream.packet_time) * (twice ? 2 : 1);
}

std::int64_t audio_payload_octets(const AudioStream& stream) {
    return samples_per_packet(stream) * octets_per_sample(stream.coding) * stream.channels;
}

Hertz packets_a_second(const AudioStream& stream) {
    return Hertz::ratio(stream.sampling_hz, samples_per_packet(stream));
}

std::int64_t most_channels_in_packet(const AudioStream& stream) {
    return most_audio_octets / (samples_per_packet(stream) * octets_per_sample(stream.coding));
}

base::Rate audio_ip_rate(const AudioStream& stream) {
    return packets_a_second(stream).bits(ip_packet_octets(audio_payload_octets(stream), true) *
                                         audio_streams_detail::bits_per_octet);
}

base::Rate audio_frame_rate(const AudioStream& stream, int tags) {
    return packets_a_second(stream).bits(frame_octets(ip_packet_octets(audio_payload_octets(stream), true), tags) *
                                         audio_streams_detail::bits_per_octet);
}

base::Rate audio_wire_rate(const AudioStream& stream, int tags) {
    return packets_a_second(stream).bits(packet_wire_octets(audio_payload_octets(stream), true, tags) *
                                         audio_streams_detail::bits_per_octet);
}

std::span<const AudioLevel> audio_levels() { return audio_streams_detail::levels; }

const AudioLevel* audio_level(const AudioStream& stream) {
    if (stream.coding == AudioCoding::am824 || contradiction(stream)) return nullptr;
    for (const auto& level : audio_streams_detail::levels)
        if (level.sampling_hz == stream.sampling_hz && level.packet_time == stream.packet_time &&
            stream.channels <= level.most_channels)
            return &level;
    return nullptr;
}

}  // namespace streamwright::standards
