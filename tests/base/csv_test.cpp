// CSV by RFC 4180, and the guard against cells that spreadsheets run as formulas.
#include "core/base/csv.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace streamwright::test::csv {

using namespace base;
using Rows = std::vector<CsvRow>;

TEST(CsvWrite, QuotesOnlyWhereNeeded) {
    EXPECT_EQ(write_csv({{"tag", "length"}, {"S-21", "25 m"}}), "tag,length\r\nS-21,25 m\r\n");
    EXPECT_EQ(write_csv({{"a,b", "say \"no\"", "two\nlines", ""}}), "\"a,b\",\"say \"\"no\"\"\",\"two\nlines\",\r\n");
}

TEST(CsvWrite, FormulasAreDisarmedAndNumbersLeftAlone) {
    for (const char* cell : {"=1+1", "+SUM(A1)", "-2+3", "@cmd", "\tx", "--", "-", "+", "-1-1", "=HYPERLINK(1)"}) {
        const auto rows = read_csv(write_csv({{cell, "x"}}));
        ASSERT_TRUE(rows) << cell;
        EXPECT_EQ((*rows)[0][0], "'" + std::string(cell)) << cell;
    }
    EXPECT_EQ(write_csv({{"-5", "+3.25", "-0,5", "12"}}), "-5,+3.25,\"-0,5\",12\r\n");
}

TEST(CsvRead, TakesSeparatorLineEndAndByteOrderMarkAsTheyCome) {
    const Rows want{{"room", "qty"}, {"Board room", "2"}};
    for (const char* text :
         {"room,qty\nBoard room,2\n", "room;qty\r\nBoard room;2", "\xEF\xBB\xBFroom,qty\r\nBoard room,2\r\n",
          "room,qty\rBoard room,2\r", "\n\nroom,qty\n\nBoard room,2\n\n", "\"room\",\"qty\"\n\"Board room\",2"})
        EXPECT_EQ(*read_csv(text), want) << text;
}

TEST(CsvRead, TheFirstLineDecidesTheSeparatorOutsideItsQuotes) {
    EXPECT_EQ(*read_csv("\"a,b,c\";d\n1,5;2\n"), (Rows{{"a,b,c", "d"}, {"1,5", "2"}}));
    EXPECT_TRUE(read_csv("")->empty());
}

TEST(CsvRead, BrokenQuotesAreRefusedWithTheirLine) {
    const auto open = read_csv("a,b\nc,\"d\n");
    ASSERT_FALSE(open);
    EXPECT_NE(open.error().english().find("Line 2"), std::string::npos) << open.error().english();
    const auto after = read_csv("a,b\nx,y\n\"c\"d,e\n");
    ASSERT_FALSE(after);
    EXPECT_NE(after.error().english().find("Line 3"), std::string::npos) << after.error().english();
}

/// Cells of the characters that matter to CSV; none that starts as a formula, which comes back guarded.
rc::Gen<std::string> any_cell() {
    return rc::gen::map(rc::gen::container<std::string>(rc::gen::elementOf(std::string("ab ,;\"\r\n'=-1"))),
                        [](const std::string& text) { return "x" + text; });
}

RC_GTEST_PROP(CsvRoundTrip, CellsComeBackAsTheyWere, ()) {
    Rows rows;
    for (int i = *rc::gen::inRange(1, 6); i > 0; --i) {
        CsvRow row;
        for (int cell = *rc::gen::inRange(1, 6); cell > 0; --cell)
            row.push_back(*rc::gen::oneOf(any_cell(), rc::gen::just(std::string())));
        rows.push_back(row);
    }
    // The first line tells the separator; ours is the comma.
    rows.insert(rows.begin(), {"a", "b", "c"});
    const auto again = read_csv(write_csv(rows));
    RC_ASSERT(again.ok());
    RC_ASSERT(*again == rows);
}

RC_GTEST_PROP(CsvReadNever, CrashesOnAnyText, (const std::string& text)) {
    const auto rows = read_csv(text);
    if (!rows) RC_ASSERT(!rows.error().english().empty());
}

}  // namespace streamwright::test::csv
