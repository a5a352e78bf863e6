// The findings as rows, gravest first. An update inserts, changes and removes single rows, so that the selection and
// the place in the list stay.
#pragma once

#include "app/document/document.h"

#include <QAbstractListModel>

#include <vector>

namespace streamwright::app {

/// One finding, made into words with the names of this moment.
struct FindingRow {
    analysis::Reported reported;
    std::string key;
    QString sentence;
    QString terms;      // "94.8 + 5.2 = 100.0 m; limit 90 m · IEEE 802.3 clause 40"
    QStringList chips;  // subjects
    QStringList remedies;
    QString acceptance;  // "Accepted by Head of AV: agreed with the site"; empty where nobody has
    bool being_checked = false;
    bool waived() const { return reported.waiver && !reported.waiver_outdated; }
};

FindingRow finding_row(const Document& document, const analysis::Reported& reported);

class FindingsModel final : public QAbstractListModel {
    Q_OBJECT

public:
    explicit FindingsModel(Document& document, QObject* parent = nullptr);
    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    const FindingRow& row(int index) const { return rows_[static_cast<std::size_t>(index)]; }
    /// Where the finding of that key is shown; nothing where it is not.
    std::optional<int> row_of(const std::string& key) const;
    analysis::Counts counts() const;
    /// Shows only this severity; none: all.
    void set_filter(std::optional<analysis::Severity> severity);
    std::optional<analysis::Severity> filter() const { return filter_; }

Q_SIGNALS:
    void refreshed();

private:
    void refresh();

    Document& document_;
    std::vector<FindingRow> rows_;
    analysis::Counts counts_;
    std::optional<analysis::Severity> filter_;
};

}  // namespace streamwright::app
