// Sentences and refusals: places filled once, input never steers a terminal. Well-formed UTF-8 as RFC 3629 defines it.
#include "core/base/text.h"

#include <gtest/gtest.h>

namespace streamwright::test::text {

using namespace base;
using namespace base::literals;

TEST(Places, AreFilledOnceAndArgumentsAreNotReadAgain) {
    EXPECT_EQ(fill_places("%1 over %2", {"a %2", "b"}), "a %2 over b");
    EXPECT_EQ(fill_places("%2 %1 %2", {"x", "y"}), "y x y");
    EXPECT_EQ(fill_places("100 % of %1, %3", {"x"}), "100 % of x, %3");
    EXPECT_EQ(fill_places("%", {"x"}), "%");
    EXPECT_EQ(fill_places("%0 %a", {"x"}), "%0 %a");
}

TEST(Printable, ControlCharactersAreShownAndTextIsKept) {
    EXPECT_EQ(printable("Überlänge 25 m"), "Überlänge 25 m");
    EXPECT_EQ(printable("\x1B[2J"), "\\x1B[2J");
    EXPECT_EQ(printable(std::string("a\0b\n\x7F", 5)), "a\\x00b\\x0A\\x7F");
    EXPECT_EQ(printable("\xC2\x9B"
                        "31m"),
              "\\xC2\\x9B31m");  // C1: one-character escape sequence introducer
    EXPECT_EQ(printable("\xC2\xA0"), "\xC2\xA0");
}

TEST(Printable, BrokenUtf8IsShown) {
    EXPECT_EQ(printable("\xC3"), "\\xC3");
    EXPECT_EQ(printable("\xC0\xAF"), "\\xC0\\xAF");                    // overlong
    EXPECT_EQ(printable("\xED\xA0\x80"), "\\xED\\xA0\\x80");           // surrogate
    EXPECT_EQ(printable("\xF4\x90\x80\x80"), "\\xF4\\x90\\x80\\x80");  // beyond U+10FFFF
    EXPECT_EQ(printable("\xF0\x9F\x94\x8C"), "\xF0\x9F\x94\x8C");
}

TEST(Error, SpeaksEnglishWithoutControlCharacters) {
    EXPECT_EQ((Error{"Cannot read %1.",
                     {"a\x1B"
                      "b"}})
                  .english(),
              "Cannot read a\\x1Bb.");
}

TEST(Text, ValuesArePrintedInTheReadersStyleAndNames) {
    Phrasebook book;
    book.numbers.decimal_mark = ',';
    book.name = [](const Ref& ref) { return "<" + ref.text + ">"; };
    book.translate = [](std::string_view pattern) { return pattern == "%1 of %2" ? "%2: %1" : std::string(pattern); };
    EXPECT_EQ(fill({"%1 of %2", {10580_Mbps, Ref{"link:1"}}}, book), "<link:1>: 10,58 Gb/s");
    EXPECT_EQ(print(Value{Percent{1040}}, book), "104,0 %");
    EXPECT_EQ(print(Value{std::vector<Ref>{{"a"}, {"b"}}}, book), "<a>, <b>");
}

TEST(Text, WithoutAPhrasebookItIsPlainEnglish) {
    EXPECT_EQ(
        fill({"%1: %2 of %3, %4 %5", {Ref{"device:1"}, 25_m, Percent{-5}, std::int64_t{-3}, std::string("x")}}, {}),
        "device:1: 25 m of -0.5 %, -3 x");
}

}  // namespace streamwright::test::text
