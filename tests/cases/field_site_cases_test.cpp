// Field cases of racks and signals, each as a small design with the whole set of what must be found in
// it and nothing else. The rows, their figures and their sources stand in tests/reference/field-cases.csv.
#include "tests/cases/field_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::field_site_cases_test {

using catalogue::Connector;
using catalogue::Signal;
using catalogue::Way;
using testing::HasSubstr;
using namespace base::literals;

// Units occupy [U, U+h-1]: (2,4) and (3,4) overlap in U3 to U5, (2,4) and (6,1) nowhere.
TEST(FieldCases, F39RackClash) {
    for (const int unit : {6, 3}) {
        FieldRoom room;
        const auto rack = room.b.rack("North A");
        auto type = types::make_rack_type();
        type.key = {"four-units"};
        type.kind = catalogue::DeviceKind::amplifier;
        type.size.rack_units = 4;
        const auto mount = [&](const std::string& tag, int at) {
            room.b.change<model::Device>(room.b.device(type, tag), [&](auto& row) {
                row.rack = model::RackPlace{rack, at};
            });
        };
        mount("AMP-1", 2);
        mount("AMP-2", unit);
        EXPECT_EQ(found_by_rule(room.b.design), unit == 6 ? Found{} : (Found{{"rack-unit-clash", 1}}));
        if (unit == 3) {
            EXPECT_THAT(sentence(room, "rack-unit-clash"), HasSubstr("U3 to U5"));
        }
    }
}

/// A bitstream to two decoders, one before a surround receiver and one before a television of two channels.
FieldRoom surround(catalogue::AudioFormat sent, bool downmix) {
    FieldRoom room;
    const auto bridge = room.add_switch("SW-1");
    room.querier(bridge);
    const auto stream = room.encoder(bridge, 200_Mbps);
    room.b.change<model::Stream>(stream, [&](auto& row) { row.audio = sent; });
    using catalogue::AudioFormat;
    const std::vector<AudioFormat> all{AudioFormat::stereo_pcm, AudioFormat::multichannel_pcm,
                                       AudioFormat::compressed_surround},
        two{AudioFormat::stereo_pcm};
    for (const auto& taken : {all, two}) {
        auto decoder = types::make_decoder();
        decoder.key = {"hears"};
        decoder.codec->downmix = downmix;
        auto display = types::make_display();
        display.key = {taken.size() == 1 ? "television" : "receiver"};
        display.ports[0].audio = taken;
        const auto there = room.b.device(decoder, "DEC-of-" + display.key.text);
        const auto sink = room.b.device(display, display.key.text);
        room.b.cable(types::hdmi(), port_of(there, "out"), port_of(sink, "in"), 2_m);
        room.b.cable(types::cat6a(), port_of(there, "net"), room.next_port(bridge), 20_m);
        room.b.subscribe(room.preset, stream, there);
    }
    return room;
}

TEST(FieldCases, F43CompressedSurroundToTwoChannels) {
    using catalogue::AudioFormat;
    const auto silent = surround(AudioFormat::compressed_surround, false);
    EXPECT_EQ(found_by_rule(silent.b.design), (Found{{"surround-without-downmix", 1}}));
    EXPECT_THAT(sentence(silent, "surround-without-downmix"), HasSubstr("television"));
    EXPECT_EQ(found_by_rule(surround(AudioFormat::stereo_pcm, false).b.design), Found{});
    EXPECT_EQ(found_by_rule(surround(AudioFormat::compressed_surround, true).b.design), Found{});
}

/// A USB session; a computer or a keyboard at either end.
FieldRoom usb_session(bool host_at_encoder, bool host_at_decoder) {
    FieldRoom room;
    const auto bridge = room.add_switch("SW-1");
    room.querier(bridge);
    const auto both_sides = [](catalogue::DeviceType type, const std::string& key) {
        type.key = {key};
        std::erase_if(type.ports, [](const auto& port) { return port.signal == Signal::usb; });
        type.ports.push_back(types::make_port("b", Signal::usb, Way::usb_device, Connector::usb_b));
        type.ports.push_back(types::make_port("a", Signal::usb, Way::usb_host, Connector::usb_a));
        type.codec->inputs.push_back({{"usb"}, "USB", catalogue::StreamKind::usb});
        return std::make_shared<const catalogue::DeviceType>(type);
    };
    const auto stream = room.encoder(bridge, 20_Mbps);
    room.b.embed(both_sides(types::make_encoder(), "desk-encoder"));
    room.b.change<model::Device>(room.last_encoder, [](auto& row) { row.type = {"desk-encoder"}; });
    room.b.change<model::Stream>(stream, [](auto& row) { row.kind = catalogue::StreamKind::usb; });
    const auto decoder = room.decoder(bridge, {}, both_sides(types::make_decoder(), "desk-decoder"));
    room.b.subscribe(room.preset, stream, decoder, "usb");
    catalogue::DeviceType keys;
    keys.key = {"keyboard"}, keys.name = "Keyboard", keys.maker = "Generic";
    keys.ports = {types::make_port("usb", Signal::usb, Way::usb_device, Connector::usb_b)};
    int n = 0;
    for (const auto& [end, host] :
         {std::pair{room.last_encoder, host_at_encoder}, std::pair{decoder, host_at_decoder}}) {
        const auto tag = (host ? "PC-" : "KB-") + std::to_string(++n);
        const auto thing = host ? room.b.device(types::source(), tag) : room.b.device(keys, tag);
        const auto socket = port_of(end, host ? "b" : "a");
        room.b.cable(types::usb_lead(), host ? port_of(thing, "usb") : socket, host ? socket : port_of(thing, "usb"),
                     2_m);
    }
    return room;
}

TEST(FieldCases, F44UsbTheWrongWayRound) {
    EXPECT_EQ(found_by_rule(usb_session(true, true).b.design), (Found{{"kvm-sides", 1}}));
    EXPECT_EQ(found_by_rule(usb_session(false, false).b.design), (Found{{"kvm-sides", 1}}));
    EXPECT_EQ(found_by_rule(usb_session(true, false).b.design), Found{});
    EXPECT_EQ(found_by_rule(usb_session(false, true).b.design), Found{});
}

// A set-top box in the rack takes IR; its encoder has no IR port, the decoder in the room has one.
TEST(FieldCases, F45InfraredMissingWhereTheDeviceIs) {
    FieldRoom room;
    const auto bridge = room.add_switch("SW-1");
    room.querier(bridge);
    auto ir = types::make_port("ir", Signal::control, Way::out, Connector::ir_jack);
    ir.standards = {"IR"};
    auto decoder = types::make_decoder();
    decoder.key = {"decoder-with-ir"};
    decoder.ports.push_back(ir);
    const auto stream = room.encoder(bridge, 200_Mbps);
    const auto shown = room.decoder(bridge, stream, std::make_shared<const catalogue::DeviceType>(decoder));
    auto box = types::make_source();
    box.key = {"set-top-box"};
    box.controlled_by = {catalogue::ControlMethod::ir};
    room.b.embed(std::make_shared<const catalogue::DeviceType>(box));
    const auto comms = room.b.room("0.10", "Comms room"), hall = room.b.room("1.01", "Hall");
    for (const auto& device : room.b.design.devices)
        if (device.tag.starts_with("SRC"))
            room.b.change<model::Device>(device.id, [&](auto& row) {
                row.type = box.key;
                row.room = comms;
            });
    room.b.change<model::Device>(room.last_encoder, [&](auto& row) { row.room = comms; });
    room.b.change<model::Device>(shown, [&](auto& row) { row.room = hall; });
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"control-port-missing", 1}}));
}

TEST(FieldCases, F51OneTagTwice) {
    FieldRoom room;
    const auto near = room.add_switch("SW-A"), far = room.add_switch("SW-B");
    room.trunk(near, far);
    room.querier(near);
    room.decoder(far, room.encoder(near, 200_Mbps));
    room.b.change<model::Device>(far, [](auto& row) { row.tag = "SW-A"; });
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"duplicate-tag", 1}}));
}

}  // namespace streamwright::test::field_site_cases_test
