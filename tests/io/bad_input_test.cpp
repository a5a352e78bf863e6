// Bad files: each refused in one sentence with file, place and cure; nothing crashes and nothing is half loaded.
#include "core/io/clipping_json.h"
#include "core/io/design_file.h"
#include "core/io/design_json.h"
#include "tests/io/sample_design.h"
#include "tests/support/design_builder.h"
#include "tests/support/temp_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>

namespace {

using namespace streamwright;
using namespace streamwright::io;
using testing::AllOf, testing::HasSubstr;

std::string why_refused(const std::string& text) {
    const auto design = read_design(text, "room.streamwright");
    EXPECT_FALSE(design.ok()) << text.substr(0, 300);
    const auto sentence = design.ok() ? std::string() : design.error().english();
    EXPECT_EQ(sentence.find('\n'), std::string::npos);
    return sentence;
}

std::string file_with(const std::string& tables) {
    return "{\n\"format\":\"streamwright\",\n\"version\":1,\n" + tables + "\n}\n";
}

TEST(BadInput, ForeignFiles) {
    for (const char* text : {"PK\x03\x04", "hello", "[1,2]", "7", "{\"format\":\"other\",\"version\":1}", "{}", "null",
                             "<svg/>", "{\"version\":1}", "\xff\xfe"})
        EXPECT_THAT(why_refused(text),
                    AllOf(HasSubstr("room.streamwright is not a Streamwright design"), HasSubstr("open another file")));
}

TEST(BadInput, EmptyFiles) {
    EXPECT_THAT(why_refused(""), HasSubstr("room.streamwright is empty"));
    EXPECT_THAT(why_refused(" \n\t"), HasSubstr("room.streamwright is empty"));
}

TEST(BadInput, NewerVersion) {
    EXPECT_THAT(why_refused("{\"format\":\"streamwright\",\"version\":2}"),
                AllOf(HasSubstr("version 2"), HasSubstr("reads up to 1"), HasSubstr("update the program")));
    EXPECT_THAT(why_refused("{\"format\":\"streamwright\",\"version\":99999999999999999999}"), HasSubstr("version"));
    EXPECT_THAT(why_refused("{\"format\":\"streamwright\",\"version\":\"1\"}"), HasSubstr("which version"));
    EXPECT_THAT(why_refused("{\"format\":\"streamwright\",\"version\":0}"), HasSubstr("which version"));
}

TEST(BadInput, DoubledIdsWithTheLine) {
    const auto text =
        file_with("\"rooms\":[\n{\"id\":\"000000000001\"},\n{\"id\":\"000000000002\"},\n{\"id\":\"000000000001\"}\n]");
    EXPECT_THAT(why_refused(text), AllOf(HasSubstr("room.streamwright, line 7, rooms 000000000001"), HasSubstr("twice"),
                                         HasSubstr("remove one")));
    const auto keys = file_with("\"rooms\":[\n{\"id\":\"000000000001\",\"id\":\"000000000002\"}\n]");
    EXPECT_THAT(why_refused(keys), HasSubstr("names \"id\" twice"));
    EXPECT_THAT(why_refused(file_with("\"settings\":[\n{},\n{\"title\":\"x\"}\n]")), HasSubstr("line 6, settings #2"));
}

TEST(BadInput, DanglingReferencesWithTheLine) {
    const auto text =
        file_with("\"rooms\":[],\n\"racks\":[\n{\"id\":\"000000000001\",\"name\":\"A\",\"room\":\"000000000009\"}\n]");
    EXPECT_THAT(why_refused(text), AllOf(HasSubstr("line 6, racks 000000000001"),
                                         HasSubstr("Rack A names the room 000000000009"), HasSubstr("Correct")));
}

TEST(BadInput, BadValuesWithTheLineAndTheField) {
    const auto room = [](const std::string& fields) {
        return why_refused(file_with("\"vlans\":[\n{\"id\":\"000000000001\"," + fields + "}\n]"));
    };
    EXPECT_THAT(room("\"vid\":\"x\""), HasSubstr("line 5, vlans 000000000001: vid must be a whole number"));
    EXPECT_THAT(room("\"vid\":1.5"), HasSubstr("whole number"));
    EXPECT_THAT(room("\"vid\":5000000000"), HasSubstr("too large"));
    EXPECT_THAT(room("\"vid\":18446744073709551615"), HasSubstr("too large"));
    EXPECT_THAT(room("\"vid\":1e999"), HasSubstr("too large"));
    EXPECT_THAT(room("\"vid\":4095"), HasSubstr("from 1 to 4094; 4095 was given"));
    EXPECT_THAT(room("\"name\":5"), HasSubstr("name must be a text"));
    EXPECT_THAT(room("\"purpose\":\"fun\""), HasSubstr("must be one of av, control, corporate, wireless"));
    EXPECT_THAT(room("\"subnet\":\"10.0.0.0/33\""), HasSubstr("not a subnet"));
    EXPECT_THAT(room("\"gateway\":\"10.0.0.256\""), HasSubstr("not an IPv4 address"));
    EXPECT_THAT(why_refused(file_with("\"rooms\":[\n{\"name\":\"x\"}\n]")),
                HasSubstr("line 5, rooms #1: id is missing"));
    EXPECT_THAT(why_refused(file_with("\"rooms\":[{\"id\":\"short\"}]")), HasSubstr("not an id of 12 characters"));
    EXPECT_THAT(why_refused(file_with("\"rooms\":{}")), HasSubstr("table rooms must be a list"));
    EXPECT_THAT(why_refused(file_with("\"rooms\":[5]")), HasSubstr("must be an object"));
    EXPECT_THAT(why_refused(file_with("\"device_types\":[\n{\"key\":\"a\",\"ports\":7}\n]")),
                HasSubstr("line 5, device_types a"));
    EXPECT_THAT(
        why_refused(file_with("\"sheets\":[{\"id\":\"000000000001\"}],\"cable_lines\":[{\"sheet\":\"000000000001\","
                              "\"cable\":\"000000000001\",\"bends\":[{\"x_um\":1},{\"x_um\":\"a\"}]}]")),
        HasSubstr("bends[1].x_um must be a whole number"));
}

TEST(BadInput, DeepAndWideTextIsRefusedBeforeItHurts) {
    EXPECT_THAT(why_refused(std::string(100000, '[')), HasSubstr("nests deeper than 64"));
    EXPECT_THAT(why_refused(file_with("\"x\":" + std::string(70, '[') + std::string(70, ']'))),
                HasSubstr("nests deeper"));
    std::string wide = "{\"format\":\"streamwright\",\"version\":1";
    for (int i = 0; i < 300; ++i) wide += ",\"k" + std::to_string(i) + "\":0";
    EXPECT_THAT(why_refused(wide + "}"), HasSubstr("more than 256 fields"));
}

TEST(BadInput, OversizeIsRefusedBeforeParsing) {
    const std::string text(size_limit + 1, ' ');
    EXPECT_THAT(why_refused(text), AllOf(HasSubstr("larger than 64 MiB"), HasSubstr("right file")));
}

TEST(BadInput, TwoHundredMegabytesOfNonsenseAreRefusedUnread) {
    const std::string nonsense(std::size_t{200} << 20U, '\x93');
    EXPECT_THAT(why_refused(nonsense), HasSubstr("larger than 64 MiB"));
    const auto pasted = read_clipping(nonsense);
    ASSERT_FALSE(pasted.ok());
    EXPECT_EQ(pasted.error().english(), "The clipboard holds no devices to paste; copy some on a sheet first.");
}

TEST(BadInput, PastedGarbageGivesTheOneSentence) {
    const std::string deep = R"({"format":"streamwright","version":1,"devices":)" + std::string(100000, '[');
    for (const std::string& text : {deep, std::string(100000, '{'), std::string(1000, '\0'), std::string("\x1b[2J\x07"),
                                    std::string("ENC-001\tENC-002\nENC-003\n"), std::string("\xEF\xBB\xBF{}"),
                                    file_with("\"devices\":[]"), file_with("\"devices\":[1e999]"),
                                    file_with("\"devices\":[{\"id\":\"000000000001\",\"type\":\"nowhere\"}]")}) {
        const auto pasted = read_clipping(text);
        ASSERT_FALSE(pasted.ok()) << text.substr(0, 100);
        EXPECT_EQ(pasted.error().english(), "The clipboard holds no devices to paste; copy some on a sheet first.");
    }
}

TEST(BadInput, ControlCharactersOfAFileNeverReachTheTerminal) {
    const auto sentence = why_refused(file_with("\"vlans\":[{\"id\":\"000000000001\",\"purpose\":\"\\u001b[31m\"}]"));
    EXPECT_EQ(sentence.find('\x1b'), std::string::npos);
}

TEST(BadInput, TruncatedAnywhereIsRefused) {
    test::DesignBuilder b;
    const auto display = b.device(test::types::display(), "DSP-1");
    b.cable(test::types::hdmi(), {b.device(test::types::source(), "SRC-\u00e9"), {"out"}}, {display, {"in"}});
    const auto text = write_design(b.design);
    for (std::size_t length = 0; length + 2 < text.size(); ++length) {
        const auto design = read_design(text.substr(0, length), "f");
        ASSERT_FALSE(design.ok()) << length;
        if (length > 40) {
            ASSERT_THAT(design.error().english(), HasSubstr("cut short")) << length;
        }
    }
}

TEST(BadInput, StreamsThatCannotBePackedNameTheField) {
    const auto why = [](const std::string& fields) {
        return why_refused(
            file_with("\"device_types\":[{\"key\":\"t\",\"name\":\"T\",\"maker\":\"Generic\"}],"
                      "\"devices\":[{\"id\":\"000000000003\",\"type\":\"t\"}],\n\"streams\":[\n"
                      "{\"id\":\"000000000001\",\"encoder\":\"000000000003\"," +
                      fields + "}\n]"));
    };
    EXPECT_THAT(why("\"picture\":{\"format\":\"1080p0\"}"), HasSubstr("picture.format"));
    EXPECT_THAT(why("\"picture\":{\"format\":\"15360x8640@1000\"}"), HasSubstr("picture.format"));
    EXPECT_THAT(why("\"picture\":{\"coding\":\"JPEG XS\"}"), HasSubstr("bits per pixel"));
    EXPECT_THAT(why("\"picture\":{\"coding\":\"other\"}"), HasSubstr("picture.coding"));
    EXPECT_THAT(why("\"picture\":{\"udp_limit_octets\":1500}"), HasSubstr("datagram"));
    EXPECT_THAT(why("\"picture\":{},\"payload_rate_bps\":800000000"), HasSubstr("payload rate"));
    EXPECT_THAT(why("\"kind\":\"audio\",\"sound\":{\"packet_time\":\"5 ms\"}"), HasSubstr("sound.packet_time"));
    EXPECT_THAT(why("\"kind\":\"audio\",\"sound\":{\"channels\":0}"), HasSubstr("channel"));
    EXPECT_THAT(why("\"kind\":\"audio\",\"sound\":{\"channels\":64}"), HasSubstr("64 channels"));  // E17
    EXPECT_THAT(why("\"kind\":\"audio\",\"sound\":{\"sampling_hz\":0}"), HasSubstr("sampling rate"));
    EXPECT_THAT(why("\"note\":\"\""), HasSubstr("payload rate"));
}

TEST(BadInput, FilesThatCannotBeRead) {
    test::TempFolder folder;
    const auto why = [](const std::filesystem::path& path) { return open_design(path).error().english(); };
    EXPECT_THAT(why(folder / "none.streamwright"),
                AllOf(HasSubstr("none.streamwright cannot be read"), HasSubstr("Check its name")));
    EXPECT_THAT(why(folder.path()), HasSubstr("is not a file but a folder"));
    EXPECT_THAT(why("/dev/null"), HasSubstr("is not a file"));
    std::ofstream(folder / "huge.streamwright").put('x');
    std::filesystem::resize_file(folder / "huge.streamwright", size_limit + 1);
    EXPECT_THAT(why(folder / "huge.streamwright"), HasSubstr("larger than 64 MiB"));
}

}  // namespace
