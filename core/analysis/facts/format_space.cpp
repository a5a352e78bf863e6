#include "core/analysis/facts/format_space.h"

#include <algorithm>
#include <array>
#include <bit>
#include <tuple>

namespace streamwright::analysis {

namespace format_space_detail {

using standards::DynamicRange;
using standards::Sampling;
using standards::VideoFormat;

constexpr std::array<int, 4> depths{8, 10, 12, 16};

/// HDR in less than 10 bits is worse than none: it can be sent, it only looks bad (ITU-R BT.2100).
constexpr int range_rank(DynamicRange range, int depth) {
    if (range == DynamicRange::sdr) return 1;
    if (depth < standards::least_hdr_depth) return 0;
    return range == DynamicRange::hlg ? 2 : 3;
}

constexpr int fullness(Sampling sampling) {
    switch (sampling) {
        case Sampling::ycbcr_420:
            return 0;
        case Sampling::ycbcr_422:
            return 1;
        case Sampling::ycbcr_444:
            return 2;
        case Sampling::rgb:
            return 3;
    }
    return 0;
}

/// RGB and 4:4:4 hold the same.
constexpr int content(Sampling sampling) { return std::min(fullness(sampling), 2); }

auto rank(const Colour& colour) {
    return std::tuple(range_rank(colour.range, colour.depth), fullness(colour.sampling), colour.depth,
                      static_cast<int>(colour.range));
}

std::array<Colour, FormatSpace::colours> make_forms() {
    std::array<Colour, FormatSpace::colours> forms{};
    std::size_t at = 0;
    for (const auto sampling : {Sampling::rgb, Sampling::ycbcr_444, Sampling::ycbcr_422, Sampling::ycbcr_420})
        for (const int depth : depths)
            for (const auto range : {DynamicRange::sdr, DynamicRange::pq, DynamicRange::hlg})
                forms[at++] = {sampling, depth, range};
    std::sort(forms.begin(), forms.end(), [](const Colour& a, const Colour& b) { return rank(a) < rank(b); });
    return forms;
}

const std::array<Colour, FormatSpace::colours>& forms() {
    static const auto table = make_forms();
    return table;
}

int colour_number(Sampling sampling, int depth, DynamicRange range) {
    const auto* next = std::find_if(depths.begin(), depths.end(), [&](int each) { return each >= depth; });
    const int held = next == depths.end() ? depths.back() : *next;
    for (std::size_t at = 0; at < forms().size(); ++at) {
        const auto& form = forms()[at];
        if (form.sampling == sampling && form.depth == held && form.range == range) return static_cast<int>(at);
    }
    return 0;
}

std::array<std::uint64_t, FormatSpace::colours> make_descents() {
    std::array<std::uint64_t, FormatSpace::colours> masks{};
    for (std::size_t from = 0; from < masks.size(); ++from)
        for (std::size_t to = 0; to < masks.size(); ++to) {
            const auto &a = forms()[from], &b = forms()[to];
            if (content(b.sampling) <= content(a.sampling) && b.depth <= a.depth &&
                (b.range == a.range || b.range == DynamicRange::sdr))
                masks[from] |= std::uint64_t{1} << to;
        }
    return masks;
}

auto quality(const VideoFormat& raster) {
    return std::tuple(static_cast<std::int64_t>(raster.width) * raster.height, !raster.interlaced, raster.frame_rate,
                      raster.width, raster.reduced_blanking);
}

VideoFormat bare(VideoFormat format) {
    format.sampling = Sampling::rgb;
    format.depth = 8;
    format.range = DynamicRange::sdr;
    return format;
}

/// Frames a second, a rate of 1000/1001 counted as the whole one that it stands for.
standards::Hertz nominal(const standards::Hertz& rate) { return rate.den() == 1001 ? rate.times(1001, 1000) : rate; }

}  // namespace format_space_detail

using namespace format_space_detail;

FormatSpace::FormatSpace(const std::vector<VideoFormat>& rasters) {
    for (const auto& each : rasters)  // many types name the same few: told apart before anything is sorted
        if (const auto raster = bare(each); std::find(rasters_.begin(), rasters_.end(), raster) == rasters_.end())
            rasters_.push_back(raster);
    std::sort(rasters_.begin(), rasters_.end(), [](const auto& a, const auto& b) { return quality(a) < quality(b); });
}

VideoFormat FormatSpace::format(int number) const {
    VideoFormat format = raster(raster_of(number));
    const auto& colour = colour_form(colour_of(number));
    format.sampling = colour.sampling;
    format.depth = colour.depth;
    format.range = colour.range;
    return format;
}

std::optional<int> FormatSpace::number(const VideoFormat& format) const {
    const auto at = std::find(rasters_.begin(), rasters_.end(), bare(format));
    if (at == rasters_.end()) return std::nullopt;
    return static_cast<int>(at - rasters_.begin()) * colours +
           colour_number(format.sampling, format.depth, format.range);
}

FormatSet FormatSpace::only(int number) const {
    FormatSet set = none();
    set[static_cast<std::size_t>(raster_of(number))] = std::uint64_t{1} << colour_of(number);
    return set;
}

bool holds(const FormatSet& set, int number) {
    const auto raster = static_cast<std::size_t>(FormatSpace::raster_of(number));
    return number >= 0 && raster < set.size() && ((set[raster] >> FormatSpace::colour_of(number)) & 1U) != 0;
}

std::optional<int> best_of(const FormatSet& set) {
    for (auto raster = set.size(); raster-- > 0;)
        if (set[raster] != 0) return static_cast<int>(raster) * FormatSpace::colours + std::bit_width(set[raster]) - 1;
    return std::nullopt;
}

FormatSet both(const FormatSet& one, const FormatSet& other) {
    FormatSet set = one;
    for (std::size_t at = 0; at < set.size(); ++at) set[at] &= other[at];
    return set;
}

const Colour& colour_form(int colour) { return forms()[static_cast<std::size_t>(colour)]; }

std::uint64_t made_of(int colour) {
    static const auto masks = make_descents();
    return masks[static_cast<std::size_t>(colour)];
}

int limited(int colour, Sampling most_sampling, int most_depth, bool hdr) {
    const auto& form = colour_form(colour);
    const auto sampling = content(form.sampling) > content(most_sampling) ? most_sampling : form.sampling;
    int depth = depths.front();
    for (const int each : depths)
        if (each <= std::min(form.depth, most_depth)) depth = each;
    return colour_number(sampling, depth, hdr ? form.range : DynamicRange::sdr);
}

bool same_raster(const VideoFormat& one, const VideoFormat& other) {
    return one.width == other.width && one.height == other.height && one.interlaced == other.interlaced &&
           (one.frame_rate == other.frame_rate || nominal(one.frame_rate) == nominal(other.frame_rate));
}

}  // namespace streamwright::analysis
