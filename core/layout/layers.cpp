// Layers by breadth-first search, and sheets by cutting below the second layer or splitting a long list of children.
#include "core/layout/layers.h"

#include <queue>

#include <algorithm>

namespace streamwright::layout {

namespace layers_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

class Spreading {
public:
    Spreading(int nodes, const std::vector<LayerEdge>& edges) : edges_(edges), of_node_(at(nodes)) {
        forest.parent.assign(at(nodes), -1);
        forest.parent_edge = forest.parent;
        forest.layer = forest.parent;
        forest.children.resize(at(nodes));
        for (std::size_t i = 0; i < edges.size(); ++i)
            for (const int node : {edges[i].a, edges[i].b}) of_node_[at(node)].push_back(static_cast<int>(i));
    }

    void start(int root) {
        if (forest.layer[at(root)] >= 0) return;
        forest.layer[at(root)] = 0;
        forest.roots.push_back(root);
        open_.push(root);
        drain();
    }

    /// Hangs islands from what is placed by edges that carry nothing.
    void join_islands() {
        for (bool joined = true; joined;) {
            joined = false;
            for (std::size_t i = 0; i < edges_.size() && !joined; ++i) {
                const auto& [a, b, carries] = edges_[i];
                if (placed(a) == placed(b)) continue;
                hang(placed(a) ? b : a, placed(a) ? a : b, static_cast<int>(i));
                drain();
                joined = true;
            }
        }
    }

    bool placed(int node) const { return forest.layer[at(node)] >= 0; }

    Forest forest;

private:
    void hang(int node, int parent, int edge) {
        forest.parent[at(node)] = parent;
        forest.parent_edge[at(node)] = edge;
        forest.layer[at(node)] = forest.layer[at(parent)] + 1;
        forest.children[at(parent)].push_back(node);
        open_.push(node);
    }

    void drain() {
        for (; !open_.empty(); open_.pop()) {
            const int node = open_.front();
            for (const int i : of_node_[at(node)]) {
                const auto& edge = edges_[at(i)];
                const int other = edge.a == node ? edge.b : edge.a;
                if (edge.carries && !placed(other)) hang(other, node, i);
            }
        }
    }

    const std::vector<LayerEdge>& edges_;
    std::vector<std::vector<int>> of_node_;
    std::queue<int> open_;
};

/// Cuts the trees of a forest into sheets, one queued root after the other.
class Cutting {
public:
    Cutting(const Forest& forest, const std::vector<int>& own_rows, int capacity)
        : forest_(forest), own_rows_(own_rows), capacity_(capacity) {}

    std::vector<TreeSheet> run() {
        for (const int root : forest_.roots) open_.push(root);
        for (; !open_.empty(); open_.pop()) cut(open_.front());
        return std::move(sheets_);
    }

private:
    const std::vector<int>& children(int node) const { return forest_.children[at(node)]; }
    int own(int node) const { return std::min(own_rows_[at(node)], capacity_); }
    /// Rows of the node and of what hangs from it, `layers` deep.
    int block(int node, int layers) const {
        int below = 0;
        if (layers > 0)
            for (const int child : children(node)) below += block(child, layers - 1);
        return std::max(own(node), below);
    }
    int depth(int node, int most) const {
        int deepest = 0;
        if (most > 0)
            for (const int child : children(node)) deepest = std::max(deepest, 1 + depth(child, most - 1));
        return deepest;
    }

    void cut(int root) {
        constexpr int star = 4;  // from so many children on, both sides look better than one
        const auto count = static_cast<int>(children(root).size());
        const bool fits = block(root, 2) <= capacity_;
        if (fits && (depth(root, 2) != 1 || count < star)) return one_sided(root);
        split(root);
    }

    void one_sided(int root) {
        const int rows = block(root, 2);
        const bool has_children = !children(root).empty();
        // A free row keeps trees apart; switches that stand alone need none between them.
        const int apart = !sheets_.empty() && (has_children || last_has_children_) ? 1 : 0;
        if (sheets_.empty() || sheets_.back().rows + apart + rows > capacity_)
            sheets_.emplace_back();
        else
            sheets_.back().rows += apart;
        auto& sheet = sheets_.back();
        place(sheet, root, -1, 0, sheet.rows, 2);
        sheet.rows += rows;
        last_has_children_ = has_children;
    }

    /// A node whose children have no room here is queued for a sheet of its own.
    void place(TreeSheet& sheet, int node, int parent, int column, int row, int layers) {
        const int here = static_cast<int>(sheet.spots.size());
        const bool cut_off = layers == 0 && !children(node).empty();
        sheet.spots.push_back({node, parent, column, row, block(node, layers), false, cut_off});
        if (cut_off) open_.push(node);
        if (layers == 0) return;
        int below = 0;
        for (const int child : children(node)) below += block(child, layers - 1);
        int next = row + (block(node, layers) - below) / 2;
        for (const int child : children(node)) {
            place(sheet, child, here, column + 1, next, layers - 1);
            next += block(child, layers - 1);
        }
    }

    /// Children in order: down the right side, then down the left, then on to the next sheet; evenly filled.
    void split(int root) {
        int total = 0;
        for (const int child : children(root)) total += own(child);
        const int sheets = (total + 2 * capacity_ - 1) / (2 * capacity_);
        const int side = std::min(capacity_, std::max((total + 2 * sheets - 1) / (2 * sheets), own(root)));
        std::size_t next = 0;
        while (next < children(root).size()) {
            TreeSheet sheet;
            sheet.spots.push_back({root, -1, 1, 0, own(root), false, false});
            for (const bool left : {false, true}) next = fill_side(sheet, root, next, side, left);
            sheet.spots.front().rows = sheet.rows = std::max(sheet.rows, own(root));
            sheets_.push_back(std::move(sheet));
        }
        last_has_children_ = true;
    }

    std::size_t fill_side(TreeSheet& sheet, int root, std::size_t next, int side, bool left) {
        int row = 0;
        while (next < children(root).size()) {
            const int child = children(root)[next];
            if (row > 0 && row + own(child) > side) break;
            const bool more = !children(child).empty();
            sheet.spots.push_back({child, 0, left ? 0 : 2, row, own(child), left, more});
            if (more) open_.push(child);
            row += own(child);
            ++next;
        }
        sheet.rows = std::max(sheet.rows, row);
        return next;
    }

    const Forest& forest_;
    const std::vector<int>& own_rows_;
    int capacity_;
    std::queue<int> open_;
    std::vector<TreeSheet> sheets_;
    bool last_has_children_ = false;
};

}  // namespace layers_detail

Forest in_layers(int nodes, const std::vector<LayerEdge>& edges, const std::vector<int>& wished_roots) {
    layers_detail::Spreading spreading(nodes, edges);
    for (const int root : wished_roots) {
        spreading.start(root);
        spreading.join_islands();
    }
    for (int node = 0; node < nodes; ++node) {
        spreading.start(node);
        spreading.join_islands();
    }
    for (auto& children : spreading.forest.children) std::ranges::sort(children);
    return std::move(spreading.forest);
}

std::vector<TreeSheet> tree_sheets(const Forest& forest, const std::vector<int>& own_rows, int capacity) {
    return layers_detail::Cutting(forest, own_rows, capacity).run();
}

}  // namespace streamwright::layout
