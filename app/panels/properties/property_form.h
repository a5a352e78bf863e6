// Builds the properties of one subject: fields that stay while values change, and figures that are set anew at each
// change of the design.
#pragma once

#include "app/document/document.h"
#include "app/panels/properties/commit_field.h"
#include "app/style/theme.h"

#include <QWidget>

#include <functional>
#include <vector>

class QComboBox;
class QVBoxLayout;

namespace streamwright::app {

/// Rows of figures, thrown away and made again as a whole.
class Figures {
public:
    Figures(QVBoxLayout& into, const Theme& theme) : into_(into), theme_(theme) {}

    void section(const QString& title, const QString& right = {});
    void figure(const QString& label, const QString& value);
    void sum(const QString& label, const QString& value, bool error = false);
    void words(const QString& text, const char* tone = "muted");
    /// A bar of what is used, in percent of what there is.
    void gauge(const QString& label, const QString& value, double share);
    void button(const QString& label, std::function<void()> clicked);
    void finding(analysis::Severity severity, const QString& sentence, const QString& terms,
                 const QStringList& remedies, const std::function<void(int)>& apply);

private:
    QVBoxLayout& into_;
    const Theme& theme_;
};

class PropertyForm : public QWidget {
    Q_OBJECT

public:
    PropertyForm(Document& document, const Theme& theme, QWidget* parent = nullptr);

    void head(const QIcon& icon, const QString& name, const QString& kind);
    void section(const QString& title);
    CommitField& field(const QString& label, CommitField::Read read, CommitField::Commit commit);
    struct Option {
        QString label;
        QString value;
    };
    void choice(const QString& label, std::function<std::vector<Option>()> options, std::function<QString()> read,
                std::function<void(const QString&)> commit);
    /// A choice that may be refused: the sentence why stands below, and the old choice stays.
    void told_choice(const QString& label, std::function<std::vector<Option>()> options, std::function<QString()> read,
                     CommitField::Commit commit);
    void check(const QString& label, std::function<bool()> read, std::function<void(bool)> commit);
    /// A widget of its own kind, kept while values change; `refresh` reads the design again.
    void add(QWidget* widget, std::function<void()> refresh);
    void live(std::function<void(Figures&)> fill);
    /// The findings that name one of the subjects, with their remedies.
    void findings(std::function<bool(const analysis::Subject&)> concerns);
    void finish();
    virtual void refresh();

    Document& document() { return document_; }
    const model::Design& design() const { return document_.design(); }
    const Theme& theme() const { return theme_; }

    /// Commits an edit; a sentence why it was refused, or nothing.
    template <class Edit>
    std::optional<QString> change(const Edit& edit, const QString& words) {
        return commit(model::make_edit(design(), model::AnyEdit(edit)), words);
    }

private:
    std::optional<QString> commit(const base::Result<model::Delta>& delta, const QString& words);
    QComboBox* choice_box(const QString& label, QWidget* parent);
    QWidget* labelled(const QString& label, QWidget* value);

    Document& document_;
    Theme theme_;
    QVBoxLayout* layout_;
    std::vector<std::function<void()>> refreshers_;
};

}  // namespace streamwright::app
