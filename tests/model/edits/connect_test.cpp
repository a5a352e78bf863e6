#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;
namespace types = test::types;

struct Room1 {
    test::DesignBuilder b;
    DeviceId src = b.device(types::source(), "SRC-1");
    DeviceId enc = b.device(types::encoder(), "ENC-1");
    DeviceId dec = b.device(types::decoder(), "DEC-1");
    DeviceId dsp = b.device(types::display(), "DSP-1");
    DeviceId sw = b.device(types::switch_24(), "SW-1");
    DeviceId other = b.device(types::switch_24(), "SW-2");
    DeviceId panel = b.device(types::patch_panel(), "PP-1");

    std::string why_not(const PortRef& from, const PortRef& to) const {
        const auto error = refusal(b.design, from, to);
        return error ? error->english() : "";
    }
};

Connect lead(const types::CablePtr& type, std::optional<PortRef> a, std::optional<PortRef> b) {
    return {CableId(1), type, std::move(a), std::move(b), {}, {}, {}, {}};
}

TEST(Connect, DrawsACableWithTagAndBends) {
    Room1 r;
    auto edit = lead(types::cat6a(), PortRef{r.enc, {"net"}}, PortRef{r.sw, {"1"}});
    edit.sheet = r.b.sheet();
    edit.bends = {{1_mm, 2_mm}};
    edit.length = 30_m;
    const auto design = done(r.b.design, edit);
    const auto& cable = test::row_of<Cable>(design, CableId(1));
    EXPECT_EQ(cable.tag, "N001");
    EXPECT_EQ(cable.length, 30_m);
    EXPECT_EQ(design.cable_lines.find({*edit.sheet, CableId(1)})->bends, edit.bends);
    EXPECT_TRUE(design.cable_types.contains(edit.type->key));
}

TEST(Connect, TagsTakeTheLowestFreeNumber) {
    Room1 r;
    EXPECT_EQ(next_cable_tag(r.b.design, catalogue::Signal::copper), "N001");
    for (const auto* tag : {"N001", "N003", "V002", "N1000"}) {
        const auto id = r.b.open_cable(types::cat6a(), {r.sw, {"1"}});
        r.b.change<Cable>(id, [&](Cable& row) { row.tag = tag; });
    }
    EXPECT_EQ(next_cable_tag(r.b.design, catalogue::Signal::copper), "N002");
    EXPECT_EQ(next_cable_tag(r.b.design, catalogue::Signal::video), "V001");
    for (int i = 1; i < 1000; ++i) {
        const auto id = r.b.open_cable(types::cat6a(), {r.sw, {"1"}});
        r.b.change<Cable>(id, [&](Cable& row) { row.tag = 'N' + std::to_string(i); });
    }
    EXPECT_EQ(next_cable_tag(r.b.design, catalogue::Signal::copper), "N1001");
}

TEST(Connect, KeepsTheDesignsOwnCopyOfAType) {
    Room1 r;
    auto changed = *types::cat6a();
    changed.name = "newer";
    r.b.embed(types::cat6a());
    const auto design = done(
        r.b.design, lead(std::make_shared<const catalogue::CableType>(changed), PortRef{r.enc, {"net"}}, std::nullopt));
    EXPECT_EQ(design.cable_types.find(changed.key)->type->name, types::cat6a()->name);
}

TEST(Connect, DrawsWhatWillNotWorkSoThatRulesSpeak) {
    Room1 r;
    done(r.b.design, lead(types::hdmi(), PortRef{r.src, {"out"}}, PortRef{r.enc, {"loop"}}));  // output to output
    done(r.b.design, lead(types::cat6a(), PortRef{r.src, {"out"}}, PortRef{r.sw, {"1"}}));     // video to network
    const auto once = done(r.b.design, lead(types::hdmi(), PortRef{r.src, {"out"}}, PortRef{r.enc, {"in"}}));
    auto again = lead(types::hdmi(), PortRef{r.src, {"out"}}, PortRef{r.dsp, {"in"}});  // port used twice
    again.id = CableId(2);
    done(once, again);
}

TEST(Connect, RefusesWhatMeansNothing) {
    Room1 r;
    const PortRef out{r.src, {"out"}}, in{r.enc, {"in"}};
    EXPECT_SAYS(refused(r.b.design, lead(nullptr, out, in)), "needs a type");
    EXPECT_SAYS(refused(r.b.design, lead(types::hdmi(), {}, {})), "at least one end");
    EXPECT_SAYS(refused(r.b.design, lead(types::hdmi(), out, out)), "back to itself");
    EXPECT_SAYS(refused(r.b.design, lead(types::hdmi(), out, PortRef{DeviceId(9), {"in"}})), "no device");
    EXPECT_SAYS(refused(r.b.design, lead(types::hdmi(), out, PortRef{r.enc, {"nowhere"}})),
                "ENC-1 has no port nowhere");
    auto edit = lead(types::hdmi(), out, in);
    edit.length = base::Length::from_count(-1);
    EXPECT_SAYS(refused(r.b.design, edit), "length of the cable must be from 0 to 1,000 km");
    EXPECT_SAYS(refused(done(r.b.design, lead(types::hdmi(), out, {})), lead(types::hdmi(), in, {})),
                "already has a cable");
}

TEST(Refusal, LetsThroughWhatMates) {
    Room1 r;
    EXPECT_EQ(r.why_not({r.src, {"out"}}, {r.enc, {"in"}}), "");
    EXPECT_EQ(r.why_not({r.enc, {"in"}}, {r.src, {"out"}}), "");
    EXPECT_EQ(r.why_not({r.enc, {"net"}}, {r.sw, {"1"}}), "");
    EXPECT_EQ(r.why_not({r.sw, {"24"}}, {r.other, {"24"}}), "");
    EXPECT_EQ(r.why_not({r.sw, {"s1"}}, {r.other, {"s1"}}), "");
    EXPECT_EQ(r.why_not({r.sw, {"s1"}}, {r.other, {"1"}}), "") << "an empty cage may take a copper module";
    EXPECT_EQ(r.why_not({r.src, {"usb"}}, {r.enc, {"usb"}}), "");
    EXPECT_EQ(r.why_not({r.sw, {"1"}}, {r.panel, {"f1"}}), "");
    EXPECT_EQ(r.why_not({r.panel, {"r1"}}, {r.enc, {"net"}}), "");
}

// A computer's USB-C picture output and an HDMI input: leads with one plug of each are ordinary (USB-C alternate mode).
TEST(Refusal, LetsUsbCPicturesIntoHdmi) {
    Room1 r;
    auto laptop = types::make_source();
    laptop.key = {"test.laptop"};
    laptop.ports[0].connector = catalogue::Connector::usb_c;
    const auto id = r.b.device(laptop, "LP-1");
    EXPECT_EQ(r.why_not({id, {"out"}}, {r.enc, {"in"}}), "");
}

// IEC 60320-1: C13 and C14 are rated 10 A, C19 and C20 16 A. Leads from a C19 outlet to a C14 inlet are ordinary
// (common practice); a 10 A outlet must not feed an inlet of 16 A.
TEST(Refusal, LetsMainsLeadsFeedNoMoreThanTheirOutletGives) {
    using enum catalogue::Connector;
    Room1 r;
    const auto device = [&](const std::string& key, catalogue::Way way, catalogue::Connector connector) {
        catalogue::DeviceType type;
        type.key = {key};
        type.name = key;
        type.ports = {types::make_port("mains", catalogue::Signal::power, way, connector)};
        return PortRef{r.b.device(type, key), {"mains"}};
    };
    const auto out10 = device("out10", catalogue::Way::out, iec_c13),
               out16 = device("out16", catalogue::Way::out, iec_c19);
    const auto in10 = device("in10", catalogue::Way::in, iec_c14), in16 = device("in16", catalogue::Way::in, iec_c20);
    EXPECT_EQ(r.why_not(out10, in10), "");
    EXPECT_EQ(r.why_not(out16, in16), "");
    EXPECT_EQ(r.why_not(out16, in10), "");
    EXPECT_SAYS(r.why_not(out10, in16), "(IEC C13) and in16 mains (IEC C20) do not mate");
}

TEST(Refusal, SaysWhy) {
    Room1 r;
    EXPECT_SAYS(r.why_not({r.src, {"out"}}, {r.src, {"out"}}), "back to itself");
    EXPECT_SAYS(r.why_not({r.src, {"out"}}, {r.enc, {"loop"}}), "are both outputs");
    EXPECT_SAYS(r.why_not({r.enc, {"in"}}, {r.dsp, {"in"}}), "are both inputs");
    EXPECT_SAYS(r.why_not({r.src, {"out"}}, {r.sw, {"1"}}),
                "SRC-1 out carries video, but SW-1 1 carries network over copper");
    EXPECT_SAYS(r.why_not({r.src, {"usb"}}, {r.dec, {"usb"}}), "both take USB devices");
    EXPECT_SAYS(r.why_not({r.panel, {"f1"}}, {r.dsp, {"in"}}), "(RJ45) and DSP-1 in (HDMI) do not mate");
    EXPECT_SAYS(r.why_not({r.sw, {"99"}}, {r.dsp, {"in"}}), "SW-1 has no port 99");
}

TEST(Refusal, AModuleDecidesWhatACageCarries) {
    Room1 r;
    const auto module = types::module_sr();
    r.b.put(DeviceTypeRow{module});
    r.b.port({r.sw, {"s1"}}, [&](PortOverride& row) { row.module = module->key; });
    EXPECT_SAYS(r.why_not({r.sw, {"s1"}}, {r.enc, {"net"}}), "carries network over fibre, but ENC-1 net");
    EXPECT_EQ(r.why_not({r.sw, {"s1"}}, {r.other, {"s1"}}), "");
}

TEST(Refusal, APortTakesOneCable) {
    Room1 r;
    const auto held = r.b.cable(types::hdmi(), {r.src, {"out"}}, {r.enc, {"in"}}, {}, "V007");
    EXPECT_SAYS(r.why_not({r.src, {"out"}}, {r.dsp, {"in"}}), "SRC-1 out already holds cable V007");
    const auto moving = refusal(r.b.design, {r.src, {"out"}}, {r.dsp, {"in"}}, held);
    EXPECT_FALSE(moving.has_value());
}

TEST(Refusal, ACableFitsByItsPlugs) {
    Room1 r;
    const auto fits = [&](const types::CablePtr& type, const PortRef& end) { return !refusal(r.b.design, *type, end); };
    EXPECT_TRUE(fits(types::hdmi(), {r.src, {"out"}}));
    EXPECT_FALSE(fits(types::hdmi(), {r.sw, {"1"}}));
    EXPECT_TRUE(fits(types::cat6a(), {r.sw, {"1"}}));
    EXPECT_TRUE(fits(types::cat6a(), {r.panel, {"f1"}}));
    EXPECT_TRUE(fits(types::om3(), {r.sw, {"s1"}})) << "the cage is still empty";
    EXPECT_FALSE(fits(types::om3(), {r.sw, {"1"}}));
    EXPECT_TRUE(fits(types::usb_lead(), {r.enc, {"usb"}}));
}

}  // namespace
