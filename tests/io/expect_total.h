// What every reader of files owes any bytes whatever: a sound design that is written and read back equal, or one
// sentence.
#pragma once

#include "core/io/design_json.h"
#include "core/model/integrity.h"

#include <gtest/gtest.h>

#include <string>

namespace streamwright::test {

/// One line, printable, ending as a sentence does.
inline void expect_sentence(const base::Error& error) {
    const auto words = error.english();
    EXPECT_GT(words.size(), 20U) << words;
    EXPECT_TRUE(words.ends_with('.')) << words;
    EXPECT_EQ(words, base::printable(words));
    EXPECT_EQ(words.find('\n'), std::string::npos) << words;
}

inline void expect_sound(const model::Design& design) {
    EXPECT_TRUE(model::broken_bonds(design).empty());
    const auto again = io::read_design(io::write_design(design), "again");
    EXPECT_TRUE(again.ok()) << again.error().english();
    EXPECT_TRUE(!again.ok() || *again == design) << "something was lost on the way through a file";
}

/// Whether the bytes were taken.
inline bool expect_total(const std::string& bytes) {
    const auto design = io::read_design(bytes, "some.streamwright");
    if (design) {
        expect_sound(*design);
        return true;
    }
    expect_sentence(design.error());
    EXPECT_NE(design.error().english().find("some.streamwright"), std::string::npos) << design.error().english();
    return false;
}

}  // namespace streamwright::test
