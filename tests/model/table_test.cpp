// Table against std::map: same rows, same order, for many thousand random writes; and copies that never change.
#include "core/model/table.h"

#include "core/model/rows/preset.h"

#include <gtest/gtest.h>

#include <map>
#include <random>

namespace {

using namespace streamwright::model;

Preset preset(std::uint64_t key, int number) { return Preset{PresetId(key), number, {}, {}, {}}; }

bool same(const Table<Preset>& table, const std::map<PresetId, int>& wanted) {
    if (table.size() != wanted.size()) return false;
    auto at = wanted.begin();
    for (const auto& row : table) {
        if (at == wanted.end() || row.id != at->first || row.number != at->second) return false;
        ++at;
    }
    return at == wanted.end();
}

TEST(Table, BehavesLikeAMapForRandomWrites) {
    std::mt19937_64 random(7);
    Table<Preset> table;
    std::map<PresetId, int> wanted;
    for (int step = 0; step < 20000; ++step) {
        const auto key = random() % 700;
        if (random() % 3 == 0) {
            table.erase(PresetId(key));
            wanted.erase(PresetId(key));
        } else {
            table.put(preset(key, step));
            wanted[PresetId(key)] = step;
        }
        const auto probe = PresetId(random() % 700);
        const auto* row = table.find(probe);
        ASSERT_EQ(row != nullptr, wanted.count(probe) == 1);
        if (row) {
            ASSERT_EQ(row->number, wanted[probe]);
        }
        if (step % 500 == 0) {
            ASSERT_TRUE(same(table, wanted)) << step;
        }
    }
    EXPECT_TRUE(same(table, wanted));
}

TEST(Table, AFrozenCopyNeverChanges) {
    Table<Preset> table;
    std::map<PresetId, int> wanted;
    for (std::uint64_t key = 0; key < 300; ++key) {
        table.put(preset(key, 1));
        wanted[PresetId(key)] = 1;
    }
    const auto frozen = table;
    EXPECT_TRUE(frozen.shares_all_with(table));
    for (std::uint64_t key = 0; key < 300; key += 2) table.erase(PresetId(key));
    for (std::uint64_t key = 1; key < 300; key += 2) table.put(preset(key, 2));
    EXPECT_TRUE(same(frozen, wanted));
    EXPECT_FALSE(frozen == table);
}

TEST(Table, OfMakesTheTableThatPuttingMakes) {
    std::mt19937_64 random(3);
    for (const std::size_t count : {0U, 1U, 47U, 48U, 49U, 64U, 65U, 1000U}) {
        std::map<PresetId, int> wanted;
        std::vector<Preset> rows;
        Table<Preset> put_one_by_one;
        while (wanted.size() < count) {
            const auto key = random();
            if (!wanted.emplace(PresetId(key), 5).second) continue;
            rows.push_back(preset(key, 5));
            put_one_by_one.put(rows.back());
        }
        const auto table = Table<Preset>::of(rows);
        EXPECT_TRUE(same(table, wanted)) << count;
        EXPECT_TRUE(table == put_one_by_one);
    }
}

TEST(Table, EqualityLooksAtRowsNotAtChunks) {
    Table<Preset> up, down;
    for (std::uint64_t key = 0; key < 200; ++key) up.put(preset(key, 1));
    for (std::uint64_t key = 200; key-- > 0;) down.put(preset(key, 1));
    EXPECT_TRUE(up == down);
    EXPECT_FALSE(up.shares_all_with(down));
    down.put(preset(77, 2));
    EXPECT_FALSE(up == down);
}

}  // namespace
