// What a stream carries, chosen and typed by keys: the fields of each packing, the numbers beneath, and one sentence in
// place where something cannot be packed. Figures: worked examples E6, E14, E17 and rows COD-058, COD-060, COD-110 of
// tests/reference.
#include "app/panels/properties/properties_panel.h"
#include "tests/app/window_rig.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include <gtest/gtest.h>

#include <algorithm>

namespace streamwright::test::essence_editor {

class EssenceEditor : public testing::Test {
protected:
    EssenceEditor() {
        rig.drop_type("tern-encoder", {60, 60});
        auto stream = model::Stream::blank(rig.document().ids().next<model::StreamId>());
        stream.encoder = rig.design().devices.begin()->id;
        stream.tag = model::next_stream_tag(rig.design());
        stream.payload_rate = base::BitRate::from_count(800'000'000);
        EXPECT_TRUE(rig.document().edit(model::SetStream{stream}, "Add"));
        id = stream.id;
        rig.selection().set(app::Chosen(stream.id));
    }
    QWidget& form() { return *rig.window().properties().form(); }
    QComboBox& choice(const QString& name) {
        auto* box = form().findChild<QComboBox*>(name);
        if (!box) throw std::runtime_error("no choice " + name.toStdString());
        return *box;
    }
    /// One arrow key at a time, as far as the words stand from what is shown.
    void choose(const QString& name, const QString& words) {
        const int wanted = choice(name).findText(words);
        ASSERT_GE(wanted, 0) << words.toStdString();
        for (int turns = 0; turns < 20 && choice(name).currentIndex() != wanted; ++turns) {
            auto& box = choice(name);
            box.setFocus();
            const int before = box.currentIndex();
            QTest::keyClick(&box, before < wanted ? Qt::Key_Down : Qt::Key_Up);
            if (choice(name).currentIndex() == before) return;  // refused
        }
    }
    QString error_below(const QString& name) {
        for (const auto* label : rig.field(name).parentWidget()->findChildren<QLabel*>())
            if (label->isVisible()) return label->text();
        return {};
    }
    QString refused_below(const QString& name) {
        const auto* label = form().findChild<QLabel*>(name + " refused");
        return label && label->isVisible() ? label->text() : QString();
    }
    bool has_field(const QString& name) { return form().findChild<QWidget*>(name) != nullptr; }
    /// The figure that stands beside these words.
    QString figure(const QString& words) {
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);  // figures that were replaced
        const auto labels = form().findChildren<QLabel*>();
        for (qsizetype i = 0; i + 1 < labels.size(); ++i)
            if (labels[i]->text() == words) return labels[i + 1]->text();
        return {};
    }
    const model::Stream& stream() { return *rig.design().streams.find(id); }

    WindowRig rig;
    model::StreamId id{0};
};

TEST_F(EssenceEditor, ChoosingAPackingBringsItsFieldsAndItsRate) {
    EXPECT_EQ(choice("Packed as").currentText(), "rate typed in");
    EXPECT_TRUE(has_field("Payload rate"));
    choose("Packed as", "uncompressed");
    ASSERT_TRUE(stream().picture);
    EXPECT_FALSE(has_field("Payload rate")) << "the rate follows";
    rig.type_into("Format", "1080p59.94 4:2:2 10-bit");
    EXPECT_EQ(choice("Raster").currentText(), "1080p59.94");
    EXPECT_EQ(figure("Packets a frame, of 1208 octets"), "4320");  // COD-058
    EXPECT_EQ(figure("Full packet on the wire, octets"), "1286");  // COD-060
    EXPECT_EQ(figure("On the wire, untagged"), "2.664 Gb/s");      // E6: 2.663986 Gb/s
    choose("Raster", "1080p50");
    EXPECT_EQ(standards::text(stream().picture->format), "1080p50 4:2:2 10-bit") << "sampling and depth stay";
    choose("Packing", "full blocks");
    EXPECT_EQ(stream().picture->packing, standards::Packing::block);
    choose("Datagram at most", "8960 octets");
    EXPECT_EQ(stream().picture->udp_limit_octets, 8960);
    rig.document().history().undo();
    EXPECT_NE(stream().picture->udp_limit_octets, 8960) << "each turn is one step";
}

TEST_F(EssenceEditor, WhatCannotBePackedIsToldInPlace) {
    choose("Packed as", "uncompressed");
    const auto before = stream();
    for (const char* wrong : {"1080p0", "16K", "15360x8640@1000", "1080p60 4:2:0 16-bit", "no format"}) {
        rig.type_into("Format", wrong);
        EXPECT_FALSE(error_below("Format").isEmpty()) << wrong;
        EXPECT_EQ(stream(), before) << wrong;
    }
    choose("Packed as", "JPEG XS");
    for (const char* wrong : {"0", "-1", "many", "21"}) {  // 4:2:2 of 10 bits has 20
        rig.type_into("Bits per pixel", wrong);
        EXPECT_FALSE(error_below("Bits per pixel").isEmpty()) << wrong;
        EXPECT_EQ(stream().picture->millibits_per_pixel, 3000) << wrong;
    }
    rig.type_into("Bits per pixel", "3.5");
    EXPECT_EQ(stream().picture->millibits_per_pixel, 3500);
}

TEST_F(EssenceEditor, LevelsAreTold) {
    choose("Packed as", "H.264");
    rig.type_into("Format", "1080p60 4:2:0 8-bit");
    EXPECT_EQ(figure("Level needed"), "4.2");  // D1
    rig.type_into("Bit rate", "20 Mb/s");
    EXPECT_EQ(stream().picture->rate, base::BitRate::from_count(20'000'000));
    rig.type_into("Bit rate", "0");
    EXPECT_FALSE(error_below("Bit rate").isEmpty());
}

TEST_F(EssenceEditor, AFlowThatDoesNotFitIsToldWhereItIsChosen) {
    choose("Packed as", "network audio");
    ASSERT_TRUE(stream().sound);
    EXPECT_EQ(stream().kind, catalogue::StreamKind::audio);
    EXPECT_EQ(figure("On the wire, untagged"), "2.928 Mb/s");  // E14
    EXPECT_EQ(figure("Level of ST 2110-30"), "A");
    rig.type_into("Channels", "64");
    EXPECT_FALSE(error_below("Channels").isEmpty()) << "E17";
    rig.type_into("Channels", "0");
    EXPECT_FALSE(error_below("Channels").isEmpty());
    rig.type_into("Channels", "10");  // COD-110: 10 fit
    EXPECT_EQ(stream().sound->flow.channels, 10);
    choose("Packet time", "4 ms");
    EXPECT_FALSE(refused_below("Packet time").isEmpty());
    EXPECT_EQ(choice("Packet time").currentText(), "1 ms") << "the old choice stays";
    EXPECT_EQ(stream().sound->flow.packet_time, standards::PacketTime::ms_1);
    choose("Sound", "stereo");
    EXPECT_FALSE(refused_below("Sound").isEmpty()) << "it packs 10 channels";
    EXPECT_FALSE(stream().audio);
    choose("Packet time", "125 us");
    EXPECT_TRUE(refused_below("Packet time").isEmpty());
    EXPECT_EQ(stream().sound->flow.packet_time, standards::PacketTime::us_125);
}

TEST_F(EssenceEditor, TypingTheRateAgainKeepsIt) {
    choose("Packed as", "uncompressed");
    rig.type_into("Format", "1080p60 4:2:2 10-bit");
    choose("Packed as", "rate typed in");
    EXPECT_FALSE(stream().picture);
    EXPECT_EQ(stream().payload_rate.count(), 1920LL * 1080 * 60 * 20);
    EXPECT_EQ(stream().payload_octets, 1208);
    EXPECT_TRUE(has_field("Payload rate"));
}

TEST_F(EssenceEditor, ADeviceOfNetworkAudioBeginsWithAFlow) {
    rig.drop_type("audio-network-interface", {200, 60});
    for (const auto& device : rig.design().devices)
        if (device.type.text == "audio-network-interface") rig.selection().set(app::Chosen(device.id));
    for (auto* button : form().findChildren<QPushButton*>())
        if (button->text() == "Add a stream") QTest::mouseClick(button, Qt::LeftButton);
    QCoreApplication::processEvents();
    ASSERT_EQ(rig.design().streams.size(), 2U);
    const auto flows = std::count_if(rig.design().streams.begin(), rig.design().streams.end(),
                                     [](const auto& row) { return row.sound.has_value(); });
    EXPECT_EQ(flows, 1);
}

}  // namespace streamwright::test::essence_editor
