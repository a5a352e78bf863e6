// The help page of keys and gestures.
#pragma once

class QWidget;

namespace streamwright::app {

void show_shortcuts(QWidget& parent);

}  // namespace streamwright::app
