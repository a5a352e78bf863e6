#include "core/standards/viewing.h"

#include <cassert>
#include <cmath>

namespace streamwright::standards {

namespace viewing_detail {

__extension__ using Wide = __int128;

constexpr Wide whole = 100'000;  // thousandths of a percent

std::int64_t down(Wide over, Wide under) { return static_cast<std::int64_t>(over / under); }
std::int64_t up(Wide over, Wide under) { return static_cast<std::int64_t>((over + under - 1) / under); }

base::Length side(base::Length diagonal, int this_side, int other_side) {
    const auto share = this_side / std::hypot(static_cast<double>(this_side), static_cast<double>(other_side));
    return base::Length::from_count(std::llround(static_cast<double>(diagonal.count()) * share));
}

}  // namespace viewing_detail

base::Length basic_image_height(base::Length farthest, ElementHeight element) {
    assert(element.count() > 0);
    using namespace viewing_detail;
    return base::Length::from_count(up(Wide{farthest.count()} * whole, Wide{basic_acuity} * element.count()));
}

base::Length basic_farthest_viewer(base::Length image_height, ElementHeight element) {
    using namespace viewing_detail;
    return base::Length::from_count(down(Wide{image_height.count()} * basic_acuity * element.count(), whole));
}

ElementHeight basic_element_height(base::Length image_height, base::Length farthest) {
    assert(image_height.count() > 0);
    using namespace viewing_detail;
    return ElementHeight::from_count(up(Wide{farthest.count()} * whole, Wide{image_height.count()} * basic_acuity));
}

base::Length analytical_farthest_viewer(base::Length image_height, int lines) {
    assert(lines > 0);
    using namespace viewing_detail;
    return base::Length::from_count(down(Wide{image_height.count()} * analytical_acuity, lines));
}

base::Length analytical_image_height(base::Length farthest, int lines) {
    using namespace viewing_detail;
    return base::Length::from_count(up(Wide{farthest.count()} * lines, analytical_acuity));
}

base::Length image_height(base::Length diagonal, int across, int down) {
    return viewing_detail::side(diagonal, down, across);
}

base::Length image_width(base::Length diagonal, int across, int down) {
    return viewing_detail::side(diagonal, across, down);
}

int older_image_heights(OlderTask task) {
    return task == OlderTask::inspection ? 4 : (task == OlderTask::detailed ? 6 : 8);
}

ContrastLimit least_contrast(ViewingCategory category) {
    constexpr Citation read{"AVIXA", "V201.01 / V202.01", "system contrast"};
    constexpr Citation remembered{"ANSI/INFOCOMM", "3M-2011, AVIXA V201.01", "system contrast", Standing::memory};
    switch (category) {
        case ViewingCategory::passive:
            return {7, remembered};
        case ViewingCategory::basic:
            return {15, read};
        case ViewingCategory::analytical:
            return {50, read};
        case ViewingCategory::full_motion:
            return {80, remembered};
    }
    return {};
}

}  // namespace streamwright::standards
