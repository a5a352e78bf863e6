// Links that carry a picture on a cable: HDMI, DisplayPort and SDI by generation, what each holds, and whether a
// format fits. Compression of the link itself (DSC) is left out: both ends must have it, and few names say so.
#pragma once

#include "core/base/rate.h"
#include "core/standards/citation.h"
#include "core/standards/hertz.h"
#include "core/standards/video_format.h"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace streamwright::standards {

/// tmds: three channels of 10 bits per 8; frl: 16 in 18 bits with error correction; displayport: 8 in 10 bits up to
/// HBR3, 128 in 132 from UHBR10 on; sdi: serial, blanking included.
enum class LinkCoding { tmds, frl, displayport_8b10b, displayport_128b132b, sdi };

struct PictureLink {
    std::string_view name;  // "HDMI 2.0", "HDMI 2.1 FRL 6", "DisplayPort HBR2", "12G-SDI"
    LinkCoding coding;
    int lanes;                         // of data
    base::BitRate raw;                 // all lanes, on the cable
    std::int64_t tmds_characters = 0;  // most TMDS characters a second, also of an FRL port; zero: no TMDS
    Citation source;
};

std::span<const PictureLink> picture_links();

/// The link that a port's standard names: a name of the table, or the name of a generation, which stands for the most
/// that it may give ("HDMI 2.1" for FRL 6, "DisplayPort 1.4" for HBR3 on four lanes). A device that gives less says so
/// by the mode ("HDMI 2.1 FRL 3", "DisplayPort UHBR10"). Null: not known.
const PictureLink* picture_link(std::string_view standard);

/// Bits a second left for pixels after line code, error correction and framing; TMDS and SDI: the raw rate, against
/// which the trade compares them.
base::Rate carried_rate(const PictureLink& link);
/// After the line code of TMDS (8 of 10) or FRL (16 of 18) alone; other links: as carried_rate.
base::Rate decoded_rate(const PictureLink& link);

/// Bits that a pixel takes on a display link. HDMI carries 4:2:2 in 24 bits, whatever the depth to 12; SDI takes 20
/// for 4:2:2 to 10 bits, 40 for all else.
int link_bits_per_pixel(LinkCoding coding, Sampling sampling, int depth);

/// Characters a second on each TMDS channel: the pixel clock, x depth / 8 except for 4:2:2, halved for 4:2:0.
Hertz tmds_character_rate(const Hertz& pixel_clock, Sampling sampling, int depth);
inline constexpr Citation tmds_character_source{"HDMI", "1.3 / 2.0", "deep colour, 4:2:2 packing, 4:2:0",
                                                Standing::memory};

/// What forward error correction costs DisplayPort of 8b/10b where it is on (with compression of the link): this part
/// of the rate.
inline constexpr std::int64_t displayport_fec_over = 256 * 6 + 1;
inline constexpr std::int64_t displayport_fec_under = 256 * 250;
inline constexpr Citation displayport_fec_source{"VESA", "DisplayPort", "(256 x 6 + 1) / (256 x 250)"};

/// doubtful: over what an FRL link carries by under 5 %, where compressed blanking may save it.
/// no_mapping: the link has no form for such a picture (SDI and 4:2:0; 4:2:2 above 12 bits on HDMI).
enum class Fit { fits, doubtful, too_much, no_mapping };

/// The arithmetic of one answer. needed and carried compare with each other: raw bits with TMDS and SDI ("17.82 of
/// 18 Gb/s"), pixel bits else.
struct LinkFit {
    Fit verdict = Fit::fits;
    LinkCoding coding = LinkCoding::tmds;  // an FRL port sends TMDS where only that fits
    base::Rate needed;
    base::Rate carried;
    Hertz pixel_clock;
    Hertz character_rate;  // TMDS: what is needed of link.tmds_characters
    int bits = 0;          // of one pixel on the link
    friend bool operator==(const LinkFit&, const LinkFit&) = default;
};

/// Nothing where the timing of the format is not known.
std::optional<LinkFit> fits(const VideoFormat& format, const PictureLink& link);

/// The same raster and rate in forms no heavier than asked, best first (full sampling, then 4:2:2, 4:2:0; deeper
/// before shallower), as far as they fit. What to set when the picture asked for does not fit.
std::vector<VideoFormat> forms_that_fit(const VideoFormat& format, const PictureLink& link);

}  // namespace streamwright::standards

template <>
struct streamwright::base::EnumText<streamwright::standards::LinkCoding> {
    using E = streamwright::standards::LinkCoding;
    static constexpr std::array<std::pair<E, std::string_view>, 5> names{{{E::tmds, "TMDS"},
                                                                          {E::frl, "FRL"},
                                                                          {E::displayport_8b10b, "8b/10b"},
                                                                          {E::displayport_128b132b, "128b/132b"},
                                                                          {E::sdi, "SDI"}}};
};
