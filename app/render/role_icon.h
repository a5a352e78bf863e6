// The role mark of a type, and the shape of a severity, as pictures for lists.
#pragma once

#include "app/style/theme.h"
#include "core/catalogue/device_type.h"

#include <QIcon>
#include <QPointF>

class QPainter;

namespace streamwright::app {

QIcon role_icon(const catalogue::DeviceType& type, const Theme& theme);
/// Diamond, triangle or circle, 14 px, round a centre.
void paint_severity(QPainter& painter, analysis::Severity severity, const Theme& theme, QPointF centre);
/// The lug of a signal: its letter on its colour, 16 px.
void paint_lug(QPainter& painter, catalogue::Signal signal, const Theme& theme, QPointF centre);

}  // namespace streamwright::app
