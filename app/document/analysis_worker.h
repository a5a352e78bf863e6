// Computes the deferred facts on a frozen design in a thread of its own. A newer question cancels the older one.
#pragma once

#include "core/analysis/analyser.h"

#include <QObject>

#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

namespace streamwright::app {

class AnalysisWorker final : public QObject {
    Q_OBJECT

public:
    explicit AnalysisWorker(QObject* parent = nullptr);
    ~AnalysisWorker() override;

    void ask(std::shared_ptr<const analysis::Facts> frozen, std::uint64_t revision);
    void cancel();

Q_SIGNALS:
    /// On the thread that owns the worker.
    void answered(quint64 revision, const std::shared_ptr<analysis::Deferred>& deferred);

private:
    struct Question {
        std::shared_ptr<const analysis::Facts> frozen;
        std::uint64_t revision = 0;
        std::stop_source stop;
    };
    void run(const std::stop_token& closing);

    std::mutex mutex_;
    std::condition_variable_any asked_;
    std::optional<Question> next_;
    std::optional<std::stop_source> working_;
    std::jthread thread_;
};

}  // namespace streamwright::app
