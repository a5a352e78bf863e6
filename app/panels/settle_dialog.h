// Shows what applying the remedies of all findings of one kind would do, a line each, before anything is done. The work
// runs in a thread on a copy of the design and may be stopped; what comes out is for the caller to commit.
#pragma once

#include "core/analysis/settle_all.h"

#include <QDialog>

#include <thread>

class QLabel;
class QProgressBar;
class QPushButton;
class QTreeWidget;

namespace streamwright::app {

class SettleDialog final : public QDialog {
    Q_OBJECT

public:
    /// `keys`: the findings, gravest first; `kind`: the title of their rule.
    SettleDialog(model::Design design, std::vector<std::string> keys, const QString& kind, QWidget* parent = nullptr);
    ~SettleDialog() override;
    /// What was chosen, done on the copy; there once the dialog was accepted.
    const std::optional<analysis::Settled>& settled() const { return settled_; }
    QTreeWidget& list() { return *list_; }
    bool working() const { return worker_.joinable(); }

public Q_SLOTS:
    void accept() override;
    void reject() override;

private:
    void run(analysis::SettleAsk ask, bool preview);
    void finish(std::optional<analysis::Settled> settled, bool preview);
    void show_preview();
    void show_count();
    std::vector<std::string> chosen() const;

    model::Design design_;
    std::vector<std::string> keys_;
    std::optional<analysis::Settled> preview_, settled_;
    QLabel *count_, *later_;
    QTreeWidget* list_;
    QProgressBar* progress_;
    QPushButton* go_;
    std::jthread worker_;
};

}  // namespace streamwright::app
