// The right-hand panel: the properties of what is selected, or of the design.
#pragma once

#include "app/panels/properties/editors.h"

#include <QScrollArea>

#include <memory>

namespace streamwright::app {

class PropertiesPanel final : public QScrollArea {
    Q_OBJECT

public:
    PropertiesPanel(Document& document, Selection& selection, std::shared_ptr<const Library> library,
                    QWidget* parent = nullptr);
    void set_theme(const Theme& theme);
    PropertyForm* form() const { return form_; }

private:
    void show_selection();
    void refresh();

    Document& document_;
    Selection& selection_;
    std::shared_ptr<const Library> library_;
    Theme theme_;
    PropertyForm* form_ = nullptr;
    /// What the present form was made from: presets and ports come and go, and with them the rows of the form.
    std::string shape_;
    std::string shape() const;
};

}  // namespace streamwright::app
