// The document set of a design written to a folder: the same for the command line and for the canvas.
#pragma once

#include "core/analysis/analyser.h"
#include "core/base/result.h"
#include "core/deliver/format.h"
#include "core/model/design.h"

#include <filesystem>
#include <functional>
#include <stop_token>
#include <string>
#include <vector>

namespace streamwright::app {

struct DeliverRequest {
    std::filesystem::path folder;
    std::vector<std::string> documents;  // names; empty: those stored in the design, else all
    std::vector<std::string> formats;    // names; empty: those stored in the design, else all
};

/// csv, pdf, svg, xlsx, by name. Needs a QGuiApplication for pdf.
std::vector<deliver::Format> all_formats();

/// Called between files: what comes next, how many of how many are done.
using DeliverProgress = std::function<void(const std::string& next, int done, int of)>;

/// Writes every file atomically and returns their paths, sorted. Refuses unknown names before writing anything; stops
/// between files when asked, saying how many were written.
base::Result<std::vector<std::filesystem::path>> deliver_set(const model::Design& design, const DeliverRequest& request,
                                                             const DeliverProgress& progress, std::stop_token stop);

}  // namespace streamwright::app
