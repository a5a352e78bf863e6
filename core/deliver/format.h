// Formats: how contents become files. PDF is handed in by the app, which has the painter.
#pragma once

#include "core/base/result.h"
#include "core/deliver/document.h"

#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace streamwright::deliver {

struct OutputFile {
    std::string name;  // file name, safe on every system
    std::string bytes;
};

/// What stands in title blocks and headers; no time of day anywhere, so that the same input gives the same bytes.
struct Stamp {
    std::string title, owner, revision, date, status;
};

struct Format {
    std::string name;               // "csv", "pdf", "svg", "xlsx"
    bool one_file_for_all = false;  // a workbook holds all tables
    std::function<base::Result<std::vector<OutputFile>>(std::span<const Content>, const Stamp&)> write;
};

std::vector<Format> core_formats();  // csv, svg, xlsx, by name
Stamp stamp_of(const model::Design& design);

}  // namespace streamwright::deliver
