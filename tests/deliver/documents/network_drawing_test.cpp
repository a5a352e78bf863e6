// The network drawing: its figures by hand arithmetic from the worked examples N-7 and N-8 (RFC 4541: streams go toward
// the querier) and field cases, blocked links by IEEE 802.1Q; layers, sheets and marks; nothing outside the paper.
#include "core/deliver/documents/network_words.h"
#include "core/deliver/drawing/network_view.h"
#include "core/layout/lines.h"
#include "tests/deliver/small_venue.h"
#include "tests/graph/switched_room.h"
#include "tests/support/campus.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <set>

namespace streamwright::test::network_drawing {

using deliver::Fragment;
using deliver::PagePart;
using deliver::TextLine;
using testing::Contains;
using testing::HasSubstr;
using testing::Not;

std::vector<std::string> texts(const Fragment& fragment) {
    std::vector<std::string> found;
    for (const auto& shape : fragment.shapes)
        if (const auto* line = std::get_if<TextLine>(&shape)) found.push_back(line->text);
    return found;
}

struct Drawn {
    explicit Drawn(const model::Design& design) : delivered(design), content(delivered.document("network-drawing")) {}

    const PagePart& page(std::size_t index) const { return std::get<PagePart>(content.parts.at(index)); }
    std::vector<std::string> all_texts() const {
        std::vector<std::string> found;
        for (std::size_t i = 0; i < content.parts.size(); ++i)
            for (const auto& fragment : page(i).fragments)
                for (auto& text : texts(fragment)) found.push_back(std::move(text));
        return found;
    }
    /// The label or plate that says the tag in bold first.
    const Fragment& of(const std::string& tag) const {
        for (std::size_t i = 0; i < content.parts.size(); ++i)
            for (const auto& fragment : page(i).fragments) {
                const auto words = texts(fragment);
                if (!fragment.subject.empty() && !words.empty() && std::ranges::find(words, tag) != words.end() &&
                    !fragment.subject.starts_with("cable:"))
                    return fragment;
            }
        throw std::runtime_error("not drawn: " + tag);
    }
    std::vector<const Fragment*> links() const {
        std::vector<const Fragment*> found;
        for (std::size_t i = 0; i < content.parts.size(); ++i)
            for (const auto& fragment : page(i).fragments)
                if (fragment.subject.starts_with("cable:")) found.push_back(&fragment);
        return found;
    }

    Delivered delivered;
    deliver::Content content;
};

/// Rate and percentage that follow a word of the row in a label; the rows of a direction follow its name.
struct Figures {
    std::string preset, preset_percent, worst, worst_percent;
};
Figures figures(const Fragment& link, const std::string& to) {
    const auto words = texts(link);
    auto at = std::ranges::find(words, to);
    const auto after = [&](const std::string& word) {
        at = std::find(at, words.end(), word);
        return std::pair(*(at + 1), *(at + 2));
    };
    const auto [preset, preset_percent] = after("preset");
    const auto [worst, worst_percent] = after("worst");
    return {preset, preset_percent, worst, worst_percent};
}

SwitchedRoom leaf_and_spine(const std::string& querier_at) {
    SwitchedRoom room;
    room.chain({"leaf", "spine"});
    for (int i = 1; i <= 12; ++i) room.add_encoder("E" + std::to_string(i), "leaf", 850);
    room.querier(querier_at);
    room.add_decoder("D", "spine");
    room.show("E3", "D");
    return room;
}

// N-7: 12 sources of 850 Mb/s on a leaf, 1 wanted remotely, querier on the spine: 12 x 850 = 10,200 Mb/s, 102 % of 10
// Gb/s.
TEST(NetworkDrawing, N7IsOverfullAndSaysSoInWords) {
    const Drawn drawn(leaf_and_spine("spine").b.design);
    ASSERT_EQ(drawn.links().size(), 1U);
    const auto up = figures(*drawn.links().front(), "spine"), down = figures(*drawn.links().front(), "leaf");
    EXPECT_EQ(up.preset, "10.2 Gb/s");
    EXPECT_EQ(up.preset_percent, "102.0 %");
    EXPECT_EQ(up.worst, "10.2 Gb/s");
    EXPECT_EQ(down.preset, "0 b/s");
    EXPECT_EQ(down.worst, "0 b/s");
    EXPECT_THAT(texts(*drawn.links().front()), Contains("overfull"));
}

// N-8: the same with the querier on the leaf: the 850 Mb/s wanted remotely, 8.5 % of 10 Gb/s; nothing more can be asked
// by one decoder.
TEST(NetworkDrawing, N8CarriesWhatIsWantedOnly) {
    const Drawn drawn(leaf_and_spine("leaf").b.design);
    const auto up = figures(*drawn.links().front(), "spine");
    EXPECT_EQ(up.preset, "850 Mb/s");
    EXPECT_EQ(up.preset_percent, "8.5 %");
    EXPECT_EQ(up.worst, "850 Mb/s");
    EXPECT_THAT(texts(*drawn.links().front()), Not(Contains("overfull")));
}

// 12 decoders on the spine could be shown 12 x 850 Mb/s; with four sources agreed it is 3.4 Gb/s, 34 % of 10 Gb/s.
TEST(NetworkDrawing, AnAgreementStandsInTheNotesAndLimitsTheWorstCase) {
    auto room = leaf_and_spine("leaf");
    for (int i = 2; i <= 12; ++i) room.add_decoder("D" + std::to_string(i), "spine");
    EXPECT_EQ(figures(*Drawn(room.b.design).links().front(), "spine").worst, "10.2 Gb/s");
    const auto link = Drawn(room.b.design).links().front()->subject;
    for (const auto& cable : room.b.design.cables)
        if (link == "cable:" + cable.id.text())
            room.b.change<model::Cable>(cable.id, [](auto& row) { row.agreed = {4, "IT", "2026-11-20"}; });
    const Drawn drawn(room.b.design);
    EXPECT_THAT(texts(*drawn.links().front()), Contains("agreed"));
    EXPECT_THAT(texts(*drawn.links().front()), Contains("3.4 Gb/s"));
    EXPECT_THAT(texts(*drawn.links().front()), Contains("34.0 %"));
    EXPECT_THAT(drawn.all_texts(), Contains(HasSubstr("at most 4 sources, IT, 2026-11-20.")));
}

TEST(NetworkDrawing, AWorstCaseNotYetComputedIsNotKnown) {
    const Delivered delivered(leaf_and_spine("leaf").b.design);
    auto facts = delivered.analysis.facts;
    facts.deferred_known = false;
    const auto view = deliver::network_view(facts, {});
    ASSERT_EQ(view.links.size(), 1U);
    EXPECT_EQ(view.links.front().to_b.worst.rate, "not known");
    EXPECT_EQ(view.links.front().to_b.preset.rate, "850 Mb/s");
}

TEST(NetworkDrawing, PlatesSayRootQuerierVlanAndWhatIsBehindThem) {
    auto room = leaf_and_spine("spine");
    room.b.change<model::Device>(room.devices.at("spine"), [](auto& row) { row.bridging.priority = 4096; });
    const Drawn drawn(room.b.design);
    EXPECT_THAT(texts(drawn.of("spine")), Contains("Root"));
    EXPECT_THAT(texts(drawn.of("spine")), Contains("Querier"));
    EXPECT_THAT(texts(drawn.of("spine")), Contains("priority 4096, VLAN 30"));
    EXPECT_THAT(texts(drawn.of("spine")), Contains("1 decoder"));
    EXPECT_THAT(texts(drawn.of("leaf")), Contains("12 encoders"));
    EXPECT_THAT(texts(drawn.of("leaf")), Not(Contains("Root")));
}

// IEEE 802.1Q: a ring of three has one link too many; with A as root and equal costs the one between B and C is
// blocked, at C, whose bridge address is the greater.
TEST(NetworkDrawing, ABlockedLinkIsDrawnOnceWithTheWordAndThePlace) {
    SwitchedRoom room;
    room.chain({"A", "B", "C"});
    room.join("A", "C");
    std::uint64_t address = 0x00005E00530AULL;
    for (const char* tag : {"A", "B", "C"})
        room.b.change<model::Device>(room.devices.at(tag),
                                     [&](auto& row) { row.bridging.address = base::MacAddress{address++}; });
    room.b.change<model::Device>(room.devices.at("A"), [](auto& row) { row.bridging.priority = 4096; });
    const Drawn drawn(room.b.design);
    EXPECT_EQ(drawn.links().size(), 3U);
    const auto blocked = std::ranges::count_if(
        drawn.links(), [](const Fragment* link) { return std::ranges::count(texts(*link), "blocked at C") == 1; });
    EXPECT_EQ(blocked, 1);
    EXPECT_THAT(drawn.all_texts(), Not(Contains(HasSubstr("also ")))) << "led to the other end, so not told there";
}

using Boxes = std::vector<deliver::Box>;

/// Plates and the grounds of labels, as drawn.
Boxes grounds(const Fragment& fragment) {
    Boxes found;
    for (const auto& shape : fragment.shapes)
        if (const auto* path = std::get_if<deliver::Path>(&shape);
            path && (path->role == deliver::Role::plate || path->role == deliver::Role::tag_ground))
            found.push_back({path->points.at(0), path->points.at(2).x - path->points.at(0).x,
                             path->points.at(2).y - path->points.at(0).y});
    return found;
}

/// The strokes of a link: what is drawn before its label.
std::vector<deliver::Path> strokes(const Fragment& link) {
    std::vector<deliver::Path> found;
    for (const auto& shape : link.shapes) {
        const auto* path = std::get_if<deliver::Path>(&shape);
        if (path && path->role == deliver::Role::tag_ground) break;
        if (path && !path->closed) found.push_back(*path);
    }
    return found;
}

bool is_pointed(const Fragment& link) {
    return std::ranges::any_of(link.shapes, [](const auto& shape) {
        const auto* path = std::get_if<deliver::Path>(&shape);
        return path && path->role == deliver::Role::tag_ground && path->points.size() > 4;
    });
}

/// No stroke of a link passes through a plate or the label of another link.
void expect_clear(const PagePart& page) {
    Boxes plates;
    for (const auto& fragment : page.fragments)
        if (fragment.subject.starts_with("device:"))
            for (const auto& box : grounds(fragment)) plates.push_back(box);
    for (const auto& link : page.fragments) {
        if (!link.subject.starts_with("cable:")) continue;
        auto boxes = plates;
        for (const auto& other : page.fragments)
            if (other.subject.starts_with("cable:") && &other != &link)
                for (const auto& box : grounds(other)) boxes.push_back(box);
        for (const auto& path : strokes(link)) EXPECT_FALSE(layout::line_meets(path.points, boxes)) << link.subject;
    }
}

void hang(SwitchedRoom& room, const std::string& above, const std::string& tag) {
    room.add_switch(tag);
    room.join(above, tag);
}

TEST(NetworkDrawing, ALinkThatClosesARingIsLedToItsOtherSwitch) {
    // A and B, and each of C to E with a link to both: seven links, of which a tree needs four.
    SwitchedRoom room;
    room.chain({"A", "B"});
    for (const char* tag : {"C", "D", "E"}) hang(room, "A", tag), room.join("B", tag);
    const Drawn drawn(room.b.design);
    ASSERT_EQ(drawn.content.parts.size(), 1U);
    EXPECT_EQ(drawn.links().size(), 7U);
    for (const auto* link : drawn.links()) EXPECT_FALSE(is_pointed(*link)) << texts(*link).front();
    EXPECT_THAT(drawn.all_texts(), Not(Contains(HasSubstr("also "))));
    expect_clear(drawn.page(0));
}

TEST(NetworkDrawing, RingsOfAnyShapeKeepClearOfPlatesAndLabels) {
    std::mt19937 draw(20);
    int pointed = 0, links = 0;
    for (int round = 0; round < 12; ++round) {
        SwitchedRoom room;
        std::vector<std::string> tags;
        for (int i = 0; i < 9; ++i) tags.push_back(std::string(1, static_cast<char>('A' + i)));
        room.chain({tags[0], tags[1]});
        for (std::size_t i = 2; i < tags.size(); ++i) hang(room, tags[draw() % i], tags[i]);
        for (int extra = 0; extra < 4; ++extra) {
            const auto a = draw() % tags.size(), b = draw() % tags.size();
            if (a != b) room.join(tags[a], tags[b]);
        }
        const Drawn drawn(room.b.design);
        for (std::size_t i = 0; i < drawn.content.parts.size(); ++i) expect_clear(drawn.page(i));
        for (const auto* link : drawn.links()) ++links, pointed += is_pointed(*link);
    }
    EXPECT_GE(links, 12 * 8);
    EXPECT_LE(pointed, 12) << "of some forty; what is left closes its ring over two sheets or finds no room";
}

TEST(NetworkDrawing, ARingOverTwoSheetsKeepsItsPointAndIsToldAtBothEnds) {
    // Seven switches below each of B and C, of which a sheet holds eight: the ring is closed between two of them.
    SwitchedRoom room;
    room.chain({"A", "B"});
    hang(room, "A", "C");
    for (int i = 1; i <= 7; ++i) {
        hang(room, "B", "B" + std::to_string(i));
        hang(room, "C", "C" + std::to_string(i));
    }
    room.join("B7", "C7");
    const Drawn drawn(room.b.design);
    ASSERT_GT(drawn.content.parts.size(), 1U);
    EXPECT_EQ(std::ranges::count_if(drawn.links(), [](const auto* link) { return is_pointed(*link); }), 1);
    EXPECT_THAT(drawn.all_texts(), Contains(HasSubstr("also ")));
}

TEST(NetworkDrawing, AnAggregationGroupIsOneLinkOfItsMembersSpeed) {
    SwitchedRoom room;
    room.chain({"A", "B"});
    room.join("A", "B");
    for (const char* tag : {"A", "B"})
        for (const char* port : {"1", "2"})
            room.b.port(port_of(room.devices.at(tag), port), [](auto& row) { row.aggregate = "trunk"; });
    const Drawn drawn(room.b.design);
    ASSERT_EQ(drawn.links().size(), 1U);
    EXPECT_THAT(texts(*drawn.links().front()), Contains(HasSubstr("2 x 10 Gb/s")));
    EXPECT_THAT(texts(*drawn.links().front()), Contains("ports 1, 2"));
}

TEST(NetworkDrawing, WithoutASwitchASheetSaysSo) {
    const Drawn drawn(model::Design{});
    ASSERT_EQ(drawn.content.parts.size(), 1U);
    EXPECT_THAT(drawn.all_texts(), Contains(HasSubstr("no switch")));
}

TEST(NetworkDrawing, EverySwitchAndEveryTrunkOfACampusIsOnSomeSheetAndNothingLeavesThePaper) {
    const auto design = campus(1000, 1, CampusParts::network_only);  // 40 access switches, 4 to gather them, a core
    const Drawn drawn(design);
    EXPECT_GT(drawn.content.parts.size(), 1U);
    std::set<std::string> plates, links;
    for (std::size_t i = 0; i < drawn.content.parts.size(); ++i) {
        const auto& page = drawn.page(i);
        const deliver::Box paper{{}, page.width, page.height};
        for (const auto& fragment : page.fragments) {
            if (fragment.shapes.empty()) continue;
            (fragment.subject.starts_with("device:") ? plates : links).insert(fragment.subject);
            const auto& at = fragment.bounds.at;
            EXPECT_TRUE(paper.holds(at) && paper.holds({at.x + fragment.bounds.width, at.y + fragment.bounds.height}));
        }
    }
    links.erase("");
    EXPECT_EQ(plates.size(), 45U);
    EXPECT_EQ(links.size(), 44U);
}

TEST(NetworkDrawing, LabelsAndPlatesKeepClearOfEachOther) {
    const Drawn drawn(campus(300, 1, CampusParts::network_only));
    for (std::size_t i = 0; i < drawn.content.parts.size(); ++i) {
        Boxes plates;
        for (const auto& fragment : drawn.page(i).fragments)
            for (const auto& box : grounds(fragment)) plates.push_back(box);
        for (std::size_t a = 0; a < plates.size(); ++a)
            for (std::size_t b = a + 1; b < plates.size(); ++b) EXPECT_FALSE(plates[a].meets(plates[b]));
    }
}

}  // namespace streamwright::test::network_drawing
