// Rows of figures in the properties: label left, value right, a rule above every sum, totals bold.
#include "app/panels/properties/elided_label.h"
#include "app/panels/properties/property_form.h"
#include "app/render/role_icon.h"

#include <QFrame>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace streamwright::app {

namespace figures_detail {

QLabel* label(const QString& words, const char* tone) {
    auto* made = new QLabel(words);
    made->setTextFormat(Qt::PlainText);
    made->setProperty("tone", tone);
    return made;
}

QLabel* value_label(const QString& words, const char* tone) {
    auto* made = new ElidedLabel(words);
    made->setProperty("tone", tone);
    return made;
}

/// A button that gives way: it never makes the panel wider, what does not fit is cut and told in full by its tip.
class RemedyButton final : public QPushButton {
public:
    explicit RemedyButton(const QString& words) : QPushButton(words), words_(words) {
        setAccessibleName(words);
        setToolTip(words);
        setSizePolicy(QSizePolicy::Maximum,
                      QSizePolicy::Fixed);  // a button's usual policy takes its hint for the least
    }
    QSize minimumSizeHint() const override { return {60, QPushButton::minimumSizeHint().height()}; }
    QSize sizeHint() const override {
        return {fontMetrics().horizontalAdvance(words_) + padding, QPushButton::sizeHint().height()};
    }

protected:
    void resizeEvent(QResizeEvent* event) override {
        QPushButton::resizeEvent(event);
        setText(fontMetrics().elidedText(words_, Qt::ElideRight, width() - padding));
    }

private:
    static constexpr int padding = 28;
    QString words_;
};

QFrame* rule(const QColor& colour) {
    auto* line = new QFrame;
    line->setFixedHeight(1);
    line->setStyleSheet(QStringLiteral("background: %1; border: none;").arg(colour.name()));
    return line;
}

void row(QVBoxLayout& into, QLabel* left, QLabel* right) {
    auto* line = new QHBoxLayout;
    line->setContentsMargins(0, 1, 0, 1);
    line->setSpacing(8);
    left->setWordWrap(true);
    right->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    right->setTextInteractionFlags(Qt::TextSelectableByMouse);
    line->addWidget(left, 1);
    line->addWidget(right, 0);
    into.addLayout(line);
}

class Gauge final : public QWidget {
public:
    Gauge(double share, const Theme& theme) : share_(share), theme_(theme) { setFixedHeight(8); }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        const QRectF box = QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5);
        painter.setPen(QPen(theme_.rule("plate_edge"), 1));
        painter.setBrush(theme_.ground("field"));
        painter.drawRect(box);
        const double part = std::clamp(share_, 0.0, 1.0);
        const auto colour = theme_.colour("load", share_ > 1 ? "over" : "fill");
        painter.fillRect(QRectF(1, 1, (width() - 2) * part, height() - 2), colour);
        if (share_ > 1) {  // told by pattern too: bars across what is overfull
            for (int x = 4; x < width(); x += 6)
                painter.fillRect(QRectF(x, 1, 2, height() - 2), theme_.ground("field"));
        }
    }

private:
    double share_;
    Theme theme_;
};

class Shape final : public QWidget {
public:
    Shape(analysis::Severity severity, const Theme& theme) : severity_(severity), theme_(theme) {
        setFixedSize(18, 18);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        paint_severity(painter, severity_, theme_, {9, 9});
    }

private:
    analysis::Severity severity_;
    Theme theme_;
};

}  // namespace figures_detail

void Figures::section(const QString& title, const QString& right) {
    using namespace figures_detail;
    into_.addSpacing(6);
    into_.addWidget(rule(theme_.rule("hair")));
    into_.addSpacing(2);
    row(into_, label(title, "strong"), value_label(right, "faint"));
}

void Figures::figure(const QString& name, const QString& value) {
    using namespace figures_detail;
    row(into_, label(name, "muted"), value_label(value, "plain"));
}

void Figures::sum(const QString& name, const QString& value, bool error) {
    using namespace figures_detail;
    auto* line = new QHBoxLayout;
    line->addStretch(2);
    line->addWidget(rule(theme_.rule("strong")), 1);
    into_.addLayout(line);
    auto *left = label(name, "strong"), *right = value_label(value, "strong");
    if (error)
        for (auto* each : {left, right})
            each->setStyleSheet(QStringLiteral("color: %1;").arg(theme_.text("error").name()));
    row(into_, left, right);
}

void Figures::words(const QString& text, const char* tone) {
    auto* made = figures_detail::label(text, tone);
    made->setWordWrap(true);
    into_.addWidget(made);
}

void Figures::gauge(const QString& name, const QString& value, double share) {
    figure(name, value);
    auto* bar = new figures_detail::Gauge(share, theme_);
    bar->setAccessibleName(name + ' ' + value);
    into_.addWidget(bar);
}

void Figures::button(const QString& text, std::function<void()> clicked) {
    auto* made = new QPushButton(text);
    QObject::connect(made, &QPushButton::clicked, made, [clicked = std::move(clicked)] { clicked(); });
    into_.addWidget(made, 0, Qt::AlignLeft);
}

void Figures::finding(analysis::Severity severity, const QString& sentence, const QString& terms,
                      const QStringList& remedies, const std::function<void(int)>& apply) {
    using namespace figures_detail;
    auto* box = new QFrame;
    box->setObjectName(QStringLiteral("FindingBox"));
    const auto name = base::enum_text(severity);
    box->setProperty("severity", QString::fromUtf8(name.data(), static_cast<int>(name.size())));
    auto* inside = new QVBoxLayout(box);
    inside->setContentsMargins(10, 9, 10, 9);
    inside->setSpacing(5);
    auto* head = new QHBoxLayout;
    head->addWidget(new Shape(severity, theme_), 0, Qt::AlignTop);
    auto* words = label(sentence, "strong");
    words->setWordWrap(true);
    head->addWidget(words, 1);
    inside->addLayout(head);
    if (!terms.isEmpty()) {
        auto* sums = label(terms, "muted");
        sums->setWordWrap(true);
        inside->addWidget(sums);
    }
    for (int i = 0; i < remedies.size(); ++i) {
        auto* cure = new RemedyButton(remedies[i]);
        cure->setProperty("main", i == 0);
        QObject::connect(cure, &QPushButton::clicked, cure, [apply, i] { apply(i); });
        inside->addWidget(cure, 0, Qt::AlignLeft);
    }
    into_.addWidget(box);
}

}  // namespace streamwright::app
