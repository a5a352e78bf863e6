// Judges the type files of a folder one by one, so that whoever writes a library hears of every bad file at once.
#pragma once

#include "core/base/result.h"

#include <filesystem>
#include <optional>
#include <vector>

namespace streamwright::catalogue {

struct JudgedFile {
    std::filesystem::path path;
    bool cable = false;                 // read as a cable type; else as a device type
    std::optional<base::Error> fault;   // why the file cannot be used as it is
    std::optional<base::Error> remark;  // what is kept without being read, which may be a slip of the keyboard
};

/// The files of FOLDER/devices and FOLDER/cables, and those directly in FOLDER, by path. A file is read, held to the
/// name it bears, judged by itself and then against the others. Refuses a folder that cannot be read or has no types.
base::Result<std::vector<JudgedFile>> judge_types(const std::filesystem::path& folder);

}  // namespace streamwright::catalogue
