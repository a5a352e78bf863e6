// Asks why a finding is accepted and by whom. A refusal stands in the dialog, which stays open with what was typed.
#pragma once

#include <QDialog>

#include <functional>
#include <optional>

class QLabel;
class QLineEdit;
class QPlainTextEdit;

namespace streamwright::app {

class AcceptDialog final : public QDialog {
    Q_OBJECT

public:
    struct Answer {
        QString reason, by;
    };
    /// Takes the answer; a sentence why not, or nothing.
    using Commit = std::function<std::optional<QString>(const Answer&)>;

    AcceptDialog(const QString& finding, const Answer& before, Commit commit, QWidget* parent = nullptr);

public Q_SLOTS:
    void accept() override;

private:
    Commit commit_;
    QPlainTextEdit* reason_;
    QLineEdit* by_;
    QLabel* error_;
};

}  // namespace streamwright::app
