#include "app/canvas/text_editor.h"

#include "app/words/words.h"

#include <QLineEdit>
#include <QShortcut>

namespace streamwright::app {

std::optional<model::NamedId> named(const model::Design& design, const Chosen& subject) {
    if (const auto* device = std::get_if<model::DeviceId>(&subject)) return model::NamedId(*device);
    if (const auto* port = std::get_if<model::PortRef>(&subject)) return model::NamedId(port->device);
    if (const auto* cable = std::get_if<model::CableId>(&subject)) return model::NamedId(*cable);
    if (const auto* stream = std::get_if<model::StreamId>(&subject)) return model::NamedId(*stream);
    if (const auto* frame = std::get_if<model::FrameId>(&subject))
        if (const auto* row = design.room_frames.find(*frame)) return model::NamedId(row->room);
    return std::nullopt;
}

std::optional<std::string> name_of(const model::Design& design, const Chosen& subject) {
    const auto id = named(design, subject);
    if (!id) return std::nullopt;
    if (const auto* device = std::get_if<model::DeviceId>(&*id))
        if (const auto* row = design.devices.find(*device)) return row->tag;
    if (const auto* cable = std::get_if<model::CableId>(&*id))
        if (const auto* row = design.cables.find(*cable)) return row->tag;
    if (const auto* stream = std::get_if<model::StreamId>(&*id))
        if (const auto* row = design.streams.find(*stream)) return row->tag;
    if (const auto* room = std::get_if<model::RoomId>(&*id))
        if (const auto* row = design.rooms.find(*room)) return row->name;
    return std::nullopt;
}

void TextEditor::open(Document& document, const Chosen& subject, const QRectF& box) {
    close();
    const auto id = named(document.design(), subject);
    const auto name = name_of(document.design(), subject);
    if (!id || !name) return;
    auto* line = new QLineEdit(shown(*name), &over_);
    line_ = line;
    line->setAccessibleName(QObject::tr("New name for %1").arg(shown(*name)));
    QRect place = box.toRect().adjusted(-4, -2, 4, 2);
    place.setWidth(std::max(place.width(), 120));
    place.setHeight(std::max(place.height(), 26));
    place.moveLeft(std::clamp(place.left(), 0, std::max(0, over_.width() - place.width())));
    line->setGeometry(place);
    line->selectAll();
    line->show();
    line->setFocus();
    QObject::connect(line, &QLineEdit::editingFinished, line, [this, line, &document, id = *id] {
        if (line_ != line) return;
        const auto text = line->text().trimmed().toStdString();
        close();
        document.edit(model::Rename{id, text, {}}, QObject::tr("Rename to %1").arg(shown(text)));
    });
    auto* escape = new QShortcut(Qt::Key_Escape, line, nullptr, nullptr, Qt::WidgetShortcut);
    QObject::connect(escape, &QShortcut::activated, line, [this] { close(); });
}

void TextEditor::close() {
    if (line_.isNull()) return;
    QLineEdit* line = line_;
    line_.clear();
    line->hide();
    line->deleteLater();
    over_.setFocus();
}

}  // namespace streamwright::app
