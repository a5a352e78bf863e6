#include "app/document/recovery.h"

#include "app/document/journal_keeper.h"

#include <fstream>
#include <iterator>

namespace streamwright::app {

namespace fs = std::filesystem;

namespace recovery_detail {

std::string text_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// A crash between two journals leaves the displaced one as the last word.
base::Result<std::optional<io::Recovery>> from_either(const fs::path& journal, const std::string& file_text) {
    auto found = io::recover(journal, file_text, journal.string());
    if (found && *found) return found;
    const auto displaced = displaced_journal(journal);
    std::error_code ignored;
    if (!fs::exists(displaced, ignored)) return found;
    return io::recover(displaced, file_text, displaced.string());
}

}  // namespace recovery_detail

fs::path unsaved_folder(const fs::path& state_folder) { return state_folder / "unsaved"; }

std::vector<Orphan> orphans_in(const fs::path& state_folder) {
    std::vector<Orphan> found;
    std::error_code trouble;
    for (const auto& entry : fs::directory_iterator(unsaved_folder(state_folder), trouble)) {
        if (entry.path().extension() != ".journal") continue;
        auto lock = io::FileLock::take(fs::path(entry.path()).replace_extension());
        if (!lock) continue;
        auto recovery = recovery_detail::from_either(entry.path(), {});
        if (!recovery) continue;
        if (*recovery)
            found.push_back({entry.path(), std::move(**recovery), std::move(lock)});
        else
            fs::remove(entry.path(), trouble);
    }
    return found;
}

base::Result<std::optional<io::Recovery>> recovery_for(const fs::path& design) {
    return recovery_detail::from_either(io::journal_path(design), recovery_detail::text_of(design));
}

fs::path kept_path(const fs::path& journal) {
    auto kept = journal;
    kept += ".kept";
    std::error_code ignored;
    for (int number = 2; fs::exists(kept, ignored); ++number) {
        kept = journal;
        kept += ".kept" + std::to_string(number);
    }
    return kept;
}

void set_aside(const fs::path& journal) {
    // Each under a name of its own: an empty one begun at the crash must not take the place of the one it displaced.
    std::error_code ignored;
    for (const auto& each : {journal, displaced_journal(journal)})
        if (fs::exists(each, ignored)) fs::rename(each, kept_path(journal), ignored);
}

}  // namespace streamwright::app
