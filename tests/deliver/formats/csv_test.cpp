// CSV read back: by our own reader and by Python's, which shares no code with it.
#include "core/base/csv.h"

#include "tests/deliver/small_venue.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <fstream>

namespace streamwright::test::csv_format {

std::vector<deliver::OutputFile> write(const std::vector<deliver::Content>& contents) {
    for (const auto& format : deliver::core_formats())
        if (format.name == "csv") return format.write(contents, {}).value();
    return {};
}

deliver::Content one_table(const std::string& text) {
    deliver::TablePart part;
    part.name = "One";
    part.columns = {{"Text"}, {"Length, m", deliver::ColumnKind::length_m}};
    part.rows.push_back({{text, base::Length::from_count(111'500'000)}, "", ""});
    return {"one", "One", {part}};
}

TEST(Csv, NumbersStandInTheUnitOfTheColumn) {
    const auto files = write({one_table("x")});
    ASSERT_EQ(files.size(), 1u);
    EXPECT_EQ(files[0].name, "one.csv");
    const auto rows = base::read_csv(files[0].bytes);
    ASSERT_TRUE(rows.ok());
    EXPECT_EQ((*rows)[1][1], "111.5");
}

TEST(Csv, CellsThatSpreadsheetsWouldRunAreGuarded) {
    const auto rows = base::read_csv(write({one_table("=1+1")})[0].bytes);
    ASSERT_TRUE(rows.ok());
    EXPECT_EQ((*rows)[1][0], "'=1+1");
}

TEST(Csv, AFileForEachTable) {
    const SmallVenue venue;
    const auto files = write({Delivered(venue.b.design).document("stream-schedule")});
    ASSERT_EQ(files.size(), 3u);
    EXPECT_EQ(files[0].name, "stream-schedule-Streams.csv");
    EXPECT_EQ(files[1].name, "stream-schedule-Presets.csv");
    EXPECT_EQ(files[2].name, "stream-schedule-Packets.csv");
}

TEST(Csv, PythonReadsTheSameCells) {
    const SmallVenue venue;
    const auto content = Delivered(venue.b.design).document("cable-schedule");
    const auto files = write({content});
    TempFolder folder;
    const auto path = folder.path() / files[0].name;
    std::ofstream(path, std::ios::binary) << files[0].bytes;
    std::string out;
    ASSERT_EQ(
        run_command("python3 -c \"import csv,sys\n"
                    "rows=list(csv.DictReader(open('" +
                        path.string() +
                        "',newline='',encoding='utf-8-sig')))\n"
                        "print(len(rows))\n"
                        "[print(r['From device'],r['To device'],r['Length, m']) for r in rows if r['Cable']=='N217']\"",
                    &out),
        0);
    EXPECT_EQ(out, "8\nSW-S2 DEC-001 46.5\n");
}

}  // namespace streamwright::test::csv_format
