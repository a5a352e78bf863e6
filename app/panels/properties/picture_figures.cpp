#include "app/panels/properties/picture_figures.h"

#include "app/words/words.h"
#include "core/analysis/edid_table.h"
#include "core/analysis/picture_help.h"
#include "core/analysis/rule_help.h"

#include <QCoreApplication>

#include <algorithm>

namespace streamwright::app {

namespace picture_figures_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

QString words_of(const standards::VideoFormat& format) { return shown(standards::text(format)); }

QString name_of(const Document& document, const graph::Wiring& wiring, graph::PortAt port) {
    return shown(base::print(base::Value(analysis::port_ref(wiring, port)), phrasebook(document.design())));
}

QString policy_words(analysis::EdidSource by) {
    using analysis::EdidSource;
    switch (by) {
        case EdidSource::own:
            return tr("as its type states");
        case EdidSource::passed_on:
            return tr("of what is behind");
        case EdidSource::fixed:
            return tr("fixed");
        case EdidSource::copied:
            return tr("copied");
        case EdidSource::merged:
            return tr("merged");
        case EdidSource::not_known:
            break;
    }
    return tr("not known");
}

/// Where a picture goes on its way: one row for each display, and why it stays black there.
void show_arrival(Figures& figures, Document& document, analysis::PictureWays& ways,
                  const analysis::PictureOrigin& origin, std::size_t index) {
    const auto& arrival = origin.arrivals[index];
    const auto& space = ways.space();
    const auto name = name_of(document, ways.wiring(), arrival.at);
    if (!origin.sent) {
        figures.figure(name,
                       arrival.best ? tr("could be %1").arg(words_of(space.format(*arrival.best))) : tr("not known"));
        return;
    }
    if (arrival.left) {
        figures.figure(name, words_of(space.format(*arrival.left)));
        if (arrival.best && *arrival.best > *arrival.left)
            figures.words(tr("could be %1").arg(words_of(space.format(*arrival.best))));
        return;
    }
    figures.sum(name, tr("no picture"), true);
    const auto way = analysis::follow(ways, origin, index, *origin.sent);
    if (way.broken)
        figures.words(
            shown(base::fill(analysis::break_line(ways.wiring(), *way.broken), phrasebook(document.design()))));
}

}  // namespace picture_figures_detail

void show_input_picture(Figures& figures, Document& document, const model::PortRef& port) {
    using namespace picture_figures_detail;
    const auto& facts = document.analyser().facts();
    const auto in = facts.get<graph::Wiring>().port_at(port);
    for (const auto& row : analysis::edid_table(facts)) {
        if (!in || row.in != *in) continue;
        figures.figure(tr("EDID shown"), policy_words(row.by));
        if (!row.rasters.empty()) figures.figure(tr("Announces at best"), words_of(row.rasters.front()));
        for (const auto& format : row.arrives) figures.figure(tr("Comes"), words_of(format));
    }
}

void show_output_picture(Figures& figures, Document& document, const model::PortRef& port) {
    using namespace picture_figures_detail;
    constexpr std::size_t most_rows = 12;
    const auto& facts = document.analyser().facts();
    const auto& wiring = facts.get<graph::Wiring>();
    const auto out = wiring.port_at(port);
    std::optional<analysis::PictureWays> ways;
    for (const auto& origin : facts.get<analysis::VideoChains>().origins) {
        if (!out || origin.out != *out) continue;
        if (!ways) ways.emplace(wiring, facts.get<graph::Runs>(), facts.get<graph::SignalGraph>());
        figures.figure(tr("Sends"), origin.sent ? words_of(ways->space().format(*origin.sent)) : tr("not known"));
        std::size_t rows = 0;
        for (std::size_t i = 0; i < origin.arrivals.size() && rows < most_rows; ++i) {
            if (!origin.arrivals[i].shows) continue;
            show_arrival(figures, document, *ways, origin, i);
            ++rows;
        }
    }
}

}  // namespace streamwright::app
