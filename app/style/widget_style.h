// The widgets in the look of the visual language: palette and style sheet from a theme.
#pragma once

#include "app/style/theme.h"

class QApplication;
class QPalette;

namespace streamwright::app {

QPalette palette_of(const Theme& theme);
QString style_sheet_of(const Theme& theme);

/// Sets style, palette, style sheet and, the first time, the bundled face.
void dress(QApplication& application, const Theme& theme);

}  // namespace streamwright::app
