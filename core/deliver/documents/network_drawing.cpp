// The network drawing: switches in layers from the root of the tree, the links between them with what each direction
// carries in the first preset and at worst; over as many sheets as keep it legible.
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/network_words.h"
#include "core/deliver/drawing/network_fragments.h"
#include "core/deliver/drawing/network_ways.h"
#include "core/deliver/drawing/paper.h"
#include "core/deliver/drawing/shapes.h"
#include "core/deliver/drawing/sheet_size.h"
#include "core/layout/layers.h"

#include <algorithm>
#include <set>

namespace streamwright::deliver {

namespace network_drawing_detail {

using base::Length;
using layout::Forest;
using layout::TreeSheet;
using layout::TreeSpot;
using namespace base::literals;
namespace measure = network_measure;

constexpr auto paper = model::PaperSize::a3;
constexpr Length heading_height = 14_mm;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Everything that sheets are made from.
struct Plan {
    NetworkView view;
    Forest forest;
    std::vector<std::vector<int>> links_of;  // per switch: links drawn at it, the one to its parent first
    std::vector<TreeSheet> sheets;
    std::vector<int> home, rest;  // per switch: sheet where it hangs from its parent; the first with its children
    std::vector<int> last;        // the last with its children
    std::vector<std::vector<int>> further;  // per switch: links that are drawn at their other end
};

/// Links that are not needed to reach a switch are drawn at the deeper end, or at the end that blocks.
int drawn_at(const Forest& forest, const NetworkLink& link) {
    const int a = forest.layer[at(link.a)], b = forest.layer[at(link.b)];
    if (a != b) return a > b ? link.a : link.b;
    return link.a_blocks && !link.b_blocks ? link.a : link.b;
}

void assign_links(Plan& plan) {
    plan.links_of.resize(plan.view.switches.size());
    plan.further.resize(plan.view.switches.size());
    for (std::size_t node = 0; node < plan.links_of.size(); ++node)
        if (const int edge = plan.forest.parent_edge[node]; edge >= 0) plan.links_of[node].push_back(edge);
    for (std::size_t i = 0; i < plan.view.links.size(); ++i) {
        const auto& link = plan.view.links[i];
        if (link.a == link.b) continue;
        const int node = drawn_at(plan.forest, link), other = node == link.a ? link.b : link.a;
        auto& here = plan.links_of[at(node)];
        const int index = static_cast<int>(i);
        if (std::ranges::find(here, index) != here.end()) continue;
        here.push_back(index);
        if (plan.forest.parent[at(node)] == other) continue;
        plan.further[at(other)].push_back(index);
    }
}

/// A switch with more links than a sheet has rows says how many are left out.
void limit_links(Plan& plan, int capacity) {
    for (std::size_t node = 0; node < plan.links_of.size(); ++node) {
        auto& here = plan.links_of[node];
        if (here.size() <= at(capacity)) continue;
        plan.view.notes.push_back(plan.view.switches[node].tag + " has " + std::to_string(here.size() - at(capacity)) +
                                  " more links than are drawn.");
        here.resize(at(capacity));
    }
}

Length drawing_bottom(const Source& source) {
    const auto frame = sheet_size(paper).frame;
    const auto revisions = revision_table(paper, source.design);
    const auto bottom = frame.at.y + frame.height - title_block_height - 4_mm;
    return revisions.shapes.empty() ? bottom : std::min(bottom, revisions.bounds.at.y - 4_mm);
}

Length drawing_top() { return sheet_size(paper).frame.at.y + heading_height; }

Plan plan_of(const Source& source) {
    Plan plan;
    plan.view = network_view(source.analysis.facts, source.book.numbers);
    std::vector<layout::LayerEdge> edges;
    for (const auto& link : plan.view.links) edges.push_back({link.a, link.b, link.is_up && link.carries});
    plan.forest = layout::in_layers(static_cast<int>(plan.view.switches.size()), edges, plan.view.roots);
    assign_links(plan);
    const auto height = drawing_bottom(source) - drawing_top();
    const int capacity = static_cast<int>(height.count() / measure::row.count());
    limit_links(plan, capacity);
    std::vector<int> own_rows;
    for (const auto& links : plan.links_of) own_rows.push_back(std::max(1, static_cast<int>(links.size())));
    plan.sheets = layout::tree_sheets(plan.forest, own_rows, capacity);
    plan.home.assign(plan.view.switches.size(), -1);
    plan.rest = plan.last = plan.home;
    for (std::size_t sheet = plan.sheets.size(); sheet-- > 0;)
        for (const auto& spot : plan.sheets[sheet].spots) {
            const int here = static_cast<int>(sheet);
            (spot.parent >= 0 ? plan.home : plan.rest)[at(spot.node)] = here;
            if (spot.parent < 0) plan.last[at(spot.node)] = std::max(plan.last[at(spot.node)], here);
        }
    return plan;
}

/// A link as it goes from the child's row to the parent.
struct Run {
    int link = 0, child = 0;  // spot
    Length y;
};

struct Laid {
    int link = 0;
    NetworkLine line;
};

/// One sheet being drawn.
class SheetPainter {
public:
    SheetPainter(const Plan& plan, std::size_t index, Length bottom)
        : plan_(plan), sheet_(plan.sheets[index]), index_(static_cast<int>(index)), bottom_(bottom) {
        int columns = 0;
        for (const auto& spot : sheet_.spots) columns = std::max(columns, spot.column);
        const auto frame = sheet_size(paper).frame;
        const auto width = measure::plate_width + columns * (measure::plate_width + measure::gap);
        left_ = frame.at.x + (frame.width - width) / 2;
        top_ = drawing_top() + (bottom - drawing_top() - sheet_.rows * measure::row) / 3;
        for (const auto& spot : sheet_.spots) bodies_.push_back(body(spot));
    }

    std::vector<Fragment> draw() {
        for (std::size_t spot = 0; spot < sheet_.spots.size(); ++spot)
            for (const bool leftward : {false, true}) lay_side(static_cast<int>(spot), leftward);
        close_rings();
        std::vector<Fragment> fragments;
        for (const auto* lines : {&lines_, &loose_})
            for (const auto& [link, line] : *lines)
                fragments.push_back(link_fragment(plan_.view.links[at(link)], line, plan_.view.load_word));
        for (std::size_t spot = 0; spot < sheet_.spots.size(); ++spot)
            fragments.push_back(
                switch_fragment(words_of(sheet_.spots[spot].node), bodies_[spot], sheet_words(sheet_.spots[spot])));
        return fragments;
    }

private:
    Length middle(const TreeSpot& spot) const { return top_ + measure::row * spot.row + measure::row * spot.rows / 2; }
    const std::vector<int>& links(const TreeSpot& spot) const { return plan_.links_of[at(spot.node)]; }
    Length row_of_link(const TreeSpot& spot, std::size_t link) const {
        const auto from_middle =
            2 * static_cast<std::int64_t>(link) - static_cast<std::int64_t>(links(spot).size()) + 1;
        return middle(spot) + measure::row * from_middle / 2;
    }

    Box body(const TreeSpot& spot) const {
        std::int64_t rows = spot.parent >= 0 ? static_cast<std::int64_t>(links(spot).size()) : 1, lines = 0;
        for (const auto& other : sheet_.spots)
            if (other.parent >= 0 && &sheet_.spots[at(other.parent)] == &spot)
                lines += static_cast<std::int64_t>(links(other).size());
        const bool five = !plan_.further[at(spot.node)].empty();
        const auto least = five ? measure::plate_height_five : measure::plate_height;
        auto height = std::max(least, measure::row * rows - (measure::row - measure::plate_height));
        height = std::max(height, std::min(4_mm * lines + 4_mm, measure::row * spot.rows - 3_mm));
        return {{left_ + spot.column * (measure::plate_width + measure::gap), middle(spot) - height / 2},
                measure::plate_width,
                height};
    }

    std::string sheet_words(const TreeSpot& spot) const {
        const auto words = [&](int sheet, const char* here) {
            return sheet == index_ ? std::string(here) : "sheet " + std::to_string(sheet + 1);
        };
        if (spot.parent >= 0) return spot.more ? words(plan_.rest[at(spot.node)], "below") : std::string();
        if (const int home = plan_.home[at(spot.node)]; home >= 0) return words(home, "above");
        const int first = plan_.rest[at(spot.node)], last = plan_.last[at(spot.node)];
        if (first == last) return {};
        return words(first < index_ ? first : index_ + 1, "");
    }

    /// The switch, and which of its links have to be looked for at their other end.
    NetworkSwitch words_of(int node) const {
        auto words = plan_.view.switches[at(node)];
        for (const int link : plan_.further[at(node)]) {
            if (std::ranges::any_of(loose_, [&](const Laid& laid) { return laid.link == link && !laid.line.open; }))
                continue;
            const auto& row = plan_.view.links[at(link)];
            words.further += (words.further.empty() ? "also " : ", ") + row.tag + " to " +
                             plan_.view.switches[at(row.a == node ? row.b : row.a)].tag;
        }
        return words;
    }

    /// The lines between a parent and its children of one side, by height; those to elsewhere are left loose.
    void lay_side(int parent, bool leftward) {
        std::vector<Run> runs;
        for (std::size_t child = 0; child < sheet_.spots.size(); ++child) {
            const auto& spot = sheet_.spots[child];
            if (spot.parent != parent || spot.leftward != leftward) continue;
            for (std::size_t i = 0; i < links(spot).size(); ++i) {
                const Run run{links(spot)[i], static_cast<int>(child), row_of_link(spot, i)};
                joins(run, parent) ? runs.push_back(run) : lay_loose(run, leftward);
            }
        }
        std::ranges::stable_sort(runs, {}, &Run::y);
        lay_runs(runs, parent, leftward);
    }

    bool joins(const Run& run, int parent) const {
        const auto& link = plan_.view.links[at(run.link)];
        const int node = sheet_.spots[at(parent)].node;
        return link.a == node || link.b == node;
    }

    void lay_runs(const std::vector<Run>& runs, int parent, bool leftward) {
        const auto count = static_cast<std::int64_t>(runs.size());
        const auto& box = bodies_[at(parent)];
        std::vector<Length> ports;
        std::int64_t rising = 0, falling = 0;
        for (std::int64_t i = 0; i < count; ++i) {
            const auto y = runs[static_cast<std::size_t>(i)].y;
            const auto port = port_height(box, i, count, y);
            ports.push_back(port);
            ++(y < port ? rising : falling);
            if (y == port) --falling;
        }
        std::int64_t lane_up = 0, lane_down = falling;
        for (std::size_t i = 0; i < runs.size(); ++i) {
            const bool up = runs[i].y<ports[i], down = runs[i].y> ports[i];
            const auto lane = up ? lane_up++ : down ? --lane_down : 0;
            lay_line(runs[i], parent, ports[i], lane_at(lane, std::max(rising, falling)), leftward);
        }
    }

    /// Ports are spread about the middle of the parent's edge; a lone line runs straight where it can.
    static Length port_height(const Box& box, std::int64_t i, std::int64_t count, Length y) {
        if (count == 1) return std::clamp(y, box.at.y + 3_mm, box.at.y + box.height - 3_mm);
        const auto pitch = std::min(5_mm, (box.height - 4_mm) / count);
        return box.at.y + box.height / 2 + pitch * (2 * i - count + 1) / 2;
    }

    static Length lane_at(std::int64_t lane, std::int64_t count) {
        const auto pitch = std::min(4_mm, 11_mm / std::max<std::int64_t>(1, count - 1));
        return 3500_um + pitch * lane;
    }

    /// What a line says of its link, its label and its end at the child.
    NetworkLine begun(const Run& run, bool leftward) const {
        const auto& child = bodies_[at(run.child)];
        NetworkLine line;
        line.leftward = leftward;
        line.child_is_b = plan_.view.links[at(run.link)].b == sheet_.spots[at(run.child)].node;
        const auto edge = leftward ? child.at.x + child.width : child.at.x;
        const auto left = leftward ? edge + measure::stub : edge - measure::stub - measure::label_width;
        line.label = {{left, run.y - measure::label_height / 2}, measure::label_width, measure::label_height};
        line.way = {{edge, run.y}};
        return line;
    }

    void lay_line(const Run& run, int parent, Length port, Length lane, bool leftward) {
        auto line = begun(run, leftward);
        const auto& above = bodies_[at(parent)];
        const auto edge = leftward ? above.at.x : above.at.x + above.width;
        lane = leftward ? edge - lane : edge + lane;
        if (port != run.y) line.way.insert(line.way.begin(), {SheetPoint{lane, port}, SheetPoint{lane, run.y}});
        line.way.insert(line.way.begin(), {edge, port});
        lines_.push_back({run.link, std::move(line)});
    }

    void lay_loose(const Run& run, bool leftward) {
        auto line = begun(run, leftward);
        line.open = true;
        line.way.insert(line.way.begin(), {line.label.at.x + (leftward ? line.label.width : Length{}), run.y});
        loose_.push_back({run.link, std::move(line)});
    }

    /// Loose lines whose other switch is on the sheet are led there; one that finds no way keeps its point, and the
    /// others keep clear of it.
    void close_rings() {
        const auto open = loose_;
        std::set<std::size_t> flags;
        for (std::size_t before = loose_.size() + 1; before != flags.size();) {
            before = flags.size();
            loose_ = open;
            auto ground = ground_beside(flags);
            for (std::size_t i = 0; i < loose_.size(); ++i)
                if (!flags.contains(i) && !close_ring(ground, loose_[i])) flags.insert(i);
        }
    }

    bool close_ring(WayGround& ground, Laid& laid) const {
        const auto& link = plan_.view.links[at(laid.link)];
        const auto way = way_between(ground, laid.line.way.front(), goals_at(laid.line.child_is_b ? link.a : link.b));
        if (!way) return false;
        const auto child = laid.line.way.back();
        laid.line.way.assign(way->rbegin(), way->rend() - 1);
        laid.line.way.push_back(child);
        laid.line.open = false;
        ground.taken.push_back(laid.line.way);
        return true;
    }

    WayGround ground_beside(const std::set<std::size_t>& flags) const {
        const auto frame = sheet_size(paper).frame;
        WayGround ground;
        ground.room = {{frame.at.x + 2_mm, drawing_top() - 1_mm}, frame.width - 4_mm, bottom_ - drawing_top() + 2_mm};
        ground.boxes = bodies_;
        for (const auto* lines : {&lines_, &loose_})
            for (const auto& laid : *lines) ground.boxes.push_back(laid.line.label);
        for (const auto& laid : lines_) ground.taken.push_back(laid.line.way);
        for (const std::size_t i : flags) ground.boxes.push_back(pointed_label(loose_[i].line));
        for (const auto& body : bodies_)
            for (auto away = 2500_um; away < measure::bus; away += 500_um) {
                ground.xs.push_back(body.at.x - away);
                ground.xs.push_back(body.at.x + body.width + away);
            }
        for (int row = 0; row <= sheet_.rows; ++row) ground.ys.push_back(top_ + measure::row * row);
        return ground;
    }

    /// Places on both edges of each plate of the switch: near its corners, and between its rows.
    std::vector<SheetPoint> goals_at(int node) const {
        constexpr auto corner = 2700_um;
        std::vector<SheetPoint> goals;
        for (std::size_t spot = 0; spot < sheet_.spots.size(); ++spot) {
            if (sheet_.spots[spot].node != node) continue;
            const auto& body = bodies_[spot];
            std::vector<Length> heights{body.at.y + corner, body.at.y + body.height - corner};
            for (int row = 0; row <= sheet_.rows; ++row)
                if (const auto y = top_ + measure::row * row; heights[0] < y && y < heights[1]) heights.push_back(y);
            for (const auto y : heights) goals.insert(goals.end(), {{body.at.x, y}, {body.at.x + body.width, y}});
        }
        return goals;
    }

    const Plan& plan_;
    const TreeSheet& sheet_;
    int index_;
    Length bottom_, left_, top_;
    std::vector<Box> bodies_;          // per spot
    std::vector<Laid> lines_, loose_;  // to the parent; to other switches
};

Fragment block(const Source& source, const Plan& plan, std::size_t index, std::size_t count) {
    auto fields = title_fields(source.design);
    fields.document_type = "Network drawing";
    fields.supplement = plan.view.load_title + " and worst case";
    if (!fields.number.empty()) fields.number += "-N" + two_digits(static_cast<int>(index) + 1);
    fields.sheet = two_digits(static_cast<int>(index) + 1) + " / " + two_digits(static_cast<int>(count));
    return title_block(paper, fields);
}

PagePart page_of(const Source& source, const Plan& plan, std::size_t index, std::vector<Fragment> drawing) {
    const auto size = sheet_size(paper);
    const auto words = "Network: loads in " + plan.view.load_title + " and in the worst case";
    PagePart page{"sheet-" + two_digits(static_cast<int>(index) + 1), words, size.width, size.height, {}};
    page.fragments = {sheet_frame(paper), sheet_heading(paper, words)};
    std::ranges::move(drawing, std::back_inserter(page.fragments));
    const auto corner = moved(size.frame.at, 5_mm, size.frame.height - title_block_height - 2_mm);
    page.fragments.push_back(network_legend(corner, plan.view));
    const auto width = size.frame.width - title_block_width - 118_mm;
    page.fragments.push_back(network_table({moved(corner, 110_mm, {}), width, title_block_height}, plan.view));
    page.fragments.push_back(revision_table(paper, source.design));
    page.fragments.push_back(block(source, plan, index, std::max<std::size_t>(1, plan.sheets.size())));
    return page;
}

/// A design without a switch gets a sheet that says so.
std::vector<Fragment> nothing_drawn() {
    const auto frame = sheet_size(paper).frame;
    Fragment fragment;
    fragment.shapes.emplace_back(bold_line(moved(frame.at, frame.width / 2, frame.height / 3),
                                           "This design has no switch, so there is no network to draw.",
                                           lettering::normal, Role::text, Anchor::middle));
    fragment.bounds = bounds_of(fragment.shapes);
    return {fragment};
}

}  // namespace network_drawing_detail

Content make_network_drawing(const Source& source) {
    using namespace network_drawing_detail;
    const auto plan = plan_of(source);
    Content content{"network-drawing", "Network drawing", {}};
    if (plan.sheets.empty()) content.parts.emplace_back(page_of(source, plan, 0, nothing_drawn()));
    for (std::size_t i = 0; i < plan.sheets.size(); ++i)
        content.parts.emplace_back(page_of(source, plan, i, SheetPainter(plan, i, drawing_bottom(source)).draw()));
    return content;
}

}  // namespace streamwright::deliver
