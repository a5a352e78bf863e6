#include "core/analysis/facts/picture_ways.h"

#include <algorithm>
#include <tuple>

namespace streamwright::analysis {

namespace picture_ways_detail {

using catalogue::DeviceKind;
using catalogue::PortType;
using catalogue::Signal;
using catalogue::Way;
using graph::PortAt;

constexpr int longest_way = 64;
constexpr std::size_t most_ends = 4096;

constexpr std::size_t ix(int index) { return static_cast<std::size_t>(index); }

bool has_picture(const catalogue::DeviceType& type, Way way) {
    return std::any_of(type.ports.begin(), type.ports.end(),
                       [&](const PortType& port) { return picture_port(port) && port.way == way; });
}

const catalogue::DeviceType* device_type_of(const graph::Wiring& wiring, int device) {
    return wiring.devices[ix(device)].type;
}

}  // namespace picture_ways_detail

using namespace picture_ways_detail;

bool picture_port(const PortType& port) { return port.signal == Signal::video || port.signal == Signal::extender; }

PicturePart picture_part(const catalogue::DeviceType& type) {
    if (type.codec) return PicturePart::codes;
    switch (type.kind) {
        case DeviceKind::display:
        case DeviceKind::projector:
        case DeviceKind::wall_tile:
        case DeviceKind::video_processor:
            return PicturePart::shows;
        case DeviceKind::source:
        case DeviceKind::camera:
        case DeviceKind::patch_panel:
            return PicturePart::none;
        default:
            return has_picture(type, Way::in) ? PicturePart::passes : PicturePart::none;
    }
}

bool begins_pictures(const catalogue::DeviceType& type, const PortType& port) {
    if (port.signal != Signal::video || port.way != Way::out || type.codec) return false;
    return type.kind == DeviceKind::source || type.kind == DeviceKind::camera ||
           type.kind == DeviceKind::video_processor || picture_part(type) == PicturePart::none;
}

PictureWays::PictureWays(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals)
    : PictureWays(wiring, runs, signals, formats_named(wiring), {}, sent_streams(wiring)) {}

PictureWays::PictureWays(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals,
                         FormatSpace space, LinkSets known, SentStreams sent)
    : wiring_(wiring),
      runs_(runs),
      signals_(signals),
      sets_(std::move(space), std::move(known)),
      node_of_input_(wiring.overrides.size(), -1),
      node_of_decoder_(wiring.devices.size(), -1),
      sent_(std::move(sent)) {}

SetNo PictureWays::given(PortAt out) {
    const auto* set = wiring_.port_override(out);
    const auto of_type = sets_.of_port(wiring_.port_type(out));
    return set && set->picture ? sets_.both(of_type, sets_.only(*set->picture)) : of_type;
}

const std::vector<int>& PictureWays::cables_of(int hop) const {
    return runs_.list[ix(signals_.hops[ix(hop)].run)].cables;
}

SetNo PictureWays::cabled(int hop) {
    SetNo result = sets_.all();
    for (const int cable : cables_of(hop)) {
        const auto* type = wiring_.cables[ix(cable)].type;
        if (type && !type->picture_link.empty()) result = sets_.both(result, sets_.of_link(type->picture_link));
    }
    return result;
}

SetNo PictureWays::own(PortAt in) {
    const auto* type = device_type_of(wiring_, in.device);
    const auto of_port = sets_.of_port(wiring_.port_type(in));
    return type->codec ? sets_.both(of_port, sets_.encoded(*type->codec)) : of_port;
}

int PictureWays::node_at(PortAt in) { return reach(in, 0); }

int PictureWays::reach(PortAt in, int depth) {
    auto& held = in.port < 0 ? node_of_decoder_[ix(in.device)] : node_of_input_[ix(wiring_.flat(in))];
    if (held >= 0) return held;
    held = static_cast<int>(nodes_.size());
    const int index = held;
    nodes_.push_back({in, {}, {}, sets_.all()});
    open_.push_back(true);
    if (depth < longest_way) fill(index, depth);
    open_[ix(index)] = false;
    return index;
}

void PictureWays::add_cable_steps(WayNode& node, int depth) {
    const auto* type = device_type_of(wiring_, node.in.device);
    for (const int h : signals_.hops_from[ix(node.in.device)]) {
        const auto& hop = signals_.hops[ix(h)];
        const auto& out = wiring_.port_type(hop.from);
        if (!picture_port(out) || !device_type_of(wiring_, hop.to.device)) continue;
        // An endpoint's local output shows what it encodes; its other outputs what it decodes.
        if (type->codec && out.local_output != (node.in.port >= 0)) continue;
        node.steps.push_back({h, -1, -1, reach(hop.to, depth + 1)});
    }
}

void PictureWays::add_stream_steps(WayNode& node, int depth) {
    for (const auto& [stream, decoder] : sent_[ix(node.in.device)])
        node.steps.push_back({-1, stream, decoder, reach({decoder, -1}, depth + 1)});
}

void PictureWays::fill(int index, int depth) {
    WayNode node = nodes_[ix(index)];  // nodes move while others are made
    const auto* type = device_type_of(wiring_, node.in.device);
    const auto part = picture_part(*type);
    if (part == PicturePart::passes || part == PicturePart::codes) add_cable_steps(node, depth);
    const bool sends_on = node.in.port >= 0 || (type->codec && type->codec->sends_family);
    if (part == PicturePart::codes && sends_on) add_stream_steps(node, depth);
    gather_ends(node);
    if (node.in.port >= 0) node.announced = announced_by(node);
    nodes_[ix(index)] = std::move(node);
}

/// The table of an end behind the step, seen from the node; the input of the node itself not yet counted.
TableNo PictureWays::begun(const WayNode& node, const WayStep& step, const WayEnd& end) {
    if (step.hop >= 0) {
        const auto& hop = signals_.hops[ix(step.hop)];
        return sets_.through(given(hop.from), sets_.through(cabled(step.hop), end.left));
    }
    const auto* from = device_type_of(wiring_, node.in.device);
    return sets_.coded(*from->codec, *device_type_of(wiring_, step.decoder)->codec, end.left);
}

void PictureWays::gather_ends(WayNode& node) {
    const auto* type = device_type_of(wiring_, node.in.device);
    const bool input = node.in.port >= 0;
    const auto part = picture_part(*type);
    const bool states = !input || wiring_.port_type(node.in).picture.has_value();
    const auto silent = states ? std::nullopt : std::optional(node.in);
    const auto takes = input ? own(node.in) : sets_.all();
    for (std::size_t s = 0; s < node.steps.size(); ++s) {
        const auto& step = node.steps[s];
        if (open_[ix(step.node)]) continue;
        const auto behind = nodes_[ix(step.node)].ends;
        for (std::size_t nth = 0; nth < behind.size() && node.ends.size() < most_ends; ++nth) {
            WayEnd end = behind[nth];
            end.left = sets_.through(takes, begun(node, step, end));
            if (step.hop < 0) end.stream = step.stream, end.decoder = step.decoder;
            if (silent) end.silent = silent;
            end.step = static_cast<int>(s);
            end.nth = static_cast<int>(nth);
            node.ends.push_back(end);
        }
    }
    if (input && (part != PicturePart::passes || node.steps.empty()))
        node.ends.push_back({node.in, sets_.as_is(takes), -1, -1, silent, part == PicturePart::shows, -1, 0});
    if (node.steps.size() < 2) return;
    const auto key = [](const WayEnd& end) { return std::tuple(end.stream, end.decoder, end.at, end.left); };
    std::stable_sort(node.ends.begin(), node.ends.end(),
                     [&](const WayEnd& a, const WayEnd& b) { return key(a) < key(b); });
    node.ends.erase(std::unique(node.ends.begin(), node.ends.end(),
                                [&](const WayEnd& a, const WayEnd& b) { return key(a) == key(b); }),
                    node.ends.end());
}

SetNo PictureWays::announced_by(const WayNode& node) {
    const auto* set = wiring_.port_override(node.in);
    const auto type = own(node.in);
    if (set && set->edid) {
        switch (set->edid->way) {
            case model::EdidWay::fixed:
                return set->edid->format ? sets_.up_to(*set->edid->format) : type;
            case model::EdidWay::copied: {
                const auto from = set->edid->from ? wiring_.port_at(*set->edid->from) : std::nullopt;
                return from ? sets_.of_port(wiring_.port_type(*from)) : type;
            }
            case model::EdidWay::merged: {
                SetNo result = type;
                for (const auto& end : node.ends) {
                    const auto takes = sets_.accepted(end.left, true);
                    if (best_of(sets_.set(takes))) result = sets_.both(result, takes);
                }
                return result;
            }
        }
    }
    if (picture_part(*device_type_of(wiring_, node.in.device)) != PicturePart::passes) return type;
    // What passes pictures on also passes on what is behind it, as far as it takes it itself.
    SetNo result = type;
    for (const auto& step : node.steps)
        if (!open_[ix(step.node)])
            result = sets_.both(result,
                                sets_.both(given(signals_.hops[ix(step.hop)].from), nodes_[ix(step.node)].announced));
    return result;
}

std::vector<WayEnd> PictureWays::ends_by(int hop) {
    const auto& leaving = signals_.hops[ix(hop)];
    const auto in = node_at(leaving.to);
    auto ends = node(in).ends;
    const bool states = wiring_.port_type(leaving.from).picture.has_value();
    for (std::size_t nth = 0; nth < ends.size(); ++nth) {
        ends[nth].left =
            sets_.through(sets_.of_port(wiring_.port_type(leaving.from)), sets_.through(cabled(hop), ends[nth].left));
        ends[nth].nth = static_cast<int>(nth);
        if (!states) ends[nth].silent = leaving.from;
    }
    return ends;
}

}  // namespace streamwright::analysis
