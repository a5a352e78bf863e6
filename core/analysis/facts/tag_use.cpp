#include "core/analysis/facts/tag_use.h"

#include <bit>
#include <functional>
#include <map>
#include <string_view>
#include <utility>

namespace streamwright::analysis {

namespace tag_use_detail {

/// A set of hashes in one piece of memory: a node for each of ten thousand tags costs more than all the rest.
class MetHashes {
public:
    explicit MetHashes(std::size_t most) : slots_(std::bit_ceil(2 * most + 1), 0) {}
    /// Whether this one, or another of the same hash, was met before.
    bool again(std::string_view tag) {
        const auto hash = std::hash<std::string_view>{}(tag) | 1U;  // 0: empty
        auto at = hash >> 7U & (slots_.size() - 1);
        for (; slots_[at] != 0; at = (at + 1) & (slots_.size() - 1))
            if (slots_[at] == hash) return true;
        slots_[at] = hash;
        return false;
    }

private:
    std::vector<std::size_t> slots_;
};

/// Nearly every tag is borne once, so rows are hashed first and only those met again, or taken for it, are gathered.
template <class Row>
void add_shared(const model::Table<Row>& table, std::vector<SharedTag>& out) {
    MetHashes met(table.size());
    std::map<std::string_view, std::vector<TaggedRow>> again;
    for (const auto& row : table)
        if (!row.tag.empty() && met.again(row.tag)) again[row.tag];
    if (again.empty()) return;
    for (const auto& row : table)
        if (const auto shared = again.find(row.tag); shared != again.end()) shared->second.emplace_back(row.id);
    for (auto& [tag, rows] : again)
        if (rows.size() > 1) out.push_back({std::string(tag), std::move(rows)});
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
