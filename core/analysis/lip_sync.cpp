#include "core/analysis/lip_sync.h"

#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <set>

namespace streamwright::analysis {

namespace lip_sync_detail {

using catalogue::DeviceKind;
using graph::SoundHop;
using graph::SoundPaths;
using graph::SoundPlace;

bool is_display(DeviceKind kind) {
    return kind == DeviceKind::display || kind == DeviceKind::projector || kind == DeviceKind::wall_tile;
}

/// Analogue ways add nothing that counts (common practice); what computes must state what it takes.
bool passes_at_once(DeviceKind kind) {
    return kind == DeviceKind::source || kind == DeviceKind::camera || kind == DeviceKind::microphone ||
           kind == DeviceKind::amplifier || kind == DeviceKind::speaker || kind == DeviceKind::extender_sender ||
           kind == DeviceKind::extender_receiver || kind == DeviceKind::other;
}

/// The sound paths of one preset, and what each place adds on the way.
struct Reader {
    const graph::Wiring& wiring;
    const graph::SignalGraph& signals;
    SoundPaths paths;

    const graph::WiredDevice& device(const SoundPlace& place) const { return wiring.devices[at(place.device)]; }
    DeviceKind kind(const SoundPlace& place) const {
        const auto* type = device(place).type;
        return type ? type->kind : DeviceKind::other;
    }
    bool carries_picture(const SoundHop& hop) const {
        if (hop.stream) return hop.stream->kind == catalogue::StreamKind::video;
        return wiring.port_type(signals.hops[at(hop.hop)].from).signal != catalogue::Signal::audio;
    }
    /// What the place adds before the hop, or, without one, before it is seen or heard.
    void pass(const SoundPlace& place, const SoundHop* hop, bool sound, DelayWay& way) const {
        const auto& row = device(place);
        const auto add = [&](DelayPart::What what, const std::optional<base::Duration>& delay) {
            way.known = way.known && delay.has_value();
            if (delay && delay->count() > 0) way.parts.push_back({row.row->id, what, *delay});
        };
        if (!row.type) {
            way.known = false;
        } else if (row.type->codec) {
            // A gateway does both; pictures are followed back, so that what comes last is met first.
            if (sound && place.decoding) add(DelayPart::What::decoding, row.type->codec->decode_latency);
            if (hop && hop->stream) add(DelayPart::What::encoding, row.type->codec->encode_latency);
            if (!sound && place.decoding) add(DelayPart::What::decoding, row.type->codec->decode_latency);
        } else if (row.type->delay || !passes_at_once(row.type->kind)) {
            add(DelayPart::What::passing, row.type->delay);
        }
        if (sound && row.row->sound_delay) add(DelayPart::What::set, row.row->sound_delay);
    }
};

struct ShownSource {
    int source;
    DelayWay way;
};

/// Every way back from the place to what makes pictures, in the order against the signal.
void follow_back(const Reader& r, const SoundPlace& place, const SoundHop* next, DelayWay way,
                 std::set<SoundPlace>& seen, std::vector<ShownSource>& found) {
    if (!seen.insert(place).second) return;
    r.pass(place, next, false, way);
    const auto kind = r.kind(place);
    if (kind == DeviceKind::source || kind == DeviceKind::camera) {
        std::reverse(way.parts.begin(), way.parts.end());
        found.push_back({place.device, std::move(way)});
    } else {
        for (const int index : r.paths.to[SoundPaths::place(place)])
            if (const auto& hop = r.paths.hops[at(index)]; r.carries_picture(hop))
                follow_back(r, hop.from, &hop, way, seen, found);
    }
    seen.erase(place);
}

/// Whose sound goes with the source's picture.
std::vector<int> sounding(const Reader& r, int source) {
    std::vector<int> devices{source};
    const auto& room = r.wiring.devices[at(source)].row->room;
    if (r.kind({source, false}) != DeviceKind::camera || !room) return devices;
    for (int i = 0; i < static_cast<int>(r.wiring.devices.size()); ++i)
        if (r.kind({i, false}) == DeviceKind::microphone && r.wiring.devices[at(i)].row->room == room)
            devices.push_back(i);
    return devices;
}

/// The earliest sound at each place. A way with a part not known stands only where no other does.
std::map<SoundPlace, DelayWay> sound_from(const Reader& r, int source) {
    std::map<SoundPlace, DelayWay> best;
    std::vector<SoundPlace> open;
    const auto better = [](const DelayWay& a, const DelayWay& b) {
        return std::pair(!a.known, a.sum()) < std::pair(!b.known, b.sum());
    };
    for (const int each : sounding(r, source)) {
        best[{each, false}] = {};
        open.push_back({each, false});
    }
    while (!open.empty()) {
        const auto next = std::min_element(open.begin(), open.end(),
                                           [&](const auto& a, const auto& b) { return better(best[a], best[b]); });
        const auto place = *next;
        open.erase(next);
        for (const int index : r.paths.from[SoundPaths::place(place)]) {
            const auto& hop = r.paths.hops[at(index)];
            auto way = best[place];
            r.pass(place, &hop, true, way);
            const auto known = best.find(hop.to);
            if (known != best.end() && !better(way, known->second)) continue;
            best[hop.to] = std::move(way);
            if (std::find(open.begin(), open.end(), hop.to) == open.end()) open.push_back(hop.to);
        }
    }
    return best;
}

/// A loudspeaker, or an amplifier whose loudspeakers are not drawn.
bool is_heard(const Reader& r, const SoundPlace& place) {
    const auto kind = r.kind(place);
    return kind == DeviceKind::speaker ||
           (kind == DeviceKind::amplifier && r.paths.from[SoundPaths::place(place)].empty());
}

}  // namespace lip_sync_detail

base::Duration DelayWay::sum() const {
    return std::accumulate(parts.begin(), parts.end(), base::Duration{},
                           [](base::Duration sum, const DelayPart& part) { return sum + part.delay; });
}

std::optional<base::Duration> LipSyncPair::lead() const {
    if (!picture.known || !sound.known) return std::nullopt;
    return picture.sum() - sound.sum();
}

const standards::LipSyncWindow* lip_sync_window_of(model::LipSync chosen) {
    switch (chosen) {
        case model::LipSync::ebu_r37:
            return standards::lip_sync_window("EBU R37 final output");
        case model::LipSync::atsc_is191:
            return standards::lip_sync_window("ATSC IS-191");
        case model::LipSync::bt1359:
            break;
    }
    return standards::lip_sync_window("BT.1359 acceptability");
}

std::vector<LipSyncPair> find_lip_sync(const graph::Wiring& wiring, const graph::SignalGraph& signals,
                                       model::PresetId preset) {
    using namespace lip_sync_detail;
    std::vector<LipSyncPair> pairs;
    if (!graph::has_sound_leads(wiring, signals)) return pairs;
    const Reader reader{wiring, signals, graph::find_sound_paths(wiring, signals, preset)};
    std::map<int, std::map<SoundPlace, DelayWay>> sounds;  // per source
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i) {
        const auto& display = wiring.devices[at(i)];
        if (!display.type || !is_display(display.type->kind) || !display.row->room) continue;
        std::vector<ShownSource> pictures;
        std::set<SoundPlace> seen;
        follow_back(reader, {i, false}, nullptr, {}, seen, pictures);
        for (auto& picture : pictures) {
            auto known = sounds.find(picture.source);
            if (known == sounds.end()) known = sounds.emplace(picture.source, sound_from(reader, picture.source)).first;
            for (const auto& [place, way] : known->second) {
                const auto& speaker = reader.device(place);
                if (!is_heard(reader, place) || speaker.row->room != display.row->room) continue;
                auto sound = way;
                reader.pass(place, nullptr, true, sound);
                pairs.push_back({preset, wiring.devices[at(picture.source)].row->id, display.row->id, speaker.row->id,
                                 picture.way, std::move(sound)});
            }
        }
    }
    return pairs;
}

}  // namespace streamwright::analysis
