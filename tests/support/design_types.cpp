// The tiny invented types of DesignBuilder.
#include "tests/support/design_builder.h"

#include <algorithm>

namespace streamwright::test::types {

namespace cat = streamwright::catalogue;
using namespace base::literals;

cat::PortType make_port(const std::string& key, cat::Signal signal, cat::Way way, cat::Connector connector) {
    cat::PortType port;
    port.key = {key};
    port.label = key;
    port.signal = signal;
    port.way = way;
    port.connector = connector;
    return port;
}

cat::PortType make_network_port(const std::string& key, std::vector<base::BitRate> rates) {
    auto port = make_port(key, cat::Signal::copper, cat::Way::both, cat::Connector::rj45);
    port.rates = std::move(rates);
    return port;
}

namespace {

cat::DeviceType test_type(const std::string& key, const std::string& name, cat::DeviceKind kind,
                          const std::string& prefix) {
    cat::DeviceType type;
    type.key = {key};
    type.name = name;
    type.maker = "Generic";
    type.kind = kind;
    type.tag_prefix = prefix;
    return type;
}

cat::PortType video_port(const std::string& key, cat::Way way) {
    return make_port(key, cat::Signal::video, way, cat::Connector::hdmi);
}

cat::PortType powered_network_port(const std::string& key) {
    auto port = make_network_port(key, {100_Mbps, 1_Gbps});
    port.poe = cat::PoePort{cat::PoeSide::takes, 3, 12950_mW};
    return port;
}

cat::Codec test_codec(std::vector<cat::Role> roles) {
    cat::Codec codec;
    codec.family = "light";
    codec.roles = std::move(roles);
    codec.usual_rate = 800_Mbps;
    codec.most_rate = 900_Mbps;
    codec.payload_octets = 1400;
    for (const auto role : codec.roles)
        if (role == cat::Role::decoder) codec.inputs = {{{"main"}, "Main", cat::StreamKind::video}};
    return codec;
}

std::vector<base::BitRate> copper_rates(base::BitRate most) {
    std::vector<base::BitRate> rates;
    for (const auto rate : {100_Mbps, 1_Gbps, 2500_Mbps, 5_Gbps, 10_Gbps})
        if (rate <= most) rates.push_back(rate);
    return rates;
}

cat::SwitchFacts stated_facts() {
    cat::SwitchFacts facts;
    facts.snooping = true;
    facts.unknown_groups = cat::UnknownGroups::router_ports;
    facts.lookup = cat::GroupLookup::ip;
    facts.floods_without_querier = false;
    facts.zero_query_makes_router_port = false;
    facts.queries_without_snooping = false;
    facts.fast_leave = true;
    facts.group_table_size = 1000;
    facts.vlan_limit = 255;
    facts.bpdus = cat::Bpdus::run;
    facts.trees = cat::TreeKind::common;
    facts.rapid_tree = true;
    facts.long_path_costs = true;
    facts.poe_budget = 740_W;
    facts.poe_by_class = true;
    facts.forwarding_latency = 4000_ns;
    facts.frame_limit = 9216;
    facts.aggregation_limit = 8;
    facts.stackable = false;
    return facts;
}

cat::CableType test_cable(const std::string& key, const std::string& name, cat::Signal signal, cat::CableUse use,
                          std::vector<cat::Connector> plugs) {
    cat::CableType type;
    type.key = {key};
    type.name = name;
    type.maker = "Generic";
    type.signal = signal;
    type.use = use;
    type.plugs = std::move(plugs);
    return type;
}

cat::CableType copper_cable(const std::string& key, const std::string& name, cat::CableUse use) {
    auto type = test_cable(key, name, cat::Signal::copper, use, {cat::Connector::rj45});
    type.medium = cat::Medium::balanced_copper;
    type.grade = cat::CableGrade::cat6a;
    type.screened = true;
    return type;
}

cat::CableType fibre_cable(const std::string& key, const std::string& name, cat::Medium medium, cat::CableGrade grade) {
    auto type = test_cable(key, name, cat::Signal::fibre, cat::CableUse::installed, {cat::Connector::lc_duplex});
    type.medium = medium;
    type.grade = grade;
    return type;
}

DevicePtr shared(cat::DeviceType type) { return std::make_shared<const cat::DeviceType>(std::move(type)); }
CablePtr shared(cat::CableType type) { return std::make_shared<const cat::CableType>(std::move(type)); }

}  // namespace

cat::DeviceType make_switch(int ports, base::BitRate rate, int cages) {
    const auto key = "test.switch." + std::to_string(ports) + '.' + std::to_string(rate.count() / 1000000) + '.' +
                     std::to_string(cages);
    auto type = test_type(key, "Switch, " + std::to_string(ports) + " ports", cat::DeviceKind::network_switch, "SW");
    for (int i = 1; i <= ports; ++i) {
        auto port = make_network_port(std::to_string(i), copper_rates(rate));
        port.poe = cat::PoePort{cat::PoeSide::supplies, 4, {}};
        type.ports.push_back(std::move(port));
    }
    for (int i = 1; i <= cages; ++i) {
        auto port = make_port('s' + std::to_string(i), cat::Signal::fibre, cat::Way::both, cat::Connector::sfp_plus);
        port.rates = {1_Gbps, 10_Gbps};
        type.ports.push_back(std::move(port));
    }
    type.bridging = stated_facts();
    type.size.rack_units = 1;
    type.power = cat::PowerNeed{60_W, base::ApparentPower::from_count(70000), false};
    return type;
}

cat::DeviceType make_encoder() {
    auto type = test_type("test.encoder", "Encoder", cat::DeviceKind::encoder, "ENC");
    type.ports = {video_port("in", cat::Way::in), video_port("loop", cat::Way::out), powered_network_port("net"),
                  make_port("audio", cat::Signal::audio, cat::Way::in, cat::Connector::terminal),
                  make_port("usb", cat::Signal::usb, cat::Way::usb_device, cat::Connector::usb_b)};
    type.ports[1].local_output = true;
    type.codec = test_codec({cat::Role::encoder});
    type.power = cat::PowerNeed{12_W, base::ApparentPower::from_count(15000), true};
    return type;
}

cat::DeviceType make_decoder() {
    auto type = test_type("test.decoder", "Decoder", cat::DeviceKind::decoder, "DEC");
    type.ports = {video_port("out", cat::Way::out), powered_network_port("net"),
                  make_port("usb", cat::Signal::usb, cat::Way::usb_host, cat::Connector::usb_a)};
    type.codec = test_codec({cat::Role::decoder});
    type.power = cat::PowerNeed{12_W, base::ApparentPower::from_count(15000), true};
    return type;
}

cat::DeviceType make_chained_decoder() {
    auto type = make_decoder();
    type.key = {"test.chained"};
    type.ports.push_back(make_network_port("aux", {1_Gbps}));
    type.bridging = stated_facts();
    type.bridging->poe_budget.reset();
    type.bridging->bpdus = cat::Bpdus::passed;
    return type;
}

cat::DeviceType make_endpoint() {
    auto type = test_type("test.endpoint", "Endpoint", cat::DeviceKind::endpoint, "EP");
    type.ports = {video_port("in", cat::Way::in), video_port("out", cat::Way::out), powered_network_port("net")};
    type.codec = test_codec({cat::Role::encoder, cat::Role::decoder});
    return type;
}

cat::DeviceType make_source() {
    auto type = test_type("test.source", "Source", cat::DeviceKind::source, "SRC");
    type.ports = {video_port("out", cat::Way::out),
                  make_port("usb", cat::Signal::usb, cat::Way::usb_host, cat::Connector::usb_a)};
    return type;
}

cat::DeviceType make_display() {
    auto type = test_type("test.display", "Display", cat::DeviceKind::display, "DSP");
    type.ports = {video_port("in", cat::Way::in)};
    return type;
}

cat::DeviceType make_patch_panel(int ports) {
    auto type = test_type("test.panel." + std::to_string(ports), "Patch panel", cat::DeviceKind::patch_panel, "PP");
    for (int i = 1; i <= ports; ++i) {
        auto front = make_port('f' + std::to_string(i), cat::Signal::copper, cat::Way::through, cat::Connector::rj45);
        auto rear = make_port('r' + std::to_string(i), cat::Signal::copper, cat::Way::through, cat::Connector::rj45);
        front.passes_to = rear.key;
        rear.passes_to = front.key;
        type.ports.push_back(std::move(front));
        type.ports.push_back(std::move(rear));
    }
    type.size.rack_units = 1;
    return type;
}

cat::DeviceType make_module(const std::string& phy) {
    const bool single = phy == "10GBASE-LR";
    auto type = test_type(single ? "test.module.10gbase-lr" : "test.module.10gbase-sr", "Module " + phy,
                          cat::DeviceKind::transceiver, "SFP");
    type.module = cat::ModuleFacts{cat::Connector::sfp_plus,
                                   phy,
                                   10_Gbps,
                                   single ? cat::Medium::singlemode : cat::Medium::multimode,
                                   cat::Connector::lc_duplex,
                                   single ? 1310 : 850,
                                   2};
    return type;
}

cat::DeviceType make_rack_type() {
    auto type = test_type("test.rack", "Rack, 42 units", cat::DeviceKind::rack, "RK");
    type.size.rack_units = 42;
    type.size.height = 2_m;
    type.size.width = 600_mm;
    type.size.depth = 800_mm;
    return type;
}

DevicePtr switch_24() { return shared(make_switch(24, 1_Gbps, 4)); }
DevicePtr encoder() { return shared(make_encoder()); }
DevicePtr decoder() { return shared(make_decoder()); }
DevicePtr endpoint() { return shared(make_endpoint()); }
DevicePtr source() { return shared(make_source()); }
DevicePtr display() { return shared(make_display()); }
DevicePtr patch_panel() { return shared(make_patch_panel(24)); }
DevicePtr module_sr() { return shared(make_module("10GBASE-SR")); }
DevicePtr module_lr() { return shared(make_module("10GBASE-LR")); }

CablePtr cat6a() { return shared(copper_cable("test.cat6a", "Cat 6A", cat::CableUse::installed)); }
CablePtr cat6a_lead() {
    auto type = copper_cable("test.cat6a.lead", "Cat 6A patch lead, 2 m", cat::CableUse::lead);
    type.made_length = 2_m;
    return shared(type);
}
CablePtr om3() { return shared(fibre_cable("test.om3", "OM3", cat::Medium::multimode, cat::CableGrade::om3)); }
CablePtr os2() { return shared(fibre_cable("test.os2", "OS2", cat::Medium::singlemode, cat::CableGrade::os2)); }
CablePtr hdmi() {
    return shared(
        test_cable("test.hdmi", "HDMI lead", cat::Signal::video, cat::CableUse::lead, {cat::Connector::hdmi}));
}
CablePtr usb_lead() {
    return shared(test_cable("test.usb", "USB lead", cat::Signal::usb, cat::CableUse::lead,
                             {cat::Connector::usb_a, cat::Connector::usb_b}));
}
CablePtr speaker_cable() {
    return shared(test_cable("test.audio", "Audio cable", cat::Signal::audio, cat::CableUse::installed,
                             {cat::Connector::terminal, cat::Connector::jack_3_5}));
}

cat::Catalogue all() {
    cat::Catalogue library;
    for (const auto& type : {decoder(), display(), encoder(), endpoint(), module_lr(), module_sr(), patch_panel(),
                             shared(make_rack_type()), source(), switch_24()})
        library.devices.push_back(*type);
    for (const auto& type : {speaker_cable(), cat6a(), cat6a_lead(), hdmi(), om3(), os2(), usb_lead()})
        library.cables.push_back(*type);
    const auto by_key = [](const auto& a, const auto& b) { return a.key < b.key; };
    std::sort(library.devices.begin(), library.devices.end(), by_key);
    std::sort(library.cables.begin(), library.cables.end(), by_key);
    return library;
}

}  // namespace streamwright::test::types
