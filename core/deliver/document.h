// A document as data: what it says, without any format. A format knows no document, a document no format.
#pragma once

#include "core/analysis/analyser.h"
#include "core/analysis/report.h"
#include "core/base/money.h"
#include "core/deliver/drawing/fragment.h"
#include "core/model/design.h"

#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace streamwright::deliver {

/// Empty, text, whole number, or a quantity that formats write as a number in the column's unit.
using Cell = std::variant<std::monostate, std::string, std::int64_t, base::Length, base::BitRate, base::Power>;

enum class ColumnKind { text, number, length_m, rate_mbps, power_w, tick };  // tick: left open for the pen

struct Column {
    std::string title;
    ColumnKind kind = ColumnKind::text;
    int width_mm = 20;
    bool strong = false;  // set bold on paper
    friend bool operator==(const Column&, const Column&) = default;
};

struct TableRow {
    std::vector<Cell> cells;  // as many as columns
    std::string subject;      // "cable:0123456789ab"; a click selects it
    std::string group;        // rows of one group follow each other under its heading
};

struct TablePart {
    std::string name;  // of the workbook sheet and the csv file's suffix
    std::string title;
    std::vector<Column> columns;
    std::vector<TableRow> rows;
    std::vector<std::string> notes;  // below the table; cautions among them
};

/// A drawn page.
struct PagePart {
    std::string name;
    std::string title;
    base::Length width, height;       // paper
    std::vector<Fragment> fragments;  // frame and title block included
};

using Part = std::variant<TablePart, PagePart>;

struct Content {
    std::string name;  // of the document, file-name safe
    std::string title;
    std::vector<Part> parts;
};

/// What documents are made from.
struct Source {
    const model::Design& design;
    const analysis::Analysis& analysis;
    std::vector<analysis::Reported> findings;
    base::Phrasebook book;
};

struct DocumentKind {
    std::string_view name;  // "bill-of-materials"
    std::string_view title;
    Content (*make)(const Source&) = nullptr;
};

std::span<const DocumentKind> all_documents();  // by name

}  // namespace streamwright::deliver
