// The faulty design's faults of streams on their way: a small island of its own, in a VLAN of its own, whose switch
// takes standard frames only, whose sender is faster than what follows, whose trunk is a group that may put all on one
// member, whose receiver joins one group, and whose subnet has two addresses.
#include "tests/support/demo_faulty.h"

#include <functional>

namespace streamwright::test::demo_faulty_detail {

namespace {

std::string changed(Faulty& f, const std::string& from, const std::string& key, const std::string& name,
                    const std::function<void(catalogue::DeviceType&)>& change) {
    auto type = *f.make.device_type(from);
    type.key = {key};
    type.name = name;
    change(type);
    f.make.run(model::EmbedTypes{{std::make_shared<const catalogue::DeviceType>(type)}, {}});
    return key;
}

void set_rate(catalogue::DeviceType& type, const std::string& key, std::int64_t rate) {
    for (auto& port : type.ports)
        if (port.key.text == key) port.rates.push_back(base::BitRate::from_count(rate));
}

/// JPEG XS of 55 Mb/s, for a decoder that takes uncompressed pictures alone.
void pack(Faulty& f, model::StreamId id) {
    auto row = *f.make.design().streams.find(id);
    row.payload_rate = {};
    row.picture = model::PictureEssence{.coding = standards::PictureCoding::jpeg_xs,
                                        .format = standards::parse_video_format("720p60 4:2:2 10-bit").value(),
                                        .millibits_per_pixel = 1000};
    f.make.run(model::SetStream{row});
}

/// A device of network audio that sends one flow too many, to one that takes packets of 125 us alone.
void flows(Faulty& f, DeviceId bridge, model::VlanId vlan) {
    const auto box = [&](const std::string& key, const std::string& name, const catalogue::SoundFlows& flows) {
        f.variant("audio-network-interface", key, name, [&](auto& type) { type.codec->sound_flows = flows; });
    };
    box("one-flow", "Network audio interface of one flow", {{"A"}, false, 1, 1});
    box("fast-flows", "Network audio interface of level B", {{"B"}, false, 2, 2});
    const auto sender = f.device("one-flow", "NA-961"), receiver = f.device("fast-flows", "NA-962");
    f.make.cable("copper-cat6a", sender, "net", bridge, "4", 20);
    f.make.cable("copper-cat6a", receiver, "net", bridge, "5", 20);
    for (const char* port : {"4", "5"})
        f.make.configure_port(bridge, port, [&](PortOverride& row) { row.untagged = vlan; });
    const standards::AudioStream stereo;
    f.make.show(f.preset, receiver, f.make.sound_flow(sender, "S-961", "239.192.9.61", stereo));
    f.make.sound_flow(sender, "S-962", "239.192.9.62", stereo);
}

/// Small enough beside the port's speed; its packets too large for the switch.
model::StreamId slow_stream(Faulty& f, model::StreamId id, int payload_octets) {
    auto row = *f.make.design().streams.find(id);
    row.payload_rate = base::BitRate::from_count(60000000);
    row.payload_octets = payload_octets;
    f.make.run(model::SetStream{row});
    return id;
}

}  // namespace

void stream_faults(Faulty& f) {
    const auto vlan = f.make.vlan(50, "AV fifth", model::VlanPurpose::av, "10.90.4.0/30");
    const auto small =
        changed(f, "switch-access-8-poe", "switch-small-frames", "Switch for standard frames", [](auto& t) {
            t.bridging->frame_limit = 1518;
            set_rate(t, "1", 10000000000);
        });
    const auto fast = changed(f, "tern-encoder", "fast-encoder", "Encoder on 10 Gb/s copper",
                              [](auto& t) { set_rate(t, "net", 10000000000); });
    const auto windows = changed(f, "tern-decoder", "window-decoder", "Decoder of two inputs, one shown", [](auto& t) {
        t.codec->inputs.push_back({{"second"}, "Second picture", catalogue::StreamKind::video});
        t.codec->most_groups = 1;
        t.most_windows = 1;
        t.codec->packed.codings = {standards::PictureCoding::uncompressed};
    });
    const auto bridge = f.device(small, "SW-995");
    f.make.configure(bridge, [&](model::Device& row) {
        row.bridging.priority = 4096;
        row.bridging.queriers = {{vlan, base::parse_ipv4("10.90.4.1")}};
    });
    const auto encoder = f.encoder(fast, "995", "239.192.9.95", bridge, "1");
    const auto far = f.device("switch-access-8-poe", "SW-996");
    for (const char* port : {"7", "8"}) {
        f.make.cable("copper-cat6a", bridge, port, far, port, 20);
        for (const auto id : {bridge, far})
            f.make.configure_port(id, port, [&](PortOverride& row) {
                row.untagged = vlan;
                row.aggregate = "uplink";
                row.rate_limit = base::BitRate::from_count(100000000);
            });
    }
    const auto decoder = f.decoder(windows, "995", far, "2");
    f.make.configure_port(far, "2", [&](PortOverride& row) { row.untagged = vlan; });
    f.make.cable("copper-cat6a", f.device("control-processor", "CP-995"), "lan", bridge, "3", 20);
    for (const char* port : {"1", "3"})
        f.make.configure_port(bridge, port, [&](PortOverride& row) { row.untagged = vlan; });
    pack(f, f.streams.at("995"));
    f.make.show(f.preset, decoder, f.streams.at("995"));
    f.make.show(f.preset, decoder, slow_stream(f, f.make.stream(encoder, "S-996", "239.192.9.96"), 4000), "second");
    flows(f, bridge, vlan);
}

void stream_fault_sheet(Faulty& f) {
    SheetPlan plan(f.make, f.make.sheet(6, "Faulty design", "streams on their way", model::PaperSize::a2));
    plan.rows({60, 150}, 60, {{"LP-995", "ENC-995"}, {"", "CP-995"}}, 10);
    plan.put("SW-995", 240, 60);
    plan.put("SW-996", 330, 60);
    plan.rows({240, 330}, 125, {{"NA-961", "NA-962"}}, 10);
    plan.rows({420, 500}, 60, {{"DEC-995", "MON-995"}}, 10);
    plan.finish();
}

}  // namespace streamwright::test::demo_faulty_detail
