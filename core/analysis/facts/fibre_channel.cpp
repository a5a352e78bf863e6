#include "core/analysis/facts/fibre_channel.h"

#include "core/standards/fibre_loss.h"

#include <algorithm>

namespace streamwright::analysis {

namespace fibre_channel_detail {

using catalogue::CableGrade;
using catalogue::Medium;
using catalogue::Polish;
using graph::PortAt;

const graph::WiredCable& cable_at(const graph::Wiring& wiring, int cable) {
    return wiring.cables[static_cast<std::size_t>(cable)];
}

std::optional<base::Length> length_of(const graph::WiredCable& cable) {
    return cable.row->length ? cable.row->length : cable.type->made_length;
}

/// The face on which the first of two cables ends, where it passes to that of the second.
std::optional<PortAt> face_between(const graph::Wiring& wiring, const graph::WiredCable& one,
                                   const graph::WiredCable& next) {
    for (const auto& near : {one.a, one.b})
        for (const auto& far : {next.a, next.b})
            if (near && far && wiring.other_face(*near) == *far) return near;
    return std::nullopt;
}

struct Swaps {
    int sum = 0;
    bool all = true, any = false;
    void add(std::optional<int> swaps) {
        if (!swaps) {
            all = false;
            return;
        }
        sum += *swaps;
        any = true;
    }
};

std::optional<int> swaps_of(const graph::WiredCable& cable) {
    if (cable.row->fibre.pair_swaps) return cable.row->fibre.pair_swaps;
    return cable.type->crossed ? std::optional(*cable.type->crossed ? 1 : 0) : std::nullopt;
}

template <class Field>
Field either(const graph::Wiring& wiring, PortAt face, Field catalogue::PortType::*field) {
    const auto& stated = wiring.port_type(face).*field;
    const auto other = wiring.other_face(face);
    return stated || !other ? stated : wiring.port_type(*other).*field;
}

/// Walks from end to end past each face, and notes what meets there.
struct Walk {
    const graph::Wiring& wiring;
    FibreChannel& channel;
    Swaps swaps;
    std::optional<Polish> last;

    void meet(PortAt at, std::optional<Polish> polish) {
        if (last && polish && *last != *polish) channel.clashes.push_back({at, *last, *polish});
        if (polish) last = polish;
    }
    void pass(PortAt face) {
        const int joints = either(wiring, face, &catalogue::PortType::joints).value_or(1);
        channel.joints += joints;
        meet(face, either(wiring, face, &catalogue::PortType::polish));
        const auto crosses = either(wiring, face, &catalogue::PortType::crosses);
        if (crosses)
            swaps.sum += *crosses ? 1 : 0;
        else if (joints > 1)
            swaps.all = false;  // a cassette may be wired either way; a plain adapter passes straight
    }
    void along(const graph::WiredCable& cable) {
        last = cable.type->polish;
        swaps.add(swaps_of(cable));
        channel.joints += cable.row->fibre.joints;
        channel.splices += cable.row->fibre.splices;
    }
};

std::optional<Polish> socket_polish(const graph::Wiring& wiring, PortAt port) {
    const auto* type = wiring.module_at(port);
    if (type && type->module) return type->module->polish;
    return wiring.port_type(port).polish;
}

void walk(const graph::Wiring& wiring, const graph::Run& run, FibreChannel& channel) {
    Walk way{wiring, channel, {}, {}};
    if (run.a) way.last = socket_polish(wiring, *run.a);
    PortAt at = run.a.value_or(PortAt{});
    for (std::size_t i = 0; i < run.cables.size(); ++i) {
        const auto& cable = cable_at(wiring, run.cables[i]);
        if (run.a || i > 0) way.meet(at, cable.type->polish);
        way.along(cable);
        if (i + 1 == run.cables.size()) break;
        const auto face = face_between(wiring, cable, cable_at(wiring, run.cables[i + 1]));
        if (!face) continue;
        way.pass(*face);
        at = *face;
    }
    if (run.b) way.meet(*run.b, socket_polish(wiring, *run.b));
    channel.swaps_stated = way.swaps.any;
    if (way.swaps.all) channel.swaps = way.swaps.sum;
}

bool thick_core(CableGrade grade) { return grade == CableGrade::om1 || grade == CableGrade::old_62_5; }

void compare_kinds(const graph::Wiring& wiring, const graph::Run& run, FibreChannel& channel) {
    const auto& first = *cable_at(wiring, run.cables.front()).type;
    for (const int index : run.cables) {
        const auto& type = *cable_at(wiring, index).type;
        channel.strands = std::min(channel.strands, type.strands);
        channel.media_mixed = channel.media_mixed || type.medium != first.medium;
        const bool known = type.medium == Medium::multimode && first.medium == Medium::multimode &&
                           type.grade != CableGrade::none && first.grade != CableGrade::none;
        channel.cores_mixed = channel.cores_mixed || (known && thick_core(type.grade) != thick_core(first.grade));
    }
}

/// What all its cables lose at that wavelength, by their own statement or the most that their grade may.
std::optional<base::Loss> glass_at(const graph::Wiring& wiring, const graph::Run& run, int wavelength_nm) {
    base::Loss sum;
    for (const int index : run.cables) {
        const auto& cable = cable_at(wiring, index);
        const auto length = length_of(cable);
        const auto grade = fibre_grade(cable.type->grade);
        const auto* table = grade ? standards::attenuation_near(*grade, wavelength_nm) : nullptr;
        if (!length || (!cable.type->loss_per_km && !table)) return std::nullopt;
        const auto per_km = cable.type->loss_per_km ? *cable.type->loss_per_km : table->per_km;
        sum += standards::channel_loss({.length = *length, .per_km = per_km, .mated_pairs = 0});
    }
    return sum;
}

void add_losses(const graph::Wiring& wiring, const graph::Run& run, FibreChannel& channel) {
    const auto& settings = wiring.design.settings().cabling;
    channel.joint_loss = settings.joint_loss.value_or(standards::mated_pair_loss);
    channel.splice_loss = settings.splice_loss.value_or(standards::splice_loss);
    for (const auto& end : {run.a, run.b}) {
        const auto* type = end ? wiring.module_at(*end) : nullptr;
        if (!type || !type->module || type->module->wavelength_nm == 0) continue;
        const auto glass = glass_at(wiring, run, type->module->wavelength_nm);
        if (channel.wavelength_nm != 0 && (!glass || (channel.glass && *glass <= *channel.glass))) continue;
        channel.wavelength_nm = type->module->wavelength_nm;
        channel.glass = glass;
    }
    if (channel.glass)
        channel.loss = *channel.glass + channel.joint_loss * channel.joints + channel.splice_loss * channel.splices;
}

std::optional<FibreChannel> channel_of(const graph::Wiring& wiring, const graph::Run& run) {
    const auto fibre = fibre_of(wiring, run);
    if (!fibre) return std::nullopt;
    FibreChannel channel;
    channel.grade = fibre->grade;
    channel.grade_name = fibre->name;
    channel.strands = cable_at(wiring, run.cables.front()).type->strands;
    channel.length = base::Length{};
    for (const int index : run.cables) {
        const auto length = length_of(cable_at(wiring, index));
        if (channel.length && length)
            *channel.length += *length;
        else
            channel.length.reset();
    }
    walk(wiring, run, channel);
    compare_kinds(wiring, run, channel);
    add_losses(wiring, run, channel);
    return channel;
}

}  // namespace fibre_channel_detail

FibreChannels find_fibre_channels(const graph::Wiring& wiring, const graph::Runs& runs) {
    FibreChannels channels;
    channels.runs.reserve(runs.list.size());
    for (const auto& run : runs.list) channels.runs.push_back(fibre_channel_detail::channel_of(wiring, run));
    return channels;
}

}  // namespace streamwright::analysis
