// Between millimetres of the sheet and pixels of the view. At 100 % one millimetre is four logical pixels.
#pragma once

#include "core/layout/plate.h"

#include <QPointF>
#include <QRectF>
#include <QTransform>

#include <cmath>

namespace streamwright::app {

inline double to_mm(base::Length length) { return static_cast<double>(length.count()) / 1000.0; }
inline QPointF to_mm(const model::SheetPoint& point) { return {to_mm(point.x), to_mm(point.y)}; }
inline QRectF to_mm(const layout::Box& box) { return {to_mm(box.at), QSizeF(to_mm(box.width), to_mm(box.height))}; }
inline base::Length from_mm(double mm) { return base::Length::from_count(std::llround(mm * 1000.0)); }
inline model::SheetPoint from_mm(QPointF point) { return {from_mm(point.x()), from_mm(point.y())}; }

struct ViewTransform {
    static constexpr double pixels_per_mm = 4.0;
    static constexpr double least_zoom = 0.05, most_zoom = 8.0;

    QPointF origin;     // millimetres at the view's upper left corner
    double zoom = 1.0;  // 1 is 100 %

    double scale() const { return pixels_per_mm * zoom; }
    QPointF to_view(QPointF mm) const { return (mm - origin) * scale(); }
    QRectF to_view(const QRectF& mm) const { return {to_view(mm.topLeft()), mm.size() * scale()}; }
    QPointF to_sheet(QPointF view) const { return origin + view / scale(); }
    QRectF to_sheet(const QRectF& view) const { return {to_sheet(view.topLeft()), view.size() / scale()}; }
    QTransform transform() const { return QTransform::fromScale(scale(), scale()).translate(-origin.x(), -origin.y()); }
    /// The same with another zoom, the point under `view` staying where it is.
    ViewTransform zoomed(double to, QPointF view) const;
    /// Shows the rectangle as large as fits, centred, with a margin in pixels, at most at `most`.
    static ViewTransform fitting(const QRectF& mm, QSizeF view, double margin, double most);
    friend bool operator==(const ViewTransform&, const ViewTransform&) = default;
};

}  // namespace streamwright::app
