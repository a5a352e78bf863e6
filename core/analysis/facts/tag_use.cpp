#include "core/analysis/facts/tag_use.h"

#include <algorithm>
#include <string_view>
#include <utility>

namespace streamwright::analysis {

namespace tag_use_detail {

template <class Row>
void add_shared(const model::Table<Row>& table, std::vector<SharedTag>& out) {
    using Id = typename Row::Key;
    std::vector<std::pair<std::string_view, Id>> tags;
    tags.reserve(table.size());
    for (const auto& row : table)
        if (!row.tag.empty()) tags.emplace_back(row.tag, row.id);
    std::sort(tags.begin(), tags.end());
    for (auto first = tags.begin(); first != tags.end();) {
        const auto last = std::find_if(first, tags.end(), [&](const auto& each) { return each.first != first->first; });
        if (last - first > 1) {
            SharedTag shared{std::string(first->first), {}};
            for (auto it = first; it != last; ++it) shared.rows.emplace_back(it->second);
            out.push_back(std::move(shared));
        }
        first = last;
    }
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
