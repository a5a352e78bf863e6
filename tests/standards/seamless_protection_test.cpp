// Path differentials against tests/reference (rows COD-).
#include "core/standards/seamless_protection.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::seamless_protection {

using namespace standards;

TEST(SeamlessProtection, EachClassHasItsPathDifferential) {
    const std::pair<SkewClass, const char*> rows[] = {{SkewClass::low, "COD-112"},
                                                      {SkewClass::moderate, "COD-113"},
                                                      {SkewClass::high, "COD-114"},
                                                      {SkewClass::ultra_low, "COD-115"}};
    for (const auto& [of, id] : rows) {
        const std::int64_t unit = reference_row(id).unit == "us" ? 1000 : 1'000'000;
        EXPECT_EQ(path_differential(of).count(), unit * row_number(id, 0)) << id;
        EXPECT_EQ(path_differential_source(of).standing == Standing::memory, !was_read(id)) << id;
    }
}

}  // namespace streamwright::test::seamless_protection
