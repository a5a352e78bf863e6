// A table of rows sorted by key, held in immutable shared chunks: copying a table copies a few pointers, a write
// replaces one chunk. A frozen copy for a worker or for undo costs next to nothing.
#pragma once

#include <algorithm>
#include <cassert>
#include <cstddef>
#include <iterator>
#include <memory>
#include <vector>

namespace streamwright::model {

template <class RowType>
class Table {
public:
    using Row = RowType;
    using Key = typename Row::Key;
    using Chunk = std::vector<Row>;
    using ChunkPtr = std::shared_ptr<const Chunk>;
    static constexpr std::size_t full_chunk = 64;

    class iterator {
    public:
        using iterator_category = std::forward_iterator_tag;
        using value_type = Row;
        using difference_type = std::ptrdiff_t;
        using pointer = const Row*;
        using reference = const Row&;

        iterator() = default;
        iterator(const std::vector<ChunkPtr>* chunks, std::size_t chunk) : chunks_(chunks), chunk_(chunk) {}
        reference operator*() const { return (*(*chunks_)[chunk_])[row_]; }
        pointer operator->() const { return &**this; }
        iterator& operator++() {
            if (++row_ == (*chunks_)[chunk_]->size()) {
                ++chunk_;
                row_ = 0;
            }
            return *this;
        }
        iterator operator++(int) {
            auto old = *this;
            ++*this;
            return old;
        }
        friend bool operator==(const iterator&, const iterator&) = default;

    private:
        const std::vector<ChunkPtr>* chunks_ = nullptr;
        std::size_t chunk_ = 0;
        std::size_t row_ = 0;
    };

    /// A table of rows whose keys all differ, in any order; much faster than putting them one by one.
    static Table of(std::vector<Row> rows) {
        std::sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return a.key() < b.key(); });
        constexpr std::size_t fresh_chunk = full_chunk * 3 / 4;  // room for a few more before it splits
        Table table;
        table.size_ = rows.size();
        for (std::size_t at = 0; at < rows.size(); at += fresh_chunk) {
            const auto first = std::make_move_iterator(rows.begin() + static_cast<std::ptrdiff_t>(at));
            const auto count = std::min(fresh_chunk, rows.size() - at);
            table.chunks_.push_back(std::make_shared<Chunk>(first, first + static_cast<std::ptrdiff_t>(count)));
        }
        return table;
    }

    iterator begin() const { return {&chunks_, 0}; }
    iterator end() const { return {&chunks_, chunks_.size()}; }
    std::size_t size() const { return size_; }
    bool empty() const { return size_ == 0; }

    /// Null if there is no such row. The pointer lives as long as any copy of the table that holds this version.
    const Row* find(const Key& key) const {
        const auto chunk = chunk_for(key);
        if (chunk == chunks_.size()) return nullptr;
        const auto row = row_for(*chunks_[chunk], key);
        return row != chunks_[chunk]->end() && row->key() == key ? &*row : nullptr;
    }
    bool contains(const Key& key) const { return find(key) != nullptr; }

    /// Inserts the row, or replaces the one of its key.
    void put(Row row) {
        const Key key = row.key();
        if (chunks_.empty()) {
            chunks_.push_back(std::make_shared<Chunk>(1, std::move(row)));
            ++size_;
            return;
        }
        const auto at = std::min(chunk_for(key), chunks_.size() - 1);
        auto rows = std::make_shared<Chunk>(*chunks_[at]);
        const auto place = row_for(*rows, key);
        if (place != rows->end() && place->key() == key) {
            *place = std::move(row);
        } else {
            rows->insert(place, std::move(row));
            ++size_;
        }
        store(at, std::move(rows));
    }

    /// Does nothing if there is no such row.
    void erase(const Key& key) {
        if (!contains(key)) return;
        const auto at = chunk_for(key);
        auto rows = std::make_shared<Chunk>(*chunks_[at]);
        rows->erase(row_for(*rows, key));
        --size_;
        if (rows->empty())
            chunks_.erase(chunks_.begin() + static_cast<std::ptrdiff_t>(at));
        else
            chunks_[at] = std::move(rows);
    }

    friend bool operator==(const Table& a, const Table& b) {
        return a.chunks_ == b.chunks_ || (a.size_ == b.size_ && std::equal(a.begin(), a.end(), b.begin()));
    }

    /// Whether both hold the very same chunks: a quick sufficient test of equality.
    bool shares_all_with(const Table& other) const { return chunks_ == other.chunks_; }

private:
    std::size_t chunk_for(const Key& key) const {
        return static_cast<std::size_t>(std::partition_point(chunks_.begin(), chunks_.end(),
                                                             [&](const ChunkPtr& c) { return c->back().key() < key; }) -
                                        chunks_.begin());
    }
    template <class Rows>
    static auto row_for(Rows& rows, const Key& key) {
        return std::partition_point(rows.begin(), rows.end(), [&](const Row& r) { return r.key() < key; });
    }
    void store(std::size_t at, std::shared_ptr<Chunk> rows) {
        if (rows->size() <= full_chunk) {
            chunks_[at] = std::move(rows);
            return;
        }
        const auto half = rows->begin() + static_cast<std::ptrdiff_t>(rows->size() / 2);
        auto upper = std::make_shared<Chunk>(half, rows->end());
        rows->erase(half, rows->end());
        chunks_[at] = std::move(rows);
        chunks_.insert(chunks_.begin() + static_cast<std::ptrdiff_t>(at) + 1, std::move(upper));
    }

    std::vector<ChunkPtr> chunks_;
    std::size_t size_ = 0;
};

}  // namespace streamwright::model
