#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::address_table_full_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::string_view rule = "address-table-full";

/// Switch B sees in each of two VLANs: switch A, which has an address there, the encoder and the decoder: 2 x 3. Its
/// trunk leads to switch A and the encoder in each: 2 x 2.
CleanDesign with_limits(std::optional<int> table, std::optional<int> per_port) {
    auto c = clean_design();
    change_type(c, c.switch_b, [&](auto& type) {
        type.bridging->address_table_size = table;
        type.bridging->addresses_per_port = per_port;
    });
    return c;
}

TEST(AddressTableFull, firesAboveTheTableOfTheSwitch) {
    const auto c = with_limits(5, {});
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    EXPECT_THAT(english_sentence(c.design(), finding_of(c.design(), rule)), HasSubstr("SW-B sees 6 addresses"));
    EXPECT_THAT(rules_found(with_limits(6, {}).design()), IsEmpty());
}

TEST(AddressTableFull, firesAboveWhatOnePortLearns) {
    const auto c = with_limits({}, 3);
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    EXPECT_THAT(english_sentence(c.design(), finding_of(c.design(), rule)), HasSubstr("stand 4 addresses"));
    EXPECT_THAT(rules_found(with_limits({}, 4).design()), IsEmpty());
}

TEST(AddressTableFull, isSilentWithoutAStatedLimit) {
    EXPECT_THAT(rules_found(with_limits({}, {}).design()), IsEmpty());
}

}  // namespace streamwright::test::address_table_full_test
