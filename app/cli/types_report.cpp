#include "app/cli/types_report.h"

#include "app/cli/terminal_safe.h"
#include "core/catalogue/judge_types.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <ostream>

namespace streamwright::app {

namespace types_report_detail {

using Json = nlohmann::ordered_json;
using Files = std::vector<catalogue::JudgedFile>;

std::ptrdiff_t bad_of(const Files& files) {
    return std::count_if(files.begin(), files.end(), [](const auto& file) { return file.fault.has_value(); });
}

Json sentence_or_null(const std::optional<base::Error>& error) {
    return error ? Json(error->english()) : Json(nullptr);
}

std::string json_of(const std::string& folder, const Files& files) {
    Json top{{"folder", folder}};
    top["counts"] = {{"files", files.size()}, {"good", files.size() - static_cast<std::size_t>(bad_of(files))}};
    top["counts"]["bad"] = bad_of(files);
    top["files"] = Json::array();
    for (const auto& file : files)
        top["files"].push_back({{"file", file.path.string()},
                                {"kind", file.cable ? "cable" : "device"},
                                {"fault", sentence_or_null(file.fault)},
                                {"remark", sentence_or_null(file.remark)}});
    return terminal_safe(top.dump(1, ' ', false, Json::error_handler_t::replace));
}

void print_text(std::ostream& out, const Files& files) {
    for (const auto& file : files) {
        if (file.fault) out << "fault: " << file.fault->english() << '\n';
        if (file.remark) out << "remark: " << file.remark->english() << '\n';
    }
    const auto cables = std::count_if(files.begin(), files.end(), [](const auto& file) { return file.cable; });
    out << static_cast<std::ptrdiff_t>(files.size()) - cables << " device types, " << cables
        << " cable types: " << bad_of(files) << " bad\n";
}

}  // namespace types_report_detail

int report_types(const std::filesystem::path& folder, bool json, Streams streams) {
    using namespace types_report_detail;
    const auto files = catalogue::judge_types(folder);
    if (!files) {
        streams.err << files.error().english() << '\n';
        return exit_cannot;
    }
    if (json)
        streams.out << json_of(folder.string(), *files) << '\n';
    else
        print_text(streams.out, *files);
    return bad_of(*files) > 0 ? exit_errors_found : exit_done;
}

}  // namespace streamwright::app
