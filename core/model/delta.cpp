#include "core/model/delta.h"

#include <cassert>
#include <map>

namespace streamwright::model {

namespace {

template <class F>
void for_each_list(Delta& delta, F&& f) {
    std::apply([&](auto&... list) { (f(list), ...); }, delta.lists);
}

template <class Row>
void apply_list(Design& design, const std::vector<Change<Row>>& changes) {
    auto& table = design.*table_of<Row>();
    for (const auto& change : changes) {
        [[maybe_unused]] const Row* held = table.find(change.key());
        assert(held ? change.before && *change.before == *held : !change.before);
        if (change.after)
            table.put(*change.after);
        else
            table.erase(change.key());
    }
}

template <class Row>
void find_changes(const Table<Row>& before, const Table<Row>& after, std::vector<Change<Row>>& out) {
    if (before.shares_all_with(after)) return;
    auto a = before.begin();
    auto b = after.begin();
    while (a != before.end() || b != after.end()) {
        if (b == after.end() || (a != before.end() && a->key() < b->key())) {
            out.push_back({*a, std::nullopt});
            ++a;
        } else if (a == before.end() || b->key() < a->key()) {
            out.push_back({std::nullopt, *b});
            ++b;
        } else {
            if (&*a != &*b && !(*a == *b)) out.push_back({*a, *b});
            ++a;
            ++b;
        }
    }
}

template <class Row>
void join_list(std::vector<Change<Row>>& into, const std::vector<Change<Row>>& then) {
    std::map<typename Row::Key, Change<Row>> all;
    for (auto& change : into) all.emplace(change.key(), std::move(change));
    for (const auto& change : then) {
        const auto [at, fresh] = all.emplace(change.key(), change);
        if (!fresh) at->second.after = change.after;
    }
    into.clear();
    for (auto& [key, change] : all)
        if (change.before != change.after) into.push_back(std::move(change));
}

}  // namespace

bool Delta::empty() const {
    return std::apply([](const auto&... list) { return (list.empty() && ...); }, lists);
}

Delta Delta::inverse() const {
    Delta turned = *this;
    for_each_list(turned, [](auto& list) {
        for (auto& change : list) std::swap(change.before, change.after);
    });
    return turned;
}

void apply(Design& design, const Delta& delta) {
    std::apply([&](const auto&... list) { (apply_list(design, list), ...); }, delta.lists);
}

Delta difference(const Design& before, const Design& after) {
    Delta delta;
    for_each_table([&](std::string_view, auto member) {
        using Row = typename std::remove_reference_t<decltype(after.*member)>::Row;
        find_changes<Row>(before.*member, after.*member, delta.of<Row>());
    });
    return delta;
}

Delta joined(const Delta& first, const Delta& then) {
    Delta sum = first;
    for_each_list(sum, [&]<class Row>(std::vector<Change<Row>>& list) { join_list(list, then.of<Row>()); });
    return sum;
}

}  // namespace streamwright::model
