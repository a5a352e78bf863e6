// PDF: drawn pages at their paper size and tables set for print, with the bundled face embedded.
#pragma once

#include "core/deliver/format.h"

namespace streamwright::app {

/// Needs a QGuiApplication with the bundled face loaded. The same input gives the same bytes.
deliver::Format pdf_format();

}  // namespace streamwright::app
