#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::address_table_full_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::string_view rule = "address-table-full";

/// Switch B sees in each of two VLANs: switch A, which has an address there, the encoder and the decoder: 2 x 3.
CleanDesign with_table(std::optional<int> table) {
    auto c = clean_design();
    change_type(c, c.switch_b, [&](auto& type) { type.bridging->address_table_size = table; });
    return c;
}

TEST(AddressTableFull, firesAboveTheTableOfTheSwitch) {
    const auto c = with_table(5);
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    EXPECT_THAT(english_sentence(c.design(), finding_of(c.design(), rule)), HasSubstr("SW-B sees 6 addresses"));
    EXPECT_THAT(rules_found(with_table(6).design()), IsEmpty());
    EXPECT_THAT(rules_found(with_table(std::nullopt).design()), IsEmpty());
}

/// Three decoders in a chain on switch B: three addresses behind its port, two behind the first decoder's next port.
CleanDesign with_chain(std::optional<int> at_switch, std::optional<int> at_decoder) {
    auto c = clean_design();
    change_type(c, c.switch_b, [&](auto& type) { type.bridging->addresses_per_port = at_switch; });
    auto type = types::make_chained_decoder();
    type.bridging->addresses_per_port = at_decoder;
    auto before = port_of(c.switch_b, "11");
    for (const std::string n : {"1", "2", "3"}) {
        const auto decoder = c.b.device(type, "CHAIN-" + n), display = c.b.device(types::display(), "SHOW-" + n);
        c.b.cable(types::hdmi(), port_of(decoder, "out"), port_of(display, "in"), base::Length::from_count(2'000'000));
        c.b.cable(types::cat6a(), before, port_of(decoder, "net"), analysis_test::short_run);
        before = port_of(decoder, "aux");
    }
    return c;
}

TEST(AddressTableFull, firesAboveWhatAPortTowardEndpointsLearns) {
    const auto c = with_chain(2, {});
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    EXPECT_THAT(english_sentence(c.design(), finding_of(c.design(), rule)),
                HasSubstr("Behind SW-B 11 stand 3 addresses"));
    EXPECT_THAT(rules_found(with_chain(3, {}).design()), IsEmpty());  // its trunk leads to a switch: not judged
    const auto endpoint = with_chain({}, 1);
    EXPECT_THAT(rules_found(endpoint.design()), ElementsAre(rule));
    EXPECT_THAT(english_sentence(endpoint.design(), finding_of(endpoint.design(), rule)),
                HasSubstr("Behind CHAIN-1 aux stand 2 addresses"));
    EXPECT_THAT(rules_found(with_chain({}, 2).design()), IsEmpty());
}

}  // namespace streamwright::test::address_table_full_test
