// Shows what the plan of addresses would give, a line for each VLAN, how much room stays and what it cannot do, before
// anything is done.
#pragma once

#include "core/analysis/plan_addresses.h"

#include <QDialog>

class QTreeWidget;

namespace streamwright::app {

class AddressDialog final : public QDialog {
    Q_OBJECT

public:
    explicit AddressDialog(const model::Design& design, QWidget* parent = nullptr);
    const analysis::PlannedAddresses& plan() const { return plan_; }
    QTreeWidget& list() { return *list_; }

private:
    void fill(const model::Design& design);

    analysis::PlannedAddresses plan_;
    QTreeWidget* list_;
};

}  // namespace streamwright::app
