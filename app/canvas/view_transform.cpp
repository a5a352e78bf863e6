#include "app/canvas/view_transform.h"

#include <algorithm>

namespace streamwright::app {

ViewTransform ViewTransform::zoomed(double to, QPointF view) const {
    ViewTransform next = *this;
    next.zoom = std::clamp(to, least_zoom, most_zoom);
    next.origin = to_sheet(view) - view / next.scale();
    return next;
}

ViewTransform ViewTransform::fitting(const QRectF& mm, QSizeF view, double margin, double most) {
    ViewTransform made;
    const double wide = std::max(mm.width(), 1.0), high = std::max(mm.height(), 1.0);
    made.zoom =
        std::clamp(std::min((view.width() - 2 * margin) / wide, (view.height() - 2 * margin) / high) / pixels_per_mm,
                   least_zoom, most);
    made.origin = mm.center() - QPointF(view.width(), view.height()) / (2 * made.scale());
    return made;
}

}  // namespace streamwright::app
