// What every reader of types owes any text whatever: a type that is written and read back equal, or one sentence.
#pragma once

#include "core/catalogue/catalogue.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace streamwright::catalogue {

/// One line, printable, not endless, ending as a sentence does, with the file named.
inline void expect_sentence(const base::Error& error, const std::string& where) {
    const auto words = error.english();
    EXPECT_NE(words.find(where), std::string::npos) << words;
    EXPECT_TRUE(words.ends_with('.')) << words;
    EXPECT_TRUE(std::all_of(words.begin(), words.end(), [](char c) { return static_cast<unsigned char>(c) >= 32; }));
    EXPECT_EQ(words, base::printable(words));
}

/// Whether the text was taken as a device type.
inline bool expect_total(const std::string& text) {
    const std::string where = "some.json";
    const auto device = read_device_type(text, where);
    if (device) {
        const auto again = read_device_type(write_device_type(*device), where);
        EXPECT_TRUE(again.ok() && *again == *device) << text.substr(0, 400);
    } else {
        expect_sentence(device.error(), where);
    }
    const auto cable = read_cable_type(text, where);
    if (cable) {
        const auto again = read_cable_type(write_cable_type(*cable), where);
        EXPECT_TRUE(again.ok() && *again == *cable) << text.substr(0, 400);
    } else {
        expect_sentence(cable.error(), where);
    }
    return device.ok();
}

}  // namespace streamwright::catalogue
