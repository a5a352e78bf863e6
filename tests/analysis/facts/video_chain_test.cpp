// What sources send and what arrives. Small chains are compared with a brute force that knows nothing of sets and
// tables: it tries every format by the words of the types and the published links.
#include "core/analysis/facts/video_chain.h"

#include "core/standards/picture_links.h"
#include "tests/support/picture_room.h"

#include <gmock/gmock.h>

#include <random>
#include <set>
#include <tuple>

namespace streamwright::test::video_chain_test {

using analysis::PictureArrival;
using analysis::SentBecause;
using analysis::VideoChains;
using catalogue::CodecPicture;
using catalogue::PictureFacts;
using standards::DynamicRange;
using standards::Sampling;
using standards::VideoFormat;

struct Seen {
    VideoChains chains;
    std::string sent(std::size_t origin = 0) const {
        const auto& held = chains.origins.at(origin);
        return held.sent ? standards::text(chains.space.format(*held.sent)) : "-";
    }
};

Seen seen(const PictureRoom& room) { return {analysis::analyse(room.b.design).facts.get<VideoChains>()}; }

/// A source of three rasters on a display that takes two of them.
TEST(VideoChain, aSourceSendsTheBestThatTheDisplayAnnounces) {
    PictureRoom room;
    auto takes = picture_facts({"1080p60", "720p60"});
    takes.samplings = {Sampling::rgb, Sampling::ycbcr_422};
    takes.most_depth = 10;
    takes.ranges = {DynamicRange::sdr};
    const auto source = room.source("SRC-1", {picture_facts({"2160p60", "1080p60", "720p60"}), "HDMI 2.0"});
    room.join(source, "out", room.display("DSP-1", {takes, "HDMI 2.0"}));
    EXPECT_EQ(seen(room).sent(), "1080p60 RGB 10-bit");
    EXPECT_EQ(seen(room).chains.origins[0].because, SentBecause::announced);
    room.set(source, "out", "720p60 4:2:2 8-bit");
    EXPECT_EQ(seen(room).sent(), "720p60 4:2:2 8-bit");
    EXPECT_EQ(seen(room).chains.origins[0].because, SentBecause::set);
}

// HDMI 2.0 carries 2160p60 at RGB 8-bit (17.82 of 18 Gb/s), not at 10 bits; HDMI 1.4 (10.2) at 4:2:0 8-bit (8.91).
TEST(VideoChain, theLinkDecidesWhatIsSent) {
    for (const auto& [link, sent] :
         {std::pair("HDMI 2.0", "2160p60 RGB 8-bit"), std::pair("HDMI 1.4", "2160p60 4:2:0 8-bit"),
          std::pair("HDMI 2.1 FRL 3", "2160p60 RGB 10-bit")}) {
        PictureRoom room;
        auto facts = picture_facts({"2160p60", "1080p60"});
        facts.ranges = {DynamicRange::sdr};
        facts.most_depth = 10;
        const auto source = room.source("SRC-1", {facts, "HDMI 2.1"});
        room.join(source, "out", room.display("DSP-1", {facts, link}));
        EXPECT_EQ(seen(room).sent(), sent) << link;
    }
}

TEST(VideoChain, ofASilentSourceNothingIsSaid) {
    PictureRoom room;
    const auto source = room.source("SRC-1", {std::nullopt, "HDMI 2.0"});
    room.join(source, "out", room.display("DSP-1", {picture_facts({"1080p60"}), "HDMI 2.0"}));
    EXPECT_EQ(seen(room).chains.origins[0].because, SentBecause::not_known);
    EXPECT_EQ(seen(room).sent(), "-");
}

TEST(VideoChain, aRingOfSplittersEnds) {
    PictureRoom room;
    const auto facts = picture_facts({"1080p60"});
    const auto source = room.source("SRC-1", {facts, "HDMI 2.0"});
    const auto one = room.passer("SPL-1", {facts, "HDMI 2.0"}, {facts, "HDMI 2.0"}, 2);
    const auto other = room.passer("SPL-2", {facts, "HDMI 2.0"}, {facts, "HDMI 2.0"}, 2);
    room.join(source, "out", one);
    room.join(one, "out-1", other);
    room.join(other, "out-1", one);
    room.join(other, "out-2", room.display("DSP-1", {facts, "HDMI 2.0"}));
    const auto chains = seen(room).chains;
    ASSERT_EQ(chains.origins.size(), 1U);
    EXPECT_TRUE(std::ranges::any_of(chains.origins[0].arrivals, [](const auto& each) { return each.shows; }));
}

TEST(VideoChain, aCableMayBeMadeForLess) {
    PictureRoom room;
    const auto facts = picture_facts({"2160p60"});
    const auto source = room.source("SRC-1", {facts, "HDMI 2.0"});
    const auto display = room.display("DSP-1", {facts, "HDMI 2.0"});
    auto old = *types::hdmi();
    old.key = {"old-lead"};
    old.picture_link = "HDMI 1.4";
    const auto cable = std::make_shared<const catalogue::CableType>(old);
    room.b.cable(cable, port_of(source, "out"), port_of(display, "in"), base::Length::from_count(2000000));
    const auto chains = seen(room).chains;
    EXPECT_TRUE(chains.origins[0].sent);
    EXPECT_FALSE(chains.origins[0].arrivals[0].left);
}

// ---- brute force over random chains ----

const std::vector<std::string> rasters{"2160p60", "2160p30", "1080p60", "1080p50", "720p60"};
const std::vector<Sampling> samplings{Sampling::rgb, Sampling::ycbcr_444, Sampling::ycbcr_422, Sampling::ycbcr_420};
const std::vector<DynamicRange> ranges{DynamicRange::sdr, DynamicRange::pq, DynamicRange::hlg};
const std::vector<std::string> links{"HDMI 1.2", "HDMI 1.4", "HDMI 2.0", "HDMI 2.1 FRL 3", "HDMI 2.1 FRL 6"};

/// A chain in words: ports in turn (output, input, output, ...), and an encoder and decoder between two of them.
struct Chain {
    std::vector<PicturePort> ports;    // out, in, out, in, ...
    std::optional<std::size_t> coded;  // after that input, an encoder's; its decoder gives the next output
    CodecPicture encoder, decoder;
    bool scales = false;
};

struct Dice {
    std::mt19937 random;
    std::size_t below(std::size_t count) { return random() % count; }
    template <class T>
    std::vector<T> some(const std::vector<T>& from) {
        std::vector<T> chosen;
        for (const auto& each : from)
            if (below(3) > 0) chosen.push_back(each);
        return chosen;
    }
    PicturePort port() {
        PictureFacts facts;
        for (const auto& raster : some(rasters)) facts.formats.push_back(picture_format(raster));
        facts.samplings = some(samplings);
        facts.ranges = some(ranges);
        if (below(2)) facts.most_depth = std::vector{8, 10, 12}[below(3)];
        return {facts, links[below(links.size())]};
    }
    CodecPicture codec() {
        CodecPicture picture;
        if (below(3)) picture.most_format = picture_format(rasters[below(rasters.size())]);
        if (below(2)) picture.most_sampling = samplings[below(4)];
        if (below(2)) picture.most_depth = std::vector{8, 10, 12}[below(3)];
        picture.flattens_hdr = below(3) == 0;
        return picture;
    }
    Chain chain() {
        Chain chain;
        const auto hops = 1 + below(3);
        for (std::size_t i = 0; i < 2 * hops; ++i) chain.ports.push_back(port());
        if (hops > 1 && below(3)) chain.coded = 2 * below(hops - 1) + 1;
        chain.encoder = codec();
        chain.decoder = codec();
        chain.scales = below(2) == 0;
        return chain;
    }
};

PictureRoom room_of(const Chain& chain) {
    PictureRoom room;
    auto from = room.source("SRC", chain.ports[0]);
    std::string out = "out";
    for (std::size_t i = 1; i < chain.ports.size(); i += 2) {
        const auto tag = "D" + std::to_string(i);
        const bool last = i + 1 == chain.ports.size();
        if (last) {
            room.join(from, out, room.display(tag, chain.ports[i]));
        } else if (chain.coded == i) {
            const auto encoder = room.encoder(tag + "E", chain.ports[i], chain.encoder);
            const auto decoder = room.decoder(tag + "D", chain.ports[i + 1], chain.scales, chain.decoder);
            room.join(from, out, encoder);
            room.show(room.stream(encoder), decoder);
            from = decoder;
            out = "out";
        } else {
            const auto passer = room.passer(tag, chain.ports[i], chain.ports[i + 1]);
            room.join(from, out, passer);
            from = passer;
            out = "out-1";
        }
    }
    return room;
}

std::vector<VideoFormat> every_format() {
    std::vector<VideoFormat> all;
    for (const auto& raster : rasters)
        for (const auto sampling : samplings)
            for (const int depth : {8, 10, 12, 16})
                for (const auto range : ranges) {
                    auto format = picture_format(raster);
                    format.sampling = sampling, format.depth = depth, format.range = range;
                    all.push_back(format);
                }
    return all;
}

template <class List, class Value>
bool in(const List& list, const Value& value) {
    return list.empty() || std::find(list.begin(), list.end(), value) != list.end();
}

bool passes(const PicturePort& port, const VideoFormat& format) {
    auto raster = format;
    raster.sampling = Sampling::rgb, raster.depth = 8, raster.range = DynamicRange::sdr;
    const auto fit = standards::fits(format, *standards::picture_link(port.link));
    return in(port.facts->formats, raster) && in(port.facts->samplings, format.sampling) &&
           in(port.facts->ranges, format.range) && format.depth <= port.facts->most_depth.value_or(16) &&
           (fit->verdict == standards::Fit::fits || fit->verdict == standards::Fit::doubtful);
}

int fullness(Sampling sampling) {
    return sampling == Sampling::rgb         ? 3
           : sampling == Sampling::ycbcr_444 ? 2
           : sampling == Sampling::ycbcr_422 ? 1
                                             : 0;
}
int content(Sampling sampling) { return std::min(fullness(sampling), 2); }

/// The order that this program promises: raster, rate, HDR of 10 bits at least, sampling, depth.
auto worth(const VideoFormat& format) {
    const bool shallow = format.range != DynamicRange::sdr && format.depth < 10;
    const int range = shallow ? 0 : format.range == DynamicRange::sdr ? 1 : format.range == DynamicRange::hlg ? 2 : 3;
    return std::tuple(format.width * format.height, format.frame_rate.floor(), range, fullness(format.sampling),
                      format.depth, static_cast<int>(format.range));
}

bool taken(const CodecPicture& codec, const VideoFormat& format) {
    return !codec.most_format ||
           (format.width <= codec.most_format->width && format.height <= codec.most_format->height &&
            format.frame_rate <= codec.most_format->frame_rate);
}

VideoFormat cut(const CodecPicture& codec, VideoFormat format) {
    if (codec.most_sampling && content(format.sampling) > content(*codec.most_sampling))
        format.sampling = *codec.most_sampling;
    format.depth = std::min(format.depth, codec.most_depth.value_or(16));
    if (codec.flattens_hdr) format.range = DynamicRange::sdr;
    return format;
}

bool made_from(const VideoFormat& made, const VideoFormat& from) {
    return content(made.sampling) <= content(from.sampling) && made.depth <= from.depth &&
           (made.range == from.range || made.range == DynamicRange::sdr);
}

/// What is left of the picture at the display, the best that its decoder could make of it; none: black.
std::optional<VideoFormat> left_of(const Chain& chain, const std::vector<VideoFormat>& all, const VideoFormat& sent) {
    std::vector<VideoFormat> now{sent};
    bool scaled = false;
    for (std::size_t i = 0; i < chain.ports.size(); ++i) {
        std::erase_if(now, [&](const auto& each) { return !passes(chain.ports[i], each); });
        if (chain.coded != i || now.empty()) continue;
        if (!taken(chain.encoder, sent) || !taken(chain.decoder, sent)) return std::nullopt;
        const auto reduced = cut(chain.decoder, cut(chain.encoder, sent));
        now.clear();
        scaled = chain.scales;
        for (const auto& each : all)
            if (made_from(each, reduced) &&
                (chain.scales || (each.width == sent.width && each.frame_rate == sent.frame_rate)))
                now.push_back(each);
    }
    std::optional<VideoFormat> best;
    for (auto each : now) {
        if (scaled && std::pair(each.width, each.frame_rate) > std::pair(sent.width, sent.frame_rate))
            each.width = sent.width, each.height = sent.height, each.frame_rate = sent.frame_rate;
        if (!best || worth(each) > worth(*best)) best = each;
    }
    return best;
}

std::optional<VideoFormat> best_by_trying(const Chain& chain, const std::vector<VideoFormat>& all) {
    std::optional<VideoFormat> best;
    for (const auto& sent : all)
        if (const auto left = left_of(chain, all, sent); left && (!best || worth(*left) > worth(*best))) best = left;
    return best;
}

const PictureArrival& at_display(const VideoChains& chains) {
    const auto& arrivals = chains.origins.at(0).arrivals;
    return *std::ranges::find_if(arrivals, [](const auto& each) { return each.shows; });
}

std::optional<VideoFormat> best_found(const Chain& chain) {
    const auto chains = seen(room_of(chain)).chains;
    const auto& arrival = at_display(chains);
    return arrival.best ? std::optional(chains.space.format(*arrival.best)) : std::nullopt;
}

std::string words(const std::optional<VideoFormat>& format) { return format ? standards::text(*format) : "-"; }

TEST(VideoChain, theBestCommonFormatIsWhatTryingAllFinds) {
    const auto all = every_format();
    int pictures = 0;
    for (unsigned seed = 1; seed <= 150; ++seed) {
        Dice dice{std::mt19937(seed)};
        const auto chain = dice.chain();
        // Rasters that no type names are no format of the design: all are named by the source's silent neighbour.
        auto named = chain;
        const auto best = best_found(named);
        std::vector<VideoFormat> known;
        std::set<std::string> stated;
        for (const auto& port : chain.ports)
            for (const auto& format : port.facts->formats) stated.insert(standards::raster_text(format));
        for (const auto& format : all)
            if (stated.contains(standards::raster_text(format))) known.push_back(format);
        EXPECT_EQ(words(best), words(best_by_trying(chain, known))) << "seed " << seed;
        pictures += best ? 1 : 0;
    }
    EXPECT_GT(pictures, 40);  // the dice draw chains that work, and chains that do not
    EXPECT_LT(pictures, 140);
}

/// One more ability at one port or codec of the chain.
void add_ability(Dice& dice, Chain& chain) {
    auto& port = chain.ports[dice.below(chain.ports.size())];
    auto& facts = *port.facts;
    switch (dice.below(6)) {
        case 0:
            if (!facts.formats.empty()) {
                const auto more = picture_format(rasters[dice.below(rasters.size())]);
                if (std::ranges::find(facts.formats, more) == facts.formats.end()) facts.formats.push_back(more);
            }
            break;
        case 1:
            facts.samplings.clear();
            break;
        case 2:
            facts.most_depth.reset();
            break;
        case 3:
            facts.ranges.clear();
            break;
        case 4:
            port.link = links.back();
            break;
        default:
            (dice.below(2) ? chain.encoder : chain.decoder) = {};
            chain.scales = true;
            break;
    }
}

TEST(VideoChain, anAbilityMoreNeverMakesThePictureWorse) {
    for (unsigned seed = 1; seed <= 60; ++seed) {
        Dice dice{std::mt19937(seed)};
        auto chain = dice.chain();
        auto before = best_found(chain);
        for (int step = 0; step < 6; ++step) {
            add_ability(dice, chain);
            const auto after = best_found(chain);
            if (before) {
                ASSERT_TRUE(after) << "seed " << seed;
                EXPECT_GE(worth(*after), worth(*before)) << "seed " << seed;
            }
            before = after;
        }
    }
}

}  // namespace streamwright::test::video_chain_test
