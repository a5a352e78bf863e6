// Inputs that readers of types once did not bear, or might not: each file in found/ is replayed. A new one is added by
// putting the bytes there.
#include "tests/catalogue/expect_total.h"

#include <filesystem>
#include <fstream>
#include <iterator>

namespace streamwright::catalogue {

namespace found_test {

std::string bytes_of(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

std::string why_refused(const std::string& name) {
    const auto type = read_device_type(bytes_of(STREAMWRIGHT_SOURCE_DIR "/tests/catalogue/found/" + name), name);
    EXPECT_FALSE(type.ok()) << name;
    return type.ok() ? std::string() : type.error().english();
}

TEST(FoundTypes, EachIsReadSoundOrRefusedInOneSentence) {
    int files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(STREAMWRIGHT_SOURCE_DIR "/tests/catalogue/found")) {
        SCOPED_TRACE(entry.path().filename().string());
        expect_total(bytes_of(entry.path()));
        ++files;
    }
    EXPECT_GE(files, 12);
}

TEST(FoundTypes, TheSentenceSaysWhatIsWrong) {
    EXPECT_NE(why_refused("number-out-of-range.json").find("a number that is too large; correct it"),
              std::string::npos);
    EXPECT_NE(why_refused("brackets-without-end.json").find("nests deeper than 64 levels"), std::string::npos);
    EXPECT_NE(why_refused("braces-without-end.json").find("nests deeper than 64 levels"), std::string::npos);
    EXPECT_NE(why_refused("unknown-very-deep.json").find("nests deeper than 64 levels"), std::string::npos);
    EXPECT_NE(why_refused("key-twice.json").find("names \"mass_g\" twice in one object; remove one"),
              std::string::npos);
}

TEST(FoundTypes, AHundredThousandBracketsGiveTheSameSentence) {
    for (const std::string& text : {std::string(100000, '['), std::string(100000, '[') + std::string(100000, ']')}) {
        const auto type = read_device_type(text, "deep.json");
        ASSERT_FALSE(type.ok());
        EXPECT_EQ(type.error().english(),
                  "deep.json nests deeper than 64 levels and a type needs five; replace it by a type file.");
        EXPECT_EQ(read_cable_type(text, "deep.json").error(), type.error());
    }
}

}  // namespace found_test

}  // namespace streamwright::catalogue
