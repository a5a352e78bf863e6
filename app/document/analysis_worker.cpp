#include "app/document/analysis_worker.h"

#include <QMetaObject>

namespace streamwright::app {

AnalysisWorker::AnalysisWorker(QObject* parent) : QObject(parent), thread_([this](std::stop_token s) { run(s); }) {}

AnalysisWorker::~AnalysisWorker() {
    thread_.request_stop();
    cancel();
    thread_.join();
}

void AnalysisWorker::cancel() {
    const std::lock_guard lock(mutex_);
    next_.reset();
    if (working_) working_->request_stop();
}

void AnalysisWorker::ask(std::shared_ptr<const analysis::Facts> frozen, std::uint64_t revision) {
    {
        const std::lock_guard lock(mutex_);
        if (working_) working_->request_stop();
        next_ = Question{std::move(frozen), revision, {}};
    }
    asked_.notify_one();
}

void AnalysisWorker::run(const std::stop_token& closing) {
    while (!closing.stop_requested()) {
        Question question;
        {
            std::unique_lock lock(mutex_);
            if (!asked_.wait(lock, closing, [&] { return next_.has_value(); })) return;
            question = std::move(*next_);
            next_.reset();
            working_ = question.stop;
        }
        auto deferred = analysis::Analyser::deferred(*question.frozen, question.stop.get_token());
        {
            const std::lock_guard lock(mutex_);
            working_.reset();
        }
        if (!deferred || question.stop.stop_requested()) continue;
        auto shared = std::make_shared<analysis::Deferred>(std::move(*deferred));
        QMetaObject::invokeMethod(
            this, [this, revision = question.revision, shared] { Q_EMIT answered(revision, shared); },
            Qt::QueuedConnection);
    }
}

}  // namespace streamwright::app
