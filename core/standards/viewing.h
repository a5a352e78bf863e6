// How large a picture must be for those who sit farthest away, and how much contrast it needs (AVIXA V202.01 and
// V201.01).
#pragma once

#include "core/base/enum_text.h"
#include "core/base/quantity.h"
#include "core/base/units.h"
#include "core/standards/citation.h"

namespace streamwright::standards {

/// Height of the smallest thing to be recognised as a share of the image height: thousandths of a percent, so that
/// 3 % is 3000.
using ElementHeight = base::Quantity<struct ElementHeightTag>;

/// Basic decision making: image height = farthest viewer / (200 x element height). Heights are rounded up, distances
/// down.
base::Length basic_image_height(base::Length farthest, ElementHeight element);
base::Length basic_farthest_viewer(base::Length image_height, ElementHeight element);
/// The element height that viewer and image give, rounded up.
ElementHeight basic_element_height(base::Length image_height, base::Length farthest);
inline constexpr std::int64_t basic_acuity = 200;

/// Analytical decision making: farthest viewer = image height x 3438 / lines (one arc minute a line). A finer raster
/// brings the farthest viewer nearer.
base::Length analytical_farthest_viewer(base::Length image_height, int lines);
base::Length analytical_image_height(base::Length farthest, int lines);
inline constexpr std::int64_t analytical_acuity = 3438;
inline constexpr Citation viewing_source{"AVIXA", "V202.01", "display image size"};

/// Height and width of an image of that shape, nearest micrometre.
base::Length image_height(base::Length diagonal, int across, int down);
base::Length image_width(base::Length diagonal, int across, int down);
inline constexpr base::Length inch = base::Length::from_count(25'400);

/// The older rule of the trade, a check of sanity only: farthest viewer in image heights.
enum class OlderTask { inspection, detailed, general };
int older_image_heights(OlderTask task);
inline constexpr Citation older_rule_source{"trade practice", "4/6/8 rule", "superseded by AVIXA V202.01"};

enum class ViewingCategory { passive, basic, analytical, full_motion };
/// Least system contrast to one, ambient light present, measured on a checkerboard of 16 zones.
struct ContrastLimit {
    int ratio;
    Citation source;
};
ContrastLimit least_contrast(ViewingCategory category);
inline constexpr int contrast_zones = 16;
inline constexpr Citation contrast_pattern_source{"ANSI/INFOCOMM", "3M-2011", "checkerboard"};

}  // namespace streamwright::standards

template <>
struct streamwright::base::EnumText<streamwright::standards::ViewingCategory> {
    using E = streamwright::standards::ViewingCategory;
    static constexpr std::array<std::pair<E, std::string_view>, 4> names{{{E::passive, "passive viewing"},
                                                                          {E::basic, "basic decision making"},
                                                                          {E::analytical, "analytical decision making"},
                                                                          {E::full_motion, "full motion video"}}};
};
