// Reading and writing of types: ranges are written out, unknown keys travel, bad text is told in one sentence.
#include "core/catalogue/catalogue.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <fstream>
#include <string>

namespace streamwright::catalogue {

namespace read_catalogue_test {

TEST(ReadDeviceType, WritesOutARangeOfPorts) {
    const auto type = read_device_type(
        R"({"key":"panel","name":"Panel","maker":"Generic","kind":"patch_panel","ports":[
            {"repeat":{"from":9,"to":11},"key":"front-{n}","label":"Front {n}","signal":"copper","way":"through",
             "connector":"rj45","passes_to":"rear-{n}"},
            {"repeat":{"from":9,"to":11},"key":"rear-{n}","label":"Rear {n}","signal":"copper","way":"through",
             "connector":"rj45","passes_to":"front-{n}"}]})",
        "panel.json");
    ASSERT_TRUE(type.ok()) << type.error().english();
    ASSERT_EQ(type->ports.size(), 6U);
    EXPECT_EQ(type->ports[1].key.text, "front-10");
    EXPECT_EQ(type->ports[1].label, "Front 10");
    EXPECT_EQ(type->ports[1].passes_to, PortKey{"rear-10"});
    EXPECT_EQ(type->find_port({"rear-11"}), &type->ports[5]);
    EXPECT_EQ(type->find_port({"rear-12"}), nullptr);
}

TEST(ReadDeviceType, KeepsKeysItDoesNotKnowWhereTheyStood) {
    const std::string text =
        R"({"key":"t","name":"T","maker":"Generic","new_fact":{"a":[1,2]},"ports":[{"key":"in","signal":"video",)"
        R"("way":"in","connector":"hdmi","colour":"red"}],"size":{"mass_g":5,"girth_um":7}})";
    const auto type = read_device_type(text, "t.json");
    ASSERT_TRUE(type.ok()) << type.error().english();
    const auto written = write_device_type(*type);
    for (const char* kept : {R"("new_fact":{"a":[1,2]})", R"("colour":"red")", R"("girth_um":7)"})
        EXPECT_NE(written.find(kept), std::string::npos) << written;
    EXPECT_EQ(written.find('\n'), std::string::npos);
    const auto again = read_device_type(written, "t.json");
    ASSERT_TRUE(again.ok()) << again.error().english();
    EXPECT_EQ(*again, *type);
    EXPECT_EQ(write_device_type(*again), written);
}

TEST(ReadDeviceType, TellsBadTextInOneSentence) {
    const std::string deep = std::string(100000, '[') + std::string(100000, ']');
    for (const std::string& text :
         {std::string(), std::string("{"), std::string("[]"), std::string("\xff\xfe"), std::string("{\"key\":\"a\"} x"),
          std::string("null"), deep, std::string(std::size_t{2} << 20, ' ')}) {
        const auto type = read_device_type(text, "bad.json");
        ASSERT_FALSE(type.ok());
        const auto words = type.error().english();
        EXPECT_NE(words.find("bad.json"), std::string::npos) << words;
        EXPECT_LT(words.size(), 200U);
    }
}

void write_file(const std::filesystem::path& path, const std::string& text) {
    std::filesystem::create_directories(path.parent_path());
    std::ofstream(path) << text;
}

TEST(ReadCatalogue, SortsByKeyAndFindsTypes) {
    const test::TempFolder folder;
    for (const char* key : {"zeta", "alpha", "mid"})
        write_file(folder.path() / "devices" / (std::string(key) + ".json"),
                   R"({"key":")" + std::string(key) + R"(","name":"N","maker":"Generic"})");
    write_file(folder.path() / "devices" / "notes.txt", "not a type");
    write_file(folder.path() / "cables" / "lead.json",
               R"({"key":"lead","name":"L","maker":"Generic","plugs":["rj45"]})");
    const auto read = read_catalogue(folder.path());
    ASSERT_TRUE(read.ok()) << read.error().english();
    ASSERT_EQ(read->devices.size(), 3U);
    EXPECT_EQ(read->devices.front().key.text, "alpha");
    ASSERT_NE(read->device({"mid"}), nullptr);
    EXPECT_EQ(read->device({"mid"})->key.text, "mid");
    EXPECT_EQ(read->device({"none"}), nullptr);
    ASSERT_NE(read->cable({"lead"}), nullptr);
    EXPECT_EQ(read->cable({"zzz"}), nullptr);
}

TEST(ReadCatalogue, NamesTheFileItStumblesOver) {
    const test::TempFolder folder;
    write_file(folder.path() / "devices" / "good.json", R"({"key":"good","name":"N","maker":"Generic"})");
    write_file(folder.path() / "devices" / "other.json", R"({"key":"good","name":"N","maker":"Generic"})");
    std::filesystem::create_directories(folder.path() / "cables");
    const auto misnamed = read_catalogue(folder.path());
    ASSERT_FALSE(misnamed.ok());
    EXPECT_NE(misnamed.error().english().find("other.json"), std::string::npos);
    const auto missing = read_catalogue(folder.path() / "nowhere");
    ASSERT_FALSE(missing.ok());
    EXPECT_NE(missing.error().english().find("nowhere"), std::string::npos);
}

TEST(PortType, LettersAndKindsOfConnectors) {
    EXPECT_EQ(signal_letter(Signal::video), 'V');
    EXPECT_EQ(signal_letter(Signal::extender), 'X');
    EXPECT_EQ(signal_letter(Signal::copper), 'N');
    EXPECT_EQ(signal_letter(Signal::fibre), 'F');
    EXPECT_EQ(signal_letter(Signal::power), 'P');
    EXPECT_TRUE(is_network(Signal::fibre));
    EXPECT_FALSE(is_network(Signal::extender));
    EXPECT_TRUE(is_cage(Connector::qsfp_plus));
    EXPECT_FALSE(is_cage(Connector::rj45));
}

}  // namespace read_catalogue_test

}  // namespace streamwright::catalogue
