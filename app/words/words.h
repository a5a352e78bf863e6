// Where core's English patterns become the reader's words: one translate function, handed to core.
#pragma once

#include "core/base/error.h"
#include "core/base/text.h"
#include "core/model/design.h"

#include <QString>

namespace streamwright::app {

/// The pattern in the reader's language; English where there is no translation.
std::string translated(std::string_view pattern);

/// Names rows of the design by their present tags, in the reader's language and the design's units.
base::Phrasebook phrasebook(const model::Design& design);

/// A refusal as shown: translated, filled, control characters made visible.
QString sentence(const base::Error& error);

inline QString shown(const std::string& text) { return QString::fromStdString(text); }

}  // namespace streamwright::app
