// CSV: one file a table, a header row, numbers in the unit that the column names.
#include "core/base/csv.h"

#include "core/deliver/formats/formats.h"
#include "core/deliver/formats/table_cells.h"

#include <algorithm>

namespace streamwright::deliver {

namespace csv_detail {

std::vector<base::CsvRow> rows_of(const TablePart& table) {
    const bool grouped = needs_group_column(table);
    std::vector<base::CsvRow> rows(1);
    if (grouped) rows[0].push_back("Group");
    for (const Column& column : table.columns) rows[0].push_back(column.title);
    for (const TableRow& row : table.rows) {
        auto& line = rows.emplace_back();
        if (grouped) line.push_back(row.group);
        for (const Cell& cell : row.cells) line.push_back(cell_text(cell));
    }
    return rows;
}

std::size_t table_count(const Content& content) {
    return static_cast<std::size_t>(
        std::ranges::count_if(content.parts, [](const Part& part) { return std::holds_alternative<TablePart>(part); }));
}

}  // namespace csv_detail

base::Result<std::vector<OutputFile>> write_csv_files(std::span<const Content> contents, const Stamp&) {
    std::vector<OutputFile> files;
    std::set<std::string> used;
    for (const Content& content : contents) {
        const bool several = csv_detail::table_count(content) > 1;
        for (const Part& part : content.parts) {
            const auto* table = std::get_if<TablePart>(&part);
            if (!table) continue;
            const auto name = several ? content.name + "-" + table->name : content.name;
            files.push_back({file_name(name, ".csv", used), base::write_csv(csv_detail::rows_of(*table))});
        }
    }
    return files;
}

}  // namespace streamwright::deliver
