// Worst cases of middle-sized networks against a mixed-integer solver. The model is written from a drawn tree by its
// own formulation (RFC 4541 2.1.2, one condition a hop; reports go up to the querier at the root) as a file, and solved
// by Cbc or GLPK; it shares nothing with the code under test but the drawing.
#include "tests/graph/switched_room.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <random>
#include <sstream>

namespace streamwright::analysis {
namespace {

using catalogue::UnknownGroups;
using test::SwitchedRoom;

struct Drawn {
    std::mt19937_64 random;
    std::vector<int> parent;  // per switch; the root, 0, is the querier
    std::vector<UnknownGroups> modes;
    std::vector<int> source, rate;            // per stream: its switch, megabits a second
    std::vector<int> sink;                    // per input: its switch
    std::vector<int> decoder;                 // per input
    std::vector<std::vector<bool>> may_show;  // per decoder, per stream

    int below(int count) { return static_cast<int>(random() % static_cast<std::uint64_t>(count)); }

    explicit Drawn(std::uint64_t seed) : random(seed) {
        const UnknownGroups all[] = {UnknownGroups::router_ports, UnknownGroups::drop, UnknownGroups::flood};
        const int switches = 8 + below(6), kind = below(3);
        for (int s = 0; s < switches; ++s) {
            parent.push_back(s == 0 ? -1 : below(s));
            modes.push_back(all[kind < 2 ? kind : below(3)]);
        }
        const int streams = 20 + below(15), decoders = 12 + below(8);
        for (int s = 0; s < streams; ++s) {
            source.push_back(below(switches));
            rate.push_back(50 + 10 * below(60));
        }
        for (int d = 0; d < decoders; ++d) {
            const int at = below(switches), inputs = 1 + below(2);
            for (int i = 0; i < inputs; ++i) {
                sink.push_back(at);
                decoder.push_back(d);
            }
            auto& row = may_show.emplace_back();
            for (int s = 0; s < streams; ++s) row.push_back(below(3) == 0);
        }
    }
    bool below_switch(int node, int top) const {
        while (node >= 0 && node != top) node = parent[static_cast<std::size_t>(node)];
        return node == top;
    }
    /// The switches from the stream's to the end of the arc; empty where its way does not lead over the arc.
    std::vector<int> way(int from, int child, bool up) const {
        if (below_switch(from, child) != up) return {};
        const int end = up ? parent[static_cast<std::size_t>(child)] : child;
        std::vector<int> rise{from}, fall{end};
        while (!below_switch(end, rise.back())) rise.push_back(parent[static_cast<std::size_t>(rise.back())]);
        while (fall.back() != rise.back()) fall.push_back(parent[static_cast<std::size_t>(fall.back())]);
        fall.pop_back();
        rise.insert(rise.end(), fall.rbegin(), fall.rend());
        return rise;
    }
};

/// x S I: input I shows stream S; p S: the stream is on the arc.
struct Model {
    const Drawn& drawn;
    std::ostringstream objective, rows, names;
    int row = 0;

    std::string x(int s, int i) const { return "x" + std::to_string(s) + "_" + std::to_string(i); }
    bool has(int s, int i) const {
        const auto d = static_cast<std::size_t>(drawn.decoder[static_cast<std::size_t>(i)]);
        return drawn.may_show[d][static_cast<std::size_t>(s)];
    }
    int inputs() const { return static_cast<int>(drawn.sink.size()); }
    /// All x of the stream at inputs below the switch.
    std::string minus_asked_below(int s, int top) const {
        std::string sum;
        for (int i = 0; i < inputs(); ++i)
            if (has(s, i) && drawn.below_switch(drawn.sink[static_cast<std::size_t>(i)], top)) sum += " - " + x(s, i);
        return sum;
    }
    void at_most(const std::string& sum, int limit) { rows << " r" << ++row << ": " << sum << " <= " << limit << '\n'; }

    void hop(int s, int from, int to) {
        const std::string p = "p" + std::to_string(s);
        const auto mode = drawn.modes[static_cast<std::size_t>(from)];
        const bool up = drawn.parent[static_cast<std::size_t>(from)] == to;
        if (up && mode == UnknownGroups::drop) at_most(p + minus_asked_below(s, from), 0);
        if (up) return;
        if (mode != UnknownGroups::flood) return at_most(p + minus_asked_below(s, to), 0);
        for (int i = 0; i < inputs(); ++i)
            if (has(s, i) && drawn.below_switch(drawn.sink[static_cast<std::size_t>(i)], from) &&
                !drawn.below_switch(drawn.sink[static_cast<std::size_t>(i)], to))
                at_most(p + " + " + x(s, i) + minus_asked_below(s, to), 1);
    }
    std::string text(int child, bool up) {
        for (int s = 0; s < static_cast<int>(drawn.source.size()); ++s) {
            const auto way = drawn.way(drawn.source[static_cast<std::size_t>(s)], child, up);
            if (way.empty()) continue;
            objective << " - " << drawn.rate[static_cast<std::size_t>(s)] << " p" << s;
            names << " p" << s << '\n';
            for (std::size_t i = 1; i < way.size(); ++i) hop(s, way[i - 1], way[i]);
        }
        for (int i = 0; i < inputs(); ++i) {
            std::string sum;
            for (int s = 0; s < static_cast<int>(drawn.source.size()); ++s) {
                if (!has(s, i)) continue;
                sum += (sum.empty() ? "" : " + ") + x(s, i);
                names << ' ' << x(s, i) << '\n';
            }
            if (!sum.empty()) at_most(sum, 1);
        }
        return "Minimize\n obj:" + objective.str() + " + 0 none\nSubject To\n" + rows.str() +
               " r0: none <= 0\nBinary\n" + names.str() + "End\n";
    }
};

bool has_program(const std::string& name) {
    return std::system(("command -v " + name + " >/dev/null 2>&1").c_str()) == 0;
}

/// The number after the last word in the first line that has it.
double number_after(const std::filesystem::path& file, const std::string& word) {
    std::ifstream in(file);
    for (std::string line; std::getline(in, line);)
        if (const auto at = line.find(word); at != std::string::npos) return std::stod(line.substr(at + word.size()));
    return std::nan("");
}

int solved(const std::string& model, const test::TempFolder& folder, bool by_cbc) {
    const auto file = folder / "model.lp", answer = folder / "answer.txt";
    std::ofstream(file) << model;
    const auto line = by_cbc ? "cbc " + file.string() + " solve solution " + answer.string()
                             : "glpsol --lp " + file.string() + " -o " + answer.string();
    if (std::system((line + " >/dev/null 2>&1").c_str()) != 0) return -1;
    const double value = by_cbc ? number_after(answer, "Optimal - objective value") : number_after(answer, "obj =");
    return std::isnan(value) ? -1 : static_cast<int>(std::lround(-value));
}

/// The drawing as a design: streams S<n>, decoders D<n>, switches W<n>.
struct Built : SwitchedRoom {
    static std::string name(char kind, int n) { return kind + std::to_string(n); }
    explicit Built(const Drawn& drawn) {
        for (std::size_t s = 0; s < drawn.parent.size(); ++s) {
            auto type = switch_type();
            type.bridging->unknown_groups = drawn.modes[s];
            add_switch(name('W', static_cast<int>(s)), type);
            if (s > 0) join(name('W', drawn.parent[s]), name('W', static_cast<int>(s)));
        }
        querier("W0");
        for (std::size_t s = 0; s < drawn.source.size(); ++s)
            add_encoder(name('S', static_cast<int>(s)), name('W', drawn.source[s]), drawn.rate[s]);
        for (std::size_t i = 0; i < drawn.sink.size(); ++i)
            if (!devices.contains(name('D', drawn.decoder[i])))
                add_decoder(name('D', drawn.decoder[i]), name('W', drawn.sink[i]));
    }
    static Compatibility compatibility(const Drawn& drawn, const test::NetworkFacts& facts) {
        Compatibility result;
        std::map<std::string, int> device, stream;
        for (std::size_t d = 0; d < facts.wiring.devices.size(); ++d)
            device[facts.wiring.devices[d].row->tag] = static_cast<int>(d);
        for (const auto& row : facts.wiring.design.streams) {
            const int n = static_cast<int>(stream.size());
            stream[row.tag] = n;
            result.stream_kind.push_back(n);
        }
        for (const auto& may : drawn.may_show) {
            auto& takes = result.takes.emplace_back(stream.size(), false);
            for (std::size_t s = 0; s < may.size(); ++s)
                takes[static_cast<std::size_t>(stream.at(name('S', static_cast<int>(s))))] = may[s];
        }
        for (const int d : drawn.decoder) result.slots.push_back({device.at(name('D', d)), 0, d});
        return result;
    }
};

TEST(WorstCaseMip, FiftyNetworksAsASolverFindsThem) {
    const bool cbc = has_program("cbc");
    if (!cbc && !has_program("glpsol")) GTEST_SKIP() << "neither cbc nor glpsol is installed";
    const test::TempFolder folder;
    int pairs = 0, routed = 0;
    for (std::uint64_t seed = 0; seed < 50; ++seed) {
        Drawn drawn(seed);
        const Built room(drawn);
        const auto facts = room.facts();
        const auto worst = find_worst_case(facts.wiring, facts.network, facts.paths, facts.trees, facts.forwarding,
                                           facts.loads, Built::compatibility(drawn, facts), {});
        ASSERT_TRUE(worst);
        const int child = 1 + drawn.below(static_cast<int>(drawn.parent.size()) - 1);
        const auto low = Built::name('W', child);
        const auto high = Built::name('W', drawn.parent[static_cast<std::size_t>(child)]);
        for (const bool up : {true, false}) {
            const int arc = up ? facts.arc(low, high) : facts.arc(high, low);
            const auto& told = worst->arcs.at(static_cast<std::size_t>(arc));
            Model model{drawn, {}, {}, {}};
            EXPECT_EQ(told.wire, test::megabits(solved(model.text(child, up), folder, cbc)))
                << "seed " << seed << (up ? " up from " : " down to ") << low;
            EXPECT_FALSE(told.at_most);
            routed += static_cast<int>(told.routed.size());
            pairs += told.witness.size() > told.routed.size() ? 1 : 0;
        }
    }
    EXPECT_GT(routed, 200);
    EXPECT_GT(pairs, 5);
}

}  // namespace
}  // namespace streamwright::analysis
