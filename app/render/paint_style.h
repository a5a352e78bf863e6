// How a painter turns the roles of a fragment into pens, fills and colours: one for the screen (by theme), one for
// paper (black only, safe for copies). Widths are in millimetres of paper; 1 px of the canvas at 100 % is 0.25 mm.
#pragma once

#include "core/deliver/drawing/fragment.h"

#include <QColor>
#include <QVector>

#include <optional>

namespace streamwright::app {

/// What to draw a path or text with.
struct Stroke {
    QColor line;  // invalid: no outline
    QColor fill;  // invalid: not filled
    double width_mm = 0.25;
    QVector<double> dash_mm;  // empty: unbroken
    double gap_mm = 0;        // over 0: two strands with this much clear ground between them
};

class PaintStyle {
public:
    virtual ~PaintStyle() = default;
    virtual Stroke stroke(deliver::Role role, std::optional<catalogue::Signal> signal) const = 0;
    virtual QColor text(deliver::Role role, std::optional<catalogue::Signal> signal) const = 0;
};

/// Paper: black on white, line widths and patterns of the visual language.
class PaperStyle final : public PaintStyle {
public:
    Stroke stroke(deliver::Role role, std::optional<catalogue::Signal> signal) const override;
    QColor text(deliver::Role role, std::optional<catalogue::Signal> signal) const override;
};

/// The pattern of a signal's cable, the same on screen and paper.
Stroke cable_pattern(catalogue::Signal signal);

}  // namespace streamwright::app
