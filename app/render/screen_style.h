// The roles of fragments in the colours of a theme. Line widths are those of the tokens at 100 %: 1 px is 0.25 mm.
#pragma once

#include "app/render/paint_style.h"
#include "app/style/theme.h"

namespace streamwright::app {

class ScreenStyle : public PaintStyle {
public:
    explicit ScreenStyle(Theme theme) : theme_(std::move(theme)) {}
    Stroke stroke(deliver::Role role, std::optional<catalogue::Signal> signal) const override;
    QColor text(deliver::Role role, std::optional<catalogue::Signal> signal) const override;
    const Theme& theme() const { return theme_; }

private:
    Stroke cable(catalogue::Signal signal) const;
    Theme theme_;
};

/// A selected cable: its tag reversed, its strands on the pale wash.
class SelectedCableStyle final : public ScreenStyle {
public:
    using ScreenStyle::ScreenStyle;
    Stroke stroke(deliver::Role role, std::optional<catalogue::Signal> signal) const override;
    QColor text(deliver::Role role, std::optional<catalogue::Signal> signal) const override;
};

}  // namespace streamwright::app
