#include "core/analysis/limit_chain.h"

#include "tests/support/fibre_way.h"
#include "tests/support/line_of.h"

#include <gmock/gmock.h>

namespace streamwright::test::limit_chain_test {

using testing::ElementsAre;
using namespace base::literals;

/// The lines of the run of that cable: "words: figure", with "!" where it breaks the limit.
std::vector<std::string> chain(const model::Design& design, model::CableId cable) {
    const auto analysis = analysis::analyse(design);
    const auto& facts = analysis.facts;
    const auto index = facts.get<graph::Wiring>().cable_index(cable);
    const int run = facts.get<graph::Runs>().run_of_cable.at(static_cast<std::size_t>(*index));
    base::Phrasebook book;
    book.name = [](const base::Ref&) { return std::string("the cable"); };
    std::vector<std::string> lines;
    for (const auto& line : analysis::limit_chain(facts, run))
        lines.push_back(base::fill({line.pattern, line.values}, book) + ": " + base::print(line.figure, book) +
                        (line.over ? " !" : ""));
    return lines;
}

TEST(LimitChain, fibreTellsReachLossAndSwaps) {
    FibreWay way(catalogue::CableGrade::om4, 498_m);
    // FIB-013: 400 m; LOSS-006: 2.9 dB; 0.5 km x 3.0 dB/km (ATT-003) and two pairs of 0.75 dB (ATT-010) are 3 dB.
    EXPECT_THAT(
        chain(way.b.design, way.fixed_cable),
        ElementsAre("10GBASE-SR over OM4, at most: 400 m", "Over by: 100 m !", "Source: IEEE 802.3 clause 52",
                    "Glass, OM4 at 850 nm: 1.5 dB", "2 connector pairs of 0.75 dB: 1.5 dB", "0 splices of 0.3 dB: 0 dB",
                    "Loss: 3 dB", "Budget of 10GBASE-SR: 2.9 dB", "Over by: 0.1 dB !", "Source: IEEE 802.3 clause 52",
                    "Strands: 2", "Pair swaps, odd is needed: not stated"));
}

TEST(LimitChain, copperTellsTheRuleOfWarmth) {
    auto c = clean_design();
    c.b.change<model::Settings>({}, [](auto& row) {
        row.cable_temperature = 40_degC;
        row.cabling.warm_rule = model::WarmRule::table;
    });
    // COP-013: 87.0 m screened at 40 degrees C by the table.
    EXPECT_THAT(
        chain(c.design(), c.encoder_cable),
        ElementsAre("1000BASE-T over Cat 6A, channel at most: 97 m",
                    "Installed part at 40 °C at most, by the table of TIA-568: 87 m", "Source: IEEE 802.3 clause 40"));
}

TEST(LimitChain, linesTellHabitAndOwnLimit) {
    LineOf line(catalogue::Signal::video, catalogue::Connector::hdmi, "HDMI 2.0", "HDMI 2.0", 8_m);
    EXPECT_THAT(chain(line.b.design, line.cable), ElementsAre("HDMI 18 Gbit/s, passive copper, safe to: 5 m",
                                                              "HDMI 18 Gbit/s, passive copper, at most: 7 m",
                                                              "Over by: 1 m !", testing::HasSubstr("trade practice")));
    line.type([](auto& type) { type.most_length = 20_m; });
    EXPECT_THAT(chain(line.b.design, line.cable), ElementsAre("the cable, at most by its type: 20 m"));
}

}  // namespace streamwright::test::limit_chain_test
