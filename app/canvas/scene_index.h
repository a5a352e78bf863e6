// What lies where on the sheet: an R-tree of the boxes of plates, lugs, cable segments, frames, notes and badges.
#pragma once

#include <QRectF>

#include <memory>
#include <vector>

namespace streamwright::app {

enum class TargetKind { frame, note, segment, plate, lug, badge };

/// `index` counts within the kind's list of the scene (a lug's in the plates, a segment's in the cables); `part` is the
/// port or the segment.
struct Target {
    TargetKind kind = TargetKind::plate;
    int index = 0;
    int part = 0;
    QRectF box;  // millimetres
};

class SceneIndex {
public:
    SceneIndex();
    explicit SceneIndex(std::vector<Target> targets);
    ~SceneIndex();
    SceneIndex(SceneIndex&&) noexcept;
    SceneIndex& operator=(SceneIndex&&) noexcept;

    /// Those whose box meets the rectangle, in no order.
    std::vector<Target> meeting(const QRectF& box) const;

private:
    struct Tree;
    std::unique_ptr<Tree> tree_;
};

}  // namespace streamwright::app
