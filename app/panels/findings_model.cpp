#include "app/panels/findings_model.h"

#include "app/words/words.h"
#include "core/analysis/rule.h"

#include <QTextDocument>

#include <algorithm>
#include <unordered_set>

namespace streamwright::app {

namespace findings_model_detail {

QString source_words(const analysis::Finding& finding) {
    const auto* rule = analysis::find_rule(finding.rule);
    if (!rule || rule->words.sources.empty()) return {};
    return shown(rule->words.sources.front().text());
}

bool same(const FindingRow& a, const FindingRow& b) {
    return a.reported.finding == b.reported.finding && a.sentence == b.sentence && a.terms == b.terms &&
           a.chips == b.chips && a.remedies == b.remedies && a.being_checked == b.being_checked &&
           a.reported.waiver == b.reported.waiver && a.waived() == b.waived() && a.acceptance == b.acceptance;
}

/// Who accepted it and why, as long as the acceptance holds; else that it asks again.
QString acceptance_words(const model::Design& design, const analysis::Reported& reported) {
    const auto* waiver = reported.waiver ? design.waivers.find(*reported.waiver) : nullptr;
    if (!waiver) return {};
    const auto reason = shown(base::printable(waiver->reason)), by = shown(base::printable(waiver->by));
    if (reported.waiver_outdated)
        return FindingsModel::tr("Accepted for an older form of the rule, so it asks again: %1").arg(reason);
    return by.isEmpty() ? FindingsModel::tr("Accepted: %1").arg(reason)
                        : FindingsModel::tr("Accepted by %1: %2").arg(by, reason);
}

}  // namespace findings_model_detail

FindingRow finding_row(const Document& document, const analysis::Reported& reported) {
    const auto book = phrasebook(document.design());
    const auto& finding = reported.finding;
    FindingRow row{reported, finding.key(), shown(analysis::sentence(finding, book)), {}, {}, {}, {}, false};
    QStringList terms;
    for (const auto& term : finding.terms) terms << shown(base::fill(term, book));
    row.terms = terms.join(QStringLiteral("; "));
    const auto source = findings_model_detail::source_words(finding);
    if (!source.isEmpty()) row.terms += (row.terms.isEmpty() ? "" : QStringLiteral(" · ")) + source;
    for (const auto& subject : finding.subjects)
        row.chips << shown(base::print(base::Value(analysis::ref(subject)), book));
    row.chips.removeDuplicates();
    for (const auto& remedy : finding.remedies) row.remedies << shown(base::fill(remedy.label, book));
    row.acceptance = findings_model_detail::acceptance_words(document.design(), reported);
    row.being_checked = document.analyser().being_checked(finding);
    return row;
}

FindingsModel::FindingsModel(Document& document, QObject* parent) : QAbstractListModel(parent), document_(document) {
    connect(&document_, &Document::changed, this, [this] { refresh(); });
    connect(&document_, &Document::replaced, this, [this] { refresh(); });
    refresh();
}

int FindingsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant FindingsModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const auto& row = rows_[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole) {
        const auto severity = base::enum_text(row.reported.finding.severity);
        const auto words = tr("%1: %2").arg(QString::fromUtf8(severity.data(), int(severity.size())), row.sentence);
        return row.waived() ? tr("%1, accepted").arg(words) : words;
    }
    if (role != Qt::ToolTipRole && role != Qt::AccessibleDescriptionRole) return {};
    QString words = row.sentence + '\n' + row.terms;
    if (!row.acceptance.isEmpty()) words += '\n' + row.acceptance;
    // Names and reasons are typed by people: what looks like markup in them is shown as typed.
    return role == Qt::ToolTipRole ? Qt::convertFromPlainText(words) : words;
}

std::optional<int> FindingsModel::row_of(const std::string& key) const {
    const auto found = std::ranges::find(rows_, key, &FindingRow::key);
    return found == rows_.end() ? std::nullopt : std::optional(static_cast<int>(found - rows_.begin()));
}

analysis::Counts FindingsModel::counts() const { return counts_; }

void FindingsModel::set_filter(std::optional<analysis::Severity> severity) {
    filter_ = severity;
    refresh();
}

void FindingsModel::refresh() {
    auto reported = document_.reported();
    // What was accepted is still there to be seen, after what is not.
    std::ranges::stable_partition(reported, [](const auto& each) { return !each.waiver || each.waiver_outdated; });
    counts_ = analysis::count(reported);
    std::vector<FindingRow> next;
    for (const auto& each : reported)
        if (!filter_ || each.finding.severity == *filter_) next.push_back(finding_row(document_, each));
    // Both lists are in one order; what left goes first, then the rest is merged in place.
    std::unordered_set<std::string> staying;
    for (const auto& row : next) staying.insert(row.key);
    for (int i = static_cast<int>(rows_.size()) - 1; i >= 0; --i) {
        if (staying.contains(rows_[static_cast<std::size_t>(i)].key)) continue;
        beginRemoveRows({}, i, i);
        rows_.erase(rows_.begin() + i);
        endRemoveRows();
    }
    for (std::size_t i = 0; i < next.size(); ++i) {
        const auto held = std::find_if(rows_.begin() + std::min<std::ptrdiff_t>(std::ssize(rows_), std::ptrdiff_t(i)),
                                       rows_.end(), [&](const FindingRow& row) { return row.key == next[i].key; });
        const int at = static_cast<int>(i);
        if (held == rows_.end()) {
            beginInsertRows({}, at, at);
            rows_.insert(rows_.begin() + at, std::move(next[i]));
            endInsertRows();
            continue;
        }
        const int from = static_cast<int>(held - rows_.begin());
        if (from != at) {
            beginMoveRows({}, from, from, {}, at);
            std::rotate(rows_.begin() + at, rows_.begin() + from, rows_.begin() + from + 1);
            endMoveRows();
        }
        if (findings_model_detail::same(rows_[i], next[i])) continue;
        rows_[i] = std::move(next[i]);
        Q_EMIT dataChanged(index(at), index(at));
    }
    Q_EMIT refreshed();
}

}  // namespace streamwright::app
