#include "app/panels/properties/property_form.h"

#include "app/panels/findings_model.h"
#include "app/panels/properties/elided_label.h"
#include "app/words/words.h"

#include <QAbstractItemView>
#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QIcon>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>
#include <QWheelEvent>

#include <algorithm>

namespace streamwright::app {

namespace property_form_detail {

constexpr int label_width = 96;

void clear(QLayout& layout) {
    while (auto* item = layout.takeAt(0)) {
        if (auto* widget = item->widget()) {
            widget->hide();
            widget->deleteLater();
        }
        if (auto* inner = item->layout()) clear(*inner);
        delete item;
    }
}

/// Long lists must not be turned by a wheel that only meant to scroll the panel.
class CalmComboBox final : public QComboBox {
public:
    using QComboBox::QComboBox;
    /// The box may cut a long entry, the list must not: its entries are told apart by their ends.
    void showPopup() override {
        constexpr int beside_words = 32;
        view()->setMinimumWidth(std::max(width(), view()->sizeHintForColumn(0) + beside_words));
        QComboBox::showPopup();
    }

protected:
    void wheelEvent(QWheelEvent* event) override { event->ignore(); }
};

void fill(QComboBox& box, const std::vector<PropertyForm::Option>& options, const QString& chosen) {
    const QSignalBlocker quiet(&box);
    box.clear();
    for (const auto& option : options) box.addItem(option.label, option.value);
    box.setCurrentIndex(box.findData(chosen));
}

}  // namespace property_form_detail

PropertyForm::PropertyForm(Document& document, const Theme& theme, QWidget* parent)
    : QWidget(parent), document_(document), theme_(theme), layout_(new QVBoxLayout(this)) {
    layout_->setContentsMargins(16, 14, 14, 16);
    layout_->setSpacing(5);
}

void PropertyForm::head(const QIcon& icon, const QString& name, const QString& kind) {
    auto* row = new QHBoxLayout;
    row->setSpacing(10);
    auto* mark = new QLabel(this);
    mark->setPixmap(icon.pixmap(18, 18));
    auto* title = new ElidedLabel(name, this);
    title->setProperty("tone", "number");
    auto* what = new QLabel(kind, this);
    what->setProperty("tone", "muted");
    what->setTextFormat(Qt::PlainText);
    what->setWordWrap(true);
    what->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    row->addWidget(mark);
    row->addWidget(title);
    row->addWidget(what, 1);
    layout_->addLayout(row);
}

void PropertyForm::section(const QString& title) { Figures(*layout_, theme_).section(title); }

QWidget* PropertyForm::labelled(const QString& label, QWidget* value) {
    auto* holder = new QWidget(this);
    auto* row = new QHBoxLayout(holder);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(8);
    auto* words = new QLabel(label, holder);
    words->setProperty("tone", "muted");
    words->setFixedWidth(property_form_detail::label_width);
    words->setWordWrap(true);
    row->addWidget(words, 0, Qt::AlignTop);
    words->setMinimumHeight(26);
    row->addWidget(value, 1);
    layout_->addWidget(holder);
    return holder;
}

CommitField& PropertyForm::field(const QString& label, CommitField::Read read, CommitField::Commit commit) {
    auto* made = new CommitField(label, std::move(read), std::move(commit), this);
    labelled(label, made);
    refreshers_.emplace_back([made] { made->refresh(); });
    return *made;
}

QComboBox* PropertyForm::choice_box(const QString& label, QWidget* parent) {
    auto* box = new property_form_detail::CalmComboBox(parent);
    box->setAccessibleName(label);
    box->setObjectName(label);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(10);
    box->setMaxVisibleItems(16);
    box->setFocusPolicy(Qt::StrongFocus);
    return box;
}

void PropertyForm::choice(const QString& label, std::function<std::vector<Option>()> options,
                          std::function<QString()> read, std::function<void(const QString&)> commit) {
    auto* box = choice_box(label, this);
    labelled(label, box);
    const auto fill = [box, options = std::move(options), read = std::move(read)] {
        property_form_detail::fill(*box, options(), read());
    };
    fill();
    connect(box, &QComboBox::activated, this,
            [box, commit = std::move(commit)] { commit(box->currentData().toString()); });
    refreshers_.emplace_back(fill);
}

void PropertyForm::told_choice(const QString& label, std::function<std::vector<Option>()> options,
                               std::function<QString()> read, CommitField::Commit commit) {
    auto* holder = new QWidget(this);
    auto* box = choice_box(label, holder);
    auto* error = new QLabel(holder);
    error->setObjectName(label + QStringLiteral(" refused"));
    error->setProperty("tone", "error");
    error->setWordWrap(true);
    error->setTextFormat(Qt::PlainText);
    error->hide();
    auto* into = new QVBoxLayout(holder);
    into->setContentsMargins(0, 0, 0, 0);
    into->setSpacing(2);
    into->addWidget(box);
    into->addWidget(error);
    labelled(label, holder);
    const auto fill = [box, error, options = std::move(options), read = std::move(read)] {
        property_form_detail::fill(*box, options(), read());
        error->hide();
    };
    fill();
    connect(box, &QComboBox::activated, this, [box, error, fill, commit = std::move(commit)] {
        const auto why = commit(box->currentData().toString());
        if (!why) return;
        fill();
        error->setText(*why);
        error->show();
    });
    refreshers_.emplace_back(fill);
}

void PropertyForm::check(const QString& label, std::function<bool()> read, std::function<void(bool)> commit) {
    auto* box = new QCheckBox(label, this);
    box->setObjectName(label);
    box->setChecked(read());
    layout_->addWidget(box);
    connect(box, &QCheckBox::clicked, this, [commit = std::move(commit)](bool on) { commit(on); });
    refreshers_.emplace_back([box, read = std::move(read)] { box->setChecked(read()); });
}

void PropertyForm::add(QWidget* widget, std::function<void()> refresh) {
    layout_->addWidget(widget);
    refreshers_.push_back(std::move(refresh));
}

void PropertyForm::live(std::function<void(Figures&)> fill) {
    auto* holder = new QWidget(this);
    auto* into = new QVBoxLayout(holder);
    into->setContentsMargins(0, 0, 0, 0);
    into->setSpacing(4);
    layout_->addWidget(holder);
    const auto again = [this, into, fill = std::move(fill)] {
        property_form_detail::clear(*into);
        Figures figures(*into, theme_);
        fill(figures);
    };
    again();
    refreshers_.emplace_back(again);
}

void PropertyForm::findings(std::function<bool(const analysis::Subject&)> concerns) {
    live([this, concerns = std::move(concerns)](Figures& figures) {
        for (const auto& reported : document_.reported()) {
            if (!std::ranges::any_of(reported.finding.subjects, concerns)) continue;
            const auto row = finding_row(document_, reported);
            if (row.waived()) continue;
            figures.finding(reported.finding.severity, row.sentence, row.terms, row.remedies,
                            [this, finding = reported.finding, remedies = row.remedies](int which) {
                                const auto& remedy = finding.remedies[static_cast<std::size_t>(which)];
                                // Queued: the click's own button is thrown away by the change it makes.
                                QMetaObject::invokeMethod(
                                    this,
                                    [this, edit = remedy.edit, words = remedies[which]] {
                                        document_.commit(model::make_edit(design(), edit), words);
                                    },
                                    Qt::QueuedConnection);
                            });
        }
    });
}

void PropertyForm::finish() { layout_->addStretch(1); }

void PropertyForm::refresh() {
    for (const auto& each : refreshers_) each();
}

std::optional<QString> PropertyForm::commit(const base::Result<model::Delta>& delta, const QString& words) {
    if (!delta) return sentence(delta.error());
    document_.commit(delta, words);
    return std::nullopt;
}

}  // namespace streamwright::app
