#include "core/standards/video_timing.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace streamwright::standards {

namespace video_timing_detail {

/// A row of CTA-861: the clock follows from the totals and the exact rate, also at 1000/1001 of it.
struct CtaRow {
    int width, height;
    bool interlaced;
    int rate;  // frames a second, nominal
    int total_pixels, total_lines;
    Citation source;
};

constexpr Citation cta(std::string_view code, Standing standing = Standing::read) {
    return {"CTA", "861", code, standing};
}

constexpr std::array cta_rows{
    CtaRow{720, 480, true, 30, 858, 525, cta("VIC 6")},
    CtaRow{720, 480, false, 60, 858, 525, cta("VIC 2")},
    CtaRow{720, 576, true, 25, 864, 625, cta("VIC 21")},
    CtaRow{720, 576, false, 50, 864, 625, cta("VIC 17")},
    CtaRow{1280, 720, false, 24, 3300, 750, cta("VIC 60")},
    CtaRow{1280, 720, false, 25, 3960, 750, cta("VIC 61")},
    CtaRow{1280, 720, false, 30, 3300, 750, cta("VIC 62")},
    CtaRow{1280, 720, false, 48, 2500, 750, cta("VIC 108")},
    CtaRow{1280, 720, false, 50, 1980, 750, cta("VIC 19")},
    CtaRow{1280, 720, false, 60, 1650, 750, cta("VIC 4")},
    CtaRow{1280, 720, false, 100, 1980, 750, cta("VIC 41")},
    CtaRow{1280, 720, false, 120, 1650, 750, cta("VIC 47")},
    CtaRow{1920, 1080, true, 25, 2640, 1125, cta("VIC 20")},
    CtaRow{1920, 1080, true, 30, 2200, 1125, cta("VIC 5")},
    CtaRow{1920, 1080, false, 24, 2750, 1125, cta("VIC 32")},
    CtaRow{1920, 1080, false, 25, 2640, 1125, cta("VIC 33")},
    CtaRow{1920, 1080, false, 30, 2200, 1125, cta("VIC 34")},
    CtaRow{1920, 1080, false, 48, 2750, 1125, cta("VIC 111")},
    CtaRow{1920, 1080, false, 50, 2640, 1125, cta("VIC 31")},
    CtaRow{1920, 1080, false, 60, 2200, 1125, cta("VIC 16")},
    CtaRow{1920, 1080, false, 100, 2640, 1125, cta("VIC 64")},
    CtaRow{1920, 1080, false, 120, 2200, 1125, cta("VIC 63")},
    CtaRow{2560, 1080, false, 24, 3750, 1100, cta("VIC 86")},
    CtaRow{2560, 1080, false, 25, 3200, 1125, cta("VIC 87")},
    CtaRow{2560, 1080, false, 30, 3520, 1125, cta("VIC 88")},
    CtaRow{2560, 1080, false, 50, 3300, 1125, cta("VIC 89")},
    CtaRow{2560, 1080, false, 60, 3000, 1100, cta("VIC 90")},
    CtaRow{3840, 2160, false, 24, 5500, 2250, cta("VIC 93")},
    CtaRow{3840, 2160, false, 25, 5280, 2250, cta("VIC 94")},
    CtaRow{3840, 2160, false, 30, 4400, 2250, cta("VIC 95")},
    CtaRow{3840, 2160, false, 48, 5500, 2250, cta("VIC 114")},
    CtaRow{3840, 2160, false, 50, 5280, 2250, cta("VIC 96")},
    CtaRow{3840, 2160, false, 60, 4400, 2250, cta("VIC 97")},
    CtaRow{3840, 2160, false, 100, 5280, 2250, cta("VIC 117")},
    CtaRow{3840, 2160, false, 120, 4400, 2250, cta("VIC 118")},
    CtaRow{4096, 2160, false, 24, 5500, 2250, cta("VIC 98")},
    CtaRow{4096, 2160, false, 25, 5280, 2250, cta("VIC 99")},
    CtaRow{4096, 2160, false, 30, 4400, 2250, cta("VIC 100")},
    CtaRow{4096, 2160, false, 48, 5500, 2250, cta("VIC 115")},
    CtaRow{4096, 2160, false, 50, 5280, 2250, cta("VIC 101")},
    CtaRow{4096, 2160, false, 60, 4400, 2250, cta("VIC 102")},
    CtaRow{7680, 4320, false, 24, 11000, 4500, cta("VIC 194")},
    CtaRow{7680, 4320, false, 25, 10800, 4400, cta("VIC 195", Standing::memory)},
    CtaRow{7680, 4320, false, 30, 9000, 4400, cta("VIC 196")},
    CtaRow{7680, 4320, false, 50, 10800, 4400, cta("VIC 198")},
    CtaRow{7680, 4320, false, 60, 9000, 4400, cta("VIC 199")},
};

/// A row of VESA DMT: the clock is given, the rate only nearly what it is called (60.004 Hz).
struct DmtRow {
    int width, height;
    int rate;
    bool reduced;
    int total_pixels, total_lines;
    std::int64_t clock_hz;
    std::string_view code;
};
constexpr std::array dmt_rows{
    DmtRow{1024, 768, 60, false, 1344, 806, 65'000'000, "DMT 10h"},
    DmtRow{1280, 800, 60, true, 1440, 823, 71'000'000, "DMT 1Bh"},
    DmtRow{1280, 800, 60, false, 1680, 831, 83'500'000, "DMT 1Ch"},
    DmtRow{1280, 1024, 60, false, 1688, 1066, 108'000'000, "DMT 23h"},
    DmtRow{1366, 768, 60, false, 1792, 798, 85'500'000, "DMT 51h"},
    DmtRow{1600, 1200, 60, false, 2160, 1250, 162'000'000, "DMT 33h"},
    DmtRow{1920, 1200, 60, true, 2080, 1235, 154'000'000, "DMT 44h"},
    DmtRow{1920, 1200, 60, false, 2592, 1245, 193'250'000, "DMT 45h"},
    DmtRow{2560, 1600, 60, true, 2720, 1646, 268'500'000, "DMT 4Ch"},
    DmtRow{2560, 1600, 60, false, 3504, 1658, 348'500'000, "DMT 4Dh"},
};

/// Some rates of CTA-861 are run at 1000/1001 too; those of 25 and its multiples are not.
bool same_rate(const Hertz& exact, int nominal) {
    const auto whole = Hertz::whole(nominal);
    return exact == whole || (nominal % 25 != 0 && exact == whole.times(1000, 1001));
}

std::optional<VideoTiming> cta_timing(const VideoFormat& format) {
    for (const auto& row : cta_rows)
        if (row.width == format.width && row.height == format.height && row.interlaced == format.interlaced &&
            same_rate(format.frame_rate, row.rate))
            return VideoTiming{row.total_pixels, row.total_lines,
                               format.frame_rate.times(std::int64_t{row.total_pixels} * row.total_lines), row.source};
    return std::nullopt;
}

std::optional<VideoTiming> dmt_timing(const VideoFormat& format) {
    for (const auto& row : dmt_rows)
        if (row.width == format.width && row.height == format.height && !format.interlaced &&
            row.reduced == format.reduced_blanking && format.frame_rate == Hertz::whole(row.rate))
            return VideoTiming{
                row.total_pixels, row.total_lines, Hertz::whole(row.clock_hz), {"VESA", "DMT", row.code}};
    return std::nullopt;
}

/// Lines of vertical sync tell the aspect ratio in CVT: 4 for 4:3, 5 for 16:9, 6 for 16:10, 7 for 5:4 and 15:9.
int sync_lines(int width, int height) {
    struct Aspect {
        int across, down, lines;
    };
    constexpr std::array aspects{Aspect{4, 3, 4}, Aspect{16, 9, 5}, Aspect{16, 10, 6}, Aspect{5, 4, 7},
                                 Aspect{15, 9, 7}};
    for (const auto& each : aspects)
        if (width * each.down == height * each.across) return each.lines;
    constexpr int any_other = 10;
    return any_other;
}

}  // namespace video_timing_detail

VideoTiming reduced_blanking_timing(int width, int height, const Hertz& frame_rate) {
    assert(frame_rate >= Hertz::whole(1) && frame_rate <= Hertz::whole(2000));
    constexpr int cell = 8, horizontal_blank = 160, front_porch = 3, least_back_porch = 6;
    constexpr std::int64_t least_blank_us = 460, second_us = 1'000'000;
    // floor(460 us / estimated line) + 1, the line being (1 / rate - 460 us) / height.
    const auto blank = least_blank_us * height * frame_rate.num();
    const auto active = second_us * frame_rate.den() - least_blank_us * frame_rate.num();
    const auto wanted = static_cast<int>(blank / active) + 1;
    const auto least = front_porch + video_timing_detail::sync_lines(width, height) + least_back_porch;
    VideoTiming timing;
    timing.total_lines = height + std::max(wanted, least);
    timing.total_pixels = width / cell * cell + horizontal_blank;
    const auto exact = frame_rate.times(std::int64_t{timing.total_pixels} * timing.total_lines);
    timing.pixel_clock = Hertz::whole(exact.times(1, cvt_clock_step_hz).floor() * cvt_clock_step_hz);
    timing.source = reduced_blanking_source;
    return timing;
}

std::optional<VideoTiming> video_timing(const VideoFormat& format) {
    namespace detail = video_timing_detail;
    if (!format.reduced_blanking)
        if (const auto timing = detail::cta_timing(format)) return timing;
    if (const auto timing = detail::dmt_timing(format)) return timing;
    if (format.interlaced) return std::nullopt;
    return reduced_blanking_timing(format.width, format.height, format.frame_rate);
}

std::optional<base::Duration> line_time(const VideoFormat& format) {
    const auto timing = video_timing(format);
    if (!timing) return std::nullopt;
    return timing->pixel_clock.times(1, timing->total_pixels).period();
}

}  // namespace streamwright::standards
