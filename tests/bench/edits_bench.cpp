// One edit to its prompt findings, for each kind of edit in equal parts, with how many facts each kind recomputes; and
// the deferred findings after the last edit.
#include "core/analysis/analyser.h"
#include "core/model/edits/all_edits.h"
#include "tests/bench/benches.h"
#include "tests/bench/timing.h"
#include "tests/support/campus.h"

#include <bit>
#include <iomanip>
#include <map>
#include <random>
#include <stdexcept>

namespace streamwright::bench {

namespace edits_bench {

using model::AnyEdit;

struct KindTimes {
    std::vector<Milliseconds> times;
    int recomputed = 0, differing = 0;  // facts, the most of one edit
};

/// Draws rows of a design for one edit of each kind.
class Draw {
public:
    Draw(const model::Design& design, std::uint64_t seed) : random_(seed) {
        for (const auto& device : design.devices) {
            devices_.push_back(device.id);
            if (device.tag.starts_with("SW-A")) switches_.push_back(device.id);
        }
        for (const auto& cable : design.cables) {
            if (!cable.a || !cable.b) continue;
            const bool access_a = is_access(design, *cable.a), access_b = is_access(design, *cable.b);
            if (!access_a && !access_b) continue;
            const auto& far = design.devices.find((access_a ? cable.b : cable.a)->port.device)->tag;
            auto& kind = far.starts_with("SW-") ? trunks_ : accesses_;
            kind.push_back({cable.id, access_a ? model::WhichEnd::a : model::WhichEnd::b});
        }
        for (const auto& stream : design.streams) streams_.push_back(stream.id);
    }

    AnyEdit rename(const model::Design&) {
        return model::Rename{one(devices_), "X-" + std::to_string(++number_), std::nullopt};
    }
    AnyEdit move(const model::Design& design) {
        auto at = static_cast<std::size_t>(random_() % design.places.size());
        auto place = *std::next(design.places.begin(), static_cast<std::ptrdiff_t>(at));
        place.at.x += base::Length::from_count(2500);
        return model::MoveOnSheet{{place}, {}, {}, {}};
    }
    AnyEdit length(const model::Design&) {
        return model::SetLength{{one(accesses_).cable},
                                base::Length::from_count(10000000 + 1000 * (++number_ % 50000))};
    }
    AnyEdit access_reconnect(const model::Design& design) { return reconnect(design, one(accesses_), "48"); }
    AnyEdit trunk_reconnect(const model::Design& design) { return reconnect(design, one(trunks_), "50"); }
    AnyEdit rate(const model::Design& design) {
        auto row = *design.streams.find(one(streams_));
        row.payload_rate = base::BitRate::from_count(200000000 + 1000 * (++number_ % 1000));
        return model::SetStream{row};
    }
    AnyEdit querier(const model::Design& design) {
        auto row = *design.devices.find(one(switches_));
        if (row.bridging.queriers.empty())
            row.bridging.queriers = {{design.vlans.begin()->id, base::Ipv4{0x0A40FF00U + (++number_ % 250U)}}};
        else
            row.bridging.queriers.clear();
        return model::ConfigureDevice{row};
    }
    AnyEdit removal(const model::Design&) { return model::Remove{{one(accesses_).cable}, false}; }

private:
    template <class Drawn>
    Drawn one(const std::vector<Drawn>& from) {
        return from[random_() % from.size()];
    }
    /// A cable and its end at an access switch.
    struct AtAccess {
        model::CableId cable;
        model::WhichEnd end = model::WhichEnd::a;
    };
    static bool is_access(const model::Design& design, const model::CableEnd& end) {
        return design.devices.find(end.port.device)->tag.starts_with("SW-A");
    }
    /// To a port of the same switch that the campus leaves free.
    static AnyEdit reconnect(const model::Design& design, const AtAccess& at, const char* free_port) {
        const auto& row = *design.cables.find(at.cable);
        const auto& end = at.end == model::WhichEnd::a ? row.a : row.b;
        return model::Reconnect{at.cable, at.end, model::PortRef{end->port.device, {free_port}}, std::nullopt, {}};
    }

    std::mt19937_64 random_;
    std::vector<model::DeviceId> devices_, switches_;
    std::vector<AtAccess> accesses_, trunks_;
    std::vector<model::StreamId> streams_;
    unsigned number_ = 0;
};

using Kind = AnyEdit (Draw::*)(const model::Design&);
constexpr std::pair<const char*, Kind> kinds[] = {{"access reconnect", &Draw::access_reconnect},
                                                  {"delete", &Draw::removal},
                                                  {"length", &Draw::length},
                                                  {"move", &Draw::move},
                                                  {"querier", &Draw::querier},
                                                  {"rate", &Draw::rate},
                                                  {"rename", &Draw::rename},
                                                  {"trunk reconnect", &Draw::trunk_reconnect}};

class Run {
public:
    explicit Run(int endpoints) : design_(test::campus(endpoints, 1)), analyser_(design_), draw_(design_, 7) {}

    /// The edit and its undo, each timed with applying it.
    void once(const char* name, Kind kind) {
        const auto delta = model::make_edit(design_, (draw_.*kind)(design_));
        if (!delta.ok()) throw std::runtime_error(name + (": " + delta.error().english()));
        step(name, *delta);
        step("undo", delta->inverse());
    }
    Milliseconds deferred() {
        const auto frozen = analyser_.frozen();
        return timed([&] {
            if (auto worst = analysis::Analyser::deferred(*frozen, {}))
                analyser_.take_deferred(analyser_.revision(), std::move(*worst));
        });
    }
    std::map<std::string, KindTimes> kinds_seen;

private:
    void step(const char* name, const model::Delta& delta) {
        analysis::FindingsChange change;
        auto& kind = kinds_seen[name];
        kind.times.push_back(timed([&] {
            model::apply(design_, delta);
            change = analyser_.update(design_, delta);
        }));
        kind.recomputed = std::max(kind.recomputed, std::popcount(change.recomputed.bits));
        kind.differing = std::max(kind.differing, std::popcount(change.differing.bits));
    }

    model::Design design_;
    analysis::Analyser analyser_;
    Draw draw_;
};

}  // namespace edits_bench

namespace edits_bench {

void print_table(std::ostream& out, int endpoints, const std::map<std::string, KindTimes>& kinds_seen,
                 Milliseconds deferred) {
    out << "One edit to its prompt findings, " << endpoints << " endpoints (goal: p99 at most "
        << (endpoints <= 1000 ? 8 : 50) << " ms, the worst kind counts)\n";
    out << std::left << std::setw(20) << "  edit" << std::right << std::setw(10) << "median" << std::setw(10) << "p95"
        << std::setw(10) << "p99" << std::setw(14) << "recomputed" << std::setw(12) << "differing" << '\n';
    for (const auto& [name, kind] : kinds_seen)
        out << "  " << std::left << std::setw(18) << name << std::right << std::fixed << std::setprecision(2)
            << std::setw(10) << quantile(kind.times, 0.5).count() << std::setw(10) << quantile(kind.times, 0.95).count()
            << std::setw(10) << quantile(kind.times, 0.99).count() << std::setw(14) << kind.recomputed << std::setw(12)
            << kind.differing << '\n';
    out << "Deferred findings after the last edit: " << deferred.count() << " ms (goal: at most "
        << (endpoints <= 1000 ? 250 : 2000) << " ms)\n\n";
}

}  // namespace edits_bench

EditFigures bench_edits(std::ostream* out, int endpoints, int rounds) {
    using namespace edits_bench;
    Run run(endpoints);
    for (int round = 0; round < rounds; ++round)
        for (const auto& [name, kind] : kinds) run.once(name, kind);
    EditFigures figures;
    figures.deferred = run.deferred();
    for (const auto& [name, kind] : run.kinds_seen)
        figures.slowest_p99 = std::max(figures.slowest_p99, quantile(kind.times, 0.99));
    if (out) print_table(*out, endpoints, run.kinds_seen, figures.deferred);
    return figures;
}

}  // namespace streamwright::bench
