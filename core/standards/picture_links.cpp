#include "core/standards/picture_links.h"

#include "core/standards/video_timing.h"

#include <array>
#include <utility>

namespace streamwright::standards {

namespace picture_links_detail {

using enum LinkCoding;
using base::BitRate;

constexpr BitRate mega(std::int64_t n) { return BitRate::from_count(n * 1'000'000); }
constexpr std::int64_t mcsc(std::int64_t n) { return n * 1'000'000; }

constexpr Citation hdmi(std::string_view document) { return {"HDMI", document, "greatest TMDS character rate"}; }
constexpr Citation frl_source(std::string_view mode) { return {"HDMI", "2.1 Max_FRL_Rate", mode}; }
constexpr Citation dp(std::string_view document, std::string_view clause) { return {"VESA", document, clause}; }
constexpr Citation smpte(std::string_view document, Standing standing = Standing::read) {
    return {"SMPTE", document, "serial rate", standing};
}

constexpr std::array links{
    PictureLink{"HDMI 1.2", tmds, 3, mega(4950), mcsc(165), hdmi("1.0 to 1.2")},
    PictureLink{"HDMI 1.4", tmds, 3, mega(10200), mcsc(340), hdmi("1.3 and 1.4")},
    PictureLink{"HDMI 2.0", tmds, 3, mega(18000), mcsc(600), hdmi("2.0")},
    PictureLink{"HDMI 2.1 FRL 1", frl, 3, mega(9000), mcsc(600), frl_source("mode 1, 3 lanes of 3 Gbit/s")},
    PictureLink{"HDMI 2.1 FRL 2", frl, 3, mega(18000), mcsc(600), frl_source("mode 2, 3 lanes of 6 Gbit/s")},
    PictureLink{"HDMI 2.1 FRL 3", frl, 4, mega(24000), mcsc(600), frl_source("mode 3, 4 lanes of 6 Gbit/s")},
    PictureLink{"HDMI 2.1 FRL 4", frl, 4, mega(32000), mcsc(600), frl_source("mode 4, 4 lanes of 8 Gbit/s")},
    PictureLink{"HDMI 2.1 FRL 5", frl, 4, mega(40000), mcsc(600), frl_source("mode 5, 4 lanes of 10 Gbit/s")},
    PictureLink{"HDMI 2.1 FRL 6", frl, 4, mega(48000), mcsc(600), frl_source("mode 6, 4 lanes of 12 Gbit/s")},
    PictureLink{"DisplayPort RBR", displayport_8b10b, 4, mega(6480), 0, dp("DisplayPort 1.4", "RBR, 8b/10b")},
    PictureLink{"DisplayPort HBR", displayport_8b10b, 4, mega(10800), 0, dp("DisplayPort 1.4", "HBR, 8b/10b")},
    PictureLink{"DisplayPort HBR2", displayport_8b10b, 4, mega(21600), 0, dp("DisplayPort 1.4", "HBR2, 8b/10b")},
    PictureLink{"DisplayPort HBR3", displayport_8b10b, 4, mega(32400), 0, dp("DisplayPort 1.4", "HBR3, 8b/10b")},
    PictureLink{"DisplayPort UHBR10", displayport_128b132b, 4, mega(40000), 0,
                dp("DisplayPort 2.1", "3.5.2.18, UHBR10")},
    PictureLink{"DisplayPort UHBR13.5", displayport_128b132b, 4, mega(54000), 0,
                dp("DisplayPort 2.1", "3.5.2.18, UHBR13.5")},
    PictureLink{"DisplayPort UHBR20", displayport_128b132b, 4, mega(80000), 0,
                dp("DisplayPort 2.1", "3.5.2.18, UHBR20")},
    PictureLink{"SD-SDI", sdi, 1, mega(270), 0, smpte("ST 259", Standing::memory)},
    PictureLink{"HD-SDI", sdi, 1, mega(1485), 0, smpte("ST 292-1")},
    PictureLink{"3G-SDI", sdi, 1, mega(2970), 0, smpte("ST 424")},
    PictureLink{"6G-SDI", sdi, 1, mega(5940), 0, smpte("ST 2081-1", Standing::memory)},
    PictureLink{"12G-SDI", sdi, 1, mega(11880), 0, smpte("ST 2082-1", Standing::memory)},
};

/// Generations that give a table's mode at most.
constexpr std::pair<std::string_view, std::string_view> generations[] = {
    {"HDMI 1.0", "HDMI 1.2"},
    {"HDMI 1.1", "HDMI 1.2"},
    {"HDMI 1.3", "HDMI 1.4"},
    {"HDMI 2.1", "HDMI 2.1 FRL 6"},
    {"DisplayPort 1.0", "DisplayPort HBR"},
    {"DisplayPort 1.1", "DisplayPort HBR"},
    {"DisplayPort 1.2", "DisplayPort HBR2"},
    {"DisplayPort 1.3", "DisplayPort HBR3"},
    {"DisplayPort 1.4", "DisplayPort HBR3"},
    {"DisplayPort 2.0", "DisplayPort UHBR20"},
    {"DisplayPort 2.1", "DisplayPort UHBR20"},
};

const PictureLink* by_name(std::string_view name) {
    for (const auto& link : links)
        if (link.name == name) return &link;
    return nullptr;
}

constexpr std::int64_t tmds_wire_bits = 30;  // three channels, ten bits a character

LinkFit tmds_fit(const VideoFormat& format, const Hertz& clock, const PictureLink& link) {
    LinkFit fit;
    fit.coding = tmds;
    fit.pixel_clock = clock;
    fit.bits = link_bits_per_pixel(tmds, format.sampling, format.depth);
    fit.character_rate = tmds_character_rate(clock, format.sampling, format.depth);
    fit.needed = fit.character_rate.bits(tmds_wire_bits);
    fit.carried = Hertz::whole(link.tmds_characters).bits(tmds_wire_bits);
    fit.verdict = fit.needed <= fit.carried ? Fit::fits : Fit::too_much;
    if (format.sampling == Sampling::ycbcr_422 && format.depth > 12) fit.verdict = Fit::no_mapping;
    return fit;
}

LinkFit pixel_fit(const VideoFormat& format, const Hertz& clock, const PictureLink& link) {
    LinkFit fit;
    fit.coding = link.coding;
    fit.pixel_clock = clock;
    fit.bits = link_bits_per_pixel(link.coding, format.sampling, format.depth);
    fit.needed = clock.bits(fit.bits);
    fit.carried = carried_rate(link);
    fit.verdict = fit.needed <= fit.carried ? Fit::fits : Fit::too_much;
    return fit;
}

/// An FRL port sends by FRL where that does, else by TMDS as HDMI 2.0 would.
LinkFit frl_fit(const VideoFormat& format, const Hertz& clock, const PictureLink& link) {
    LinkFit fit = pixel_fit(format, clock, link);
    if (format.sampling == Sampling::ycbcr_422 && format.depth > 12) fit.verdict = Fit::no_mapping;
    if (fit.verdict != Fit::too_much) return fit;
    const LinkFit older = tmds_fit(format, clock, link);
    if (older.verdict == Fit::fits) return older;
    constexpr std::int64_t doubt_percent = 105;
    if (fit.needed * 100 < fit.carried * doubt_percent) fit.verdict = Fit::doubtful;
    return fit;
}

/// SDI has forms for television rasters to 60 Hz alone, and none for 4:2:0 nor for more than 12 bits.
bool has_sdi_mapping(const VideoFormat& format) {
    if (format.sampling == Sampling::ycbcr_420 || format.depth > 12 || format.reduced_blanking) return false;
    if (format.frame_rate > Hertz::whole(60)) return false;
    constexpr std::pair<int, int> rasters[] = {{1280, 720}, {1920, 1080}, {3840, 2160}, {4096, 2160}};
    for (const auto& [width, height] : rasters)
        if (format.width == width && format.height == height) return true;
    return format.interlaced && format.width == 720 && (format.height == 480 || format.height == 576);
}

LinkFit sdi_fit(const VideoFormat& format, const Hertz& clock, const PictureLink& link) {
    LinkFit fit = pixel_fit(format, clock, link);
    if (!has_sdi_mapping(format)) fit.verdict = Fit::no_mapping;
    return fit;
}

/// This sampling, then those that keep less colour.
std::vector<Sampling> no_richer(Sampling sampling) {
    using enum Sampling;
    if (sampling == ycbcr_420) return {ycbcr_420};
    if (sampling == ycbcr_422) return {ycbcr_422, ycbcr_420};
    return {sampling, ycbcr_422, ycbcr_420};
}

}  // namespace picture_links_detail

std::span<const PictureLink> picture_links() { return picture_links_detail::links; }

const PictureLink* picture_link(std::string_view standard) {
    for (const auto& [generation, mode] : picture_links_detail::generations)
        if (generation == standard) return picture_links_detail::by_name(mode);
    return picture_links_detail::by_name(standard);
}

base::Rate carried_rate(const PictureLink& link) {
    switch (link.coding) {
        case LinkCoding::tmds:
        case LinkCoding::sdi:
            return link.raw;
        case LinkCoding::frl:
            return base::Rate::scaled(link.raw, 16 * 251, 18 * 255);
        case LinkCoding::displayport_8b10b:
            return base::Rate::scaled(link.raw, 8, 10);
        case LinkCoding::displayport_128b132b:
            return base::Rate::scaled(link.raw, 9671, 10'000);
    }
    return {};
}

base::Rate decoded_rate(const PictureLink& link) {
    if (link.coding == LinkCoding::tmds) return base::Rate::scaled(link.raw, 8, 10);
    if (link.coding == LinkCoding::frl) return base::Rate::scaled(link.raw, 16, 18);
    return carried_rate(link);
}

int link_bits_per_pixel(LinkCoding coding, Sampling sampling, int depth) {
    const bool hdmi = coding == LinkCoding::tmds || coding == LinkCoding::frl;
    constexpr int hdmi_422 = 24, sdi_422 = 20, sdi_other = 40;
    if (hdmi && sampling == Sampling::ycbcr_422) return hdmi_422;
    if (coding == LinkCoding::sdi) return sampling == Sampling::ycbcr_422 && depth <= 10 ? sdi_422 : sdi_other;
    return bits_per_pixel(sampling, depth);
}

Hertz tmds_character_rate(const Hertz& pixel_clock, Sampling sampling, int depth) {
    if (sampling == Sampling::ycbcr_422) return pixel_clock;
    return pixel_clock.times(depth, sampling == Sampling::ycbcr_420 ? 16 : 8);
}

std::optional<LinkFit> fits(const VideoFormat& format, const PictureLink& link) {
    namespace detail = picture_links_detail;
    const auto timing = video_timing(format);
    if (!timing) return std::nullopt;
    if (link.coding == LinkCoding::tmds) return detail::tmds_fit(format, timing->pixel_clock, link);
    if (link.coding == LinkCoding::frl) return detail::frl_fit(format, timing->pixel_clock, link);
    if (link.coding == LinkCoding::sdi) return detail::sdi_fit(format, timing->pixel_clock, link);
    return detail::pixel_fit(format, timing->pixel_clock, link);
}

std::vector<VideoFormat> forms_that_fit(const VideoFormat& format, const PictureLink& link) {
    std::vector<VideoFormat> found;
    for (const auto sampling : picture_links_detail::no_richer(format.sampling))
        for (const int depth : {16, 12, 10, 8}) {
            VideoFormat form = format;
            form.sampling = sampling;
            form.depth = depth;
            if (depth > format.depth || contradiction(form)) continue;
            const auto fit = fits(form, link);
            if (fit && fit->verdict == Fit::fits) found.push_back(form);
        }
    return found;
}

}  // namespace streamwright::standards
