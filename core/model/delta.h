// A change of the design: rows before and after. The same delta is applied, undone, analysed, shown and journalled;
// nothing else changes a design.
#pragma once

#include "core/model/design.h"

#include <optional>
#include <tuple>
#include <vector>

namespace streamwright::model {

/// No before: the row is new. No after: the row goes. Never neither, never equal.
template <class Row>
struct Change {
    std::optional<Row> before, after;
    typename Row::Key key() const { return before ? before->key() : after->key(); }
    friend bool operator==(const Change&, const Change&) = default;
};

namespace detail {
template <class Rows>
struct ChangeLists;
template <class... Row>
struct ChangeLists<std::tuple<Row...>> {
    using type = std::tuple<std::vector<Change<Row>>...>;
};
}  // namespace detail

struct Delta {
    typename detail::ChangeLists<AllRows>::type lists;

    template <class Row>
    std::vector<Change<Row>>& of() {
        return std::get<std::vector<Change<Row>>>(lists);
    }
    template <class Row>
    const std::vector<Change<Row>>& of() const {
        return std::get<std::vector<Change<Row>>>(lists);
    }
    bool empty() const;
    Delta inverse() const;
    friend bool operator==(const Delta&, const Delta&) = default;
};

/// Replaces each row by its `after`. Debug builds assert that each `before` is what the design holds.
void apply(Design& design, const Delta& delta);

/// What turns `before` into `after`; shared chunks are skipped.
Delta difference(const Design& before, const Design& after);

/// The one change that both deltas make, one after the other; rows that end as they began vanish.
Delta joined(const Delta& first, const Delta& then);

/// Collects an edit: put and erase on a working copy, then the delta of it all.
class Editing {
public:
    explicit Editing(const Design& design) : before_(design), now(design) {}

    template <class Row>
    void put(Row row) {
        (now.*table_of<Row>()).put(std::move(row));
    }
    template <class Row>
    void erase(const typename Row::Key& key) {
        (now.*table_of<Row>()).erase(key);
    }
    Delta done() const { return difference(before_, now); }

private:
    Design before_;

public:
    Design now;  // the design as edited so far
};

}  // namespace streamwright::model
