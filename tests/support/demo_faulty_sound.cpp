// The faulty design's faults of sound and of USB, on a sheet of their own.
#include "tests/support/demo_faulty.h"

namespace streamwright::test::demo_faulty_detail {

namespace {

using namespace base::literals;

/// A loudspeaker without a lead; two processors that feed each other; a microphone on a line input.
void leads(Faulty& f) {
    f.device("speaker-active", "SPK-951");
    const auto one = f.device("audio-processor", "DSP-A-952"), two = f.device("audio-processor", "DSP-A-953");
    f.make.cable("audio-line", one, "out-1", two, "in-1", 3);
    f.make.cable("audio-line", two, "out-1", one, "in-1", 3);
    f.make.cable("audio-xlr-5m", f.device("microphone-lectern", "MIC-954"), "audio-out",
                 f.device("speaker-active", "SPK-954"), "audio-in");
}

/// A display that thinks for a long time beside a loudspeaker that does not.
void late_picture(Faulty& f) {
    f.variant("display-55", "slow-display", "Display that takes 140 ms", [](auto& type) { type.delay = 140_ms; });
    const auto player = f.device("media-player", "MP-955");
    f.make.cable("hdmi-2m", player, "hdmi-out", f.device("slow-display", "DSP-955"), "hdmi-in-1");
    f.make.cable("audio-xlr-5m", player, "audio-out", f.device("speaker-active", "SPK-955"), "audio-in");
}

/// A camera of 995 Mb/s on USB 2.0; a keyboard behind two docks of three hubs each; a laptop on a weak charger.
void usb(Faulty& f) {
    f.variant("camera-usb", "old-camera-usb", "Conference camera, USB 2.0", [](auto& type) {
        type.ports[0].connector = catalogue::Connector::usb_b;
        type.ports[0].standards = {"USB 2.0"};
    });
    f.variant("keyboard-mouse", "dock", "Dock with two sockets", [](auto& type) {
        auto socket = type.ports[0];
        socket.way = catalogue::Way::usb_host;
        socket.connector = catalogue::Connector::usb_a;
        socket.usb.reset();
        type.ports[0].usb.reset();
        for (const char* key : {"usb-1", "usb-2"}) {
            socket.key = {key};
            socket.label = key;
            type.ports.push_back(socket);
        }
        type.usb_hubs = 3;
    });
    f.variant("keyboard-mouse", "weak-charger", "USB-C socket of the table", [](auto& type) {
        type.ports[0].connector = catalogue::Connector::usb_c;
        type.ports[0].usb = catalogue::UsbPort{{}, false, 15_W, {}};
    });
    const auto computer = f.device("pc", "PC-956");
    f.make.cable("usb-a-b-2m", computer, "usb-1", f.device("old-camera-usb", "CAM-956"), "usb");
    const auto first = f.device("dock", "DOCK-957"), second = f.device("dock", "DOCK-958");
    f.make.cable("usb-a-b-2m", computer, "usb-2", first, "usb");
    f.make.cable("usb-a-b-2m", first, "usb-1", second, "usb");
    f.make.cable("usb-a-b-2m", second, "usb-1", f.device("keyboard-mouse", "KM-958"), "usb");
    f.make.cable("usb-c-c-1m", f.device("laptop-usb-c", "LP-959"), "usb-c-data", f.device("weak-charger", "TBL-959"),
                 "usb");
}

/// A dock and a keyboard at a decoder that carries one USB device.
void crowded_session(Faulty& f) {
    f.variant("tern-decoder", "one-device-decoder", "Decoder for a desk, one USB device", [](auto& type) {
        type.codec->inputs.push_back({{"usb"}, "USB", catalogue::StreamKind::usb});
        type.codec->usb->devices = 1;
    });
    const auto near = f.make.tagged("SW-902");
    const auto encoder = f.encoder("tern-encoder", "979", "239.192.9.79", near, "7");
    f.make.cable("usb-a-b-2m", f.make.tagged("LP-979"), "usb-b", encoder, "usb-host");
    auto row = *f.make.design().streams.find(f.streams.at("979"));
    row.kind = catalogue::StreamKind::usb;
    row.payload_rate = base::BitRate::from_count(5000000);
    f.make.run(model::SetStream{row});
    const auto decoder = f.decoder("one-device-decoder", "979", near, "8");
    const auto dock = f.device("dock", "DOCK-979");
    f.make.cable("usb-a-b-2m", decoder, "usb-a", dock, "usb");
    f.make.cable("usb-a-b-2m", dock, "usb-1", f.device("keyboard-mouse", "KM-979"), "usb");
    f.make.show(f.preset, decoder, row.id, "usb");
}

/// One half of an older extender and one of a newer.
void odd_halves(Faulty& f) {
    f.variant("extender-receiver", "newer-receiver", "Extender receiver, newer link",
              [](auto& type) { type.ports[0].standards = {"Ferry link 2"}; });
    const auto sender = f.device("extender-sender", "TX-980"), receiver = f.device("newer-receiver", "RX-980");
    f.make.cable("hdmi-2m", f.device("laptop-plate", "LP-980"), "hdmi-out", sender, "hdmi-in");
    f.make.cable("extender-cat6a", sender, "link", receiver, "link", 20);
    f.make.cable("hdmi-2m", receiver, "hdmi-out", f.device("display-24", "MON-980"), "hdmi-in");
}

}  // namespace

void sound_faults(Faulty& f) {
    leads(f);
    late_picture(f);
    usb(f);
    crowded_session(f);
    odd_halves(f);
}

void sound_fault_sheet(Faulty& f) {
    SheetPlan plan(f.make, f.make.sheet(9, "Faulty design", "sound and USB", model::PaperSize::a2));
    plan.rows({80, 180, 280, 380}, 60,
              {{"SPK-951"},
               {"DSP-A-952", "DSP-A-953"},
               {"MIC-954", "SPK-954"},
               {"MP-955", "DSP-955", "SPK-955"},
               {"PC-956", "CAM-956"},
               {"DOCK-957", "DOCK-958", "KM-958"},
               {"LP-959", "TBL-959"}},
              10);
    plan.rows({410, 500}, 60,
              {{"LP-979", "ENC-979"},
               {"DEC-979", "MON-979"},
               {"DOCK-979", "KM-979"},
               {"LP-980", "TX-980"},
               {"RX-980", "MON-980"}},
              10);
    plan.finish();
}

}  // namespace streamwright::test::demo_faulty_detail
