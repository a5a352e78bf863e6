// One line of text that gives way: it never makes its panel wider; what does not fit is cut and told in full by its
// tip.
#pragma once

#include <QLabel>

namespace streamwright::app {

class ElidedLabel final : public QLabel {
public:
    explicit ElidedLabel(const QString& words, QWidget* parent = nullptr) : QLabel(words, parent), words_(words) {
        setTextFormat(Qt::PlainText);
        setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Preferred);
    }
    QSize minimumSizeHint() const override { return {least, QLabel::minimumSizeHint().height()}; }
    QSize sizeHint() const override {
        return {fontMetrics().horizontalAdvance(words_) + 2, QLabel::sizeHint().height()};
    }

protected:
    void resizeEvent(QResizeEvent* event) override {
        QLabel::resizeEvent(event);
        const auto fitting = fontMetrics().elidedText(words_, Qt::ElideRight, width());
        setText(fitting);
        setToolTip(fitting == words_ ? QString() : words_);
    }

private:
    static constexpr int least = 24;
    QString words_;
};

}  // namespace streamwright::app
