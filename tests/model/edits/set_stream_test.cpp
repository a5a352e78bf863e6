#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;

struct WithEncoder {
    test::DesignBuilder b;
    DeviceId enc = b.device(test::types::encoder(), "ENC-1");
    Stream row(std::uint64_t id) const {
        Stream stream = Stream::blank(StreamId(id));
        stream.encoder = enc;
        stream.payload_rate = 800_Mbps;
        return stream;
    }
};

TEST(SetStream, AddsWithTheNextTagAndChanges) {
    WithEncoder w;
    auto design = done(w.b.design, SetStream{w.row(1)});
    design = done(design, SetStream{w.row(2)});
    EXPECT_EQ(test::row_of<Stream>(design, StreamId(2)).tag, "S-2");
    auto changed = test::row_of<Stream>(design, StreamId(1));
    changed.payload_rate = 900_Mbps;
    changed.group = base::Ipv4{0xEF010101};
    design = done(design, SetStream{changed});
    EXPECT_EQ(test::row_of<Stream>(design, StreamId(1)), changed);
    EXPECT_EQ(next_stream_tag(design), "S-3");
}

TEST(SetStream, RefusesNamingTheField) {
    WithEncoder w;
    const auto why = [&](auto change) {
        Stream row = w.row(1);
        change(row);
        return refused(w.b.design, SetStream{row});
    };
    EXPECT_SAYS(why([](Stream& r) { r.payload_rate = 0_bps; }), "payload rate must be more than 0");
    EXPECT_SAYS(why([](Stream& r) { r.payload_rate = 1601_Gbps; }), "at most 1.6 Tb/s");
    EXPECT_SAYS(why([](Stream& r) { r.udp_port = 65536; }), "UDP port must be from 1 to 65535; 65536 was given");
    EXPECT_SAYS(why([](Stream& r) { r.payload_octets = 65001; }),
                "payload of a packet in octets must be from 1 to 65000");
    EXPECT_SAYS(why([](Stream& r) { r.group = base::Ipv4{0x0A000001}; }), "10.0.0.1 is not a multicast address");
    EXPECT_SAYS(why([](Stream& r) { r.network_port = PortKey{"none"}; }), "ENC-1 has no port none");
    EXPECT_SAYS(why([](Stream& r) { r.encoder = DeviceId(7); }), "no device");
    EXPECT_SAYS(why([](Stream& r) { r.vlan = VlanId(7); }), "names the VLAN");
}

}  // namespace
