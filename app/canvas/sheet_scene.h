// One sheet of the design as the canvas holds it: a fragment per subject, the geometry of plates and lines, the badges
// of findings, and the index over them all. The design is kept as a frozen copy, so that types stay alive.
#pragma once

#include "app/canvas/scene_index.h"
#include "app/canvas/view_transform.h"
#include "app/document/document.h"
#include "app/document/selection.h"
#include "core/deliver/drawing/sheet_lines.h"

#include <optional>
#include <vector>

namespace streamwright::app {

struct PlateOnSheet {
    model::DeviceId device;
    layout::Plate plate;
    const catalogue::DeviceType* type = nullptr;
    deliver::Fragment fragment;
    std::optional<model::PortRef> port(int index) const;
    QRectF whole() const;  // lugs included, millimetres
};

struct CableOnSheet {
    deliver::DrawnLine line;
    deliver::Fragment fragment;
};

struct FrameOnSheet {
    model::RoomFrame row;
    deliver::Fragment fragment;
    QRectF box() const { return {to_mm(row.at), QSizeF(to_mm(row.width), to_mm(row.height))}; }
};

struct NoteOnSheet {
    model::NoteId note;
    deliver::Fragment fragment;
};

struct BadgeOnSheet {
    Chosen subject;
    analysis::Severity gravest = analysis::Severity::advice;
    int count = 0;
    deliver::Fragment fragment;
};

class SheetScene {
public:
    SheetScene() = default;
    /// Nothing is drawn where the design has no such sheet.
    SheetScene(const Document& document, model::SheetId sheet);

    const model::Design& design() const { return design_; }
    model::SheetId sheet() const { return sheet_; }
    const std::vector<FrameOnSheet>& frames() const { return frames_; }
    const std::vector<CableOnSheet>& cables() const { return cables_; }
    const std::vector<PlateOnSheet>& plates() const { return plates_; }
    const std::vector<NoteOnSheet>& notes() const { return notes_; }
    const std::vector<BadgeOnSheet>& badges() const { return badges_; }
    const SceneIndex& index() const { return index_; }

    const PlateOnSheet* plate(model::DeviceId device) const;
    const CableOnSheet* cable(model::CableId cable) const;
    const layout::PortSpot* spot(const model::PortRef& port) const;
    std::optional<QRectF> bounds(const Chosen& subject) const;
    /// Of all that is drawn; empty for an empty sheet.
    QRectF drawn() const;
    QRectF paper() const { return paper_; }
    /// Inside the printed frame, and the corner of it that the title block takes: what stands beyond is in its way.
    QRectF drawing_area() const { return drawing_area_; }
    QRectF title_block() const { return title_block_; }
    /// What cables keep clear of.
    std::vector<layout::Box> obstacles() const;
    /// The room whose frame holds the point; the innermost where frames nest.
    const FrameOnSheet* frame_at(QPointF mm) const;

private:
    void add_plates(const deliver::Scene& scene);
    void add_badges(const Document& document, const deliver::Scene& scene);
    void make_index();

    model::Design design_;
    model::SheetId sheet_{0};
    QRectF paper_{0, 0, 420, 297}, drawing_area_, title_block_;
    std::vector<FrameOnSheet> frames_;
    std::vector<CableOnSheet> cables_;  // by id
    std::vector<PlateOnSheet> plates_;  // by id
    std::vector<NoteOnSheet> notes_;
    std::vector<BadgeOnSheet> badges_;
    SceneIndex index_;
};

}  // namespace streamwright::app
