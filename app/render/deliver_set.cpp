#include "app/render/deliver_set.h"

#include "app/render/pdf_format.h"
#include "core/io/atomic_write.h"

#include <algorithm>

namespace streamwright::app {

namespace deliver_set_detail {

using base::Error;

/// The names asked for, or those stored in the design, or all; an unknown one is an error that lists what there is.
base::Result<std::vector<std::string>> chosen(const std::vector<std::string>& asked,
                                              const std::vector<std::string>& stored, std::vector<std::string> all,
                                              const char* pattern) {
    const auto& wanted = !asked.empty() ? asked : !stored.empty() ? stored : all;
    for (const auto& name : wanted) {
        if (std::ranges::find(all, name) != all.end()) continue;
        std::string list;
        for (const auto& each : all) list += (list.empty() ? "" : ", ") + each;
        return Error{pattern, {name, list}};
    }
    std::erase_if(all, [&](const std::string& name) { return std::ranges::find(wanted, name) == wanted.end(); });
    return all;
}

struct Plan {
    std::vector<const deliver::DocumentKind*> documents;
    std::vector<deliver::Format> formats;
};

base::Result<Plan> plan(const model::Design& design, const DeliverRequest& request) {
    const auto kinds = deliver::all_documents();
    std::vector<std::string> names;
    for (const auto& kind : kinds) names.emplace_back(kind.name);
    auto documents = chosen(request.documents, design.settings().document_set, names,
                            STREAMWRIGHT_TEXT("There is no document named '%1'; there are: %2."));
    if (!documents) return documents.error();
    auto formats = all_formats();
    names.clear();
    for (const auto& format : formats) names.push_back(format.name);
    auto format_names = chosen(request.formats, design.settings().formats, names,
                               STREAMWRIGHT_TEXT("There is no format named '%1'; there are: %2."));
    if (!format_names) return format_names.error();
    Plan made;
    for (const auto& kind : kinds)
        if (std::ranges::find(*documents, kind.name) != documents->end()) made.documents.push_back(&kind);
    std::erase_if(formats,
                  [&](const auto& f) { return std::ranges::find(*format_names, f.name) == format_names->end(); });
    made.formats = std::move(formats);
    return made;
}

base::Result<void> make_folder(const std::filesystem::path& folder) {
    std::error_code failed;
    std::filesystem::create_directories(folder, failed);
    if (!failed) return {};
    return Error{STREAMWRIGHT_TEXT("The folder %1 cannot be made: %2. Choose a folder you may write to."),
                 {folder.string(), failed.message()}};
}

}  // namespace deliver_set_detail

std::vector<deliver::Format> all_formats() {
    auto formats = deliver::core_formats();
    formats.push_back(pdf_format());
    std::ranges::sort(formats, {}, &deliver::Format::name);
    return formats;
}

base::Result<std::vector<std::filesystem::path>> deliver_set(const model::Design& design, const DeliverRequest& request,
                                                             const DeliverProgress& progress, std::stop_token stop) {
    using namespace deliver_set_detail;
    const auto planned = plan(design, request);
    if (!planned) return planned.error();
    if (auto made = make_folder(request.folder); !made) return made.error();
    const int steps = static_cast<int>(planned->documents.size() + planned->formats.size());
    int done = 0;
    const auto step = [&](std::string_view next) {
        if (progress) progress(std::string(next), done, steps);
        ++done;
        return !stop.stop_requested();
    };
    std::vector<std::filesystem::path> written;
    const auto stopped = [&] {
        return Error{STREAMWRIGHT_TEXT("Stopped after %1 files; the files already written are whole."),
                     {std::to_string(written.size())}};
    };
    const auto analysis = analysis::analyse(design);
    const deliver::Source source{design, analysis, analysis::report(design, analysis.findings),
                                 analysis::english(design)};
    std::vector<deliver::Content> contents;
    for (const auto* kind : planned->documents) {
        if (!step(kind->title)) return stopped();
        contents.push_back(kind->make(source));
    }
    const auto stamp = deliver::stamp_of(design);
    for (const auto& format : planned->formats) {
        if (!step(format.name)) return stopped();
        auto files = format.write(contents, stamp);
        if (!files) return files.error();
        for (const auto& file : *files) {
            const auto path = request.folder / file.name;
            if (auto saved = io::write_atomically(path, file.bytes); !saved) return saved.error();
            written.push_back(path);
        }
    }
    std::ranges::sort(written);
    return written;
}

}  // namespace streamwright::app
