// Nothing of a design, a type or a file's name steers the terminal: not from a tag, a note, a title or a refusal.
#include "core/io/design_file.h"
#include "tests/app/cli/run_program.h"
#include "tests/support/demo_designs.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>

namespace streamwright::test::terminal_escapes {

// ESC [ 2 J clears the screen; U+009B is the same opening in one character (ECMA-48); BEL rings; U+0085 is a new line.
const std::string steering =
    "\x1b[2J\xC2\x9B"
    "31m\x07\xC2\x85\x7F\r\n";

/// No control character but the line ends that the program itself writes: ECMA-48 C0, delete and C1.
void expect_harmless(const std::string& text) {
    for (std::size_t at = 0; at < text.size(); ++at) {
        const auto octet = static_cast<unsigned char>(text[at]);
        EXPECT_TRUE(octet >= 0x20 || octet == '\n') << "at " << at << ": " << int{octet};
        EXPECT_NE(octet, 0x7F) << at;
        const auto next = at + 1 < text.size() ? static_cast<unsigned char>(text[at + 1]) : 0U;
        EXPECT_FALSE(octet == 0xC2 && next < 0xA0) << "at " << at;
    }
}

std::size_t lines_in(const std::string& text) {
    return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

/// The faulty demo with every word that a person may type made into one that steers.
model::Design steered() {
    auto design = faulty().design;
    const auto all = [](auto& table, auto&& change) {
        auto rows = table;
        for (auto row : rows) {
            change(row);
            table.put(row);
        }
    };
    all(design.devices, [](auto& row) { row.tag += steering; });
    all(design.cables, [](auto& row) { row.tag += steering; });
    all(design.streams, [](auto& row) { row.tag += steering; });
    all(design.presets, [](auto& row) { row.name += steering; });
    all(design.vlans, [](auto& row) { row.name += steering; });
    all(design.settings_table, [](auto& row) { row.title += steering; });
    return design;
}

TEST(TerminalEscapes, OfTagsAndNamesStayInTheFile) {
    const TempFolder folder;
    const auto file = (folder / "steered.streamwright").string();
    ASSERT_TRUE(io::save_design(file, steered()).ok());
    ASSERT_TRUE(io::open_design(file).ok()) << io::open_design(file).error().english();
    for (const auto& words : std::vector<std::vector<std::string>>{{"check", file},
                                                                   {"check", file, "--json"},
                                                                   {"loads", file},
                                                                   {"loads", file, "--json"},
                                                                   {"loads", file, "--worst", "--json"}}) {
        const auto ran = run_program(words);
        EXPECT_NE(ran.exit_code, 2) << ran.err;
        expect_harmless(ran.out);
        expect_harmless(ran.err);
    }
    const auto clean = run_program({"check", demo("faulty.streamwright")});
    EXPECT_EQ(lines_in(run_program({"check", file}).out), lines_in(clean.out)) << "a new line in a tag makes none here";
}

TEST(TerminalEscapes, JsonStillHoldsTheValues) {
    const TempFolder folder;
    const auto file = (folder / "steered.streamwright").string();
    ASSERT_TRUE(io::save_design(file, steered()).ok());
    const auto top = nlohmann::json::parse(run_program({"check", file, "--json"}).out);
    EXPECT_TRUE(top.at("design").get<std::string>().ends_with(steering));
}

TEST(TerminalEscapes, OfRefusedInputStayOutOfTheSentence) {
    const TempFolder folder;
    const auto named = (folder / ("odd" + steering + ".streamwright")).string();
    std::ofstream(named) << "{\"format\":\"streamwright\",\"version\":1,\"vlans\":[{\"id\":\"000000000001\","
                            "\"purpose\":\"\\u001b[2J\\u009b31m\\u0007\\n\"}]}";
    for (const auto& words :
         std::vector<std::vector<std::string>>{{"check", named},
                                               {"loads", named},
                                               {"check", named + "none"},
                                               {"check", "--types", named},
                                               {"check", "--explain", steering},
                                               {"check", "--" + steering},
                                               {"loads", demo("huddle-room.streamwright"), "--preset", steering},
                                               {"deliver", named, "--to", named}}) {
        const auto ran = run_program(words);
        EXPECT_EQ(ran.exit_code, 2);
        EXPECT_EQ(ran.out, "");
        EXPECT_EQ(lines_in(ran.err), 1U) << ran.err;
        expect_harmless(ran.err);
    }
}

TEST(TerminalEscapes, OfTypesStayInTheirFiles) {
    const TempFolder folder;
    std::ofstream(folder / "a.json") << R"({"key":"a","name":"A","maker":"Generic","kind":"\u001b[2J\u009b\u007f"})";
    std::ofstream(folder / "b.json") << R"({"key":"b","name":"B","maker":"Generic","\u001b[2J\u009b\u007f":1})";
    for (const auto& words : std::vector<std::vector<std::string>>{
             {"check", "--types", folder.path().string()}, {"check", "--types", folder.path().string(), "--json"}}) {
        const auto ran = run_program(words);
        EXPECT_EQ(ran.exit_code, 1);
        expect_harmless(ran.out);
    }
}

}  // namespace streamwright::test::terminal_escapes
