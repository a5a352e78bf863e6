// The words that tables share: how a device, a port, a room and a cable end are named, and how cells are filled.
#pragma once

#include "core/deliver/document.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::deliver {

const graph::Wiring& wiring_of(const Source& source);

/// Letter of the newest revision; empty before the first.
std::string revision_letter(const model::Design& design);

std::string device_tag(const graph::Wiring& wiring, int device);
std::string port_label(const graph::Wiring& wiring, graph::PortAt at);
/// "2.04", or its name where it has no number; empty where the device is in no room.
std::string room_words(const model::Design& design, const model::Device& device);
/// "N-A U21", or empty.
std::string rack_words(const model::Design& design, const model::Device& device);
std::string_view connector_words(catalogue::Connector connector);
std::string_view signal_words(catalogue::Signal signal);
std::string role_words(const graph::Wiring& wiring, int device);

/// A far-away port seen from a port of a switch: through passive panels, to the next active device.
struct FarEnd {
    std::optional<graph::PortAt> device;  // none: an open end
    std::optional<graph::PortAt> panel;   // the first passive face on the way
    std::vector<int> cables;              // from here to there
};
std::optional<FarEnd> far_end_of(const Source& source, graph::PortAt at);

Cell text_cell(std::string text);  // empty text: an empty cell
Cell yes_cell(bool value);         // "yes" or empty
template <class Quantity>
Cell quantity_cell(const std::optional<Quantity>& value) {
    return value ? Cell(*value) : Cell();
}

/// Tags sorted as people count: "SW-2" before "SW-10".
bool counts_before(std::string_view a, std::string_view b);

/// Items separated by ", ".
std::string listed(const std::vector<std::string>& items);
/// Whether a tag is the next number after another of the same letters: N010 after N009, N10 after N9, not N10 after
/// N009.
bool follows(std::string_view tag, std::string_view before);
/// As listed, but three or more tags that follow one another are one item: "N003, N007 to N031". The tags are sorted.
std::string listed_in_runs(const std::vector<std::string>& tags);

}  // namespace streamwright::deliver
