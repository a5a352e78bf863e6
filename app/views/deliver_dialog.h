// Choosing where the document set goes, and watching it being written; the writing runs in a thread and may be stopped.
#pragma once

#include "app/render/deliver_set.h"

#include <QDialog>

#include <stop_token>
#include <thread>

class QCheckBox;
class QLabel;
class QLineEdit;
class QProgressBar;
class QPushButton;

namespace streamwright::app {

class DeliverDialog final : public QDialog {
    Q_OBJECT

public:
    DeliverDialog(model::Design design, const QString& folder, QWidget* parent = nullptr);
    ~DeliverDialog() override;
    QString folder() const;

public Q_SLOTS:
    void reject() override;

private:
    void start();
    void step(const QString& next, int done, int of);
    void finish(const base::Result<std::vector<std::filesystem::path>>& written);

    model::Design design_;
    QLineEdit* folder_;
    std::vector<QCheckBox*> documents_, formats_;
    QProgressBar* progress_;
    QLabel* words_;
    QPushButton* go_;
    std::jthread worker_;
};

}  // namespace streamwright::app
