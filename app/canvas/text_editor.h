// A real line edit laid over the canvas, to rename what is drawn there.
#pragma once

#include "app/document/document.h"
#include "app/document/selection.h"

#include <QPointer>

class QLineEdit;
class QWidget;

namespace streamwright::app {

class TextEditor {
public:
    explicit TextEditor(QWidget& over) : over_(over) {}

    /// Lays the editor over `box` (view pixels) with the subject's present name. Enter commits, Escape drops.
    void open(Document& document, const Chosen& subject, const QRectF& box);
    bool active() const { return !line_.isNull(); }
    void close();

private:
    QWidget& over_;
    QPointer<QLineEdit> line_;
};

/// The present name or tag of a subject; nothing if it has none that can be changed.
std::optional<std::string> name_of(const model::Design& design, const Chosen& subject);
std::optional<model::NamedId> named(const model::Design& design, const Chosen& subject);

}  // namespace streamwright::app
