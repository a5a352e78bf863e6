#include "core/analysis/picture_way.h"

#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis {

namespace picture_way_detail {

using graph::PortAt;
using standards::PictureLink;

/// One thing on a part of the way that lets some formats through.
struct Gate {
    SetNo passes = 0;
    PictureBreak tells;  // what is told if it lets nothing through
};

class Walk {
public:
    Walk(PictureWays& ways, const PictureOrigin& origin) : ways_(ways), origin_(origin) {}

    PictureWay to(std::size_t arrival, int sent) {
        candidates_ = ways_.space().only(sent);
        part_.ports = {origin_.out};
        port_gates(origin_.out, BreakKind::not_given);
        hop(origin_.hop);
        const auto* node = &ways_.node(ways_.node_at(ways_.signals().hops[at(origin_.hop)].to));
        auto end = ways_.ends_by(origin_.hop)[arrival];
        end = node->ends[at(end.nth)];
        while (end.step >= 0 && !way_.broken) {
            const auto step = node->steps[at(end.step)];
            if (step.hop >= 0)
                cable_step(step);
            else
                stream_step(*node, step);
            node = &ways_.node(step.node);
            end = node->ends[at(end.nth)];
        }
        if (!way_.broken) close_part();
        return std::move(way_);
    }

private:
    void link_gate(const std::string& name, PortAt where, int cable) {
        const auto* link = standards::picture_link(name);
        if (!link) return;
        gates_.push_back(
            {ways_.sets().of_link(name), {cable < 0 ? BreakKind::link : BreakKind::cable, where, cable, {}, name, {}}});
    }

    void port_gates(PortAt port, BreakKind kind) {
        const auto& type = ways_.wiring().port_type(port);
        for (const auto& standard : type.standards) link_gate(standard, port, -1);
        gates_.push_back({ways_.sets().stated_by(type), {kind, port, -1, {}, {}, {}}});
    }

    void hop(int index) {
        const auto& hop = ways_.signals().hops[at(index)];
        part_.hops.push_back(index);
        part_.ports.push_back(hop.to);
        for (const int cable : ways_.cables_of(index))
            if (const auto* type = ways_.wiring().cables[at(cable)].type) link_gate(type->picture_link, hop.to, cable);
        port_gates(hop.to, BreakKind::not_taken);
        const auto& type = *ways_.wiring().devices[at(hop.to.device)].type;
        if (type.codec)
            gates_.push_back({ways_.sets().encoded(*type.codec), {BreakKind::not_encoded, hop.to, -1, {}, {}, {}}});
    }

    void cable_step(const WayStep& step) {
        const auto from = ways_.signals().hops[at(step.hop)].from;
        part_.ports.push_back(from);
        port_gates(from, BreakKind::not_given);
        if (const auto* set = ways_.wiring().port_override(from); set && set->picture)
            gates_.push_back({ways_.sets().only(*set->picture), {BreakKind::not_given, from, -1, {}, {}, {}}});
        hop(step.hop);
    }

    void stream_step(const WayNode& node, const WayStep& step) {
        close_part();
        if (way_.broken) return;
        const auto& encoder = *ways_.wiring().devices[at(node.in.device)].type->codec;
        const auto& decoder = *ways_.wiring().devices[at(step.decoder)].type->codec;
        FormatSet made = ways_.space().none();
        for (int n = 0; n < ways_.space().size(); ++n) {
            if (!holds(candidates_, n)) continue;
            const auto out = after_codec(ways_.space(), encoder, decoder, n);
            for (std::size_t r = 0; r < made.size(); ++r) made[r] |= out[r];
        }
        if (!best_of(made)) {
            PictureBreak broken{BreakKind::not_encoded, node.in, -1, {}, {}, {}};
            broken.asked = ways_.space().format(*best_of(candidates_));
            way_.broken = broken;
            return;
        }
        candidates_ = std::move(made);
        part_ = {};
        part_.stream = step.stream;
    }

    /// The slowest of the links that are too slow; else the first thing that lets nothing through.
    const Gate* culprit() const {
        const Gate* worst = nullptr;
        for (const auto& gate : gates_) {
            if (best_of(both(candidates_, ways_.sets().set(gate.passes)))) continue;
            const bool link = !gate.tells.link.empty();
            if (!worst || (link && (worst->tells.link.empty() || raw(gate) < raw(*worst)))) worst = &gate;
        }
        return worst;
    }
    static base::BitRate raw(const Gate& gate) { return standards::picture_link(gate.tells.link)->raw; }

    void close_part() {
        FormatSet left = candidates_;
        const Gate* last = nullptr;
        for (const auto& gate : gates_) {
            left = both(left, ways_.sets().set(gate.passes));
            if (!last && !best_of(left)) last = &gate;
        }
        if (last) {
            const auto* worst = culprit();
            PictureBreak broken = worst ? worst->tells : last->tells;
            if (!worst) broken.kind = BreakKind::together;
            broken.asked = ways_.space().format(*best_of(candidates_));
            if (const auto* link = standards::picture_link(broken.link))
                broken.fit = standards::fits(broken.asked, *link);
            way_.broken = broken;
        }
        candidates_ = std::move(left);
        gates_.clear();
        part_.format = best_of(candidates_);
        way_.parts.push_back(std::move(part_));
        part_ = {};
    }

    PictureWays& ways_;
    const PictureOrigin& origin_;
    PictureWay way_;
    WayPart part_;
    FormatSet candidates_;
    std::vector<Gate> gates_;
};

}  // namespace picture_way_detail

PictureWay follow(PictureWays& ways, const PictureOrigin& origin, std::size_t arrival, int sent) {
    return picture_way_detail::Walk(ways, origin).to(arrival, sent);
}

std::string form_text(const standards::VideoFormat& format) {
    const auto whole = standards::text(format), raster = standards::raster_text(format);
    return whole.size() > raster.size() ? whole.substr(raster.size() + 1) : std::string("RGB 8-bit");
}

}  // namespace streamwright::analysis
