// A network in layers: which switch hangs from which, counted from the roots; and how such trees are cut and spread
// over sheets of a few rows each.
#pragma once

#include <utility>
#include <vector>

namespace streamwright::layout {

struct LayerEdge {
    int a = 0, b = 0;
    bool carries = true;  // an edge that carries nothing joins layers only where no other does
};

/// Trees over all nodes; a node without a parent is a root, and a layer is the number of edges from there.
struct Forest {
    std::vector<int> parent, parent_edge;  // -1: a root
    std::vector<int> layer;
    std::vector<std::vector<int>> children;  // ascending
    std::vector<int> roots;
};

/// Breadth first from the roots wished for, then from what they do not reach, in the order of nodes.
Forest in_layers(int nodes, const std::vector<LayerEdge>& edges, const std::vector<int>& wished_roots);

/// A node on a sheet. Rows and columns are counted from 0; children stand one column on.
struct TreeSpot {
    int node = 0;
    int parent = -1;  // spot on the same sheet
    int column = 0;
    int row = 0, rows = 1;  // of the block that the node and what hangs from it take
    bool leftward = false;  // stands left of its parent
    bool more = false;      // its children are on a sheet of their own
    friend bool operator==(const TreeSpot&, const TreeSpot&) = default;
};

/// Trees one below the other: a root in column 0 with up to two layers right of it, or a root in column 1 with children
/// on both sides.
struct TreeSheet {
    std::vector<TreeSpot> spots;  // parents before children
    int rows = 0;
};

/// `own_rows` is what each node needs for itself, at most `capacity`, the rows of a sheet. Every node stands on some
/// sheet below its parent, or as a root; the root of a cut tree stands again on the sheet of its children.
std::vector<TreeSheet> tree_sheets(const Forest& forest, const std::vector<int>& own_rows, int capacity);

}  // namespace streamwright::layout
