// What keeps a design's own characters from steering a terminal, where text is written as JSON.
#pragma once

#include <string>
#include <string_view>

namespace streamwright::app {

/// JSON text in which delete and the C1 control characters (U+007F to U+009F), which JSON lets stand, are written
/// \u00XX. It parses to the same values. The C0 ones JSON escapes itself.
std::string terminal_safe(std::string_view json_text);

}  // namespace streamwright::app
