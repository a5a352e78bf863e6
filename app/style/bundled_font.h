// The face that screen, paper and tests share, loaded from the program itself.
#pragma once

namespace streamwright::app {

/// Hides fonts of the same family that the system may have, so that none is taken for the bundled one: a package of the
/// face brings a monospaced sister that answers to the same name. Call before a QGuiApplication exists.
void prefer_bundled_font();

/// Adds B612 regular and bold to the application's fonts; call once after a QGuiApplication exists.
void load_bundled_font();

inline constexpr char bundled_family[] = "B612";

}  // namespace streamwright::app
