// Finding things of the design by any words they are known by: tag, type, kind, room, address, note.
#pragma once

#include "app/document/selection.h"

#include <QStringList>

#include <vector>

namespace streamwright::app {

struct Findable {
    Chosen subject;
    QString name;      // what it is called on the drawing
    QStringList also;  // what else it is found by
};

std::vector<Findable> findables(const model::Design& design);

/// Those that hold every word of the text, whole matches first, then names that begin with it, then by name as people
/// count (ENC-9 before ENC-10).
std::vector<Chosen> found_in(const model::Design& design, const QString& text);

}  // namespace streamwright::app
