// Decimals of currencies against tests/reference (rows COM-003 to COM-005, ISO 4217).
#include "core/standards/currencies.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

#include <sstream>

namespace streamwright::test::currencies {

TEST(Currencies, DecimalsAreAsPublished) {
    int known = 0;
    for (const char* id : {"COM-003", "COM-004", "COM-005"}) {
        std::stringstream codes(reference_row(id).condition);
        for (std::string code; std::getline(codes >> std::ws, code, ',');) {
            const auto digits = standards::minor_digits(code);
            if (!digits) continue;  // the table holds those the trade quotes in
            ++known;
            EXPECT_EQ(*digits, row_number(id, 0)) << code;
        }
    }
    EXPECT_GE(known, 12);
}

TEST(Currencies, AnUnknownCodeIsNotAssumedToHaveTwo) {
    EXPECT_EQ(standards::minor_digits("XXX"), std::nullopt);
    EXPECT_EQ(standards::minor_digits("eur"), std::nullopt);
    for (const auto& row : standards::currencies()) EXPECT_EQ(standards::minor_digits(row.code), row.decimals);
}

}  // namespace streamwright::test::currencies
