// A multicast stream that an encoder sends.
#pragma once

#include "core/base/net_address.h"
#include "core/base/units.h"
#include "core/catalogue/codec.h"
#include "core/catalogue/port_type.h"
#include "core/model/ids.h"
#include "core/model/rows/essence.h"
#include "core/model/rows/unknown_keys.h"

#include <optional>
#include <string>

namespace streamwright::model {

struct Stream {
    StreamId id;
    std::string tag;
    std::string note;
    DeviceId encoder;
    catalogue::StreamKind kind = catalogue::StreamKind::video;
    std::optional<PortKey> network_port;  // of the encoder; none: its first network port
    std::optional<VlanId> vlan;           // none: the untagged VLAN of the port it leaves by
    std::optional<base::Ipv4> group;
    int udp_port = 5004;
    // Typed in where neither picture nor sound is stated: what the codec makes, before any header. Who needs a rate
    // asks `stream_packets`, since a stream that states what it carries has none here.
    base::BitRate payload_rate;
    int payload_octets = 1400;              // per full packet, before any header
    bool rtp = true;                        // each packet carries an RTP header (RFC 3550, 12 octets)
    std::optional<PictureEssence> picture;  // a picture packed by its format
    std::optional<SoundEssence> sound;      // a flow of network audio
    bool encrypted = false;
    std::optional<catalogue::AudioFormat> audio;  // sound it carries; none: not stated
    // The same picture on another plane, a VLAN of its own; who takes one takes both (SMPTE ST 2022-7).
    std::optional<StreamId> twin;
    UnknownKeys unknown;

    using Key = StreamId;
    static Stream blank(Key key) { return Stream{.id = key, .tag = {}, .note = {}, .encoder = DeviceId(0)}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("tag", s.tag);
        v("note", s.note);
        v("encoder", s.encoder);
        v("kind", s.kind);
        v("network_port", s.network_port);
        v("vlan", s.vlan);
        v("group", s.group);
        v("udp_port", s.udp_port);
        v("payload_rate_bps", s.payload_rate);
        v("payload_octets", s.payload_octets);
        v("rtp", s.rtp);
        v("picture", s.picture);
        v("sound", s.sound);
        v("encrypted", s.encrypted);
        v("audio", s.audio);
        v("twin", s.twin);
    }
    friend bool operator==(const Stream&, const Stream&) = default;
};

}  // namespace streamwright::model
