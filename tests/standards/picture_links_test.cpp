// Links for pictures against tests/reference (rows LNK-001 to LNK-059, examples B1 to B12, field case 42).
#include "core/standards/picture_links.h"

#include "core/standards/video_timing.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::picture_links {

using namespace standards;

VideoFormat format_of(std::string_view written) {
    const auto format = parse_video_format(written);
    EXPECT_TRUE(format.ok()) << written;
    return format.ok() ? *format : VideoFormat{};
}

const PictureLink& link_of(std::string_view name) {
    const auto* found = picture_link(name);
    if (found == nullptr) throw std::runtime_error("no link " + std::string(name));
    return *found;
}

LinkFit fit_of(std::string_view format, std::string_view link) {
    return fits(format_of(format), link_of(link)).value();
}

double megabits(const base::Rate& rate) { return static_cast<double>(rate.ceil().count()) / 1e6; }

std::string row_id(int number) {
    const auto digits = std::to_string(number);
    return "LNK-" + std::string(3 - digits.size(), '0') + digits;
}

TEST(PictureLinks, TmdsGenerationsAreAsPublished) {
    const std::pair<const char*, int> generations[] = {{"HDMI 1.2", 1}, {"HDMI 1.4", 4}, {"HDMI 2.0", 7}};
    for (const auto& [name, first] : generations) {
        const auto& link = link_of(name);
        EXPECT_EQ(link.tmds_characters, row_number(row_id(first), 6)) << name;
        EXPECT_EQ(link.raw.count(), row_number(row_id(first + 1), 9)) << name;
        EXPECT_EQ(decoded_rate(link).ceil().count(), row_number(row_id(first + 2), 9)) << name;
        EXPECT_EQ(link.source.standing == Standing::read, was_read(row_id(first)));
    }
    EXPECT_EQ(reference_row("LNK-010").value, "340 < rate <= 600");
    EXPECT_EQ(link_of("HDMI 1.4").tmds_characters, number_after(reference_row("LNK-010").value, "", 6));
    EXPECT_EQ(link_of("HDMI 2.0").tmds_characters, number_after(reference_row("LNK-010").value, "<= ", 6));
    EXPECT_EQ(signal_example("B7").expected, "18.0 and 14.4 Gbit/s");
    EXPECT_EQ(link_of("HDMI 2.0").raw, base::BitRate::from_count(18'000'000'000));
    EXPECT_EQ(decoded_rate(link_of("HDMI 2.0")), base::Rate(base::BitRate::from_count(14'400'000'000)));
}

TEST(PictureLinks, CharacterRateFormulasAreThoseOfTheRows) {
    const auto clock = Hertz::whole(594'000'000);
    EXPECT_EQ(reference_row("LNK-011").value, "pixel_clock*depth/8");
    EXPECT_EQ(tmds_character_rate(clock, Sampling::rgb, 10), clock.times(10, 8));
    EXPECT_EQ(reference_row("LNK-012").value, "pixel_clock");
    for (const int depth : {8, 10, 12}) EXPECT_EQ(tmds_character_rate(clock, Sampling::ycbcr_422, depth), clock);
    EXPECT_EQ(reference_row("LNK-013").value, "pixel_clock/2*depth/8");
    EXPECT_EQ(tmds_character_rate(clock, Sampling::ycbcr_420, 12), clock.times(12, 16));
    EXPECT_EQ(tmds_character_source.standing == Standing::memory, !was_read("LNK-011"));
}

/// "HDMI 2.0 (600); fits HDMI 2.0: yes": the first generation, or "needs FRL".
void expect_first_generation(const ReferenceRow& row, const VideoFormat& format) {
    const std::pair<const char*, const char*> generations[] = {
        {"HDMI 1.0 (165)", "HDMI 1.0"}, {"HDMI 1.3/1.4 (340)", "HDMI 1.3"}, {"HDMI 2.0 (600)", "HDMI 2.0"}};
    std::string first = "needs FRL";
    for (const auto& [said, name] : generations)
        if (first == "needs FRL" && fits(format, link_of(name))->verdict == Fit::fits) first = said;
    const bool fits_2_0 = fits(format, link_of("HDMI 2.0"))->verdict == Fit::fits;
    EXPECT_EQ(first + "; fits HDMI 2.0: " + (fits_2_0 ? "yes" : "no"), row.note) << row.id;
}

TEST(PictureLinks, EachFormatNeedsThePublishedCharacterRate) {
    for (int i = 14; i <= 29; ++i) {
        const auto& row = reference_row(row_id(i));
        auto written = row.condition;
        if (const auto at = written.find(" RB"); at != std::string::npos) written.insert(at, "@60");
        const auto format = format_of(written);
        EXPECT_EQ(fits(format, link_of("HDMI 2.0"))->character_rate, Hertz::whole(row_number(row.id, 6))) << row.id;
        expect_first_generation(row, format);
    }
}

TEST(PictureLinks, FrlModesAreAsPublished) {
    for (int mode = 1; mode <= 6; ++mode) {
        const auto& row = reference_row(row_id(29 + mode));
        const auto& link = link_of("HDMI 2.1 FRL " + std::to_string(mode));
        EXPECT_EQ(link.raw.count(), row_number(row.id, 9)) << row.id;
        EXPECT_EQ(link.lanes, number_after(row.condition, "lane on ", 0)) << row.id;
        EXPECT_EQ(link.raw.count() / link.lanes, number_after(row.condition, "", 9)) << row.id;
        EXPECT_NEAR(megabits(decoded_rate(link)), static_cast<double>(number_after(row.note, "16b/18b: ", 3)), 0.501);
        EXPECT_NEAR(megabits(carried_rate(link)), static_cast<double>(number_after(row.note, "RS(255,251): ", 3)),
                    0.501);
    }
    EXPECT_EQ(reference_row("LNK-036").value, "3 or 4 lanes; 3, 6, 8, 10, 12");
    EXPECT_EQ(reference_row("LNK-040").value, "16b/18b");
    EXPECT_NEAR(megabits(decoded_rate(link_of("HDMI 2.1 FRL 6"))) / 4.8,
                static_cast<double>(number_after(reference_row("LNK-040").unit, "ratio ", 4)), 0.501);
    EXPECT_NEAR(megabits(decoded_rate(link_of("HDMI 2.1"))) * 1000, static_cast<double>(signal_number("B8", 6)), 1000);
}

TEST(PictureLinks, FrlNeedsAreAsPublishedAndANearMissIsADoubt) {
    for (int i = 37; i <= 39; ++i) {
        const auto& row = reference_row(row_id(i));
        const auto fit = fits(format_of(row.condition), link_of("HDMI 2.1 FRL 5")).value();
        EXPECT_EQ(fit.needed.ceil().count(), row_number(row.id, 9)) << row.id;
        EXPECT_EQ(fit.coding, LinkCoding::frl);
        EXPECT_EQ(fit.verdict, i == 39 ? Fit::too_much : Fit::doubtful) << row.note;
        EXPECT_EQ(fits(format_of(row.condition), link_of("HDMI 2.1"))->verdict, i == 39 ? Fit::too_much : Fit::fits);
    }
}

TEST(PictureLinks, DisplayPortModesAreAsPublished) {
    const std::pair<int, const char*> rows[] = {
        {41, "DisplayPort RBR"},    {42, "DisplayPort HBR"},      {43, "DisplayPort HBR2"},  {44, "DisplayPort HBR3"},
        {45, "DisplayPort UHBR10"}, {46, "DisplayPort UHBR13.5"}, {47, "DisplayPort UHBR20"}};
    for (const auto& [number, name] : rows) {
        const auto& row = reference_row(row_id(number));
        const auto& link = link_of(name);
        EXPECT_EQ(link.raw.count(), number_after(row.note, "raw ", 9)) << row.id;
        EXPECT_EQ(carried_rate(link).ceil().count(), row_number(row.id, 9)) << row.id;
        EXPECT_EQ(link.lanes, 4);
    }
    EXPECT_EQ(row_number("LNK-048", 1), 8);     // 8b/10b as the rows above apply it
    EXPECT_EQ(row_number("LNK-049", 4), 9671);  // UHBR
    EXPECT_EQ(carried_rate(link_of("DisplayPort UHBR20")).ceil().count(), signal_number("B12", 9));
    EXPECT_NEAR(1e8 * displayport_fec_over / displayport_fec_under, static_cast<double>(row_number("LNK-050", 6)),
                0.501);
}

TEST(PictureLinks, DisplayPortFitDependsOnTheTiming) {
    const std::pair<int, const char*> rows[] = {{51, "2160p60 RGB 8-bit"},
                                                {52, "2160p60 RGB 10-bit"},
                                                {53, "2160p60 RB RGB 8-bit"},
                                                {54, "2160p60 RB RGB 10-bit"}};
    const auto said = [](const LinkFit& fit) { return fit.verdict == Fit::fits ? "yes" : "no"; };
    for (const auto& [number, format] : rows) {
        const auto& row = reference_row(row_id(number));
        const auto hbr2 = fit_of(format, "DisplayPort HBR2"), hbr3 = fit_of(format, "DisplayPort HBR3");
        EXPECT_EQ(hbr2.needed.ceil().count(), row_number(row.id, 9)) << row.id;
        EXPECT_EQ(std::string("fits HBR2 17.28: ") + said(hbr2) + "; fits HBR3 25.92: " + said(hbr3), row.note);
    }
    EXPECT_EQ(signal_example("B10").expected, "does not fit");
    EXPECT_EQ(fit_of("2160p60 RGB 10-bit", "DisplayPort 1.2").verdict, Fit::too_much);
}

TEST(PictureLinks, SdiRatesAreAsPublished) {
    const std::pair<int, const char*> rows[] = {
        {55, "SD-SDI"}, {56, "HD-SDI"}, {57, "3G-SDI"}, {58, "6G-SDI"}, {59, "12G-SDI"}};
    for (const auto& [number, name] : rows) {
        EXPECT_EQ(link_of(name).raw.count(), row_number(row_id(number), 9)) << name;
        EXPECT_EQ(link_of(name).source.standing == Standing::read, was_read(row_id(number))) << name;
        EXPECT_TRUE(reference_row(row_id(number)).source.find(link_of(name).source.document) != std::string::npos);
    }
    // The serial rate is the whole raster at 20 bits a pixel (SMPTE ST 292-1, ST 424, ST 2082-1), so each raster that
    // a rate was made for fills it exactly.
    EXPECT_EQ(fit_of("1080i59.94 4:2:2 10-bit", "HD-SDI").verdict, Fit::fits);
    for (const auto& [format, link] :
         {std::pair("1080i60 4:2:2 10-bit", "HD-SDI"), std::pair("720p50 4:2:2 10-bit", "HD-SDI"),
          std::pair("1080p50 4:2:2 10-bit", "3G-SDI"), std::pair("1080p30 RGB 10-bit", "3G-SDI"),
          std::pair("2160p30 4:2:2 10-bit", "6G-SDI"), std::pair("2160p60 4:2:2 10-bit", "12G-SDI"),
          std::pair("576i50 4:2:2 10-bit", "SD-SDI"), std::pair("480i59.94 4:2:2 10-bit", "SD-SDI")}) {
        const auto fit = fit_of(format, link);
        EXPECT_EQ(fit.needed, fit.carried) << format;
        EXPECT_EQ(fit.verdict, Fit::fits) << format;
    }
    EXPECT_EQ(fit_of("1080p60 4:2:2 10-bit", "HD-SDI").verdict, Fit::too_much);
    EXPECT_EQ(fit_of("1080p60 4:2:2 12-bit", "3G-SDI").verdict, Fit::too_much);
    EXPECT_EQ(fit_of("2160p60 4:2:0 10-bit", "12G-SDI").verdict, Fit::no_mapping);
    EXPECT_EQ(fit_of("1920x1200@60 RB", "12G-SDI").verdict, Fit::no_mapping);
    EXPECT_EQ(fit_of("1080p120 4:2:2 10-bit", "12G-SDI").verdict, Fit::no_mapping);
}

TEST(PictureLinks, WorkedFitsComeOut) {
    struct Case {
        const char* id;
        const char* format;
        const char* link;
    };
    const Case cases[] = {{"B1", "2160p60 RGB 8-bit", "HDMI 2.0"},
                          {"B2", "2160p60 RGB 10-bit", "HDMI 2.0"},
                          {"B3", "2160p60 4:2:2 12-bit", "HDMI 2.0"},
                          {"B5", "2160p30 RGB 8-bit", "HDMI 1.4"},
                          {"B6", "1080p60 RGB 12-bit", "HDMI 1.3"}};
    for (const auto& each : cases)
        EXPECT_EQ(fit_of(each.format, each.link).verdict == Fit::fits ? "fits" : "does not fit",
                  signal_example(each.id).expected)
            << each.id;
    EXPECT_NEAR(megabits(carried_rate(link_of("HDMI 2.1"))) * 1000, static_cast<double>(signal_number("B9", 6)), 1000);
}

TEST(PictureLinks, TheChainOfTheFieldCaseComesOut) {
    const auto ten_kilobits = [](const LinkFit& fit) { return static_cast<double>(fit.needed.ceil().count()) / 1e7; };
    const std::pair<const char*, const char*> rows[] = {
        {"FC42-1", "2160p60 4:4:4 10-bit"}, {"FC42-2", "2160p60 4:4:4 8-bit"}, {"FC42-3", "2160p60 4:2:2 12-bit"},
        {"FC42-4", "2160p60 4:2:0 10-bit"}, {"FC42-5", "2160p60 4:2:0 8-bit"}, {"FC42-6", "2160p30 4:4:4 10-bit"}};
    for (const auto& [id, format] : rows) {
        const auto fit = fit_of(format, "HDMI 1.4");
        EXPECT_NEAR(ten_kilobits(fit), static_cast<double>(signal_number(id, 2)), 0.501) << id;
        const bool within_10 = signal_example(id).expected.find("within 10.2") != std::string::npos;
        const bool over_18 = signal_example(id).expected.find("over 18") != std::string::npos;
        EXPECT_EQ(fit.verdict == Fit::fits, within_10) << id;
        EXPECT_EQ(fit_of(format, "HDMI 2.0").verdict == Fit::fits, !over_18) << id;
    }
    const auto frl = fit_of("2160p60 4:4:4 10-bit", "HDMI 2.1 FRL 3");  // 24 Gb/s
    EXPECT_EQ(frl.verdict, Fit::fits);
    EXPECT_NEAR(ten_kilobits(frl) * 18 / 16, static_cast<double>(signal_number("FC42-7", 2)), 0.501);
}

TEST(PictureLinks, SaysWhatWouldFitInstead) {
    std::vector<std::string> forms;
    for (const auto& form : forms_that_fit(format_of("2160p60 4:4:4 10-bit PQ"), link_of("HDMI 1.4")))
        forms.push_back(text(form));
    EXPECT_EQ(forms, std::vector<std::string>{"2160p60 4:2:0 8-bit PQ"}) << "as the field case says";
    forms.clear();
    for (const auto& form : forms_that_fit(format_of("2160p60 RGB 10-bit"), link_of("HDMI 2.0")))
        forms.push_back(text(form));
    EXPECT_EQ(forms, (std::vector<std::string>{"2160p60 RGB 8-bit", "2160p60 4:2:2 10-bit", "2160p60 4:2:2 8-bit",
                                               "2160p60 4:2:0 10-bit", "2160p60 4:2:0 8-bit"}));
    for (const auto& link : standards::picture_links())
        for (const auto& form : forms_that_fit(format_of("4320p120 RGB 16-bit HLG"), link))
            EXPECT_EQ(fits(form, link)->verdict, Fit::fits) << text(form) << " on " << link.name;
}

TEST(PictureLinks, AnFrlPortSendsTmdsWhereOnlyThatFits) {
    const auto fit = fit_of("2160p60 RGB 8-bit", "HDMI 2.1 FRL 1");  // common practice: such ports keep HDMI 2.0's TMDS
    EXPECT_EQ(fit.verdict, Fit::fits);
    EXPECT_EQ(fit.coding, LinkCoding::tmds);
    EXPECT_EQ(fit_of("1080p60", "HDMI 2.1 FRL 1").coding, LinkCoding::frl);
}

TEST(PictureLinks, NamesAreFoundAndUnknownOnesAreNotKnown) {
    for (const auto& link : standards::picture_links()) EXPECT_EQ(picture_link(link.name), &link);
    EXPECT_EQ(link_of("HDMI 2.1").name, "HDMI 2.1 FRL 6");
    EXPECT_EQ(link_of("DisplayPort 1.4").name, "DisplayPort HBR3");
    EXPECT_EQ(link_of("DisplayPort 1.2").name, "DisplayPort HBR2");
    for (const char* unknown : {"", "SDI", "USB-C video", "HDMI", "LED wall data", "hdmi 2.0"})
        EXPECT_EQ(picture_link(unknown), nullptr) << unknown;
}

}  // namespace streamwright::test::picture_links
