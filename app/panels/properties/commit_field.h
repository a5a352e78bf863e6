// A line of input that commits when the user is done. Wrong input: one sentence in place, and nothing changes.
#pragma once

#include <QString>
#include <QWidget>

#include <functional>
#include <optional>

class QLabel;
class QLineEdit;

namespace streamwright::app {

class CommitField final : public QWidget {
    Q_OBJECT

public:
    /// The text as the design has it.
    using Read = std::function<QString()>;
    /// Takes what was typed; a sentence why not, or nothing.
    using Commit = std::function<std::optional<QString>(const QString&)>;

    CommitField(const QString& name, Read read, Commit commit, QWidget* parent = nullptr);
    /// Shows the design's value again, unless the user is typing.
    void refresh();
    QLineEdit& line() { return *line_; }
    QLabel& error() { return *error_; }

private:
    void take();

    Read read_;
    Commit commit_;
    QLineEdit* line_;
    QLabel* error_;
};

}  // namespace streamwright::app
