#include "core/analysis/line_losses.h"

#include "core/analysis/line_reach.h"
#include "core/standards/line_lengths.h"

#include <algorithm>
#include <cstdlib>
#include <sstream>

namespace streamwright::analysis {

namespace line_losses_detail {

using catalogue::CableType;
using standards::Hertz;
using standards::Resistance;

std::optional<base::Length> length_of(const graph::WiredCable& cable) {
    if (cable.row->length) return cable.row->length;
    return cable.type ? cable.type->made_length : std::nullopt;
}

/// The stated loss nearest to the frequency.
const catalogue::CoaxLoss* nearest(const CableType& type, const Hertz& wanted) {
    const catalogue::CoaxLoss* best = nullptr;
    const auto off = [&](const catalogue::CoaxLoss& each) {
        return std::abs(std::int64_t{each.megahertz} * 1'000'000 - wanted.num() / wanted.den());
    };
    for (const auto& each : type.coax_losses)
        if (!best || off(each) < off(*best)) best = &each;
    return best;
}

/// Loss of one cable at that frequency, rounded up.
std::optional<base::Loss> coax_loss(const graph::WiredCable& cable, const Hertz& at) {
    const auto length = length_of(cable);
    const auto* stated = cable.type ? nearest(*cable.type, at) : nullptr;
    if (!length || !stated) return std::nullopt;
    const auto per_100m =
        standards::loss_at(at, stated->per_100m, Hertz::whole(std::int64_t{stated->megahertz} * 1'000'000));
    constexpr std::int64_t um_per_100m = 100'000'000;
    return base::Loss::from_count((per_100m.count() * (length->count() / 1000) + um_per_100m / 1000 - 1) /
                                  (um_per_100m / 1000));
}

const standards::PictureLink* sdi_at(const graph::Wiring& wiring, graph::PortAt port) {
    for (const auto& standard : wiring.port_type(port).standards)
        if (const auto* link = standards::picture_link(standard))
            if (link->coding == standards::LinkCoding::sdi) return link;
    return nullptr;
}

std::optional<LineLosses> of_sdi(const graph::Wiring& wiring, const graph::Run& run) {
    const auto *a = sdi_at(wiring, *run.a), *b = sdi_at(wiring, *run.b);
    const auto* link = !a || !b ? (a ? a : b) : a->raw <= b->raw ? a : b;
    const auto receiver = link ? standards::sdi_receiver_loss(*link) : std::nullopt;
    if (!receiver) return std::nullopt;
    LineLosses losses{
        std::string(link->name), {}, std::min(standards::sdi_trade_loss, receiver->to), receiver->to, false, {},
        receiver->source};
    base::Length length;
    for (const int index : run.cables) {
        const auto& cable = wiring.cables[static_cast<std::size_t>(index)];
        const auto loss = coax_loss(cable, receiver->half_clock);
        if (!loss) return std::nullopt;
        losses.loss += *loss;
        length += *length_of(cable);
    }
    losses.terms.push_back(
        {STREAMWRIGHT_TEXT("%1 at half the clock, %2 MHz: %3"),
         {length, base::print_decimal(receiver->half_clock.num() / receiver->half_clock.den() / 1000, 3),
          losses.loss}});
    return losses;
}

/// "loudspeaker 8 ohm": 8 ohm; "loudspeaker 100 V 30 W": V x V / W.
std::optional<Resistance> load_of(const graph::Wiring& wiring, graph::PortAt port) {
    for (const auto& standard : wiring.port_type(port).standards) {
        std::istringstream words(standard);
        std::string kind, unit, of;
        double first = 0, second = 0;
        if (!(words >> kind >> first >> unit) || kind != "loudspeaker" || first <= 0 || first > 10'000) continue;
        if (unit == "ohm") return Resistance::from_count(std::int64_t(first * 1000));
        if (unit != "V" || !(words >> second >> of) || of != "W" || second < 0.001 || second > 100'000) continue;
        return standards::load_on_line(standards::Voltage::from_count(std::int64_t(first * 1e6)),
                                       base::Power::from_count(std::int64_t(second * 1000)));
    }
    return std::nullopt;
}

std::optional<LineLosses> of_loudspeaker(const graph::Wiring& wiring, const graph::Run& run) {
    const bool a_hears = wiring.port_type(*run.a).way == catalogue::Way::in;
    const auto load = load_of(wiring, a_hears ? *run.a : *run.b);
    if (!load || load->count() <= 0) return std::nullopt;
    Resistance loop;
    base::Length length;
    for (const int index : run.cables) {
        const auto& cable = wiring.cables[static_cast<std::size_t>(index)];
        const auto part = length_of(cable);
        if (!part || !cable.type || !cable.type->conductor_mm2_tenths) return std::nullopt;
        const auto conductor =
            standards::CrossSection::from_count(std::int64_t{*cable.type->conductor_mm2_tenths} * 100);
        loop += standards::loop_resistance(*part, conductor);
        length += *part;
    }
    const auto loss = standards::line_loss(*load, loop);
    LineLosses losses{"loudspeaker line",
                      loss,
                      standards::line_loss_target,
                      standards::line_loss_target,
                      false,
                      {},
                      standards::line_loss_target_source};
    losses.terms.push_back(
        {STREAMWRIGHT_TEXT("loop of %1: %2 ohm before %3 ohm: 20 x log10((%3 + %2) / %3) = %4"),
         {length, base::print_decimal(loop.count(), 3), base::print_decimal(load->count(), 3), loss}});
    return losses;
}

}  // namespace line_losses_detail

bool loses_by_length(const graph::Wiring& wiring, const graph::Run& run) {
    using namespace line_losses_detail;
    if (!run.a || !run.b) return false;
    const auto signal = wiring.port_type(*run.a).signal;
    if (signal != catalogue::Signal::video && signal != catalogue::Signal::audio) return false;
    return std::all_of(run.cables.begin(), run.cables.end(), [&](int index) {
        const auto* type = wiring.cables[static_cast<std::size_t>(index)].type;
        return type && (!type->coax_losses.empty() || type->conductor_mm2_tenths);
    });
}

std::optional<LineLosses> line_losses(const graph::Wiring& wiring, const graph::Run& run) {
    using namespace line_losses_detail;
    if (!run.a || !run.b || run.cables.empty()) return std::nullopt;
    const auto signal = wiring.port_type(*run.a).signal;
    std::optional<LineLosses> losses;
    if (signal == catalogue::Signal::video) losses = of_sdi(wiring, run);
    if (signal == catalogue::Signal::audio) losses = of_loudspeaker(wiring, run);
    if (!losses) return losses;
    for (const auto& limit : wiring.design.settings().cabling.lines)
        if (limit.line == losses->line && limit.loss) {
            losses->careful = losses->most = *limit.loss;
            losses->set = true;
        }
    return losses;
}

}  // namespace streamwright::analysis
