#include "app/tools/cable_tool.h"

#include "app/canvas/subject_words.h"
#include "app/canvas/viewport.h"
#include "app/tools/connecting.h"
#include "app/tools/select_tool.h"
#include "app/words/words.h"
#include "core/layout/cable_route.h"
#include "core/model/mating.h"

#include <QKeyEvent>

#include <algorithm>

namespace streamwright::app {

namespace cable_tool_detail {

/// One end is held by a port (or nothing), the other follows the pointer.
class CableTool final : public Gesture {
public:
    CableTool(ToolBox& box, Viewport& viewport, std::optional<model::PortRef> from, std::optional<GrabbedEnd> grabbed,
              bool by_keyboard);
    void moved(const Pointer& pointer) override;
    void released(const Pointer& pointer) override;
    void cancelled() override;
    bool key(QKeyEvent& event) override;
    bool lasting() const override { return by_keyboard_ && !done_; }

private:
    void find_fitting();
    void show_line(QPointF mm, const std::optional<model::PortRef>& target, bool refused);
    void show_refusal(const base::Error& why, const model::PortRef& port, QPointF view);
    QString fitting_words() const;
    bool connect_to(const std::optional<model::PortRef>& to);
    void walk(bool forward);

    ToolBox& box_;
    Viewport& viewport_;
    std::optional<model::PortRef> from_;
    std::optional<GrabbedEnd> grabbed_;
    bool by_keyboard_;
    bool done_ = false;
    bool pulled_ = false;
    std::vector<model::PortRef> fitting_;
    std::vector<layout::Box> obstacles_;
    catalogue::Signal signal_ = catalogue::Signal::copper;
};

CableTool::CableTool(ToolBox& box, Viewport& viewport, std::optional<model::PortRef> from,
                     std::optional<GrabbedEnd> grabbed, bool by_keyboard)
    : box_(box),
      viewport_(viewport),
      from_(std::move(from)),
      grabbed_(grabbed),
      by_keyboard_(by_keyboard),
      obstacles_(viewport.scene().obstacles()) {
    const auto& design = viewport_.document().design();
    if (grabbed_) {
        if (const auto* cable = viewport_.scene().cable(grabbed_->cable)) signal_ = cable->line.signal;
    } else if (from_) {
        if (const auto facts = model::port_facts(design, *from_); facts.port) signal_ = facts.port->signal;
    }
}

void CableTool::find_fitting() {
    pulled_ = true;
    const auto& design = viewport_.document().design();
    const auto moving = grabbed_ ? std::optional(grabbed_->cable) : std::nullopt;
    for (const auto& plate : viewport_.scene().plates())
        for (const auto& spot : plate.plate.spots) {
            const auto port = plate.port(spot.port);
            if (port && from_ && !lead_refusal(box_, design, *from_, *port, moving)) fitting_.push_back(*port);
        }
    auto& overlay = viewport_.overlay();
    overlay.pulling = true;
    overlay.fitting = {fitting_.begin(), fitting_.end()};
    overlay.pulled_from = from_;
    if (grabbed_) overlay.hidden.insert(Chosen(grabbed_->cable));
    viewport_.refresh_scene();
}

void CableTool::show_line(QPointF mm, const std::optional<model::PortRef>& target, bool refused) {
    const auto& scene = viewport_.scene();
    const auto* from = from_ ? scene.spot(*from_) : nullptr;
    auto& overlay = viewport_.overlay();
    overlay.lines.clear();
    if (!from) return;
    const auto* to = target ? scene.spot(*target) : nullptr;
    const layout::RouteEnd a{from->lead, from->side};
    const bool rightward = to_mm(from->lead).x() < mm.x();
    layout::RouteEnd b{from_mm(mm), rightward ? layout::Side::left : layout::Side::right};
    if (to) b = {to->lead, to->side};
    PreviewLine line{{a.at}, signal_, refused};
    const auto bends = layout::quick_route(a, b, obstacles_);
    line.points.insert(line.points.end(), bends.begin(), bends.end());
    line.points.push_back(b.at);
    overlay.lines.push_back(std::move(line));
}

QString CableTool::fitting_words() const {
    if (fitting_.empty()) return QObject::tr("No port on this sheet fits.");
    QStringList names;
    const auto& design = viewport_.document().design();
    for (const auto& port : fitting_) {
        if (names.size() == 3) break;
        names << shown(model::port_name(design, port));
    }
    const auto more = static_cast<int>(fitting_.size()) - static_cast<int>(names.size());
    const auto list = names.join(QStringLiteral(", "));
    return more > 0 ? QObject::tr("Ports that fit: %1 and %2 more").arg(list).arg(more)
                    : QObject::tr("Ports that fit: %1").arg(list);
}

void CableTool::show_refusal(const base::Error& why, const model::PortRef& port, QPointF view) {
    const auto& design = viewport_.document().design();
    const auto words = sentence(why);
    auto& overlay = viewport_.overlay();
    overlay.refusing = port;
    overlay.note = PointerNote{view, QObject::tr("%1 refuses").arg(shown(model::port_name(design, port))), words,
                               fitting_words(), true};
    viewport_.tell(words, true);
}

void CableTool::moved(const Pointer& pointer) {
    if (!pulled_) find_fitting();
    auto& overlay = viewport_.overlay();
    overlay.note.reset();
    overlay.refusing.reset();
    const auto target = pointer.hit.part == Hit::Part::port ? pointer.hit.port() : std::nullopt;
    const auto& design = viewport_.document().design();
    const auto moving = grabbed_ ? std::optional(grabbed_->cable) : std::nullopt;
    const bool itself = target && from_ && *target == *from_;
    const auto why = target && from_ && !itself ? lead_refusal(box_, design, *from_, *target, moving) : std::nullopt;
    show_line(pointer.mm, itself ? std::nullopt : target, why.has_value());
    if (why)
        show_refusal(*why, *target, pointer.view);
    else if (target && !itself)
        viewport_.tell(QObject::tr("%1: fits").arg(shown(model::port_name(design, *target))));
    else
        viewport_.tell(fitting_words());
    viewport_.refresh();
}

bool CableTool::connect_to(const std::optional<model::PortRef>& to) {
    auto& document = viewport_.document();
    done_ = true;
    if (grabbed_) {
        const auto cable = grabbed_->cable;
        return document.commit(reconnect_on_sheet(document.design(), viewport_.sheet(), cable, grabbed_->end, to),
                               to ? QObject::tr("Reconnect") : QObject::tr("Unplug"));
    }
    if (!to) return false;
    const auto made = connect_on_sheet(box_, document.design(), document.ids(), viewport_.sheet(), *from_, *to);
    if (!document.commit(made, QObject::tr("Connect"))) return false;
    for (const auto& change : made->of<model::Cable>())
        if (change.after) viewport_.selection().set(Chosen(change.after->id));
    return true;
}

void CableTool::released(const Pointer& pointer) {
    if (by_keyboard_) return;
    if (!pulled_) {  // a mere click on a lug selects the port
        if (from_ && !grabbed_) viewport_.selection().set(Chosen(*from_));
        if (grabbed_) viewport_.selection().set(Chosen(grabbed_->cable));
        return;
    }
    const auto target = pointer.hit.part == Hit::Part::port ? pointer.hit.port() : std::nullopt;
    if (target && from_ && *target == *from_) return viewport_.tell({});
    if (target) {
        connect_to(target);
        return;
    }
    // Dropping an end on the empty canvas unplugs it; a fresh lead is dropped.
    if (grabbed_ && !pointer.hit.subject) connect_to(std::nullopt);
    viewport_.tell({});
}

void CableTool::cancelled() { viewport_.tell({}); }

void CableTool::walk(bool forward) {
    if (!pulled_) find_fitting();
    if (fitting_.empty()) return viewport_.tell(fitting_words());
    const auto focused = viewport_.focused();
    const auto* port = focused ? std::get_if<model::PortRef>(&*focused) : nullptr;
    const auto at = port ? std::ranges::find(fitting_, *port) : fitting_.end();
    auto next = forward ? fitting_.begin() : std::prev(fitting_.end());
    if (at != fitting_.end()) {
        next = at;
        if (forward)
            next = std::next(at) == fitting_.end() ? fitting_.begin() : std::next(at);
        else
            next = (at == fitting_.begin() ? fitting_.end() : at) - 1;
    }
    viewport_.set_focused(Chosen(*next));
    show_line(to_mm(viewport_.scene().spot(*next)->lead), *next, false);
    viewport_.tell(
        QObject::tr("%1: fits; Enter connects").arg(shown(model::port_name(viewport_.document().design(), *next))));
    viewport_.refresh();
}

bool CableTool::key(QKeyEvent& event) {
    if (!by_keyboard_) return false;
    if (event.key() == Qt::Key_Tab || event.key() == Qt::Key_Down || event.key() == Qt::Key_Right) {
        walk(true);
        return true;
    }
    if (event.key() == Qt::Key_Backtab || event.key() == Qt::Key_Up || event.key() == Qt::Key_Left) {
        walk(false);
        return true;
    }
    if (event.key() == Qt::Key_Return || event.key() == Qt::Key_Enter) {
        const auto focused = viewport_.focused();
        const auto* port = focused ? std::get_if<model::PortRef>(&*focused) : nullptr;
        if (port && from_ && *port != *from_) connect_to(*port);
        viewport_.tell({});
        viewport_.finish_gesture();  // destroys this
        return true;
    }
    return false;
}

/// The cable plugged into a port, seen from that end.
std::optional<GrabbedEnd> plugged_at(const model::Design& design, const model::PortRef& port) {
    for (const auto& cable : design.cables) {
        if (cable.a && cable.a->port == port) return GrabbedEnd{cable.id, model::WhichEnd::a};
        if (cable.b && cable.b->port == port) return GrabbedEnd{cable.id, model::WhichEnd::b};
    }
    return std::nullopt;
}

std::optional<model::PortRef> other_end(const model::Design& design, const GrabbedEnd& grabbed) {
    const auto* cable = design.cables.find(grabbed.cable);
    const auto& end = grabbed.end == model::WhichEnd::a ? cable->b : cable->a;
    return end ? std::optional(end->port) : std::nullopt;
}

}  // namespace cable_tool_detail

std::unique_ptr<Gesture> pull_gesture(ToolBox& box, Viewport& viewport, const model::PortRef& port, QPointF) {
    using namespace cable_tool_detail;
    const auto& design = viewport.document().design();
    if (const auto plugged = plugged_at(design, port))
        return std::make_unique<CableTool>(box, viewport, other_end(design, *plugged), plugged, false);
    return std::make_unique<CableTool>(box, viewport, port, std::nullopt, false);
}

std::unique_ptr<Gesture> reconnect_gesture(ToolBox& box, Viewport& viewport, const GrabbedEnd& end) {
    using namespace cable_tool_detail;
    return std::make_unique<CableTool>(box, viewport, other_end(viewport.document().design(), end), end, false);
}

std::unique_ptr<Gesture> keyboard_pull(ToolBox& box, Viewport& viewport, const model::PortRef& port) {
    using namespace cable_tool_detail;
    const auto& design = viewport.document().design();
    const auto plugged = plugged_at(design, port);
    auto tool = plugged ? std::make_unique<CableTool>(box, viewport, other_end(design, *plugged), plugged, true)
                        : std::make_unique<CableTool>(box, viewport, port, std::nullopt, true);
    QKeyEvent first(QEvent::KeyPress, Qt::Key_Tab, Qt::NoModifier);
    tool->key(first);
    return tool;
}

}  // namespace streamwright::app
