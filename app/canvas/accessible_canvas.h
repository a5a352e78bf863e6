// The canvas for screen readers: a virtual child per device, port, cable and badge, with name, role, place and state.
#pragma once

namespace streamwright::app {

class Viewport;

/// Registers the interfaces once.
void install_accessible_canvas();
/// Tells screen readers that the keyboard moved within the canvas.
void announce_focus(Viewport& viewport);

}  // namespace streamwright::app
