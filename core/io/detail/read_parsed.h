// From parsed text to a design. For .cpp files only.
#pragma once

#include "core/io/detail/parsed_file.h"
#include "core/model/design.h"

namespace streamwright::io {

/// Migrates and reads. `text` is where lines are looked up for messages; empty if the parsed text has no lines of its
/// own.
base::Result<model::Design> read_parsed(ParsedFile file, std::string_view text, const std::string& where);

}  // namespace streamwright::io
