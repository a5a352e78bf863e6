// A switch drops frames above the size it takes, without a word: small pictures pass and large ones do not. The size
// is counted untagged, with the check sequence, as switches state it; the 4 octets of a tag are allowed on top.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/model/stream_packets.h"

#include <algorithm>
#include <set>

namespace streamwright::analysis::rules::frames_too_large {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 passes frames of up to %2 octets, and %3 sends frames of %4 over it (such streams: %5): they "
                      "are dropped."),
    STREAMWRIGHT_TEXT("%3 sends frames of %4 octets over %1 (such streams: %5), more than the %2 of a standard frame, "
                      "and the type of %1 does not state what it passes.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.3", "clause 3.2.7 (maximum size of a basic frame)", standards::Standing::memory},
    {"IEEE", "802.3ac", "4 octets more for a tag", standards::Standing::memory}};

constexpr RuleWords words{
    .id = "frames-too-large",
    .theme = Theme::links,
    .title = "Frames too large for a switch",
    .meaning =
        "A switch drops larger frames than it is made or set for and says nothing: a stream of large packets never "
        "arrives, or only the pictures whose packets happen to be small.",
    .measured =
        "For each stream the untagged frame that its full packets make, with all headers and the check sequence, is "
        "held "
        "against the frame size of every switch it passes in some preset. Above it is an error; a size above that of a "
        "standard frame where the type states none is a warning.",
    .remedy =
        "Set the switch to larger frames where it can, take another switch, or let the sender make smaller packets.",
    .patterns = patterns,
    .sources = sources};

constexpr std::int64_t standard_frame = 1518;

/// The streams that are too large for one bridge, and the largest of them.
struct TooLarge {
    std::set<int> streams;
    int largest = -1;
};

struct Reader {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const Forwarding& forwarding;
    std::vector<const model::Stream*> streams;
    std::vector<std::int64_t> frames;  // per stream, octets

    std::optional<int> stated(int bridge) const {
        std::optional<int> least;
        for (const int device : network.bridges[at(bridge)].devices) {
            const auto* type = wiring.devices[at(device)].type;
            const auto limit = type && type->bridging ? type->bridging->frame_limit : std::nullopt;
            if (limit && (!least || *limit < *least)) least = limit;
        }
        return least;
    }
    std::int64_t limit(int bridge) const { return stated(bridge).value_or(standard_frame); }
};

Reader reader(const graph::Wiring& wiring, const graph::NetworkGraph& network, const Forwarding& forwarding) {
    Reader r{wiring, network, forwarding, streams_by_index(wiring), {}};
    for (const auto* row : r.streams) r.frames.push_back(model::full_frame_octets(*row));
    return r;
}

/// A stream passes a bridge by an arc that leaves it.
void collect(const Reader& r, const PresetLoad& preset, std::int64_t least_limit, std::vector<TooLarge>& found_at) {
    for (int arc = 0; arc < r.network.arc_count(); ++arc) {
        const int bridge = r.network.bridge_before(arc);
        if (bridge < 0) continue;
        for (const int stream : preset.arcs[at(arc)].streams) {
            const auto frame = r.frames[at(stream)];
            if (frame <= least_limit || frame <= r.limit(bridge)) continue;
            auto& large = found_at[at(bridge)];
            large.streams.insert(stream);
            if (large.largest < 0 || r.frames[at(large.largest)] < frame) large.largest = stream;
        }
    }
}

void judge(const Reader& r, int bridge, const TooLarge& large, Findings& out) {
    const auto id = device_id(r.wiring, r.network.bridges[at(bridge)].devices.front());
    const bool known = r.stated(bridge).has_value();
    const auto frame = r.frames[at(large.largest)];
    const auto* stream = r.streams[at(large.largest)];
    const auto payload = model::full_payload_octets(*stream);
    auto finding =
        found(words.id, known ? Severity::error : Severity::warning, {id},
              {named(id), r.limit(bridge), named(stream->id), frame, static_cast<std::int64_t>(large.streams.size())},
              known ? 0 : 1);
    finding.measured = frame;
    finding.limit = r.limit(bridge);
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 octets of payload and %2 of headers and check sequence = %3"),
                                 {payload, frame - payload, frame}));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, const Forwarding& forwarding,
           const LinkLoads& loads, Findings& out) {
    const auto r = reader(wiring, network, forwarding);
    if (r.frames.empty() || network.bridges.empty()) return;
    std::int64_t least_limit = r.limit(0);
    for (int bridge = 1; bridge < static_cast<int>(network.bridges.size()); ++bridge)
        least_limit = std::min(least_limit, r.limit(bridge));
    if (*std::max_element(r.frames.begin(), r.frames.end()) <= least_limit) return;
    std::vector<TooLarge> found_at(network.bridges.size());
    for (const auto& preset : loads.presets) collect(r, preset, least_limit, found_at);
    for (int bridge = 0; bridge < static_cast<int>(found_at.size()); ++bridge)
        if (found_at[at(bridge)].largest >= 0) judge(r, bridge, found_at[at(bridge)], out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::frames_too_large
