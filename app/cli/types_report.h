// check --types: what the judge of types says of each file of a folder, for people or as JSON.
#pragma once

#include "app/cli/commands.h"

namespace streamwright::app {

/// One sentence per bad file and the count; the exit code of the verb.
int report_types(const std::filesystem::path& folder, bool json, Streams streams);

}  // namespace streamwright::app
