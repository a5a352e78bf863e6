#include "core/analysis/protected_way.h"

#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis {

namespace protected_way_detail {

using graph::PortAt;
using standards::HdcpContent;

/// Whether the protected picture passes the port; nothing where the type does not say.
std::optional<bool> passes(const catalogue::PortType& port, HdcpContent content) {
    if (!port.picture || !port.picture->hdcp) return std::nullopt;
    return standards::may_leave_on(content, *port.picture->hdcp);
}

std::optional<bool> carries(const catalogue::DeviceType& type) {
    return type.codec && type.codec->picture ? type.codec->picture->carries_protection : std::nullopt;
}

class Stops {
public:
    Stops(PictureWays& ways, HdcpContent content) : ways_(ways), content_(content) {}

    void leave_by(int hop) {
        const auto& step = ways_.signals().hops[at(hop)];
        if (!let_through(step.from, ways_.node_at(step.to))) return;
        enter(ways_.node_at(step.to));
    }
    std::vector<ProtectionStop> found() {
        std::vector<ProtectionStop> list;
        for (auto& [port, stop] : stops_) list.push_back(std::move(stop));
        return list;
    }

private:
    void stop(PortAt port, ProtectionEnd why, int node) {
        auto& held = stops_.try_emplace(port, ProtectionStop{port, why, {}}).first->second;
        for (const auto& end : ways_.node(node).ends)
            if (std::ranges::find(held.dark, end.at) == held.dark.end()) held.dark.push_back(end.at);
    }

    bool let_through(PortAt port, int behind) {
        const auto answer = passes(ways_.wiring().port_type(port), content_);
        if (!answer) stop(port, ProtectionEnd::not_stated, behind);
        if (answer == false) stop(port, ProtectionEnd::version, behind);
        return answer.value_or(true);
    }

    bool let_through_codec(int device, PortAt told_at, int behind) {
        const auto answer = carries(*ways_.wiring().devices[at(device)].type);
        if (!answer) stop(told_at, ProtectionEnd::not_stated, behind);
        if (answer == false) stop(told_at, ProtectionEnd::codec, behind);
        return answer.value_or(true);
    }

    void enter(int index) {
        if (!seen_.insert(index).second) return;
        const auto in = ways_.node(index).in;
        if (in.port >= 0) {
            const auto& port = ways_.wiring().port_type(in);
            if (port.picture && port.picture->captures) return stop(in, ProtectionEnd::captures, index);
            if (!let_through(in, index)) return;
        }
        const auto steps = ways_.node(index).steps;
        for (const auto& step : steps) {
            if (step.hop >= 0)
                leave_by(step.hop);
            else if (let_through_codec(in.device, in, step.node) && decoded(step))
                enter(step.node);
        }
    }

    bool decoded(const WayStep& step) {
        const auto& outs = ways_.node(step.node).steps;
        if (outs.empty()) return true;
        return let_through_codec(step.decoder, ways_.signals().hops[at(outs.front().hop)].from, step.node);
    }

    PictureWays& ways_;
    HdcpContent content_;
    std::map<PortAt, ProtectionStop> stops_;
    std::set<int> seen_;
};

class Loads {
public:
    explicit Loads(PictureWays& ways) : ways_(ways) {}

    void transmit_by(int hop) {
        const auto& step = ways_.signals().hops[at(hop)];
        if (!transmitters_.insert(step.from).second) return;
        HdcpLoad load{step.from, 0, 0};
        std::set<int> seen;
        below(ways_.node_at(step.to), 0, load, seen);
        loads_.push_back(load);
    }
    std::vector<HdcpLoad> found() { return std::move(loads_); }

private:
    void below(int index, int level, HdcpLoad& load, std::set<int>& seen) {
        if (!seen.insert(index).second) return;
        const auto node = ways_.node(index);
        const auto& type = *ways_.wiring().devices[at(node.in.device)].type;
        const auto* facts = node.in.port >= 0 ? &ways_.wiring().port_type(node.in).picture : nullptr;
        const bool repeats = facts && *facts && (*facts)->repeats;
        const bool receives = repeats || (facts && picture_part(type) != PicturePart::passes);
        if (receives) ++load.devices;
        const int here = level + (repeats ? 1 : 0);
        load.levels = std::max(load.levels, here);
        for (const auto& step : node.steps) {
            const bool own_source = type.codec && !repeats;
            if (step.hop < 0 && own_source)
                start(step.node);
            else
                below(step.node, here, load, seen);
        }
    }

    /// A decoder transmits anew on each of its outputs.
    void start(int decoder) {
        const auto steps = ways_.node(decoder).steps;
        for (const auto& step : steps)
            if (step.hop >= 0) transmit_by(step.hop);
    }

    PictureWays& ways_;
    std::set<PortAt> transmitters_;
    std::vector<HdcpLoad> loads_;
};

}  // namespace protected_way_detail

using namespace protected_way_detail;

std::optional<HdcpContent> protected_content(const graph::Wiring& wiring, const PictureOrigin& origin) {
    const auto* set = wiring.port_override(origin.out);
    if (!set || !set->protection || *set->protection == HdcpContent::open) return std::nullopt;
    return set->protection;
}

std::vector<ProtectionStop> protection_stops(PictureWays& ways, const PictureOrigin& origin, HdcpContent content) {
    Stops stops(ways, content);
    stops.leave_by(origin.hop);
    return stops.found();
}

std::vector<HdcpLoad> hdcp_loads(PictureWays& ways, const PictureOrigin& origin) {
    Loads loads(ways);
    loads.transmit_by(origin.hop);
    return loads.found();
}

}  // namespace streamwright::analysis
