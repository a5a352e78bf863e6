// Every fragment of a sheet in painting order: rooms, cables, devices, notes.
#include "core/deliver/drawing/schematic_fragments.h"

#include "core/deliver/drawing/sheet_lines.h"

namespace streamwright::deliver {

std::vector<Fragment> schematic_fragments(const Scene& scene) {
    std::vector<Fragment> fragments;
    for (const auto& frame : scene.design.room_frames)
        if (frame.sheet == scene.sheet) fragments.push_back(room_fragment(scene, frame));
    const auto lines = drawn_lines(scene, plates_of(scene));
    for (const auto& line : lines) fragments.push_back(cable_fragment_among(scene, line, lines));
    for (const auto& place : scene.design.places)
        if (place.on.sheet == scene.sheet) fragments.push_back(device_fragment(scene, place));
    for (const auto& note : scene.design.notes)
        if (note.sheet == scene.sheet) fragments.push_back(note_fragment(scene, note));
    return fragments;
}

}  // namespace streamwright::deliver
