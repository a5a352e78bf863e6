// The plate of a device: where its rows, lugs and edges lie. One geometry for screen, paper and picking.
// One canvas unit is 0.25 mm; a port row is 5 mm, the title row 7 mm, the type row 5 mm.
#pragma once

#include "core/catalogue/device_type.h"
#include "core/graph/wiring.h"
#include "core/model/rows/sheet.h"

#include <vector>

namespace streamwright::layout {

enum class Side { left, right };

struct Box {
    model::SheetPoint at;          // upper left
    base::Length width, height;
    bool holds(model::SheetPoint p) const;
    bool meets(const Box& other) const;
    Box grown(base::Length by) const;
    friend bool operator==(const Box&, const Box&) = default;
};

struct PortSpot {
    int port = 0;                  // index into the type's ports
    Side side = Side::left;
    Box lug;                       // on the sheet
    model::SheetPoint lead;        // where a cable ends: the middle of the lug's outer edge
    base::Length label_baseline;   // y on the sheet
    friend bool operator==(const PortSpot&, const PortSpot&) = default;
};

struct Plate {
    Box body;                      // without lugs
    std::vector<PortSpot> spots;   // per port of the type, in order; folded plates spread them over the title row
    bool heavy_left = false, heavy_right = false;
    bool folded = false;
    friend bool operator==(const Plate&, const Plate&) = default;
};

/// A type without ports still has a plate. A null type gives a plain plate with the tag only.
Plate plate_of(const catalogue::DeviceType* type, const std::vector<catalogue::Role>& roles, const model::Place& place);

}  // namespace streamwright::layout
