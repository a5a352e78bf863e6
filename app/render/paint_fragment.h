// Paints fragments: the one painter for screen, print preview and PDF.
#pragma once

#include "app/render/paint_style.h"

class QPainter;
class QString;

namespace streamwright::app {

struct PaintOptions {
    bool text = true;          // off below the zoom at which text can be read
    double least_text_px = 0;  // text smaller than this on the device is left out
};

/// The painter's coordinates are millimetres of paper.
void paint_fragment(QPainter& painter, const deliver::Fragment& fragment, const PaintStyle& style,
                    const PaintOptions& options = {});

}  // namespace streamwright::app
