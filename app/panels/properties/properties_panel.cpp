#include "app/panels/properties/properties_panel.h"

#include "app/panels/properties/editors.h"
#include "app/words/words.h"

namespace streamwright::app {

namespace properties_panel_detail {

struct Make {
    const EditorContext& context;
    QWidget* parent;
    PropertyForm* operator()(model::DeviceId id) const { return device_editor(context, id, parent); }
    PropertyForm* operator()(model::CableId id) const { return cable_editor(context, id, parent); }
    PropertyForm* operator()(const model::PortRef& ref) const { return port_editor(context, ref, parent); }
    PropertyForm* operator()(model::StreamId id) const { return stream_editor(context, id, parent); }
    PropertyForm* operator()(model::FrameId id) const { return frame_editor(context, id, parent); }
    PropertyForm* operator()(model::NoteId id) const { return note_editor(context, id, parent); }
    PropertyForm* operator()(model::VlanId id) const { return vlan_editor(context, id, parent); }
};

}  // namespace properties_panel_detail

PropertiesPanel::PropertiesPanel(Document& document, Selection& selection, std::shared_ptr<const Library> library,
                                 QWidget* parent)
    : QScrollArea(parent),
      document_(document),
      selection_(selection),
      library_(std::move(library)),
      theme_(bundled_theme(ThemeChoice::light)) {
    setObjectName(QStringLiteral("PropertiesPanel"));
    setAttribute(Qt::WA_StyledBackground);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setAccessibleName(tr("Properties"));
    connect(&selection_, &Selection::changed, this, &PropertiesPanel::show_selection);
    connect(&selection_, &Selection::preset_changed, this, &PropertiesPanel::show_selection);
    connect(&document_, &Document::replaced, this, &PropertiesPanel::show_selection);
    connect(&document_, &Document::changed, this, &PropertiesPanel::refresh);
    show_selection();
}

void PropertiesPanel::set_theme(const Theme& theme) {
    theme_ = theme;
    show_selection();
}

std::string PropertiesPanel::shape() const {
    const auto& design = document_.design();
    std::string text = std::to_string(design.presets.size());
    for (const auto& vlan : design.vlans) text += ' ' + std::to_string(vlan.vid) + vlan.name;
    for (const auto& wall : design.walls) {
        text += ' ' + wall.id.text();
        for (const auto& tile : wall.tiles) text += tile ? ' ' + tile->text() : " -";
    }
    if (const auto only = selection_.only())
        if (const auto* id = std::get_if<model::DeviceId>(&*only))
            if (const auto* device = design.devices.find(*id)) {
                text += ' ' + device->tag;
                for (const auto role : device->roles) text += base::enum_text(role);
                for (const auto& querier : device->bridging.queriers) text += ' ' + querier.vlan.text();
            }
    if (const auto only = selection_.only())
        if (const auto* id = std::get_if<model::CableId>(&*only))
            if (const auto* cable = design.cables.find(*id)) text += ' ' + cable->tag + ' ' + cable->type.text;
    if (const auto only = selection_.only())
        if (const auto* id = std::get_if<model::StreamId>(&*only))
            if (const auto* stream = design.streams.find(*id)) text += ' ' + stream->tag + ' ' + packed_as(*stream);
    return text;
}

void PropertiesPanel::refresh() {
    // A design that changes under a selection may have lost its subject; the selection says so by itself.
    if (shape() != shape_ || !form_) return show_selection();
    form_->refresh();
}

void PropertiesPanel::show_selection() {
    shape_ = shape();
    const EditorContext context{document_, selection_, library_, theme_};
    const auto only = selection_.only();
    const auto* held = focusWidget();
    const QString focused = form_ && held && form_->isAncestorOf(held) ? held->objectName() : QString();
    auto* old = takeWidget();
    if (selection_.empty())
        form_ = design_editor(context, this);
    else if (only)
        form_ = std::visit(properties_panel_detail::Make{context, this}, *only);
    else
        form_ = several_editor(context, this);
    setWidget(form_);
    form_->show();
    if (auto* again = focused.isEmpty() ? nullptr : form_->findChild<QWidget*>(focused)) again->setFocus();
    // Not at once: the change may come from a field of the old form.
    if (old) {
        old->hide();
        old->setParent(nullptr);
        old->deleteLater();
    }
}

}  // namespace streamwright::app
