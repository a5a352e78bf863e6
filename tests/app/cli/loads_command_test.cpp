// loads: the JSON form, presets, worst case; arithmetic checked against plain sums, never against the same code.
#include "tests/app/cli/run_program.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <map>
#include <set>

namespace streamwright::test::loads_command {

using nlohmann::json;

TEST(LoadsCommand, JsonHasThePromisedForm) {
    const auto ran = run_program({"loads", demo("ferrow-quay.streamwright"), "--json"});
    ASSERT_EQ(ran.exit_code, 0) << ran.err;
    const auto top = json::parse(ran.out);
    ASSERT_FALSE(top.at("arcs").empty());
    for (const auto& arc : top.at("arcs")) {
        for (const char* key : {"link", "from", "to", "capacity_bps", "load_bps", "worst_bps", "streams"})
            EXPECT_TRUE(arc.contains(key)) << key;
        EXPECT_FALSE(arc.contains("terms"));
        EXPECT_EQ(arc.at("load_bps") == 0, arc.at("streams").empty());
        EXPECT_GE(arc.at("worst_bps").get<long long>(), arc.at("load_bps").get<long long>());
    }
    for (const auto& vlan : top.at("vlans"))
        for (const char* key : {"id", "root", "queriers", "blocked"}) EXPECT_TRUE(vlan.contains(key)) << key;
    EXPECT_EQ(run_program({"loads", demo("ferrow-quay.streamwright"), "--json"}).out, ran.out);
}

/// Wire rate of a stream of the file, in bits per second: RTP 12 (RFC 3550), UDP 8 (RFC 768), IPv4 20 (RFC 791),
/// Ethernet 14 + 4, preamble 8 and gap 12 (IEEE 802.3), tag 4 (IEEE 802.1Q).
/// The two streams of the venue that state what they carry: sound of 48 kHz, 24 bits and 1 ms (AES67), 1,000 packets a
/// second of 48 samples; and H.264 at 60 pictures a second, each cut into packets of 1,460 octets less UDP, RTP and 2
/// of fragment header (RFC 6184), the last one shorter.
long double packed_wire_of(const json& stream, bool tagged) {
    const int around = 12 + 8 + 20 + 14 + 4 + 8 + 12 + (tagged ? 4 : 0);
    if (stream.contains("sound")) return (48 * 3 * stream.at("sound").value("channels", 2) + around) * 8.0L * 1000;
    const auto& picture = stream.at("picture");
    EXPECT_EQ(picture.at("coding"), "H.264");
    EXPECT_EQ(picture.at("format"), "1080p60 4:2:0 8-bit");
    const int octets = (picture.at("rate_bps").get<int>() + 479) / 480;
    const int room = 1460 - 8 - 12 - 2, full = octets / room, rest = octets % room;
    return (full * (room + 2 + around) + (rest > 0 ? rest + 2 + around : 0)) * 8.0L * 60;
}

long double wire_of(const json& stream, bool tagged) {
    if (!stream.contains("payload_rate_bps")) return packed_wire_of(stream, tagged);
    const auto payload = stream.value("payload_octets", 1400);
    const auto whole = payload + (stream.value("rtp", true) ? 12 : 0) + 8 + 20 + 14 + 4 + 8 + 12 + (tagged ? 4 : 0);
    return stream.at("payload_rate_bps").get<long double>() * whole / payload;
}

TEST(LoadsCommand, EveryLoadOfFerrowQuayIsTheSumOfItsStreams) {
    const auto ran = run_program({"loads", demo("ferrow-quay.streamwright"), "--json"});
    ASSERT_EQ(ran.exit_code, 0) << ran.err;
    std::ifstream file(demo("ferrow-quay.streamwright"));
    const auto design = json::parse(file), told = json::parse(ran.out);
    std::map<std::string, json> streams;
    for (const auto& row : design.at("streams")) streams[row.at("id")] = row;
    int loaded = 0;
    for (const auto& arc : told.at("arcs")) {
        long double plain = 0, tagged = 0;
        for (const auto& id : arc.at("streams")) {
            plain += wire_of(streams.at(id), false);
            tagged += wire_of(streams.at(id), true);
        }
        const auto load = arc.at("load_bps").get<long double>();
        const auto is = [&](long double sum) { return load >= sum - 0.01L && load < sum + 1; };  // up to whole bits
        EXPECT_TRUE(is(plain) || is(tagged)) << arc.dump();  // the one AV VLAN is tagged on a link or it is not
        loaded += arc.at("streams").empty() ? 0 : 1;
    }
    EXPECT_GT(loaded, 90);
}

TEST(LoadsCommand, WorstAddsTermsAndAWitness) {
    const auto ran = run_program({"loads", demo("huddle-room.streamwright"), "--worst", "--json"});
    ASSERT_EQ(ran.exit_code, 0) << ran.err;
    const auto told = json::parse(ran.out);
    for (const auto& arc : told.at("arcs")) {
        const auto& terms = arc.at("terms");
        EXPECT_EQ(terms.at("routed").size(), arc.at("witness").size());
        EXPECT_LE(terms.at("routed").size(), terms.at("inputs_beyond").get<std::size_t>());
    }
}

/// An id of a row that the file does not have: those of files are drawn at random.
std::string made_id(int number) {
    auto digits = std::to_string(number);
    return std::string(12 - digits.size(), '0') + digits;
}

/// Ferrow Quay with the routings as presets "witness 0", "witness 1", ...
std::string with_presets(const std::vector<json>& arcs, const TempFolder& folder) {
    std::ifstream file(demo("ferrow-quay.streamwright"));
    auto design = json::parse(file);
    int rows = 0;
    for (std::size_t i = 0; i < arcs.size(); ++i) {
        const auto preset = made_id(++rows);
        design["presets"].push_back({{"id", preset}, {"number", 900}, {"name", "witness " + std::to_string(i)}});
        for (auto row : arcs[i].at("witness")) {
            row.update({{"id", made_id(++rows)}, {"preset", preset}});
            design["subscriptions"].push_back(row);
        }
    }
    const auto path = folder / "witnesses.streamwright";
    std::ofstream(path) << design;
    return path.string();
}

// The witness of each of the fullest directions, shown as a preset, brings the load that was named, by the same sums
// that every preset is added up with; and the terms name its streams.
TEST(LoadsCommand, TheWitnessesOfFerrowQuayReachTheirWorstCases) {
    const auto ran = run_program({"loads", demo("ferrow-quay.streamwright"), "--worst", "--json"});
    ASSERT_EQ(ran.exit_code, 0) << ran.err;
    std::vector<json> arcs;
    const auto worst = json::parse(ran.out);
    for (const auto& arc : worst.at("arcs")) {
        EXPECT_FALSE(arc.at("at_most"));
        EXPECT_EQ(arc.at("worst_bps") == 0,
                  arc.at("terms").at("unasked").empty() && arc.at("terms").at("routed").empty());
        if (!arc.at("witness").empty()) arcs.push_back(arc);
    }
    ASSERT_GT(arcs.size(), 8U);
    std::sort(arcs.begin(), arcs.end(),
              [](const json& a, const json& b) { return a.at("worst_bps") > b.at("worst_bps"); });
    arcs.resize(8);
    const TempFolder folder;
    const auto file = with_presets(arcs, folder);
    for (std::size_t i = 0; i < arcs.size(); ++i) {
        const auto told = run_program({"loads", file, "--preset", "witness " + std::to_string(i), "--json"});
        ASSERT_EQ(told.exit_code, 0) << told.err;
        const auto loads = json::parse(told.out);
        for (const auto& arc : loads.at("arcs")) {
            if (arc.at("link") != arcs[i].at("link") || arc.at("from") != arcs[i].at("from")) continue;
            EXPECT_EQ(arc.at("load_bps"), arcs[i].at("worst_bps")) << arcs[i];
            std::set<json> shown(arc.at("streams").begin(), arc.at("streams").end()), named;
            for (const char* term : {"unasked", "routed"})
                for (const auto& stream : arcs[i].at("terms").at(term)) named.insert(stream);
            EXPECT_EQ(shown, named);
        }
    }
}

TEST(LoadsCommand, PresetIsChosenByName) {
    const auto unknown = run_program({"loads", demo("ferrow-quay.streamwright"), "--preset", "No such preset"});
    EXPECT_EQ(unknown.exit_code, 2);
    EXPECT_NE(unknown.err.find("it has:"), std::string::npos) << unknown.err;
    const auto text = run_program({"loads", demo("ferrow-quay.streamwright")});
    EXPECT_EQ(text.exit_code, 0);
    EXPECT_NE(text.out.find("capacity"), std::string::npos);
}

/// The design with the rows taken out of the file gives the same loads as the failure of what they are.
TEST(LoadsCommand, WithoutAThingIsAsIfItsRowWereNotThere) {
    std::ifstream file(demo("ferrow-quay.streamwright"));
    const auto design = json::parse(file);
    std::string network_tag, network_id;
    const auto loads = json::parse(run_program({"loads", demo("ferrow-quay.streamwright"), "--json"}).out);
    for (const auto& row : loads.at("arcs"))
        if (network_id.empty()) network_id = row.at("link");
    auto rest = design;
    auto& cables = rest["cables"];
    for (auto row = cables.begin(); row != cables.end();)
        if (row->at("id") == network_id) {
            network_tag = row->at("tag");
            row = cables.erase(row);
        } else {
            ++row;
        }
    auto& lines = rest["cable_lines"];  // how it is drawn goes with it
    for (auto row = lines.begin(); row != lines.end();)
        row = row->at("cable") == network_id ? lines.erase(row) : std::next(row);
    TempFolder folder;
    std::ofstream(folder / "rest.streamwright") << rest.dump();
    const auto expected = run_program({"loads", (folder / "rest.streamwright").string(), "--json"});
    ASSERT_EQ(expected.exit_code, 0) << expected.err;
    for (const auto& name : {network_tag, network_id}) {
        const auto ran = run_program({"loads", demo("ferrow-quay.streamwright"), "--json", "--without", name});
        ASSERT_EQ(ran.exit_code, 0) << ran.err;
        EXPECT_EQ(ran.out, expected.out);
    }
}

TEST(LoadsCommand, WithoutSeveralThingsAndWithoutNonsense) {
    const auto file = demo("ferrow-quay.streamwright");
    const auto count = [&](std::vector<std::string> more) {
        std::vector<std::string> words{"loads", file, "--json"};
        words.insert(words.end(), more.begin(), more.end());
        const auto ran = run_program(words);
        EXPECT_EQ(ran.exit_code, 0) << ran.err;
        return json::parse(ran.out).at("arcs").size();
    };
    std::ifstream in(file);
    std::vector<std::string> switches;
    const auto design = json::parse(in);
    for (const auto& row : design.at("devices"))
        if (row.value("tag", "").starts_with("SW-")) switches.push_back(row.at("tag"));
    ASSERT_GT(switches.size(), 2u);
    const auto whole = count({}), one = count({"--without", switches[0]});
    const auto two = count({"--without", switches[0], "--without", switches[1]});
    EXPECT_LT(one, whole);
    EXPECT_LT(two, one);
    std::vector<std::string> all;
    for (const auto& name : switches) all.insert(all.end(), {"--without", name});
    EXPECT_EQ(count(all), 0u);
    const auto nonsense = run_program({"loads", file, "--without", "SW-NONE"});
    EXPECT_EQ(nonsense.exit_code, 2);
    EXPECT_NE(nonsense.err.find("Nothing here is called 'SW-NONE'"), std::string::npos) << nonsense.err;
}

}  // namespace streamwright::test::loads_command
