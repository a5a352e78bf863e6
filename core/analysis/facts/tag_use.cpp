#include "core/analysis/facts/tag_use.h"

#include <map>
#include <string_view>
#include <unordered_set>
#include <utility>

namespace streamwright::analysis {

namespace tag_use_detail {

/// Nearly every tag is borne once, so rows are hashed first and only tags met again are gathered.
template <class Row>
void add_shared(const model::Table<Row>& table, std::vector<SharedTag>& out) {
    std::unordered_set<std::string_view> met;
    std::map<std::string_view, std::vector<TaggedRow>> again;
    met.reserve(table.size());
    for (const auto& row : table)
        if (!row.tag.empty() && !met.insert(row.tag).second) again[row.tag];
    if (again.empty()) return;
    for (const auto& row : table)
        if (const auto shared = again.find(row.tag); shared != again.end()) shared->second.emplace_back(row.id);
    for (auto& [tag, rows] : again) out.push_back({std::string(tag), std::move(rows)});
}

}  // namespace tag_use_detail

TagUse find_tag_use(const model::Design& design) {
    TagUse use;
    tag_use_detail::add_shared(design.devices, use.shared);
    tag_use_detail::add_shared(design.cables, use.shared);
    tag_use_detail::add_shared(design.streams, use.shared);
    return use;
}

}  // namespace streamwright::analysis
