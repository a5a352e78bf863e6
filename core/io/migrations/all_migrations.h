// Steps from an older version of the file's form to the next, each on parsed text, in a file of its own that opens with
// its reason. Version 1 is the first, so that the list is still empty.
#pragma once

#include "core/base/result.h"

#include <span>
#include <string_view>

namespace streamwright::io {

struct ParsedFile;

struct Migration {
    int from;  // to from + 1
    std::string_view name;
    base::Result<void> (*run)(ParsedFile& file);
};

std::span<const Migration> all_migrations();

/// Runs the steps of the list from the file's version up to `to`; a missing step is refused.
base::Result<void> migrate(ParsedFile& file, int to, std::span<const Migration> steps);

}  // namespace streamwright::io
