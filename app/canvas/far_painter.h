// What is left of a sheet seen from far: marks and tags, then numbers, then rooms with counts.
#pragma once

#include "app/canvas/painter.h"

namespace streamwright::app {

void paint_far(QPainter& painter, const PaintRequest& request, const QRectF& seen, Detail detail);

/// "201" of "ENC-201": what remains of a tag when there is no room for it.
QString number_of(const std::string& tag);

}  // namespace streamwright::app
