#include "core/analysis/facts/compatibility.h"

#include "core/analysis/stream_decoding.h"
#include "core/model/stream_packets.h"

#include <algorithm>
#include <array>
#include <map>
#include <numeric>
#include <string>
#include <tuple>
#include <utility>

namespace streamwright::analysis {

namespace compatibility_detail {

using catalogue::Codec;
using catalogue::StreamKind;

/// Streams that all inputs treat alike are of one kind, and so are inputs that take the same streams.
class Kinds {
public:
    int of_stream(const model::Stream& stream, const Codec* sender) {
        const StreamKey key{sender ? sender->sent_family() : std::string(), stream.kind, essence_of(stream)};
        const auto [place, fresh] = streams_.try_emplace(key, static_cast<int>(examples_.size()));
        if (fresh) examples_.push_back({&stream, sender});
        return place->second;
    }
    int of_input(const Codec& codec, StreamKind kind) {
        const auto [place, fresh] = codecs_.try_emplace({&codec, kind}, static_cast<int>(inputs_.size()));
        if (!fresh) return place->second;
        for (std::size_t i = 0; i < inputs_.size(); ++i)
            if (inputs_[i].second == kind && alike(*inputs_[i].first, codec))
                return place->second = static_cast<int>(i);
        inputs_.emplace_back(&codec, kind);
        return place->second;
    }
    std::vector<std::vector<bool>> takes() const {
        std::vector<std::vector<bool>> rows;
        for (const auto& [codec, kind] : inputs_) {
            auto& row = rows.emplace_back();
            for (const auto& [stream, sender] : examples_) row.push_back(shows_stream(*codec, kind, *stream, sender));
        }
        return rows;
    }

private:
    /// What open standards decide by: coding and level of a picture, form of a flow.
    using Essence = std::array<std::int64_t, 4>;
    using StreamKey = std::tuple<std::string, StreamKind, Essence>;

    static Essence essence_of(const model::Stream& stream) {
        if (stream.sound) {
            const auto& flow = stream.sound->flow;
            return {1 + static_cast<std::int64_t>(flow.coding), flow.sampling_hz, flow.channels,
                    static_cast<std::int64_t>(flow.packet_time)};
        }
        if (!stream.picture) return {};
        const auto needed = model::needed_level(*stream.picture);
        const auto levels = stream.picture->coding == standards::PictureCoding::h264 ? standards::h264_levels()
                                                                                     : standards::h265_levels();
        return {-1 - static_cast<std::int64_t>(stream.picture->coding),
                needed ? 1 + (needed->level - levels.data()) : 0, needed && needed->high_tier, 0};
    }
    static bool alike(const Codec& a, const Codec& b) {
        return a.family == b.family && a.packed == b.packed && a.sound_flows == b.sound_flows;
    }

    std::map<StreamKey, int> streams_;
    std::vector<std::pair<const model::Stream*, const Codec*>> examples_;  // per kind of stream
    std::map<std::pair<const Codec*, StreamKind>, int> codecs_;
    std::vector<std::pair<const Codec*, StreamKind>> inputs_;  // per kind of input
};

}  // namespace compatibility_detail

Compatibility usual_compatibility(const graph::Wiring& wiring) {
    using catalogue::Role;
    Compatibility result;
    compatibility_detail::Kinds kinds;
    const auto codec_of = [&](int device) -> const catalogue::Codec* {
        const auto* type = wiring.devices[static_cast<std::size_t>(device)].type;
        return type && type->codec ? &*type->codec : nullptr;
    };
    std::vector<bool> sends(wiring.devices.size(), false);
    for (const auto& stream : wiring.design.streams) {
        const auto device = wiring.device_index(stream.encoder);
        if (device) sends[static_cast<std::size_t>(*device)] = true;
        result.stream_kind.push_back(kinds.of_stream(stream, device ? codec_of(*device) : nullptr));
    }
    for (int device = 0; device < static_cast<int>(wiring.devices.size()); ++device) {
        const auto* codec = codec_of(device);
        if (!codec || codec->inputs.empty()) continue;
        const auto roles = wiring.roles(device);
        const bool decodes = std::find(roles.begin(), roles.end(), Role::decoder) != roles.end();
        const bool might = roles.empty() && wiring.devices[static_cast<std::size_t>(device)].type->can(Role::decoder) &&
                           !sends[static_cast<std::size_t>(device)];
        if (!decodes && !might) continue;
        for (int input = 0; input < static_cast<int>(codec->inputs.size()); ++input)
            result.slots.push_back(
                {device, input, kinds.of_input(*codec, codec->inputs[static_cast<std::size_t>(input)].kind)});
    }
    result.takes = kinds.takes();
    return result;
}

Compatibility limited_compatibility(const graph::Wiring& wiring, const std::vector<DecoderLimit>& limits) {
    Compatibility result;
    std::map<std::string, int> devices;
    for (std::size_t d = 0; d < wiring.devices.size(); ++d)
        devices.emplace(wiring.devices[d].row->tag, static_cast<int>(d));
    result.stream_kind.resize(wiring.design.streams.size());
    std::iota(result.stream_kind.begin(), result.stream_kind.end(), 0);
    for (const auto& limit : limits) {
        const auto device = devices.find(limit.decoder);
        if (device == devices.end()) continue;
        const int kind = static_cast<int>(result.takes.size());
        auto& takes = result.takes.emplace_back();
        for (const auto& row : wiring.design.streams) {
            const bool named = !limit.streams || std::ranges::find(*limit.streams, row.tag) != limit.streams->end();
            takes.push_back(named && wiring.device_index(row.encoder) != device->second);
        }
        for (int i = 0; i < limit.inputs; ++i) result.slots.push_back({device->second, i, kind});
    }
    std::ranges::stable_sort(result.slots, {}, &Compatibility::Slot::device);
    return result;
}

}  // namespace streamwright::analysis
