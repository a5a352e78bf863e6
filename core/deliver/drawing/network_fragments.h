// The fragments of the network drawing: plates of switches, links with their load labels, the legend, the VLANs.
#pragma once

#include "core/deliver/drawing/fragment.h"
#include "core/deliver/drawing/network_view.h"

#include <string>
#include <vector>

namespace streamwright::deliver {

/// Measures of the drawing. A row holds a plate, and the label of a link beside it.
namespace network_measure {
using namespace base::literals;
inline constexpr base::Length plate_width = 60_mm, plate_height = 23'400_um, plate_height_five = 25'400_um,
                              label_width = 80_mm, label_height = 23'000_um, row = 26_mm;
inline constexpr base::Length bus = 16_mm;  // beside the parent: where lines change their height
inline constexpr base::Length stub = 5_mm;  // beside the child
inline constexpr base::Length gap = bus + label_width + stub;
}  // namespace network_measure

/// `sheet_words` tell where the rest stands; empty: here.
Fragment switch_fragment(const NetworkSwitch& words, const Box& body, const std::string& sheet_words);

/// Where a link lies: from the edge of the switch it hangs from, by lanes, straight through its label to its child's.
struct NetworkLine {
    std::vector<SheetPoint> way;  // the child's edge last; first the edge of the label where the line is open
    Box label;
    bool child_is_b = true;  // which end of the link stands there
    bool open = false;       // the other end is elsewhere: the label ends in a point
    bool leftward = false;   // the child stands left of its parent
};
/// The label with the point that says that its link goes on elsewhere.
Box pointed_label(const NetworkLine& line);
Fragment link_fragment(const NetworkLink& words, const NetworkLine& line, const std::string& load_word);

/// How to read the drawing, 112 mm wide and as high as the title block.
Fragment network_legend(SheetPoint at, const NetworkView& view);
/// VLANs with root, querier and blocked links, then the notes; what finds no room is counted.
Fragment network_table(const Box& room, const NetworkView& view);

}  // namespace streamwright::deliver
