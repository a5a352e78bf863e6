// What a subject of the canvas is called, for the status line and for screen readers.
#pragma once

#include "app/canvas/sheet_scene.h"

#include <QString>

namespace streamwright::app {

/// "N217, network over copper, SW-S2 9 to DEC-201 LAN, 111.5 m".
QString subject_words(const SheetScene& scene, const Chosen& subject);
QString badge_words(const SheetScene& scene, const BadgeOnSheet& badge);
QString signal_words(catalogue::Signal signal);

}  // namespace streamwright::app
