// Every picture format that can matter in a design, numbered from worst to best, so that what ports, links and codecs
// take are sets of numbers: one intersection answers what fits all of them.
#pragma once

#include "core/standards/video_format.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

/// A set of formats: per raster and rate a bit for each colour form.
using FormatSet = std::vector<std::uint64_t>;

/// Rasters and rates that types and settings name, times the colour forms. Better is: more pixels, then progressive,
/// then more frames, then HDR of at least 10 bits (PQ before HLG), then fuller sampling, then deeper; a choice of this
/// program, near what sources do with an EDID. Numbers rise with it, so the best of a set is its greatest.
class FormatSpace {
public:
    FormatSpace() = default;
    /// Of each format raster and rate count; doubles are one.
    explicit FormatSpace(const std::vector<standards::VideoFormat>& rasters);

    int rasters() const { return static_cast<int>(rasters_.size()); }
    int size() const { return rasters() * colours; }
    standards::VideoFormat format(int number) const;
    /// A depth that is no form of its own counts as the next deeper; none where the raster is not of the space.
    std::optional<int> number(const standards::VideoFormat& format) const;
    /// Raster and rate alone, in the form of a VideoFormat.
    const standards::VideoFormat& raster(int index) const { return rasters_[static_cast<std::size_t>(index)]; }

    FormatSet all() const { return FormatSet(rasters_.size(), (std::uint64_t{1} << colours) - 1); }
    FormatSet none() const { return FormatSet(rasters_.size(), 0); }
    FormatSet only(int number) const;

    static constexpr int colours = 48;  // four samplings, four depths, three ranges
    static int raster_of(int number) { return number / colours; }
    static int colour_of(int number) { return number % colours; }

    friend bool operator==(const FormatSpace&, const FormatSpace&) = default;

private:
    std::vector<standards::VideoFormat> rasters_;  // from worst to best
};

bool holds(const FormatSet& set, int number);
std::optional<int> best_of(const FormatSet& set);
FormatSet both(const FormatSet& one, const FormatSet& other);

/// Sampling, depth and range of a colour form.
struct Colour {
    standards::Sampling sampling;
    int depth;
    standards::DynamicRange range;
};
const Colour& colour_form(int colour);
template <class Takes>
std::uint64_t colours_where(Takes&& takes) {
    std::uint64_t forms = 0;
    for (int colour = 0; colour < FormatSpace::colours; ++colour)
        if (takes(colour_form(colour))) forms |= std::uint64_t{1} << colour;
    return forms;
}
/// The forms that can be made of this one without inventing anything: no fuller sampling (RGB and 4:4:4 change into
/// each other), no deeper, of its own range or flattened to SDR.
std::uint64_t made_of(int colour);
/// The best form that keeps within the limits; the depth never below 8.
int limited(int colour, standards::Sampling most_sampling, int most_depth, bool hdr);

/// Whether one raster and rate stands for both: the same picture at a rate and at 1000/1001 of it, as one code of
/// CTA-861 does.
bool same_raster(const standards::VideoFormat& one, const standards::VideoFormat& other);

}  // namespace streamwright::analysis
