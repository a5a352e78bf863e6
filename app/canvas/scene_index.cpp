#include "app/canvas/scene_index.h"

#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>

#include <iterator>

namespace streamwright::app {

namespace scene_index_detail {

namespace geometry = boost::geometry;
using Point = geometry::model::point<double, 2, geometry::cs::cartesian>;
using Box = geometry::model::box<Point>;
using Value = std::pair<Box, int>;

Box box_of(const QRectF& rect) { return {{rect.left(), rect.top()}, {rect.right(), rect.bottom()}}; }

std::vector<Value> values_of(const std::vector<Target>& targets) {
    std::vector<Value> values;
    values.reserve(targets.size());
    for (std::size_t i = 0; i < targets.size(); ++i) values.emplace_back(box_of(targets[i].box), static_cast<int>(i));
    return values;
}

}  // namespace scene_index_detail

struct SceneIndex::Tree {
    std::vector<Target> targets;
    boost::geometry::index::rtree<scene_index_detail::Value, boost::geometry::index::quadratic<16>> boxes;
};

SceneIndex::SceneIndex() : SceneIndex(std::vector<Target>{}) {}

SceneIndex::SceneIndex(std::vector<Target> targets) {
    auto values = scene_index_detail::values_of(targets);
    // Handing all over at once packs the tree, which is faster to build and to ask.
    tree_ = std::make_unique<Tree>(Tree{std::move(targets), decltype(Tree::boxes)(values.begin(), values.end())});
}

SceneIndex::~SceneIndex() = default;
SceneIndex::SceneIndex(SceneIndex&&) noexcept = default;
SceneIndex& SceneIndex::operator=(SceneIndex&&) noexcept = default;

std::vector<Target> SceneIndex::meeting(const QRectF& box) const {
    std::vector<scene_index_detail::Value> found;
    tree_->boxes.query(boost::geometry::index::intersects(scene_index_detail::box_of(box)), std::back_inserter(found));
    std::vector<Target> targets;
    targets.reserve(found.size());
    for (const auto& [at, index] : found) targets.push_back(tree_->targets[static_cast<std::size_t>(index)]);
    return targets;
}

}  // namespace streamwright::app
