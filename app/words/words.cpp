#include "app/words/words.h"

#include "core/analysis/report.h"

#include <QCoreApplication>

namespace streamwright::app {

std::string translated(std::string_view pattern) {
    return QCoreApplication::translate("core", std::string(pattern).c_str()).toStdString();
}

base::Phrasebook phrasebook(const model::Design& design) {
    auto book = analysis::english(design);
    book.translate = translated;
    book.numbers.system = design.settings().imperial ? base::UnitSystem::imperial : base::UnitSystem::metric;
    return book;
}

QString sentence(const base::Error& error) {
    return shown(base::Error{translated(error.pattern), error.args}.english());
}

}  // namespace streamwright::app
