// A stream that packs a picture by its format must be one that its encoder can make. Judged as far as the type speaks.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/stream_chain.h"
#include "core/analysis/stream_decoding.h"
#include "core/model/stream_packets.h"

namespace streamwright::analysis::rules::coding_not_made {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT("%1 packs its picture as %3, which %2 does not make."),
                                         STREAMWRIGHT_TEXT("%1 needs level %4 of %3, but %2 makes level %5 at most."),
                                         STREAMWRIGHT_TEXT("%1 sends %3, but %2 encodes %4 at most."),
                                         STREAMWRIGHT_TEXT("%1 packs %3, but %2 makes %4 at most.")};

constexpr standards::Citation sources[] = {
    {"trade", "encoders", "make what their types state", standards::Standing::practice},
    {"ITU-T", "H.264", "Table A-1"},
    {"ITU-T", "H.265", "Table A.9"}};

constexpr RuleWords words{
    .id = "coding-not-made",
    .theme = Theme::signals,
    .title = "Stream that its encoder cannot make",
    .meaning = "The encoder cannot be set to what the design counts on: its picture, and so its rate, will be another.",
    .measured =
        "Coding, level, raster, rate, sampling and depth of what the stream packs are held against what the encoder's "
        "type states; where it states nothing, nothing is judged.",
    .remedy = "State in the stream what the encoder makes, or take an encoder that makes what is wanted.",
    .patterns = patterns,
    .sources = sources};

using Values = std::vector<base::Value>;

void add(const model::Stream& row, int variant, Values rest, Findings& out) {
    Values values{named(row.id), named(row.encoder)};
    values.insert(values.end(), rest.begin(), rest.end());
    auto finding = found(words.id, Severity::error, {row.id, row.encoder}, std::move(values), variant);
    finding.terms = stream_terms(row);
    out.push_back(std::move(finding));
}

/// Bits that a pixel of 8-bit components takes.
int fullness(standards::Sampling sampling) { return standards::bits_per_pixel(sampling, 8); }

/// What of the format is beyond the codec; nothing where all of it is within.
std::optional<std::pair<std::string, std::string>> beyond(const catalogue::CodecPicture& most,
                                                          const standards::VideoFormat& format) {
    if (const auto& limit = most.most_format) {
        const auto pixels = [](const standards::VideoFormat& f) { return std::int64_t{f.width} * f.height; };
        if (format.width > limit->width || format.height > limit->height ||
            format.frame_rate.times(pixels(format)) > limit->frame_rate.times(pixels(*limit)))
            return std::pair(standards::raster_text(format), standards::raster_text(*limit));
    }
    if (most.most_sampling && fullness(format.sampling) > fullness(*most.most_sampling))
        return std::pair(std::string(base::enum_text(format.sampling)),
                         std::string(base::enum_text(*most.most_sampling)));
    if (most.most_depth && format.depth > *most.most_depth)
        return std::pair(std::to_string(format.depth) + "-bit", std::to_string(*most.most_depth) + "-bit");
    return std::nullopt;
}

void judge(const model::Stream& row, const catalogue::Codec& codec, Findings& out) {
    const auto& picture = *row.picture;
    const std::string coding(base::enum_text(picture.coding));
    if (!takes_coding(codec, picture)) return add(row, 0, {coding}, out);
    if (!takes_level(codec, picture))
        return add(row, 1, {coding, level_words(picture), stated_level(codec.packed, picture.coding)}, out);
    if (codec.most_rate && model::payload_rate_of(row) > base::Rate(*codec.most_rate))
        return add(row, 3, {model::payload_rate_of(row).ceil(), *codec.most_rate}, out);
    if (const auto what = codec.picture ? beyond(*codec.picture, picture.format) : std::nullopt)
        add(row, 2, {what->first, what->second}, out);
}

void check(const graph::Wiring& wiring, Findings& out) {
    for (const auto& row : wiring.design.streams) {
        const auto encoder = row.picture ? wiring.device_index(row.encoder) : std::nullopt;
        const auto* type = encoder ? wiring.devices[at(*encoder)].type : nullptr;
        if (type && type->codec) judge(row, *type->codec, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::coding_not_made
