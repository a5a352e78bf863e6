#include "core/standards/compressed_streams.h"

#include "core/standards/wire_overhead.h"

#include <array>
#include <cassert>

namespace streamwright::standards {

namespace compressed_streams_detail {

using namespace base::literals;

constexpr std::array rates{
    PlanningRate{"H.264 distribution 1080p60", 6_Mbps, 20_Mbps},
    PlanningRate{"H.264 distribution 2160p60", 25_Mbps, 60_Mbps},
    PlanningRate{"HEVC distribution 1080p60", 3_Mbps, 10_Mbps},
    PlanningRate{"HEVC distribution 2160p60", 12_Mbps, 40_Mbps},
    PlanningRate{"light (mezzanine) 4K60 fitted to 1 GbE", 700_Mbps, 900_Mbps},
    PlanningRate{"JPEG 2000 contribution, visually lossless 1080p", 100_Mbps, 250_Mbps},
};

std::int64_t pixels_of_picture(const VideoFormat& format) {
    return std::int64_t{format.width} * format.height / (format.interlaced ? 2 : 1);
}

/// Octets cut into packets that hold `each` of them, with `header` before each share.
PictureStream cut(const VideoFormat& format, std::int64_t octets, std::int64_t header, std::int64_t udp_limit) {
    const auto each = udp_limit - udp_octets - rtp_octets - header;
    PictureStream stream;
    stream.pictures = refresh_rate(format);
    if (octets >= each) stream.runs.push_back({octets / each, each + header});
    if (octets % each != 0) stream.runs.push_back({1, octets % each + header});
    return stream;
}

}  // namespace compressed_streams_detail

std::int64_t codestream_octets(const VideoFormat& format, MilliBitsPerPixel rate) {
    constexpr std::int64_t millibits_per_octet = 8000;
    return (compressed_streams_detail::pixels_of_picture(format) * rate + millibits_per_octet - 1) /
           millibits_per_octet;
}

base::Rate codestream_rate(const VideoFormat& format, MilliBitsPerPixel rate) {
    return refresh_rate(format).bits(compressed_streams_detail::pixels_of_picture(format) * rate, 1000);
}

PictureStream jpeg_xs_stream(const VideoFormat& format, MilliBitsPerPixel rate, std::int64_t udp_limit) {
    assert(rate > 0 && udp_limit >= standard_udp_octets);
    return compressed_streams_detail::cut(format, codestream_octets(format, rate), jpeg_xs_header_octets, udp_limit);
}

std::int64_t mean_picture_octets(const VideoFormat& format, base::BitRate rate) {
    __extension__ using Wide = __int128;
    const auto pictures = refresh_rate(format);
    const Wide under = Wide{pictures.num()} * 8;
    return static_cast<std::int64_t>((Wide{rate.count()} * pictures.den() + under - 1) / under);
}

PictureStream fragmented_stream(const VideoFormat& format, base::BitRate rate, PictureCoding coding,
                                std::int64_t udp_limit) {
    assert(rate.count() > 0 && udp_limit >= standard_udp_octets);
    const auto header = coding == PictureCoding::h265 ? h265_fragment_octets : h264_fragment_octets;
    return compressed_streams_detail::cut(format, mean_picture_octets(format, rate), header, udp_limit);
}

std::span<const PlanningRate> planning_rates() { return compressed_streams_detail::rates; }

}  // namespace streamwright::standards
