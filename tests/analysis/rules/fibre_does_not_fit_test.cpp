#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::fibre_does_not_fit_test {

using testing::ElementsAre;
using testing::IsEmpty;

/// A second trunk between the cages s2, so that the first keeps the pictures up.
struct Second {
    CleanDesign c = clean_design();
    model::CableId cable{0};
    Second(const types::DevicePtr& at_a, const types::DevicePtr& at_b, const types::CablePtr& type) {
        using namespace base::literals;
        const auto a = port_of(c.switch_a, "s2"), b = port_of(c.switch_b, "s2");
        cable = c.b.cable(type, a, b, 60_m);
        for (const auto& [port, module] : {std::pair{a, at_a}, std::pair{b, at_b}}) {
            if (module) c.b.embed(module);
            c.b.port(port, [&](auto& row) {
                row.tagged = {c.second};
                if (module) row.module = module->key;
            });
        }
    }
};

TEST(FibreDoesNotFit, isSilentOnAMatchedPair) {
    EXPECT_THAT(rules_found(Second(types::module_sr(), types::module_sr(), types::om3()).c.design()), IsEmpty());
    EXPECT_THAT(rules_found(Second(types::module_lr(), types::module_lr(), types::os2()).c.design()), IsEmpty());
}

TEST(FibreDoesNotFit, firesOnAMissingModuleAndOffersTheOtherEndsKind) {
    const Second second(types::module_sr(), nullptr, types::om3());
    EXPECT_THAT(rules_found(second.c.design()), ElementsAre("fibre-does-not-fit"));
    const auto finding = finding_of(second.c.design(), "fibre-does-not-fit");
    EXPECT_THAT(rules_found(cured(second.c.design(), finding)), IsEmpty());
    EXPECT_THAT(finding_of(Second(nullptr, nullptr, types::om3()).c.design(), "fibre-does-not-fit").remedies,
                IsEmpty());
}

TEST(FibreDoesNotFit, firesOnTheWrongFibre) {
    // Field case F32: a module for another medium than the plant gives no link.
    EXPECT_THAT(rules_found(Second(types::module_sr(), types::module_sr(), types::os2()).c.design()),
                ElementsAre("fibre-does-not-fit"));
}

TEST(FibreDoesNotFit, firesOnTwoKindsOfModule) {
    const auto rules = rules_found(Second(types::module_sr(), types::module_lr(), types::om3()).c.design());
    EXPECT_THAT(rules, ElementsAre("fibre-does-not-fit"));
}

TEST(FibreDoesNotFit, firesOnAModuleTooFastForItsCage) {
    // Field case F32: cage {1 Gb/s}, module {10 Gb/s}: error.
    auto c = clean_design();
    auto type = types::make_switch(2, base::BitRate::from_count(1'000'000'000), 1);
    type.key = {"test.switch.slow-cage"};
    type.ports.back().rates = {base::BitRate::from_count(1'000'000'000)};
    const auto id = c.b.device(type, "SW-C");
    const auto near = port_of(c.switch_a, "s2"), far = port_of(id, "s1");
    for (const auto& port : {near, far}) c.b.port(port, [&](auto& row) { row.module = types::module_sr()->key; });
    c.b.port(near, [&](auto& row) { row.tagged = {}; });
    c.b.cable(types::om3(), near, far, base::Length::from_count(60'000'000));
    EXPECT_THAT(rules_found(c.design()), ElementsAre("fibre-does-not-fit"));
}

}  // namespace streamwright::test::fibre_does_not_fit_test
