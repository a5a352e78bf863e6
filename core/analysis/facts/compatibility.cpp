#include "core/analysis/facts/compatibility.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <string>
#include <utility>

namespace streamwright::analysis {

Compatibility usual_compatibility(const graph::Wiring& wiring) {
    using catalogue::Role;
    Compatibility result;
    std::map<std::pair<std::string, catalogue::StreamKind>, int> kinds;
    const auto kind_of = [&](const std::string& family, catalogue::StreamKind kind) {
        return kinds.try_emplace({family, kind}, static_cast<int>(kinds.size())).first->second;
    };
    const auto codec_of = [&](int device) -> const catalogue::Codec* {
        const auto* type = wiring.devices[static_cast<std::size_t>(device)].type;
        return type && type->codec ? &*type->codec : nullptr;
    };
    std::vector<bool> sends(wiring.devices.size(), false);
    for (const auto& stream : wiring.design.streams) {
        const auto device = wiring.device_index(stream.encoder);
        if (device) sends[static_cast<std::size_t>(*device)] = true;
        const auto* codec = device ? codec_of(*device) : nullptr;
        result.stream_kind.push_back(kind_of(codec ? codec->sent_family() : std::string(), stream.kind));
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
                {device, input, kind_of(codec->family, codec->inputs[static_cast<std::size_t>(input)].kind)});
    }
    result.takes.assign(kinds.size(), std::vector<bool>(kinds.size(), false));
    for (std::size_t k = 0; k < kinds.size(); ++k) result.takes[k][k] = true;
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
