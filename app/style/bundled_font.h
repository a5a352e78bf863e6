// The face that screen, paper and tests share, loaded from the program itself.
#pragma once

namespace streamwright::app {

/// Adds B612 regular and bold to the application's fonts; call once after a QGuiApplication exists.
void load_bundled_font();

inline constexpr char bundled_family[] = "B612";

}  // namespace streamwright::app
