// The plate of a device: where its rows, lugs and edges lie. One geometry for screen, paper and picking.
// One canvas unit is 0.25 mm; a port row is 5 mm, the title row 7 mm, the type row 5 mm.
#pragma once

#include "core/catalogue/device_type.h"
#include "core/graph/wiring.h"
#include "core/model/rows/sheet.h"

#include <vector>

namespace streamwright::layout {

enum class Side { left, right };

/// Measures of the plate, from the tokens: rows, lugs, type sizes.
namespace measure {
using namespace base::literals;
inline constexpr base::Length title_row = 7_mm, type_row = 5_mm, port_row = 5_mm, fact_row = 5_mm, foot = 2_mm;
inline constexpr base::Length folded_height = 7500_um, lug_width = 4500_um, lug_height = 4_mm, tick_width = 1500_um;
inline constexpr base::Length tag_em = 3500_um, label_em = 3_mm, note_em = 2750_um, lug_em = 3_mm;
inline constexpr base::Length inset = 2_mm;      // of labels from the edge
inline constexpr base::Length mark_size = 4_mm;  // role mark in the title row
inline constexpr base::Length module = 1_mm, lane = 5_mm;
inline constexpr base::Length flag_width = 54_mm, flag_height = 4500_um;
}  // namespace measure

struct Box {
    model::SheetPoint at;  // upper left
    base::Length width, height;
    bool holds(model::SheetPoint p) const;
    bool meets(const Box& other) const;
    Box grown(base::Length by) const;
    friend bool operator==(const Box&, const Box&) = default;
};

struct PortSpot {
    int port = 0;  // index into the type's ports
    Side side = Side::left;
    Box lug;                      // on the sheet
    model::SheetPoint lead;       // where a cable ends: the middle of the lug's outer edge
    base::Length label_baseline;  // y on the sheet
    friend bool operator==(const PortSpot&, const PortSpot&) = default;
};

struct Plate {
    Box body;                     // without lugs
    std::vector<PortSpot> spots;  // per port of the type, in order; folded plates spread them over the title row
    bool heavy_left = false, heavy_right = false;
    bool folded = false;
    bool fact_line = false;  // the lowest row, under a hair rule, tells a fact; else a narrow foot
    int rows = 0;            // port rows
    friend bool operator==(const Plate&, const Plate&) = default;
};

/// What the plate shows: all ports of the type, a row each on its side, inputs left and outputs right.
/// A type without ports still has a plate. A null type gives a plain plate with the tag only.
Plate plate_of(const catalogue::DeviceType* type, const std::vector<catalogue::Role>& roles, const model::Place& place);

}  // namespace streamwright::layout
