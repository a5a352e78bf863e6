#include "core/standards/codec_levels.h"

#include <array>

namespace streamwright::standards {

namespace codec_levels_detail {

using base::BitRate;

/// Table A-1 counts MaxBR in 1000 bits for Baseline and Main; High profile has 1250 of each (Table A-2).
constexpr CodecLevel avc(std::string_view name, std::int64_t per_second, std::int64_t per_frame, std::int64_t max_br,
                         Standing standing = Standing::read) {
    const auto rate = BitRate::from_count(max_br * 1250);
    return {name, per_second, per_frame, rate, rate, {"ITU-T", "H.264", "Table A-1 and A-2", standing}};
}
constexpr CodecLevel hevc(std::string_view name, std::int64_t per_second, std::int64_t per_frame,
                          std::int64_t main_kbit, std::int64_t high_kbit, Standing standing = Standing::read) {
    return {name,
            per_second,
            per_frame,
            BitRate::from_count(main_kbit * 1000),
            BitRate::from_count(high_kbit * 1000),
            {"ITU-T", "H.265", "Table A.9", standing}};
}
constexpr auto memory = Standing::memory;

constexpr std::array avc_levels{
    avc("3.0", 40'500, 1'620, 10'000, memory),
    avc("3.1", 108'000, 3'600, 14'000, memory),
    avc("3.2", 216'000, 5'120, 20'000, memory),
    avc("4.0", 245'760, 8'192, 20'000),
    avc("4.1", 245'760, 8'192, 50'000),
    avc("4.2", 522'240, 8'704, 50'000),
    avc("5.0", 589'824, 22'080, 135'000, memory),
    avc("5.1", 983'040, 36'864, 240'000),
    avc("5.2", 2'073'600, 36'864, 240'000),
    avc("6.0", 4'177'920, 139'264, 240'000, memory),
    avc("6.1", 8'355'840, 139'264, 480'000, memory),
    avc("6.2", 16'711'680, 139'264, 800'000, memory),
};

constexpr std::array hevc_levels{
    hevc("3.0", 16'588'800, 552'960, 6'000, 0, memory),
    hevc("3.1", 33'177'600, 983'040, 10'000, 0, memory),
    hevc("4.0", 66'846'720, 2'228'224, 12'000, 30'000, memory),
    hevc("4.1", 133'693'440, 2'228'224, 20'000, 50'000),
    hevc("5.0", 267'386'880, 8'912'896, 25'000, 100'000),
    hevc("5.1", 534'773'760, 8'912'896, 40'000, 160'000),
    hevc("5.2", 1'069'547'520, 8'912'896, 60'000, 240'000),
    hevc("6.0", 1'069'547'520, 35'651'584, 60'000, 240'000, memory),
    hevc("6.1", 2'139'095'040, 35'651'584, 120'000, 480'000, memory),
    hevc("6.2", 4'278'190'080, 35'651'584, 240'000, 800'000, memory),
};

std::int64_t parts(int side, int of) { return (side + of - 1) / of; }

/// So many units in each frame, a second's worth rounded up.
std::int64_t each_second(std::int64_t units, const Hertz& frames) {
    const auto rate = frames.times(units);
    return (rate.num() + rate.den() - 1) / rate.den();
}

/// No side may be longer than the square root of 8 x the greatest frame.
bool side_fits(std::int64_t side, std::int64_t units_per_frame) { return side * side <= 8 * units_per_frame; }

}  // namespace codec_levels_detail

std::span<const CodecLevel> h264_levels() { return codec_levels_detail::avc_levels; }
std::span<const CodecLevel> h265_levels() { return codec_levels_detail::hevc_levels; }

std::int64_t macroblocks(const VideoFormat& format) {
    return codec_levels_detail::parts(format.width, 16) * codec_levels_detail::parts(format.height, 16);
}

std::int64_t macroblock_rate(const VideoFormat& format) {
    return codec_levels_detail::each_second(macroblocks(format), format.frame_rate);
}

std::int64_t luma_samples(const VideoFormat& format) {
    return codec_levels_detail::parts(format.width, 8) * codec_levels_detail::parts(format.height, 8) * 64;
}

std::int64_t luma_sample_rate(const VideoFormat& format) {
    return codec_levels_detail::each_second(luma_samples(format), format.frame_rate);
}

const CodecLevel* h264_level(const VideoFormat& format, base::BitRate rate) {
    namespace detail = codec_levels_detail;
    for (const auto& level : detail::avc_levels)
        if (macroblock_rate(format) <= level.units_per_second && macroblocks(format) <= level.units_per_frame &&
            detail::side_fits(detail::parts(format.width, 16), level.units_per_frame) &&
            detail::side_fits(detail::parts(format.height, 16), level.units_per_frame) && rate <= level.rate)
            return &level;
    return nullptr;
}

const CodecLevel* h265_level(const VideoFormat& format, base::BitRate rate, bool high_tier) {
    namespace detail = codec_levels_detail;
    for (const auto& level : detail::hevc_levels) {
        const auto most = high_tier ? level.high_rate : level.rate;
        if (luma_sample_rate(format) <= level.units_per_second && luma_samples(format) <= level.units_per_frame &&
            detail::side_fits(format.width, level.units_per_frame) &&
            detail::side_fits(format.height, level.units_per_frame) && most.count() > 0 && rate <= most)
            return &level;
    }
    return nullptr;
}

}  // namespace streamwright::standards
