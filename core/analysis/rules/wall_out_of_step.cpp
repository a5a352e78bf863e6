// Tiles of a video wall that show one source out of step: from different streams of it, or through decoders and
// displays of unlike delay. Tiles with pictures of different sources are a mosaic, each picture for itself, and have no
// step to keep; so tiles are compared only with those that show the same source. One tile that shows another source
// than all others may be meant (a clock, a speaker beside the slides) and is left alone.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/wall_picture.h"

#include <algorithm>

namespace streamwright::analysis::rules::wall_out_of_step {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("In %2 tiles of %1 show %3 from different streams: %4 takes %5, %6 takes %7."),
    STREAMWRIGHT_TEXT("In %2 %4 of %1 shows %3 by %5 later than %6."),
    STREAMWRIGHT_TEXT("In %2 tiles of %1 show %3 through unlike decoders, %4 and %5, whose delay is not stated.")};

constexpr standards::Citation sources[] = {
    {"Trade", "video walls", "tiles within half a frame of each other", standards::Standing::practice}};

/// Half a frame of 60 a second.
constexpr auto most_apart = base::Duration::from_count(8'333'333);

constexpr RuleWords words{
    .id = "wall-out-of-step",
    .severity = Severity::warning,
    .theme = Theme::signals,
    .title = "Video wall out of step",
    .meaning =
        "What moves across a seam breaks there: one tile is a frame or more behind its "
        "neighbour. Two streams of one source are encoded apart, and nothing keeps them together.",
    .measured =
        "In each preset, tiles that show one source: whether all take one stream of it, and how "
        "far apart decoding, passing on and showing bring them, as the types state; more than "
        "half a frame at 60 Hz is told. The worst preset of a wall is told. Tiles with "
        "pictures of different sources are not compared. Where unlike decoders do not state "
        "their delay, it is advice.",
    .remedy = "Feed all tiles of one picture from one stream, through decoders of one type.",
    .patterns = patterns,
    .sources = sources};

/// A tile with the one stream that it shows in a preset.
struct Shown {
    const WallTile* tile;
    const TileFeed* feed;
    const model::Stream* stream;
    int origin;  // of the video chains; -1: not known
};

/// The one source whose picture the stream carries; -1 where none or several do.
int origin_of(const graph::Wiring& wiring, const VideoChains& chains, const model::Stream& stream) {
    const auto streams = streams_by_index(wiring);
    int only = -1;
    for (int i = 0; i < static_cast<int>(chains.origins.size()); ++i) {
        const auto carries = [&](const PictureArrival& arrival) {
            return arrival.stream >= 0 && streams[at(arrival.stream)]->id == stream.id;
        };
        if (std::ranges::none_of(chains.origins[at(i)].arrivals, carries)) continue;
        if (only >= 0) return -1;
        only = i;
    }
    return only;
}

bool one_source(const Shown& a, const Shown& b) {
    return a.stream->encoder == b.stream->encoder || (a.origin >= 0 && a.origin == b.origin);
}

/// Tiles with several pictures, or none, have no step to keep.
std::vector<Shown> shown_tiles(const graph::Wiring& wiring, const VideoChains& chains, const WallPicture& wall,
                               model::PresetId preset) {
    std::vector<Shown> shown;
    for (const auto& tile : wall.tiles) {
        const auto* feed = tile.decoder();
        if (!feed) continue;
        const auto streams = shown_by(wiring, feed->device, preset);
        if (streams.size() == 1) shown.push_back({&tile, feed, streams[0], origin_of(wiring, chains, *streams[0])});
    }
    return shown;
}

struct Reader {
    const graph::Wiring& wiring;
    const WallPicture& wall;
    model::PresetId preset;

    base::Ref tile(const Shown& shown) const { return named(device_id(wiring, *shown.tile->device)); }
    base::Ref decoder(const Shown& shown) const { return named(device_id(wiring, shown.feed->device)); }
    Finding make(Severity severity, std::vector<base::Value> values, int variant) const {
        values.insert(values.begin(), {wall_ref(*wall.row), named(preset)});
        return found(words.id, severity, {first_tile(*wall.row)}, std::move(values), variant);
    }
};

std::optional<Finding> different_streams(const Reader& r, const Shown& a, const Shown& b) {
    if (a.stream == b.stream || a.feed->device == b.feed->device) return std::nullopt;
    return r.make(Severity::warning,
                  {named(a.stream->encoder), r.tile(a), named(a.stream->id), r.tile(b), named(b.stream->id)}, 0);
}

/// What it takes from stream to eye. Tiles of one type take the same, which then need not be known.
std::optional<base::Duration> delay_of(const Reader& r, const Shown& shown, const Shown& beside) {
    const auto *type = tile_type(r.wiring, *shown.tile), *other = tile_type(r.wiring, *beside.tile);
    if (!shown.feed->delay || type == other) return shown.feed->delay;
    if (!type->delay) return std::nullopt;
    return *shown.feed->delay + *type->delay;
}

std::optional<Finding> apart(const Reader& r, const Shown& a, const Shown& b) {
    const auto one = delay_of(r, a, b), other = delay_of(r, b, a);

    if (!one || !other) {
        const auto type = [&](const Shown& shown) { return r.wiring.devices[at(shown.feed->device)].type; };
        if (type(a) == type(b)) return std::nullopt;
        return r.make(Severity::advice, {named(a.stream->encoder), r.decoder(a), r.decoder(b)}, 2);
    }
    const bool first_late = *one > *other;
    const auto &late = first_late ? a : b, &early = first_late ? b : a;
    const auto by = first_late ? *one - *other : *other - *one;

    if (by <= most_apart) return std::nullopt;
    auto finding = r.make(Severity::warning, {named(a.stream->encoder), r.tile(late), by, r.tile(early)}, 1);
    finding.measured = by;
    finding.limit = most_apart;
    for (const auto* each : {&late, &early})
        finding.terms.push_back(
            line(STREAMWRIGHT_TEXT("%1 by %2: %3"), {r.tile(*each), r.decoder(*each), each == &a ? *one : *other}));
    return finding;
}

/// The gravest of the preset: different streams before figures, the greatest figure before what is not stated.
std::optional<Finding> worst_of(const Reader& r, const std::vector<Shown>& shown) {
    std::optional<Finding> worst;
    const auto graver = [&](const std::optional<Finding>& finding) {
        if (!worst) return true;
        if (finding->variant != worst->variant) return finding->variant < worst->variant;
        return finding->measured > worst->measured;
    };
    for (std::size_t i = 0; i < shown.size(); ++i)
        for (std::size_t j = i + 1; j < shown.size(); ++j) {
            if (!one_source(shown[i], shown[j])) continue;
            auto finding = different_streams(r, shown[i], shown[j]);
            if (!finding) finding = apart(r, shown[i], shown[j]);
            if (finding && graver(finding)) worst = std::move(finding);
        }
    return worst;
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, const VideoChains& chains, Findings& out) {
    for (const auto& wall : find_wall_pictures(wiring, signals)) {
        std::optional<Finding> worst;
        for (const auto& preset : wiring.design.presets) {
            auto finding = worst_of({wiring, wall, preset.id}, shown_tiles(wiring, chains, wall, preset.id));
            if (!finding) continue;
            if (!worst || std::pair(finding->variant, worst->measured) < std::pair(worst->variant, finding->measured))
                worst = std::move(finding);
        }
        if (worst) out.push_back(std::move(*worst));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::wall_out_of_step
