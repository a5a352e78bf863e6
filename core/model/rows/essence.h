// What a stream carries and how it is cut into packets, by open standards. Where a stream states it, its rate, its
// packets and their sizes follow from it and are typed nowhere.
#pragma once

#include "core/base/units.h"
#include "core/standards/audio_streams.h"
#include "core/standards/compressed_streams.h"
#include "core/standards/video_streams.h"

namespace streamwright::model {

struct PictureEssence {
    standards::PictureCoding coding = standards::PictureCoding::uncompressed;
    standards::VideoFormat format{.sampling = standards::Sampling::ycbcr_422, .depth = 10};
    standards::Packing packing = standards::Packing::general;  // uncompressed
    standards::MilliBitsPerPixel millibits_per_pixel = 0;      // JPEG XS
    base::BitRate rate;                                        // H.264 and H.265
    int udp_limit_octets = standards::standard_udp_octets;     // most of a datagram, its own header counted
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("coding", s.coding);
        v("format", s.format);
        v("packing", s.packing);
        v("millibits_per_pixel", s.millibits_per_pixel);
        v("rate_bps", s.rate);
        v("udp_limit_octets", s.udp_limit_octets);
    }
    friend bool operator==(const PictureEssence&, const PictureEssence&) = default;
};

struct SoundEssence {
    standards::AudioStream flow;
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("sampling_hz", s.flow.sampling_hz);
        v("coding", s.flow.coding);
        v("channels", s.flow.channels);
        v("packet_time", s.flow.packet_time);
    }
    friend bool operator==(const SoundEssence&, const SoundEssence&) = default;
};

}  // namespace streamwright::model
