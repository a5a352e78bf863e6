// Copy, cut, paste and duplicate of devices on the canvas, and choosing or lining up several of them. Each is one
// undoable step at most; what cannot be done is said in the status line.
#pragma once

#include "core/layout/align.h"

#include <QString>

namespace streamwright::app {

class Viewport;

/// Puts the selected devices on the system's clipboard. Whether there were any.
bool copy_selection(Viewport& viewport);
void cut_selection(Viewport& viewport);
/// With its upper left plate at the pointer if that is over the canvas, else beside where it was copied.
void paste_clipboard(Viewport& viewport);
/// Leaves the clipboard alone.
void duplicate_selection(Viewport& viewport);
/// All on the sheet that are of a type of the selected devices and cables.
void select_similar(Viewport& viewport);
void align_selection(Viewport& viewport, layout::Alignment alignment, const QString& words);

}  // namespace streamwright::app
