// What an endpoint's codec does: which roles it may take, which family it speaks, what its streams weigh.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/units.h"
#include "core/catalogue/essence_facts.h"
#include "core/catalogue/keys.h"
#include "core/catalogue/picture_facts.h"
#include "core/catalogue/usb_facts.h"
#include "core/standards/seamless_protection.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::catalogue {

enum class Role { encoder, decoder };
enum class StreamKind { video, audio, usb, control };

/// A decoder input: what a subscription fills. A plain decoder has one video input.
struct DecoderInput {
    InputKey key;
    std::string label;
    StreamKind kind = StreamKind::video;
    friend bool operator==(const DecoderInput&, const DecoderInput&) = default;
};

struct Codec {
    std::string family;                       // streams are decoded only within a family
    std::optional<std::string> sends_family;  // a gateway: what it decodes it sends again, to another family
    std::vector<Role> roles;                  // what the type can be
    bool roles_at_once = false;               // encodes and decodes at the same time
    std::optional<base::BitRate> usual_rate;  // payload rate of a fresh video stream
    std::optional<base::BitRate> most_rate;   // payload rate it can produce or take
    std::optional<int> payload_octets;        // RTP payload octets of a full packet
    bool rtp = true;                          // 12 octets of RTP header on each packet
    std::vector<DecoderInput> inputs;         // as decoder
    bool switches_inputs = false;             // automatic switching among several picture inputs
    std::optional<base::Duration> encode_latency;
    std::optional<base::Duration> decode_latency;
    bool scales = false;                  // decoder with scaler
    std::optional<CodecPicture> picture;  // none: not stated
    std::optional<bool> downmix;          // turns compressed or multichannel sound into two channels for its outputs
    std::optional<standards::SkewClass> skew_class;  // decoder that takes two planes: how far apart they may come
    // Beyond this many endpoints of the family in a design, set up one by one, the maker asks for a management server.
    std::optional<int> most_without_server;
    std::optional<int> most_groups;  // multicast groups that it joins at once
    std::optional<UsbCarriage> usb;  // what it carries of USB; none: not known
    PictureCodings packed;           // pictures packed by open standards
    std::optional<SoundFlows> sound_flows;
    /// Of the streams that it sends.
    const std::string& sent_family() const { return sends_family ? *sends_family : family; }
    friend bool operator==(const Codec&, const Codec&) = default;
};

}  // namespace streamwright::catalogue

template <>
struct streamwright::base::EnumText<streamwright::catalogue::Role> {
    using E = streamwright::catalogue::Role;
    static constexpr std::array<std::pair<E, std::string_view>, 2> names{
        {{E::encoder, "encoder"}, {E::decoder, "decoder"}}};
};
template <>
struct streamwright::base::EnumText<streamwright::catalogue::StreamKind> {
    using E = streamwright::catalogue::StreamKind;
    static constexpr std::array<std::pair<E, std::string_view>, 4> names{
        {{E::video, "video"}, {E::audio, "audio"}, {E::usb, "usb"}, {E::control, "control"}}};
};
