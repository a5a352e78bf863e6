// What a stream cannot pack is refused where it is entered or read, with the field named. Limits: worked example E17,
// rows COD-054, COD-055, COD-094 of tests/reference.
#include "core/standards/wire_overhead.h"
#include "tests/model/edits/edit_expect.h"

namespace streamwright::test::wrong_essence {

using namespace model;
using namespace base::literals;
using namespace standards;
using catalogue::AudioFormat;

struct Packing2110 {
    DesignBuilder b;
    DeviceId enc = b.device(types::encoder(), "ENC-1");

    template <class Change>
    Stream row(Change&& change) {
        Stream stream = Stream::blank(StreamId(1));
        stream.encoder = enc;
        change(stream);
        return stream;
    }
    template <class Change>
    std::string picture(Change&& change) {
        return refused(b.design, SetStream{row([&](Stream& r) {
                           r.picture.emplace();
                           change(r);
                       })});
    }
    template <class Change>
    std::string sound(Change&& change) {
        return refused(b.design, SetStream{row([&](Stream& r) {
                           r.kind = catalogue::StreamKind::audio;
                           r.sound.emplace();
                           change(r);
                       })});
    }
};

TEST(WrongEssence, SoundOnesAreTaken) {
    Packing2110 p;
    auto design = done(p.b.design, SetStream{p.row([](Stream& r) { r.picture.emplace(); })});
    design = done(design, SetStream{p.row([](Stream& r) {
                      r.kind = catalogue::StreamKind::audio;
                      r.sound = SoundEssence{{48'000, AudioCoding::l24, 10, PacketTime::ms_1}};  // COD-110: 10 fit
                      r.audio = AudioFormat::multichannel_pcm;
                  })});
    EXPECT_EQ(row_of<Stream>(design, StreamId(1)).sound->flow.channels, 10);
}

TEST(WrongEssence, PicturesThatNobodySendsAreRefused) {
    Packing2110 p;
    const auto format = [&](auto change) { return p.picture([&](Stream& r) { change(r.picture->format); }); };
    EXPECT_SAYS(format([](VideoFormat& f) { f.frame_rate = Hertz(); }), "frame rate");
    EXPECT_SAYS(format([](VideoFormat& f) { f.width = 15360, f.height = 8640, f.frame_rate = Hertz::whole(1000); }),
                "width");
    EXPECT_SAYS(format([](VideoFormat& f) { f.frame_rate = Hertz::whole(1000); }), "frame rate");
    EXPECT_SAYS(format([](VideoFormat& f) { f.sampling = Sampling::ycbcr_420, f.depth = 16; }), "pixel group");
    EXPECT_SAYS(
        format([](VideoFormat& f) { f.width = f.height = 10'240, f.frame_rate = Hertz::whole(600), f.depth = 16; }),
        "1.6 Tb/s");
}

TEST(WrongEssence, EachCodingHasItsOwnFigure) {
    Packing2110 p;
    const auto essence = [&](auto change) { return p.picture([&](Stream& r) { change(*r.picture); }); };
    EXPECT_SAYS(essence([](PictureEssence& e) { e.millibits_per_pixel = 4000; }), "bits per pixel");
    EXPECT_SAYS(essence([](PictureEssence& e) { e.rate = 8_Mbps; }), "bit rate");
    EXPECT_SAYS(essence([](PictureEssence& e) { e.coding = PictureCoding::jpeg_xs; }), "bits per pixel");
    EXPECT_SAYS(essence([](PictureEssence& e) { e.coding = PictureCoding::h264; }), "bit rate");
    EXPECT_SAYS(essence([](PictureEssence& e) { e.udp_limit_octets = 1500; }), "1460, 1480 or 8960");
    EXPECT_SAYS(essence([](PictureEssence& e) {
                    e.coding = PictureCoding::jpeg_xs, e.millibits_per_pixel = 20'001;  // 4:2:2 of 10 bits has 20
                }),
                "bits per pixel");
    EXPECT_SAYS(essence([](PictureEssence& e) { e.coding = PictureCoding::jpeg_xs, e.millibits_per_pixel = -1; }),
                "bits per pixel");
    EXPECT_SAYS(essence([](PictureEssence& e) { e.coding = PictureCoding::h265, e.rate = -(1_bps); }), "bit rate");
    EXPECT_SAYS(essence([](PictureEssence& e) { e.coding = PictureCoding::h265, e.rate = 1600_Gbps; }), "bit rate");
    EXPECT_SAYS(essence([](PictureEssence& e) {
                    e.coding = PictureCoding::h264, e.rate = 8_Mbps, e.packing = standards::Packing::block;
                }),
                "packing");
    EXPECT_SAYS(essence([](PictureEssence& e) {  // 640 x 640 macroblocks; level 6.2 has 139,264
                    e.coding = PictureCoding::h264, e.rate = 8_Mbps, e.format.width = e.format.height = 10'240;
                }),
                "beyond every level");
}

TEST(WrongEssence, FlowsThatDoNotFitAPacketAreRefused) {
    Packing2110 p;
    const auto flow = [&](AudioStream sent) { return p.sound([&](Stream& r) { r.sound->flow = sent; }); };
    EXPECT_SAYS(flow({48'000, AudioCoding::l24, 64, PacketTime::ms_1}), "64 channels");  // E17
    EXPECT_SAYS(flow({48'000, AudioCoding::l24, 11, PacketTime::ms_1}), "10 at most");   // COD-110
    EXPECT_SAYS(flow({48'000, AudioCoding::l24, 0, PacketTime::ms_1}), "channel");
    EXPECT_SAYS(flow({48'000, AudioCoding::l24, -1, PacketTime::ms_1}), "channel");
    EXPECT_SAYS(flow({0, AudioCoding::l24, 2, PacketTime::ms_1}), "sampling rate");
    EXPECT_SAYS(flow({22'050, AudioCoding::l24, 2, PacketTime::ms_1}), "sampling rate");
    EXPECT_SAYS(flow({96'000, AudioCoding::l16, 2, PacketTime::ms_1}), "sampling rate");  // COD-094
}

TEST(WrongEssence, KindSoundAndRateMayNotSayOtherwise) {
    Packing2110 p;
    EXPECT_SAYS(p.picture([](Stream& r) { r.payload_rate = 800_Mbps; }), "payload rate");
    EXPECT_SAYS(p.picture([](Stream& r) { r.rtp = false; }), "RTP");
    EXPECT_SAYS(p.picture([](Stream& r) { r.kind = catalogue::StreamKind::audio; }), "kind");
    EXPECT_SAYS(p.picture([](Stream& r) { r.audio = AudioFormat::stereo_pcm; }), "sound");
    EXPECT_SAYS(p.picture([](Stream& r) { r.sound.emplace(); }), "a stream of its own");
    EXPECT_SAYS(p.sound([](Stream& r) { r.kind = catalogue::StreamKind::video; }), "kind");
    EXPECT_SAYS(p.sound([](Stream& r) { r.audio = AudioFormat::compressed_surround; }), "AM824");
    EXPECT_SAYS(p.sound([](Stream& r) { r.audio = AudioFormat::multichannel_pcm; }), "2 channels");
    EXPECT_SAYS(p.sound([](Stream& r) { r.audio = AudioFormat::stereo_pcm, r.sound->flow.channels = 6; }),
                "6 channels");
}

}  // namespace streamwright::test::wrong_essence
