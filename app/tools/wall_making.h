// A video wall of the displays that are selected on the canvas: one undoable step; what cannot be done is said in the
// status line.
#pragma once

#include "core/model/ids.h"

namespace streamwright::app {

class Document;
class Selection;
class Viewport;

/// The displays are taken row by row as they are drawn. Its first tile is selected then, so that its properties show
/// the wall.
void make_wall_of_selection(Viewport& viewport);
/// Takes one display out of its wall; the last one dissolves it.
void take_out_of_wall(Document& document, model::DeviceId display);

}  // namespace streamwright::app
