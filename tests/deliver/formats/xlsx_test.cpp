// XLSX read back by openpyxl, which shares no code with the writer.
#include "tests/deliver/small_venue.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <fstream>

namespace streamwright::test::xlsx_format {

std::vector<deliver::OutputFile> write(const std::vector<deliver::Content>& contents, const deliver::Stamp& stamp) {
    for (const auto& format : deliver::core_formats())
        if (format.name == "xlsx") return format.write(contents, stamp).value();
    return {};
}

/// What a script over the workbook `book` prints.
std::string openpyxl(const std::string& bytes, const std::string& script) {
    TempFolder folder;
    const auto path = folder.path() / "book.xlsx", code = folder.path() / "read.py";
    std::ofstream(path, std::ios::binary) << bytes;
    std::ofstream(code) << "import openpyxl\nbook = openpyxl.load_workbook('" << path.string() << "')\n" << script;
    std::string out;
    EXPECT_EQ(run_command("/usr/bin/python3 " + code.string(), &out), 0);
    return out;
}

TEST(Xlsx, HasASheetForEachTable) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto files = write(delivered.all(), deliver::stamp_of(delivered.design));
    ASSERT_EQ(files.size(), 1u);
    EXPECT_EQ(openpyxl(files[0].bytes, "print('|'.join(book.sheetnames))"),
              "Address schedule|Bill of materials|Cable schedule|Control "
              "schedule|EDID|Pictures|Failures|Findings|Copper|Fibre|Switches|Ports|"
              "Port schedule|Streams|Presets|Packets|Walls|Wall tiles\n");
}

TEST(Xlsx, CellsAreNumbersInTheColumnsUnit) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto files = write({delivered.document("cable-schedule")}, {});
    EXPECT_EQ(openpyxl(files[0].bytes,
                       "s = book.worksheets[0]\n"
                       "heads = [c.value for c in s[2]]\n"
                       "row = [r for r in s.iter_rows(min_row=3) if r[0].value == 'N217'][0]\n"
                       "cell = row[heads.index('Length, m')]\n"
                       "print(cell.value, cell.data_type, row[heads.index('To device')].value)"),
              "46.5 n DEC-001\n");
}

TEST(Xlsx, FormulasAreText) {
    deliver::TablePart part;
    part.name = "One";
    part.columns = {{"Text"}};
    part.rows.push_back({{std::string("=1+1")}, "", ""});
    const auto files = write({{"one", "One", {part}}}, {});
    EXPECT_EQ(openpyxl(files[0].bytes, "c = book.worksheets[0]['A3']\nprint(c.value, c.data_type == 'f')"),
              "=1+1 False\n");
}

TEST(Xlsx, IsReadyToFilterAndPrint) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto files = write({delivered.document("cable-schedule")}, deliver::stamp_of(delivered.design));
    EXPECT_EQ(openpyxl(files[0].bytes,
                       "s = book.worksheets[0]\n"
                       "print(s.freeze_panes, s.auto_filter.ref.split(':')[0], s.page_setup.orientation,\n"
                       "      s.page_setup.fitToHeight, s.print_title_rows, s.oddHeader.left.text)"),
              "B3 A2 landscape 0 $2:$2 Ferrow Quay\n");
}

TEST(Xlsx, SameDesignSameBytes) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto once = write(delivered.all(), {}), again = write(delivered.all(), {});
    EXPECT_EQ(once[0].bytes, again[0].bytes);
}

TEST(Xlsx, SheetNamesFollowTheRulesOfWorkbooks) {
    deliver::Content content{"long", "Long", {}};
    for (int i = 0; i < 2; ++i) {
        deliver::TablePart part;
        part.name = "A name of a switch [North]: far too long for a sheet";
        part.columns = {{"Text"}};
        content.parts.emplace_back(part);
    }
    const auto files = write({content}, {});
    EXPECT_EQ(openpyxl(files[0].bytes, "print(max(map(len, book.sheetnames)) <= 31, len(set(book.sheetnames)))"),
              "True 2\n");
}

}  // namespace streamwright::test::xlsx_format
