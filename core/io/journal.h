// The journal beside a design file: what was edited since the last save, record by record, so that a crash loses at
// most the last quarter of a second. Records are {table, id, record or null} in the file's own form, checksummed;
// replay works on the parsed text before migration, is idempotent, and stops at the first record whose checksum fails.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <cstddef>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace streamwright::io {

std::filesystem::path journal_path(const std::filesystem::path& design);

/// Appends to a journal. Not confirmed until sync() has returned.
class JournalWriter {
public:
    /// A fresh journal that continues the file of that digest (empty: a design never saved).
    static base::Result<std::unique_ptr<JournalWriter>> start(const std::filesystem::path& journal,
                                                              const std::string& digest);
    base::Result<void> append(const model::Delta& delta);
    base::Result<void> sync();
    ~JournalWriter();
    JournalWriter(const JournalWriter&) = delete;
    JournalWriter& operator=(const JournalWriter&) = delete;

private:
    explicit JournalWriter(int descriptor, std::string where);
    base::Result<void> append_line(const std::string& payload);
    int descriptor_;
    std::string where_;
    std::string chain_;  // checksum of the line before; each line's covers it, so that none can be lost between others
};

struct Recovery {
    model::Design design;
    std::size_t records = 0;  // edits replayed; each is there whole or not at all
    bool cut_short = false;   // a record was damaged or incomplete; it and what follows were left out
    bool other_file = false;  // the journal continues another version of the file: offer as a separate copy
};

/// What the journal adds to the file's text (empty text: a design never saved). Nothing if there is no journal or it
/// holds no record.
base::Result<std::optional<Recovery>> recover(const std::filesystem::path& journal, std::string_view file_text,
                                              const std::string& where);

}  // namespace streamwright::io
