#include "core/standards/video_streams.h"

#include "core/standards/wire_overhead.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <numeric>

namespace streamwright::standards {

namespace video_streams_detail {

struct GroupRow {
    Sampling sampling;
    int depth;
    PixelGroup group;
};
constexpr std::array groups{
    GroupRow{Sampling::ycbcr_420, 8, {6, 4, 2}},  GroupRow{Sampling::ycbcr_420, 10, {15, 8, 2}},
    GroupRow{Sampling::ycbcr_420, 12, {9, 4, 2}}, GroupRow{Sampling::ycbcr_422, 8, {4, 2, 1}},
    GroupRow{Sampling::ycbcr_422, 10, {5, 2, 1}}, GroupRow{Sampling::ycbcr_422, 12, {6, 2, 1}},
    GroupRow{Sampling::ycbcr_422, 16, {8, 2, 1}}, GroupRow{Sampling::rgb, 8, {3, 1, 1}},
    GroupRow{Sampling::rgb, 10, {15, 4, 1}},      GroupRow{Sampling::rgb, 12, {9, 2, 1}},
    GroupRow{Sampling::rgb, 16, {6, 1, 1}},
};

constexpr std::int64_t header_octets(std::int64_t lines) {
    return extended_sequence_octets + lines * line_header_octets;
}

/// What is left for samples of one line.
std::int64_t room_of(std::int64_t udp) { return udp - udp_octets - rtp_octets - header_octets(1); }

/// The largest equal part of a line that fits. Where the line has no part of half the room at least (a prime number of
/// groups), the room is filled and the last packet of the line is shorter.
std::int64_t general_octets(const PixelGroup& group, std::int64_t groups_per_line, std::int64_t room) {
    const auto most = std::max<std::int64_t>(room / group.octets, 1);
    for (auto part = std::min(most, groups_per_line); part * 2 > most || part == groups_per_line; --part)
        if (groups_per_line % part == 0) return part * group.octets;
    return std::min(most, groups_per_line) * group.octets;
}

/// As many blocks as fit and end with a whole pixel group.
std::int64_t full_blocks(const PixelGroup& group, std::int64_t room) {
    for (auto blocks = room / block_octets; blocks > 0; --blocks)
        if (blocks * block_octets % group.octets == 0) return blocks * block_octets;
    return block_octets;
}

void count(std::vector<PacketRun>& runs, std::int64_t packets, std::int64_t payload) {
    if (packets == 0) return;
    for (auto& run : runs)
        if (run.payload == payload) {
            run.packets += packets;
            return;
        }
    runs.push_back({packets, payload});
}

std::vector<PacketRun> general_runs(std::int64_t line, std::int64_t lines, std::int64_t each) {
    std::vector<PacketRun> runs;
    count(runs, line / each * lines, each + header_octets(1));
    if (line % each != 0) count(runs, lines, line % each + header_octets(1));
    return runs;
}

/// Lines shorter than a packet: each packet is looked at.
std::vector<PacketRun> short_line_runs(std::int64_t line, std::int64_t total, std::int64_t each) {
    std::vector<PacketRun> runs;
    for (std::int64_t at = 0; at < total; at += each) {
        const auto end = std::min(at + each, total);
        const auto touched = (end - 1) / line - at / line + 1;
        count(runs, 1, end - at + header_octets(touched));
    }
    return runs;
}

/// A packet touches two lines where a line ends within it, which every line does but the last and those that end with
/// a packet.
std::vector<PacketRun> block_runs(std::int64_t line, std::int64_t lines, std::int64_t each) {
    const auto total = line * lines;
    if (line < each) return short_line_runs(line, total, each);
    const auto lines_to_meet = each / std::gcd(line, each);
    const auto crossing = (lines - 1) - (lines - 1) / lines_to_meet;
    const auto rest = total % each, full = total / each;
    std::vector<PacketRun> runs;
    count(runs, full - crossing, each + header_octets(1));
    count(runs, crossing, each + header_octets(2));
    if (rest > 0) count(runs, 1, rest + header_octets(1));
    return runs;
}

}  // namespace video_streams_detail

std::optional<PixelGroup> pixel_group(Sampling sampling, int depth) {
    const auto as_row = sampling == Sampling::ycbcr_444 ? Sampling::rgb : sampling;
    for (const auto& row : video_streams_detail::groups)
        if (row.sampling == as_row && row.depth == depth) return row.group;
    return std::nullopt;
}

std::int64_t sample_octets(const PixelGroup& group, std::int64_t groups_per_line, Packing packing,
                           std::int64_t udp_limit) {
    assert(groups_per_line > 0 && udp_limit >= standard_udp_octets);
    namespace detail = video_streams_detail;
    const auto room = detail::room_of(udp_limit);
    return packing == Packing::general ? detail::general_octets(group, groups_per_line, room)
                                       : detail::full_blocks(group, room);
}

std::optional<PictureStream> video_stream(const VideoFormat& format, Packing packing, std::int64_t udp_limit) {
    namespace detail = video_streams_detail;
    const auto group = pixel_group(format.sampling, format.depth);
    if (!group) return std::nullopt;
    const std::int64_t pixels = std::int64_t{format.width} * group->lines;
    const auto groups_per_line = (pixels + group->pixels - 1) / group->pixels;
    const std::int64_t picture_lines = format.interlaced ? format.height / 2 : format.height;
    const auto lines = (picture_lines + group->lines - 1) / group->lines;
    const auto each = sample_octets(*group, groups_per_line, packing, udp_limit);
    const auto line = groups_per_line * group->octets;
    PictureStream stream;
    stream.pictures = refresh_rate(format);
    stream.runs =
        packing == Packing::general ? detail::general_runs(line, lines, each) : detail::block_runs(line, lines, each);
    return stream;
}

}  // namespace streamwright::standards
