#include "core/analysis/facts/picture_sets.h"

#include "core/standards/picture_links.h"

#include <algorithm>
#include <utility>

namespace streamwright::analysis {

namespace picture_sets_detail {

using catalogue::Codec;
using standards::VideoFormat;

template <class List, class Value>
bool lists(const List& list, const Value& value) {
    return list.empty() || std::find(list.begin(), list.end(), value) != list.end();
}

FormatSet stated(const FormatSpace& space, const catalogue::PictureFacts& facts) {
    const auto forms = colours_where([&](const Colour& colour) {
        return lists(facts.samplings, colour.sampling) && lists(facts.ranges, colour.range) &&
               colour.depth <= facts.most_depth.value_or(colour.depth);
    });
    FormatSet set = space.none();
    for (int raster = 0; raster < space.rasters(); ++raster)
        if (facts.formats.empty() ||
            std::any_of(facts.formats.begin(), facts.formats.end(),
                        [&](const VideoFormat& each) { return same_raster(each, space.raster(raster)); }))
            set[static_cast<std::size_t>(raster)] = forms;
    return set;
}

/// Whether the link carries it. A format whose timing is not known is not held against the link; one that misses it by
/// a hair may pass.
bool carries(const standards::PictureLink& link, const VideoFormat& format) {
    const auto fit = standards::fits(format, link);
    return !fit || fit->verdict == standards::Fit::fits || fit->verdict == standards::Fit::doubtful;
}

/// The range changes nothing in the bits of a link: SDR answers for all three.
FormatSet carried(const FormatSpace& space, const standards::PictureLink& link) {
    FormatSet set = space.none();
    for (int raster = 0; raster < space.rasters(); ++raster)
        for (int colour = 0; colour < FormatSpace::colours; ++colour) {
            const auto& form = colour_form(colour);
            if (form.range != standards::DynamicRange::sdr) continue;
            if (carries(link, space.format(raster * FormatSpace::colours + colour)))
                set[static_cast<std::size_t>(raster)] |= colours_where(
                    [&](const Colour& each) { return each.sampling == form.sampling && each.depth == form.depth; });
        }
    return set;
}

/// No larger either way and no faster.
bool within(const VideoFormat& format, const VideoFormat& most) {
    const bool as_fast = format.frame_rate <= most.frame_rate || same_raster(format, most) ||
                         same_raster({.width = most.width,
                                      .height = most.height,
                                      .interlaced = most.interlaced,
                                      .frame_rate = format.frame_rate},
                                     most);
    return format.width <= most.width && format.height <= most.height && as_fast &&
           (format.interlaced <= most.interlaced || !most.interlaced);
}

bool takes(const Codec& codec, const VideoFormat& raster) {
    return !codec.picture || !codec.picture->most_format || within(raster, *codec.picture->most_format);
}

int cut_by(const Codec& codec, int colour) {
    if (!codec.picture) return colour;
    constexpr int any_depth = 16;
    return limited(colour, codec.picture->most_sampling.value_or(standards::Sampling::rgb),
                   codec.picture->most_depth.value_or(any_depth), !codec.picture->flattens_hdr);
}

/// The best that this set leaves, per raster of what is left; -1: nothing.
std::vector<int> best_left(const FormatSpace& space, const std::vector<int>& behind, const FormatSet& made) {
    std::vector<int> best(static_cast<std::size_t>(space.rasters()), -1);
    for (int out = 0; out < space.size(); ++out) {
        const int left = behind[static_cast<std::size_t>(out)];
        if (left < 0 || !holds(made, out)) continue;
        auto& held = best[static_cast<std::size_t>(FormatSpace::raster_of(left))];
        held = std::max(held, left);
    }
    return best;
}

int with_raster(int raster, int number) { return raster * FormatSpace::colours + FormatSpace::colour_of(number); }

std::vector<int> encoder_decoder(const FormatSpace& space, const Codec& encoder, const Codec& decoder,
                                 const std::vector<int>& behind) {
    std::vector<int> result(behind.size(), -1);
    std::vector<std::vector<int>> scaled(FormatSpace::colours);  // a scaler's answer does not hang on the raster
    for (int n = 0; n < space.size(); ++n) {
        const auto made = after_codec(space, encoder, decoder, n);
        const int raster = FormatSpace::raster_of(n);
        if (made[static_cast<std::size_t>(raster)] == 0) continue;
        auto best = decoder.scales ? scaled[static_cast<std::size_t>(FormatSpace::colour_of(n))] : std::vector<int>();
        if (best.empty()) best = best_left(space, behind, made);
        if (decoder.scales) scaled[static_cast<std::size_t>(FormatSpace::colour_of(n))] = best;
        // A picture scaled up is worth no more than before.
        for (const int left : best)
            if (left >= 0)
                result[static_cast<std::size_t>(n)] =
                    std::max(result[static_cast<std::size_t>(n)],
                             with_raster(std::min(raster, FormatSpace::raster_of(left)), left));
    }
    return result;
}

}  // namespace picture_sets_detail

using namespace picture_sets_detail;

FormatSpace formats_named(const graph::Wiring& wiring) {
    std::vector<VideoFormat> rasters;
    for (const auto& index : wiring.port_indices)
        for (const auto& port : index.type->ports)
            if (port.picture) rasters.insert(rasters.end(), port.picture->formats.begin(), port.picture->formats.end());
    for (const auto& row : wiring.design.port_overrides) {
        if (row.picture) rasters.push_back(*row.picture);
        if (row.edid && row.edid->format) rasters.push_back(*row.edid->format);
    }
    return FormatSpace(rasters);
}

FormatSet after_codec(const FormatSpace& space, const Codec& encoder, const Codec& decoder, int entering) {
    const int raster = FormatSpace::raster_of(entering);
    FormatSet out = space.none();
    if (!takes(encoder, space.raster(raster)) || !takes(decoder, space.raster(raster))) return out;
    const auto forms = made_of(cut_by(decoder, cut_by(encoder, FormatSpace::colour_of(entering))));
    if (decoder.scales)
        std::fill(out.begin(), out.end(), forms);
    else
        out[static_cast<std::size_t>(raster)] = forms;
    return out;
}

PictureSets::PictureSets(FormatSpace space, LinkSets known) : space_(std::move(space)), known_(std::move(known)) {
    number(space_.all());
}

LinkSets PictureSets::links() const {
    LinkSets known;
    for (const auto& [standard, carries] : of_link_) known.emplace(standard, set(carries));
    return known;
}

SetNo PictureSets::number(FormatSet set) {
    const auto [at, fresh] = set_numbers_.try_emplace(std::move(set), static_cast<int>(sets_.size()));
    if (fresh) sets_.push_back(at->first);
    return at->second;
}

TableNo PictureSets::table_number(std::vector<int> table) {
    const auto [at, fresh] = table_numbers_.try_emplace(std::move(table), static_cast<int>(tables_.size()));
    if (fresh) tables_.push_back(at->first);
    return at->second;
}

SetNo PictureSets::both(SetNo one, SetNo other) {
    if (one == other || other == all()) return one;
    if (one == all()) return other;
    const std::pair key(std::min(one, other), std::max(one, other));
    if (const auto at = both_.find(key); at != both_.end()) return at->second;
    return both_[key] = number(analysis::both(set(one), set(other)));
}

SetNo PictureSets::of_link(const std::string& standard) {
    if (const auto at = of_link_.find(standard); at != of_link_.end()) return at->second;
    if (const auto held = known_.find(standard); held != known_.end()) return of_link_[standard] = number(held->second);
    const auto* link = standards::picture_link(standard);
    if (!link) return of_link_[standard] = all();
    return of_link_[standard] = number(carried(space_, *link));
}

SetNo PictureSets::stated_by(const catalogue::PortType& port) {
    return port.picture ? number(stated(space_, *port.picture)) : all();
}

SetNo PictureSets::of_port(const catalogue::PortType& port) {
    if (const auto at = of_port_.find(&port); at != of_port_.end()) return at->second;
    SetNo result = all();
    for (const auto& standard : port.standards) result = both(result, of_link(standard));
    result = both(result, stated_by(port));
    return of_port_[&port] = result;
}

SetNo PictureSets::up_to(const VideoFormat& most) {
    const auto top = space_.number(most);
    const auto forms = top ? made_of(FormatSpace::colour_of(*top)) : ~std::uint64_t{0};
    FormatSet result = space_.none();
    for (int raster = 0; raster < space_.rasters(); ++raster)
        if (within(space_.raster(raster), most)) result[static_cast<std::size_t>(raster)] = forms;
    return number(std::move(result));
}

SetNo PictureSets::only(const VideoFormat& format) {
    const auto at = space_.number(format);
    return number(at ? space_.only(*at) : space_.none());
}

SetNo PictureSets::encoded(const Codec& codec) {
    if (const auto at = encoded_.find(&codec); at != encoded_.end()) return at->second;
    FormatSet result = space_.all();
    for (int raster = 0; raster < space_.rasters(); ++raster)
        if (!takes(codec, space_.raster(raster))) result[static_cast<std::size_t>(raster)] = 0;
    return encoded_[&codec] = number(std::move(result));
}

TableNo PictureSets::as_is(SetNo of) {
    if (const auto at = as_is_.find(of); at != as_is_.end()) return at->second;
    std::vector<int> table(static_cast<std::size_t>(space_.size()), -1);
    for (int n = 0; n < space_.size(); ++n)
        if (holds(set(of), n)) table[static_cast<std::size_t>(n)] = n;
    return as_is_[of] = table_number(std::move(table));
}

TableNo PictureSets::through(SetNo of, TableNo way) {
    if (of == all()) return way;
    const std::pair key(of, way);
    if (const auto at = through_.find(key); at != through_.end()) return at->second;
    auto result = table(way);
    for (int n = 0; n < space_.size(); ++n)
        if (!holds(set(of), n)) result[static_cast<std::size_t>(n)] = -1;
    return through_[key] = table_number(std::move(result));
}

TableNo PictureSets::coded(const Codec& encoder, const Codec& decoder, TableNo way) {
    const std::tuple key(static_cast<const void*>(&encoder), static_cast<const void*>(&decoder), way);
    if (const auto at = coded_.find(key); at != coded_.end()) return at->second;
    auto result = encoder_decoder(space_, encoder, decoder, table(way));
    return coded_[key] = table_number(std::move(result));
}

SetNo PictureSets::accepted(TableNo way, bool without_loss) {
    const std::pair key(way, without_loss);
    if (const auto at = accepted_.find(key); at != accepted_.end()) return at->second;
    FormatSet result = space_.none();
    const auto& left = table(way);
    for (int n = 0; n < space_.size(); ++n) {
        const int out = left[static_cast<std::size_t>(n)];
        if (out < 0) continue;
        if (without_loss &&
            colour_form(FormatSpace::colour_of(out)).range != colour_form(FormatSpace::colour_of(n)).range)
            continue;
        result[static_cast<std::size_t>(FormatSpace::raster_of(n))] |= std::uint64_t{1} << FormatSpace::colour_of(n);
    }
    return accepted_[key] = number(std::move(result));
}

const PictureSets::Best& PictureSets::best(TableNo way) {
    if (const auto at = best_.find(way); at != best_.end()) return at->second;
    Best best;
    const auto& left = table(way);
    for (int n = 0; n < space_.size(); ++n) {
        const int out = left[static_cast<std::size_t>(n)];
        if (out >= 0 && out >= best.left) best = {out, n};
    }
    return best_[way] = best;
}

}  // namespace streamwright::analysis
