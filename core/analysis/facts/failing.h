// What can fail in a design, one thing at a time, and what each takes with it: whatever it alone feeds with power, the
// cards of a chassis, all cables of a duct.
#pragma once

#include "core/analysis/facts/power_budget.h"
#include "core/graph/network_cut.h"

#include <string>
#include <vector>

namespace streamwright::analysis {

enum class FailingKind {
    link,    // a run of cables between two switches, or two built-in switches
    access,  // a run of cables to one device, or between two devices
    device,  // a switch, a member of a stack, an endpoint with a built-in switch, a chassis with cards
    power,   // what feeds other devices: a UPS
    duct     // all cables of one named way
};

struct Failing {
    FailingKind kind = FailingKind::link;
    int cable = -1;    // of link and access: the first of the run, by index
    int device = -1;   // of device and power, by index
    std::string duct;  // of duct
    graph::Lost lost;
    friend bool operator==(const Failing&, const Failing&) = default;
};

/// What feeds each device, as far as it is drawn. A device with mains leads lives as long as one of their far ends
/// does; a device without a mains inlet or a supply of its own as long as one port feeds it by PoE.
class Feeds {
public:
    Feeds(const graph::Wiring& wiring, const graph::Runs& runs, const PowerBudget& power);
    /// Adds what dies with it: devices whose last feed is lost, and cards of lost chassis.
    graph::Lost with_all_it_feeds(graph::Lost lost) const;
    bool feeds_by_mains(int device) const { return !fed_by_mains_[static_cast<std::size_t>(device)].empty(); }
    bool holds_cards(int device) const { return !cards_[static_cast<std::size_t>(device)].empty(); }

private:
    static std::size_t at(int index) { return static_cast<std::size_t>(index); }
    struct Feed {
        int feeder = 0;
        std::vector<int> cables;
    };
    bool starved(int device, const graph::Lost& lost) const;
    std::vector<std::vector<Feed>> feeds_;        // per device
    std::vector<std::vector<int>> fed_by_mains_;  // per device: whom it feeds
    std::vector<std::vector<int>> fed_;           // per device: the same, and by PoE
    std::vector<std::vector<int>> fed_over_;      // per cable
    std::vector<std::vector<int>> cards_;         // per device
};

/// By kind, then by cable, device or name of the duct. Devices that only end a cable are not listed: their cable stands
/// for them.
std::vector<Failing> list_failing(const graph::Wiring&, const graph::Runs&, const graph::NetworkGraph&,
                                  const PowerBudget&);

}  // namespace streamwright::analysis
