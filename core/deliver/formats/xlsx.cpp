// XLSX: one workbook, a sheet a table, ready to filter and to print. The writing library wants a file, so the bytes
// pass through a temporary one; its dates are fixed, so that the same design gives the same bytes.
#include "core/deliver/formats/formats.h"
#include "core/deliver/formats/table_cells.h"

#include <xlsxwriter.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <system_error>
#include <unistd.h>

namespace streamwright::deliver {

namespace xlsx_detail {

constexpr lxw_row_t title_row = 0, head_row = 1, first_row = 2;
constexpr std::time_t fixed_date = 946'684'800;  // 2000-01-01, only so that it never changes
constexpr std::uint8_t paper_a3 = 8, paper_a4 = 9;

/// A folder of our own that goes with all that is in it.
class ScratchFolder {
public:
    ScratchFolder() {
        auto pattern = (std::filesystem::temp_directory_path() / "streamwright-XXXXXX").string();
        if (mkdtemp(pattern.data())) path_ = pattern;
    }
    ~ScratchFolder() {
        std::error_code ignored;
        if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
    }
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;
    const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

struct Looks {
    lxw_format *title, *head, *text, *strong, *number, *length, *rate, *power, *note;
};

lxw_format* bordered(lxw_workbook* book) {
    auto* format = workbook_add_format(book);
    format_set_border(format, LXW_BORDER_HAIR);
    format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
    return format;
}

lxw_format* figures(lxw_workbook* book, const char* pattern) {
    auto* format = bordered(book);
    format_set_num_format(format, pattern);
    return format;
}

Looks make_looks(lxw_workbook* book) {
    Looks looks{};
    looks.title = workbook_add_format(book);
    format_set_bold(looks.title);
    format_set_font_size(looks.title, 14);
    looks.head = bordered(book);
    format_set_bold(looks.head);
    format_set_text_wrap(looks.head);
    format_set_bottom(looks.head, LXW_BORDER_MEDIUM);
    looks.text = bordered(book);
    format_set_text_wrap(looks.text);
    looks.strong = bordered(book);
    format_set_text_wrap(looks.strong);
    format_set_bold(looks.strong);
    looks.number = figures(book, "0");
    looks.length = figures(book, "0.0##");
    looks.rate = figures(book, "#,##0.0##");
    looks.power = figures(book, "0.0##");
    looks.note = workbook_add_format(book);
    return looks;
}

lxw_format* look_of(const Looks& looks, const Column& column) {
    switch (column.kind) {
        case ColumnKind::number:
            return looks.number;
        case ColumnKind::length_m:
            return looks.length;
        case ColumnKind::rate_mbps:
            return looks.rate;
        case ColumnKind::power_w:
            return looks.power;
        default:
            return column.strong ? looks.strong : looks.text;
    }
}

/// Codes start with &, so that an ampersand is doubled; spreadsheets take 255 characters.
std::string header_text(std::string_view text) {
    std::string result;
    for (const char c : text) {
        if (result.size() > 100) break;
        result += c;
        if (c == '&') result += c;
    }
    return result;
}

/// At most 31 characters, none of []:*?/\, no apostrophe at the ends, unlike any other.
std::string sheet_name(std::string_view wanted, std::set<std::string>& used) {
    std::string stem;
    for (const char c : wanted) stem += std::string_view("[]:*?/\\").find(c) == std::string_view::npos ? c : '-';
    while (!stem.empty() && stem.front() == '\'') stem.erase(0, 1);
    const auto cut = [](std::string text, std::size_t most) {
        while (text.size() > most || (!text.empty() && text.back() == '\'')) {
            while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0) == 0x80) text.pop_back();
            if (!text.empty()) text.pop_back();
        }
        return text;
    };
    stem = cut(std::move(stem), 31);
    if (stem.empty()) stem = "Table";
    const auto lower = [](std::string text) {
        for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        return text;
    };
    auto name = stem;
    for (int next = 2; !used.insert(lower(name)).second; ++next) name = cut(stem, 27) + " " + std::to_string(next);
    return name;
}

void write_text(lxw_worksheet* sheet, lxw_row_t row, lxw_col_t column, const std::string& text, lxw_format* look) {
    constexpr std::size_t most = 32'000;
    if (text.empty())
        worksheet_write_blank(sheet, row, column, look);
    else
        worksheet_write_string(sheet, row, column, text.substr(0, most).c_str(), look);
}

void write_cell(lxw_worksheet* sheet, lxw_row_t row, lxw_col_t column, const Cell& cell, lxw_format* look) {
    if (const auto number = cell_number(cell))
        worksheet_write_number(sheet, row, column, std::strtod(number->c_str(), nullptr), look);
    else
        write_text(sheet, row, column, cell_text(cell), look);
}

void set_up_page(lxw_worksheet* sheet, int width_mm, const Stamp& stamp) {
    worksheet_set_landscape(sheet);
    worksheet_set_paper(sheet, width_mm > 300 ? paper_a3 : paper_a4);
    worksheet_fit_to_pages(sheet, 1, 0);
    worksheet_set_margins(sheet, 0.5, 0.4, 0.7, 0.7);
    worksheet_repeat_rows(sheet, head_row, head_row);
    const auto revision = stamp.revision.empty() ? std::string{} : "Rev. " + stamp.revision + "  ";
    const auto header = "&L" + header_text(stamp.title) + "&R" + header_text(revision + stamp.date);
    const auto footer = "&L" + header_text(stamp.owner) + "&C" + header_text(stamp.status) + "&R&P / &N";
    worksheet_set_header(sheet, header.c_str());
    worksheet_set_footer(sheet, footer.c_str());
}

void write_head(lxw_worksheet* sheet, const TablePart& table, bool grouped, const Looks& looks) {
    worksheet_write_string(sheet, title_row, 0, table.title.c_str(), looks.title);
    lxw_col_t column = 0;
    if (grouped) {
        worksheet_set_column(sheet, column, column, 18, nullptr);
        worksheet_write_string(sheet, head_row, column++, "Group", looks.head);
    }
    for (const Column& each : table.columns) {
        worksheet_set_column(sheet, column, column, each.width_mm / 2.0 + 1, nullptr);
        worksheet_write_string(sheet, head_row, column++, each.title.c_str(), looks.head);
    }
}

void write_table(lxw_worksheet* sheet, const TablePart& table, const Stamp& stamp, const Looks& looks) {
    const bool grouped = needs_group_column(table);
    write_head(sheet, table, grouped, looks);
    int width_mm = grouped ? 36 : 0;
    for (const Column& column : table.columns) width_mm += column.width_mm;
    auto row = first_row;
    for (const TableRow& each : table.rows) {
        lxw_col_t column = 0;
        if (grouped) write_text(sheet, row, column++, each.group, looks.text);
        for (std::size_t i = 0; i < each.cells.size(); ++i)
            write_cell(sheet, row, column++, each.cells[i], look_of(looks, table.columns[i]));
        ++row;
    }
    const auto columns = static_cast<lxw_col_t>(table.columns.size() + (grouped ? 1 : 0));
    worksheet_freeze_panes(sheet, first_row, grouped ? 2 : 1);
    worksheet_autofilter(sheet, head_row, 0, std::max(row, first_row + 1) - 1, static_cast<lxw_col_t>(columns - 1));
    for (const auto& note : table.notes) worksheet_write_string(sheet, ++row, 0, note.c_str(), looks.note);
    set_up_page(sheet, width_mm, stamp);
}

std::size_t tables_in(const Content& content) {
    return static_cast<std::size_t>(
        std::ranges::count_if(content.parts, [](const Part& part) { return std::holds_alternative<TablePart>(part); }));
}

void write_contents(lxw_workbook* book, std::span<const Content> contents, const Stamp& stamp) {
    const auto looks = make_looks(book);
    std::set<std::string> used{"history"};  // a name that spreadsheets keep to themselves
    for (const Content& content : contents)
        for (const Part& part : content.parts) {
            const auto* table = std::get_if<TablePart>(&part);
            if (!table) continue;
            const auto wanted = tables_in(content) > 1 && table->name.find(content.title) == std::string::npos
                                    ? table->name
                                    : content.title;
            write_table(workbook_add_worksheet(book, sheet_name(wanted, used).c_str()), *table, stamp, looks);
        }
}

base::Error failed(const std::string& why) {
    return {"The workbook cannot be written: %1. Check that the folder for temporary files has room.", {why}};
}

}  // namespace xlsx_detail

base::Result<std::vector<OutputFile>> write_xlsx_file(std::span<const Content> contents, const Stamp& stamp) {
    using namespace xlsx_detail;
    if (std::ranges::none_of(contents, [](const Content& content) { return tables_in(content) > 0; }))
        return std::vector<OutputFile>{};
    const ScratchFolder folder;
    if (folder.path().empty()) return failed("no temporary folder");
    const auto path = (folder.path() / "tables.xlsx").string();
    auto* book = workbook_new(path.c_str());
    if (!book) return failed("no memory");
    lxw_doc_properties properties{};
    properties.title = const_cast<char*>(stamp.title.c_str());
    properties.company = const_cast<char*>(stamp.owner.c_str());
    properties.created = fixed_date;
    workbook_set_properties(book, &properties);
    write_contents(book, contents, stamp);
    if (const auto error = workbook_close(book); error != LXW_NO_ERROR) return failed(lxw_strerror(error));
    std::ifstream in(path, std::ios::binary);
    std::string bytes((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
    if (bytes.empty()) return failed("nothing was written");
    std::set<std::string> used;
    const auto stem = contents.size() == 1 ? contents.front().name : std::string("schedules");
    return std::vector<OutputFile>{{file_name(stem, ".xlsx", used), std::move(bytes)}};
}

}  // namespace streamwright::deliver
