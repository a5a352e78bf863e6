// Identifiers: 60 bits in 12 characters of Crockford's base 32 (digits, letters without i, l, o, u), and a seeded
// source.
#include "core/base/id.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <set>

namespace streamwright::test::ids {

using namespace base;
using TestId = Id<struct TestTag>;

TEST(Id, PrintsTwelveCharacters) {
    EXPECT_EQ(TestId(0).text(), "000000000000");
    EXPECT_EQ(TestId(31).text(), "00000000000z");
    EXPECT_EQ(TestId(32).text(), "000000000010");
    EXPECT_EQ(TestId(~std::uint64_t{0}).text(), "zzzzzzzzzzzz");
}

TEST(Id, ReadsNothingElse) {
    for (const char* text : {"", "00000000000", "0000000000000", "00000000000i", "00000000000Z", "00000000 000"})
        EXPECT_FALSE(TestId::parse(text)) << text;
}

RC_GTEST_PROP(Id, ComesBackFromItsTextInTheSameOrder, (std::uint64_t a, std::uint64_t b)) {
    const TestId left(a), right(b);
    RC_ASSERT(*TestId::parse(left.text()) == left);
    RC_ASSERT((left < right) == (left.text() < right.text()));
}

TEST(IdSource, IsRepeatableAndDoesNotRepeatItself) {
    IdSource first(7), second(7), other(8);
    std::set<TestId> seen;
    for (int i = 0; i < 100'000; ++i) {
        const auto id = first.next<TestId>();
        EXPECT_EQ(second.next<TestId>(), id);
        seen.insert(id);
    }
    EXPECT_EQ(seen.size(), 100'000U);
    EXPECT_NE(other.next<TestId>(), IdSource(7).next<TestId>());
    EXPECT_NE(IdSource::from_entropy().next_bits(), IdSource::from_entropy().next_bits());
}

}  // namespace streamwright::test::ids
