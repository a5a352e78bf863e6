#include "app/render/table_pages.h"

#include "core/layout/text_width.h"

#include <algorithm>
#include <numeric>

namespace streamwright::app {

namespace table_pages_detail {

using base::Length;
using deliver::Anchor;
using deliver::Role;
using layout::Weight;

constexpr Length mm(double value) { return Length::from_count(static_cast<std::int64_t>(value * 1000)); }
constexpr double to_mm(Length length) { return static_cast<double>(length.count()) / 1000.0; }

// Lettering of 2.5 mm capitals needs an em of 2.5 / 0.75 mm; tables are set a little smaller, titles larger.
constexpr double body_em = 2.7;
constexpr double title_em = 5.2;
constexpr double note_em = 2.4;
constexpr double row_height = 5.3;
constexpr double line_pitch = 3.6;
constexpr double cell_pad = 1.0;
constexpr double left_margin = 20;
constexpr double margin = 10;
constexpr double foot_height = 12;

struct Sheet {
    double width, height;
    double inner() const { return width - left_margin - margin; }
};
constexpr Sheet a4{297, 210};
constexpr Sheet a3{420, 297};

bool numeric(deliver::ColumnKind kind) {
    return kind != deliver::ColumnKind::text && kind != deliver::ColumnKind::tick;
}

/// Words set into lines no wider than the column; a word that is too long is cut.
std::vector<std::string> wrapped(const std::string& text, double width, Weight weight) {
    std::vector<std::string> lines;
    std::string line;
    std::size_t at = 0;
    while (at < text.size()) {
        auto end = text.find(' ', at);
        if (end == std::string::npos) end = text.size();
        const std::string word = text.substr(at, end - at);
        const std::string longer = line.empty() ? word : line + " " + word;
        if (!line.empty() && to_mm(layout::text_width(longer, mm(body_em), weight)) > width) {
            lines.push_back(line);
            line = word;
        } else {
            line = longer;
        }
        at = end + 1;
    }
    if (!line.empty()) lines.push_back(line);
    for (auto& each : lines) each = layout::elided(each, mm(width), mm(body_em), weight);
    return lines;
}

struct Grid {
    Sheet sheet = a4;
    std::vector<double> lefts, widths;
    bool upright_heads = false;
    double head_height = row_height;
};

double head_width(const deliver::Column& column) {
    return to_mm(layout::text_width(column.title, mm(body_em), Weight::bold)) + 2 * cell_pad;
}

/// Room that is left goes to heads that would have to stand upright, then to all columns alike, within reason: a table
/// of few narrow columns drawn over a whole sheet is hard to read along.
void fill_sheet(const deliver::TablePart& table, Grid& grid) {
    const auto sum = [&] { return std::accumulate(grid.widths.begin(), grid.widths.end(), 0.0); };
    double room = grid.sheet.inner() - sum();
    for (std::size_t i = 0; i < grid.widths.size(); ++i) {
        const double more = head_width(table.columns[i]) - grid.widths[i];
        if (more <= 0 || more > room) continue;
        grid.widths[i] += more;
        room -= more;
    }
    constexpr double most_stretch = 1.5;
    const double factor = std::min(most_stretch, grid.sheet.inner() / std::max(1.0, sum()));
    for (auto& width : grid.widths) width *= factor;
}

Grid grid_of(const deliver::TablePart& table) {
    Grid grid;
    for (const auto& column : table.columns) grid.widths.push_back(column.width_mm);
    const double wanted = std::accumulate(grid.widths.begin(), grid.widths.end(), 0.0);
    if (wanted > a4.inner()) grid.sheet = a3;
    fill_sheet(table, grid);
    double left = left_margin;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        grid.lefts.push_back(left);
        left += grid.widths[i];
        if (head_width(table.columns[i]) > grid.widths[i] + 0.001) {
            grid.upright_heads = true;
            grid.head_height = std::max(grid.head_height, head_width(table.columns[i]) - 2 * cell_pad + 3);
        }
    }
    return grid;
}

class Pages {
public:
    Pages(const deliver::TablePart& table, const deliver::Stamp& stamp)
        : table_(table), stamp_(stamp), grid_(grid_of(table)) {}

    std::vector<deliver::PagePart> set() {
        start_page();
        std::string group;
        for (const auto& row : table_.rows) {
            if (!row.group.empty() && row.group != group) group_head(group = row.group);
            set_row(row);
        }
        if (table_.rows.empty()) line("Nothing to list.", left_margin + cell_pad, advance(row_height), body_em);
        rule(y_, Role::rule_medium);
        y_ += 1.5;
        for (const auto& note : table_.notes) set_note(note);
        finish();
        return std::move(pages_);
    }

private:
    double bottom() const { return grid_.sheet.height - margin - foot_height; }

    void start_page() {
        deliver::PagePart page{table_.name + "-" + std::to_string(pages_.size() + 1),
                               table_.title,
                               mm(grid_.sheet.width),
                               mm(grid_.sheet.height),
                               {}};
        page.fragments.push_back({{}, {{mm(0), mm(0)}, page.width, page.height}, {}});
        pages_.push_back(std::move(page));
        line(table_.title + (pages_.size() > 1 ? ", continued" : ""), left_margin, margin + 8, title_em, Weight::bold);
        y_ = margin + 12;
        rule(y_, Role::rule_medium);
        set_heads();
    }

    void set_heads() {
        const double base = y_ + grid_.head_height - 1.6;
        for (std::size_t i = 0; i < table_.columns.size(); ++i) {
            const auto& column = table_.columns[i];
            const double head = to_mm(layout::text_width(column.title, mm(body_em), Weight::bold));
            const bool turned = head + 2 * cell_pad > grid_.widths[i] + 0.001;
            const bool right = !turned && numeric(column.kind);
            const double x = turned  ? grid_.lefts[i] + grid_.widths[i] / 2 + body_em * 0.35
                             : right ? grid_.lefts[i] + grid_.widths[i] - cell_pad
                                     : grid_.lefts[i] + cell_pad;
            add(deliver::TextLine{{mm(x), mm(base)},
                                  column.title,
                                  mm(body_em),
                                  Weight::bold,
                                  right ? Anchor::right : Anchor::left,
                                  Role::text,
                                  {},
                                  turned});
        }
        y_ += grid_.head_height;
        rule(y_, Role::rule_medium);
    }

    void group_head(const std::string& name) {
        if (y_ + 4 * row_height > bottom()) start_page();  // a head never stands alone
        line(name, left_margin + cell_pad, advance(row_height + 1), body_em * 1.15, Weight::bold);
        rule(y_, Role::rule_fine);
    }

    void set_row(const deliver::TableRow& row) {
        std::vector<std::vector<std::string>> cells;
        std::size_t most = 1;
        for (std::size_t i = 0; i < table_.columns.size(); ++i) {
            const auto& column = table_.columns[i];
            const auto text = i < row.cells.size() ? cell_text(row.cells[i], column.kind) : std::string();
            cells.push_back(
                wrapped(text, grid_.widths[i] - 2 * cell_pad, column.strong ? Weight::bold : Weight::normal));
            most = std::max(most, cells.back().size());
        }
        const double height = row_height + static_cast<double>(most - 1) * line_pitch;
        if (y_ + height > bottom()) start_page();
        for (std::size_t i = 0; i < cells.size(); ++i) set_cell(i, cells[i]);
        part_ticks(height);
        y_ += height;
        rule(y_, Role::rule_hair);
    }

    void set_cell(std::size_t i, const std::vector<std::string>& lines) {
        const auto& column = table_.columns[i];
        const bool right = numeric(column.kind);
        const double x = right ? grid_.lefts[i] + grid_.widths[i] - cell_pad : grid_.lefts[i] + cell_pad;
        double base = y_ + row_height - 1.6;
        for (const auto& each : lines) {
            add(deliver::TextLine{{mm(x), mm(base)},
                                  each,
                                  mm(body_em),
                                  column.strong ? Weight::bold : Weight::normal,
                                  right ? Anchor::right : Anchor::left,
                                  Role::text,
                                  {},
                                  false});
            base += line_pitch;
        }
    }

    /// Columns for the pen are parted by lines, as tall as the row.
    void part_ticks(double height) {
        for (std::size_t i = 0; i < table_.columns.size(); ++i) {
            if (table_.columns[i].kind != deliver::ColumnKind::tick) continue;
            const double left = grid_.lefts[i];
            add(deliver::Path{
                {{mm(left), mm(y_)}, {mm(left), mm(y_ + height)}}, false, false, {}, Role::rule_hair, {}});
        }
    }

    void set_note(const std::string& note) {
        for (const auto& each : wrapped(note, grid_.sheet.inner() - 2, Weight::normal)) {
            if (y_ + line_pitch + 2 > bottom()) start_page();
            line(each, left_margin + cell_pad, advance(line_pitch + 0.9), body_em);
        }
    }

    /// Page numbers are known only when all is set.
    void finish() {
        for (std::size_t i = 0; i < pages_.size(); ++i) {
            auto& shapes = pages_[i].fragments.front().shapes;
            const double y = grid_.sheet.height - margin;
            const auto text = [&](std::string words, double x, Anchor anchor, Weight weight) {
                shapes.push_back(deliver::TextLine{
                    {mm(x), mm(y - 3)}, std::move(words), mm(note_em), weight, anchor, Role::text, {}, false});
            };
            shapes.push_back(deliver::Path{{{mm(left_margin), mm(y - 8)}, {mm(grid_.sheet.width - margin), mm(y - 8)}},
                                           false,
                                           false,
                                           {},
                                           Role::rule_heavy,
                                           {}});
            text(stamp_.owner.empty() || stamp_.owner == stamp_.title ? stamp_.title
                                                                      : stamp_.title + ", " + stamp_.owner,
                 left_margin, Anchor::left, Weight::bold);
            std::string middle = stamp_.revision.empty() ? "" : "Revision " + stamp_.revision;
            for (const auto& part : {stamp_.date, stamp_.status})
                if (!part.empty()) middle += (middle.empty() ? "" : ", ") + part;
            text(middle, grid_.sheet.width / 2, Anchor::middle, Weight::normal);
            text("Page " + std::to_string(i + 1) + " of " + std::to_string(pages_.size()), grid_.sheet.width - margin,
                 Anchor::right, Weight::normal);
        }
    }

    double advance(double by) {
        y_ += by;
        return y_ - 1.6;
    }
    void add(deliver::Shape shape) { pages_.back().fragments.front().shapes.push_back(std::move(shape)); }
    void line(std::string text, double x, double y, double em, Weight weight = Weight::normal) {
        add(deliver::TextLine{{mm(x), mm(y)}, std::move(text), mm(em), weight, Anchor::left, Role::text, {}, false});
    }
    void rule(double y, Role role) {
        add(deliver::Path{
            {{mm(left_margin), mm(y)}, {mm(grid_.sheet.width - margin), mm(y)}}, false, false, {}, role, {}});
    }

    const deliver::TablePart& table_;
    const deliver::Stamp& stamp_;
    Grid grid_;
    std::vector<deliver::PagePart> pages_;
    double y_ = 0;
};

}  // namespace table_pages_detail

std::string cell_text(const deliver::Cell& cell, deliver::ColumnKind kind) {
    if (const auto* text = std::get_if<std::string>(&cell)) return *text;
    if (const auto* number = std::get_if<std::int64_t>(&cell)) return std::to_string(*number);
    if (const auto* length = std::get_if<base::Length>(&cell))
        return kind == deliver::ColumnKind::length_m ? base::print_decimal((length->count() + 5000) / 10000, 2)
                                                     : base::print(*length);
    if (const auto* rate = std::get_if<base::BitRate>(&cell))
        return kind == deliver::ColumnKind::rate_mbps ? base::print_decimal((rate->count() + 50000) / 100000, 1)
                                                      : base::print(*rate);
    if (const auto* power = std::get_if<base::Power>(&cell))
        return kind == deliver::ColumnKind::power_w ? base::print_decimal((power->count() + 50) / 100, 1)
                                                    : base::print(*power);
    return {};
}

std::vector<deliver::PagePart> table_pages(const deliver::TablePart& table, const deliver::Stamp& stamp) {
    return table_pages_detail::Pages(table, stamp).set();
}

}  // namespace streamwright::app
