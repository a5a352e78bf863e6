// Reads a picture format as people write it. Apart from the format itself because habits are many: "4K60",
// "3840 x 2160 @ 59.94 Hz", "1080i50, YCbCr 4:2:2, 10 bit, HLG".
#include "core/base/number_text.h"
#include "core/standards/frame_rate_text.h"
#include "core/standards/video_format.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>
#include <vector>

namespace streamwright::standards {

namespace parse_video_format_detail {

using Maybe = std::optional<base::Error>;

base::Error cannot(std::string_view pattern, std::string_view word) {
    return {std::string(pattern), {std::string(word)}};
}

/// Lower case, the multiplication sign as x, commas and semicolons as spaces.
std::string simplified(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text.substr(i).starts_with("\u00d7")) {
            out += 'x';
            ++i;
            continue;
        }
        const auto c = static_cast<unsigned char>(text[i]);
        out += c == ',' || c == ';' || c == '\t' ? ' ' : static_cast<char>(std::tolower(c));
    }
    return out;
}

/// Takes whole digits from the front; nothing where there are none or more than six.
std::optional<int> take_whole(std::string_view& text) {
    std::size_t count = 0;
    while (count < text.size() && std::isdigit(static_cast<unsigned char>(text[count])) != 0) ++count;
    if (count == 0 || count > 6) return std::nullopt;
    int value = 0;
    for (const char c : text.substr(0, count)) value = value * 10 + (c - '0');
    text.remove_prefix(count);
    return value;
}

void skip_spaces(std::string_view& text) {
    while (text.starts_with(' ')) text.remove_prefix(1);
}

bool take(std::string_view& text, std::string_view word) {
    if (!text.starts_with(word)) return false;
    text.remove_prefix(word.size());
    return true;
}

struct LinesName {
    int height, width;
};
constexpr std::array by_lines{LinesName{480, 720},   LinesName{576, 720},   LinesName{720, 1280}, LinesName{1080, 1920},
                              LinesName{1440, 2560}, LinesName{2160, 3840}, LinesName{4320, 7680}};

struct KName {
    int thousands, width, height;
};
constexpr std::array by_thousands{KName{2, 1920, 1080}, KName{4, 3840, 2160}, KName{5, 5120, 2880},
                                  KName{8, 7680, 4320}, KName{16, 15360, 8640}};

/// "4k": what the trade means by it.
Maybe raster_of_thousands(int thousands, VideoFormat& format) {
    for (const auto& each : by_thousands)
        if (each.thousands == thousands) {
            format.width = each.width;
            format.height = each.height;
            return std::nullopt;
        }
    return cannot("The width of a picture cannot be read from \"%1K\".", std::to_string(thousands));
}

Maybe raster_of_lines(int height, VideoFormat& format) {
    for (const auto& each : by_lines)
        if (each.height == height) {
            format.width = each.width;
            format.height = each.height;
            return std::nullopt;
        }
    return cannot("The width that goes with %1 lines is not known: write width x height.", std::to_string(height));
}

/// Width and height, and the letter of the scan where it stands with them.
Maybe take_raster(std::string_view& text, VideoFormat& format) {
    const auto whole = text;
    if (take(text, "uhd")) return raster_of_thousands(4, format);
    const auto first = take_whole(text);
    if (!first) return cannot("\"%1\" does not begin with a picture size such as 1080p or 1920x1200.", whole);
    if (take(text, "k")) return raster_of_thousands(*first, format);
    skip_spaces(text);
    if (take(text, "x")) {
        skip_spaces(text);
        const auto second = take_whole(text);
        if (!second) return cannot("The height of the picture cannot be read from \"%1\".", whole);
        format.width = *first;
        format.height = *second;
        return std::nullopt;
    }
    if (!text.starts_with('p') && !text.starts_with('i'))
        return cannot("\"%1\" does not begin with a picture size such as 1080p or 1920x1200.", whole);
    return raster_of_lines(*first, format);
}

/// The rate stands behind p, i, @ or a space; it may not be left out.
Maybe take_scan_and_rate(std::string_view& text, VideoFormat& format) {
    skip_spaces(text);
    format.interlaced = text.starts_with('i');
    if (!take(text, "i") && !take(text, "p")) skip_spaces(text);
    skip_spaces(text);
    if (!take(text, "@")) take(text, "at ");
    skip_spaces(text);
    const auto whole = text;
    const auto rate = take_frame_rate(text);
    if (!rate) return cannot("The frame rate cannot be read from \"%1\".", whole);
    format.frame_rate = rate->times(1, format.interlaced ? 2 : 1);
    auto unit = text;
    skip_spaces(unit);
    if (take(unit, "hz")) text = unit;
    if (!text.empty() && !text.starts_with(' ')) return cannot("The frame rate cannot be read from \"%1\".", whole);
    return std::nullopt;
}

std::vector<std::string_view> words_of(std::string_view text) {
    std::vector<std::string_view> words;
    while (true) {
        skip_spaces(text);
        if (text.empty()) return words;
        const auto end = std::min(text.find(' '), text.size());
        words.push_back(text.substr(0, end));
        text.remove_prefix(end);
    }
}

bool set_sampling(std::string_view word, bool said_rgb, VideoFormat& format) {
    static constexpr std::pair<std::string_view, Sampling> names[] = {
        {"rgb", Sampling::rgb},         {"4:4:4", Sampling::ycbcr_444}, {"444", Sampling::ycbcr_444},
        {"4:2:2", Sampling::ycbcr_422}, {"422", Sampling::ycbcr_422},   {"4:2:0", Sampling::ycbcr_420},
        {"420", Sampling::ycbcr_420}};
    for (const auto& [name, sampling] : names)
        if (name == word) {
            format.sampling = said_rgb && sampling == Sampling::ycbcr_444 ? Sampling::rgb : sampling;
            return true;
        }
    return word == "ycbcr" || word == "yuv";  // the numbers behind it say which
}

bool set_range(std::string_view word, VideoFormat& format) {
    static constexpr std::pair<std::string_view, DynamicRange> names[] = {
        {"sdr", DynamicRange::sdr}, {"pq", DynamicRange::pq}, {"hdr", DynamicRange::pq}, {"hlg", DynamicRange::hlg}};
    for (const auto& [name, range] : names)
        if (name == word) {
            format.range = range;
            return true;
        }
    return false;
}

/// "10-bit", "10bit", "10b", or "10" before "bit"; the second word is taken too then.
bool set_depth(const std::vector<std::string_view>& words, std::size_t& at, VideoFormat& format) {
    auto rest = words[at];
    const auto depth = take_whole(rest);
    if (!depth) return false;
    take(rest, "-");
    const bool alone = rest.empty();
    if (alone && at + 1 == words.size()) return false;
    const auto unit = alone ? words[at + 1] : rest;
    if (unit != "bit" && unit != "bits" && unit != "b" && unit != "bpc") return false;
    if (alone) ++at;
    format.depth = *depth;
    return true;
}

Maybe take_rest(std::string_view text, VideoFormat& format) {
    const auto words = words_of(text);
    bool said_rgb = false;
    for (std::size_t at = 0; at < words.size(); ++at) {
        said_rgb = said_rgb || words[at] == "rgb";
        if (words[at] == "rb") {
            format.reduced_blanking = true;
        } else if (!set_sampling(words[at], said_rgb, format) && !set_range(words[at], format) &&
                   !set_depth(words, at, format)) {
            return cannot("\"%1\" is no sampling, depth or dynamic range of a picture.", words[at]);
        }
    }
    return std::nullopt;
}

}  // namespace parse_video_format_detail

base::Result<VideoFormat> parse_video_format(std::string_view written) {
    namespace detail = parse_video_format_detail;
    constexpr std::size_t most_octets = 100;
    if (written.size() > most_octets) return base::Error{"A picture format has at most 100 characters.", {}};
    const auto simple = detail::simplified(base::trim_spaces(written));
    std::string_view rest = simple;
    VideoFormat format;
    if (auto fault = detail::take_raster(rest, format)) return *fault;
    if (auto fault = detail::take_scan_and_rate(rest, format)) return *fault;
    if (auto fault = detail::take_rest(rest, format)) return *fault;
    if (auto fault = contradiction(format)) return *fault;
    return format;
}

}  // namespace streamwright::standards
