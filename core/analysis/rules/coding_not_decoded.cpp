// A decoder shows a packed picture only where it knows its coding and reaches its level. Judged where its type says
// which codings it takes.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/stream_chain.h"
#include "core/analysis/stream_decoding.h"

#include <set>

namespace streamwright::analysis::rules::coding_not_decoded {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 shows %2, which is %3, but decodes %4 only."),
    STREAMWRIGHT_TEXT("%1 shows %2, which needs level %4 of %3, but decodes level %5 at most.")};

constexpr standards::Citation sources[] = {{"ITU-T", "H.264", "Table A-1"}, {"ITU-T", "H.265", "Table A.9"}};

constexpr RuleWords words{
    .id = "coding-not-decoded",
    .theme = Theme::signals,
    .title = "Decoder that does not know the coding",
    .meaning = "The stream arrives and the display stays black, or the picture stutters.",
    .measured =
        "The coding that the stream states, and for H.264 and H.265 the least level that holds "
        "its format and bit rate, are held against those that the decoder's type states.",
    .remedy = "Set the encoder to a coding and level that the decoder takes, or choose another decoder.",
    .patterns = patterns,
    .sources = sources};

std::string codings(const catalogue::PictureCodings& packed) {
    std::string text;
    for (const auto coding : packed.codings) text += (text.empty() ? "" : ", ") + std::string(base::enum_text(coding));
    return text;
}

void judge(const model::Subscription& row, const model::Stream& stream, const catalogue::Codec& codec, Findings& out) {
    const auto& picture = *stream.picture;
    const std::string coding(base::enum_text(picture.coding));
    std::vector<base::Value> values{named(row.decoder), named(stream.id), coding};
    const bool known = takes_coding(codec, picture);
    if (known && takes_level(codec, picture)) return;
    if (known) {
        values.emplace_back(level_words(picture));
        values.emplace_back(stated_level(codec.packed, picture.coding));
    } else {
        values.emplace_back(codings(codec.packed));
    }
    auto finding = found(words.id, Severity::error, {row.decoder, stream.id}, std::move(values), known ? 1 : 0);
    finding.terms = stream_terms(stream);
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, Findings& out) {
    std::set<std::pair<model::DeviceId, model::StreamId>> seen;  // once, in however many presets
    for (const auto& row : wiring.design.subscriptions) {
        const auto decoder = wiring.device_index(row.decoder);
        const auto* type = decoder ? wiring.devices[at(*decoder)].type : nullptr;
        if (!type || !type->codec || type->codec->packed.codings.empty()) continue;
        const auto* stream = wiring.design.streams.find(row.stream);
        if (!stream || !stream->picture || !seen.emplace(row.decoder, row.stream).second) continue;
        judge(row, *stream, *type->codec, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::coding_not_decoded
