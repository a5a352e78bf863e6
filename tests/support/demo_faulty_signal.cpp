// The faulty design's faults of signals, on plates and on a sheet of their own.
#include "tests/support/demo_faulty.h"

namespace streamwright::test::demo_faulty_detail {

namespace {

/// An endpoint that faces a computer or peripherals, never both, and has cables to both.
void usb_roles(Faulty& f) {
    const auto endpoint = f.device("basalt-endpoint", "EP-971");
    const auto computer = f.device("pc", "PC-971");
    f.make.role(endpoint, Role::encoder);
    f.make.cable("hdmi-2m", computer, "hdmi-out-1", endpoint, "hdmi-in");
    f.make.cable("usb-a-b-2m", computer, "usb-1", endpoint, "usb-b");
    f.make.cable("usb-a-b-2m", endpoint, "usb-a-1", f.device("keyboard-mouse", "KM-971"), "usb");
}

/// A computer at one end of a USB session, and the peripherals forgotten at the other.
void lone_host(Faulty& f) {
    auto type = *f.make.device_type("tern-decoder");
    type.key = {"desk-decoder"};
    type.name = "Decoder for a desk, with USB input";
    type.codec->inputs.push_back({{"usb"}, "USB", catalogue::StreamKind::usb});
    f.make.run(model::EmbedTypes{{std::make_shared<const catalogue::DeviceType>(type)}, {}});
    const auto near = f.make.tagged("SW-902");
    const auto encoder = f.encoder("tern-encoder", "972", "239.192.9.72", near, "15");
    f.make.cable("usb-a-b-2m", f.make.tagged("LP-972"), "usb-b", encoder, "usb-host");
    auto row = *f.make.design().streams.find(f.streams.at("972"));
    row.kind = catalogue::StreamKind::usb;
    row.payload_rate = base::BitRate::from_count(5000000);  // a keyboard and a mouse; beside a picture it fits
    f.make.run(model::SetStream{row});
    f.make.show(f.preset, f.decoder("desk-decoder", "972", near, "16"), row.id, "usb");
}

/// Surround sound for a decoder that passes it on as it is, to a monitor of two channels.
void surround(Faulty& f) {
    auto row = *f.make.design().streams.find(f.streams.at("911"));
    row.audio = catalogue::AudioFormat::compressed_surround;
    f.make.run(model::SetStream{row});
}

/// A tuner that takes IR only, in a room of its own, on an encoder without an IR port.
void lone_tuner(Faulty& f) {
    const auto side = f.make.room("9.02", "Side room", "9");
    const auto tuner = f.make.device("tv-tuner", "TVT-976", side);
    const auto encoder = f.make.device("skiff-encoder", "ENC-976", side);
    f.make.cable("hdmi-2m", tuner, "hdmi-out", encoder, "hdmi-in");
    f.make.cable("copper-cat6a", encoder, "net", f.make.tagged("SW-903"), "15", 40);
}

/// Two decoders on one switch port, the second through the first, each with a stream that fills most of the port.
void chain(Faulty& f) {
    auto type = *f.make.device_type("tern-decoder");
    type.key = {"chain-decoder"};
    type.name = "Decoder with a port for the next one";
    auto next = *type.find_port({"net"});
    next.key = {"next"};
    next.label = "Next decoder";
    next.auxiliary = true;
    next.poe.reset();
    type.ports.push_back(next);
    type.power = f.make.device_type("basalt-endpoint")->power;  // the port for the next one gives no power
    type.bridging = f.make.device_type("basalt-endpoint")->bridging;
    type.bridging->snooping = false;
    f.make.run(model::EmbedTypes{{std::make_shared<const catalogue::DeviceType>(type)}, {}});
    const auto near = f.make.tagged("SW-902");
    const auto first = f.decoder("chain-decoder", "977", near, "17");
    const auto second = f.device("chain-decoder", "DEC-978");
    f.make.cable("hdmi-2m", second, "hdmi-out", f.device("display-24", "MON-978"), "hdmi-in");
    f.make.cable("patch-cat6a-3m", first, "next", second, "net");
    f.show("977", "901");
    f.show("978", "902");
}

}  // namespace

void signal_faults(Faulty& f) {
    usb_roles(f);
    lone_host(f);
    surround(f);
    lone_tuner(f);
    chain(f);
}

void signal_fault_sheet(Faulty& f) {
    SheetPlan plan(f.make, f.make.sheet(3, "Faulty design", "USB, control, a chain", model::PaperSize::a2));
    plan.rows({100, 190, 280}, 60,
              {{"PC-971", "EP-971", "KM-971"},
               {"LP-972", "ENC-972"},
               {"DEC-972", "MON-972"},
               {"TVT-976", "ENC-976"},
               {"DEC-977", "MON-977"},
               {"DEC-978", "MON-978"}},
              10);
    plan.finish();
}

}  // namespace streamwright::test::demo_faulty_detail
