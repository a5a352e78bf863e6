// Journals left behind by a crash: finding them and reading what they add. Restoring is the user's choice.
#pragma once

#include "core/io/design_file.h"
#include "core/io/journal.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <vector>

namespace streamwright::app {

/// A design that was never saved, left behind by a program that died. The lock is held while the choice is open.
struct Orphan {
    std::filesystem::path journal;
    io::Recovery recovery;
    std::unique_ptr<io::FileLock> lock;
};

/// Those in the state folder that no running program holds. Journals that add nothing are removed.
std::vector<Orphan> orphans_in(const std::filesystem::path& state_folder);

/// What the journal beside a file adds to it; nothing if there is none worth offering.
base::Result<std::optional<io::Recovery>> recovery_for(const std::filesystem::path& design);

/// The name a journal gets when it is set aside; one that nothing else has.
std::filesystem::path kept_path(const std::filesystem::path& journal);
/// Puts a journal out of the way without destroying it, or what was set aside before it.
void set_aside(const std::filesystem::path& journal);

/// Where never-saved designs keep their journals.
std::filesystem::path unsaved_folder(const std::filesystem::path& state_folder);

}  // namespace streamwright::app
