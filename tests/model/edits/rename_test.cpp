#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;

TEST(Rename, GivesEachKindItsName) {
    test::DesignBuilder b;
    const auto device = b.device(test::types::encoder(), "ENC-1");
    const auto cable = b.open_cable(test::types::hdmi(), {device, {"in"}});
    const auto stream = b.stream(device, 1_Mbps);
    const auto preset = b.preset("Lecture");
    const auto room = b.room("1", "Hall");
    const auto rack = b.rack("A");
    const auto vlan = b.vlan(1, "AV");
    const auto sheet = b.sheet();
    auto design = b.design;
    for (const NamedId id : {NamedId(device), NamedId(cable), NamedId(stream), NamedId(preset), NamedId(room),
                             NamedId(rack), NamedId(vlan), NamedId(sheet)})
        design = done(design, Rename{id, "Größe 3", {}});
    EXPECT_EQ(test::row_of<Device>(design, device).tag, "Größe 3");
    EXPECT_EQ(test::row_of<Cable>(design, cable).tag, "Größe 3");
    EXPECT_EQ(test::row_of<Stream>(design, stream).tag, "Größe 3");
    EXPECT_EQ(test::row_of<Preset>(design, preset).name, "Größe 3");
    EXPECT_EQ(test::row_of<Room>(design, room).name, "Größe 3");
    EXPECT_EQ(test::row_of<Rack>(design, rack).name, "Größe 3");
    EXPECT_EQ(test::row_of<Vlan>(design, vlan).name, "Größe 3");
    EXPECT_EQ(test::row_of<Sheet>(design, sheet).title, "Größe 3");
}

TEST(Rename, ANoteMayHaveLinesAndANameMayBeBorneTwice) {
    test::DesignBuilder b;
    const auto one = b.device(test::types::encoder(), "ENC-1");
    b.device(test::types::encoder(), "ENC-2");
    const auto design = done(b.design, Rename{one, "ENC-2", "first\nsecond"});
    EXPECT_EQ(test::row_of<Device>(design, one).note, "first\nsecond");
}

TEST(Rename, Refuses) {
    test::DesignBuilder b;
    const auto device = b.device(test::types::encoder(), "ENC-1");
    EXPECT_SAYS(refused(b.design, Rename{device, "", {}}), "must not be empty");
    EXPECT_SAYS(refused(b.design, Rename{device, "  ", {}}), "must not be empty");
    EXPECT_SAYS(refused(b.design, Rename{device, std::string(201, 'x'), {}}), "201 characters; at most 200");
    done(b.design, Rename{device, std::string(199, 'x') + "é", {}});
    EXPECT_SAYS(refused(b.design, Rename{device, "a\nb", {}}), "control character");
    EXPECT_SAYS(refused(b.design, Rename{device, "a\x7f", {}}), "control character");
    EXPECT_SAYS(refused(b.design, Rename{device, "a\xc2\x85", {}}), "control character");
    EXPECT_SAYS(refused(b.design, Rename{device, "a\xed\xa0\x80", {}}), "not UTF-8");
    EXPECT_SAYS(refused(b.design, Rename{b.rack("A"), {}, "note"}), "A has no note");
    EXPECT_SAYS(refused(b.design, Rename{CableId(8), "x", {}}), "no row");
}

}  // namespace
