// What the network drawing says, apart from where it stands: switches, the links between them with the load of each
// direction, VLANs; every word and figure ready to print.
#pragma once

#include "core/analysis/load_words.h"
#include "core/catalogue/device_type.h"

#include <string>
#include <vector>

namespace streamwright::deliver {

struct NetworkSwitch {
    std::string subject;  // "device:0123456789ab"
    std::string tag, type;
    const catalogue::DeviceType* mark = nullptr;  // whose role mark it bears; null: none known
    std::vector<std::string> marks;               // "Root", "Querier 20"
    std::string setting;                          // bridge priority and VLANs
    std::string endpoints, others;                // how many behind its access ports, and how full the fullest is
    bool port_overfull = false;                   // that port is to carry more than it can
    std::string further;                          // links that are drawn at their other end: "also F007 to SW-N1"
};

struct LoadFigure {
    std::string rate;     // "not known" where it is not
    std::string percent;  // empty where the capacity is not known
    analysis::Fill fill = analysis::Fill::fits;
    std::int64_t tenths = 0;  // of a percent
};

/// One way over a link.
struct Direction {
    std::string to, port;      // the switch it reaches, and by which port
    LoadFigure preset, worst;  // of the first preset, of any allowed routing
    bool agreed = false;       // `worst` is that of the routings that keep to what is agreed for the link
    const LoadFigure& greater() const { return worst.tenths > preset.tenths ? worst : preset; }
};

struct NetworkLink {
    std::string subject;        // "cable:0123456789ab": the cable that names it
    int a = 0, b = 0;           // indices of switches
    std::string tag, capacity;  // "F004 + F005"; "2 x 10 Gb/s, 10GBASE-LR", or "no link"
    std::string agreement;      // "at most 4 sources, IT, 2026-11-20"; empty: none
    std::string state;          // "blocked at SW-S1", "carries no VLAN"; empty: nothing to say
    bool a_blocks = false, b_blocks = false;
    bool is_up = true, carries = true;  // has a speed in common; some VLAN is forwarded by both ends
    bool group = false;
    Direction to_a, to_b;
};

struct VlanWords {
    std::string number, name, root, querier, blocked;
};

struct NetworkView {
    std::vector<NetworkSwitch> switches;  // by tag, as people count
    std::vector<NetworkLink> links;       // by the id of their cable
    std::vector<int> roots;               // switches that are the root of some VLAN
    std::vector<VlanWords> vlans;
    std::vector<std::string> notes;  // what has no place in the drawing
    std::string load_word;           // "preset", or "idle" in a design without presets
    std::string load_title;          // "preset Lecture"
    int headroom_percent = 80;
};

}  // namespace streamwright::deliver
