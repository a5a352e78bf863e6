// What each picture input announces, and what becomes of every picture: for whoever sets up encoders and looks for a
// black screen.
#include "core/analysis/edid_table.h"
#include "core/analysis/picture_help.h"
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"

namespace streamwright::deliver {

namespace edid_detail {

constexpr std::size_t at(int index) { return static_cast<std::size_t>(index); }

std::string_view policy_words(analysis::EdidSource by) {
    using analysis::EdidSource;
    switch (by) {
        case EdidSource::own:
            return "own, as the type states";
        case EdidSource::passed_on:
            return "of what is behind";
        case EdidSource::fixed:
            return "fixed";
        case EdidSource::copied:
            return "copied";
        case EdidSource::merged:
            return "merged from all behind";
        case EdidSource::not_known:
            return "not known";
    }
    return "not known";
}

std::string_view sound_word(catalogue::AudioFormat format) {
    switch (format) {
        case catalogue::AudioFormat::stereo_pcm:
            return "two channels";
        case catalogue::AudioFormat::multichannel_pcm:
            return "more channels";
        case catalogue::AudioFormat::compressed_surround:
            return "compressed surround";
    }
    return {};
}

std::string sound_words(const analysis::EdidRow& row) {
    if (!row.audio) return "not known";
    std::vector<std::string> words;
    for (const auto format : *row.audio) words.emplace_back(sound_word(format));
    return words.empty() ? "none" : listed(words);
}

std::string place_words(const graph::Wiring& wiring, graph::PortAt port) {
    return device_tag(wiring, port.device) + ' ' + port_label(wiring, port);
}

std::string places_words(const graph::Wiring& wiring, const std::vector<graph::PortAt>& ports) {
    std::vector<std::string> words;
    for (const auto port : ports) words.push_back(place_words(wiring, port));
    return listed(words);
}

/// The rasters after the best.
std::string others(const analysis::EdidRow& row) {
    std::vector<std::string> words;
    for (std::size_t i = 1; i < row.rasters.size(); ++i) words.push_back(standards::raster_text(row.rasters[i]));
    return listed(words);
}

std::string formats_words(const std::vector<standards::VideoFormat>& formats) {
    std::vector<std::string> words;
    for (const auto& format : formats) words.push_back(standards::text(format));
    return listed(words);
}

TableRow edid_row(const Source& source, const analysis::EdidRow& each) {
    const auto& wiring = wiring_of(source);
    const auto& device = *wiring.devices[at(each.in.device)].row;
    TableRow row;
    row.subject = "device:" + device.id.text();
    row.cells = {text_cell(device.tag),
                 text_cell(port_label(wiring, each.in)),
                 text_cell(room_words(source.design, device)),
                 text_cell(places_words(wiring, each.fed_by)),
                 text_cell(std::string(policy_words(each.by))),
                 text_cell(each.from ? place_words(wiring, *each.from) : ""),
                 text_cell(each.rasters.empty() ? "" : standards::text(each.rasters.front())),
                 text_cell(others(each)),
                 text_cell(sound_words(each)),
                 text_cell(each.arrives.empty() ? "not known" : formats_words(each.arrives)),
                 text_cell(revision_letter(source.design))};
    return row;
}

void sort_by_first_cell(TablePart& table) {
    std::ranges::stable_sort(table.rows, [](const TableRow& a, const TableRow& b) {
        const auto *x = std::get_if<std::string>(&a.cells[0]), *y = std::get_if<std::string>(&b.cells[0]);
        return counts_before(x ? *x : "", y ? *y : "");
    });
}

TablePart edid_part(const Source& source) {
    TablePart table;
    table.name = "EDID";
    table.title = "What each picture input announces";
    table.columns = {{"Device", ColumnKind::text, 24, true}, {"Input", ColumnKind::text, 20},
                     {"Room", ColumnKind::text, 14},         {"Fed by", ColumnKind::text, 36},
                     {"EDID", ColumnKind::text, 30, true},   {"Copied from", ColumnKind::text, 30},
                     {"Announces", ColumnKind::text, 34},    {"Other rasters", ColumnKind::text, 40},
                     {"Sound", ColumnKind::text, 34},        {"Comes", ColumnKind::text, 34},
                     {"Rev.", ColumnKind::text, 10}};
    for (const auto& each : analysis::edid_table(source.analysis.facts)) table.rows.push_back(edid_row(source, each));
    sort_by_first_cell(table);
    table.notes = {"Announces: the best that is offered to the source; a source is free to send less.",
                   "Comes: what the source is set to, or the best that it gives of what is announced."};
    return table;
}

/// One picture at one display.
TableRow picture_row(const Source& source, analysis::PictureWays& ways, const analysis::PictureOrigin& origin,
                     std::size_t index) {
    const auto& wiring = wiring_of(source);
    const auto& space = source.analysis.facts.get<analysis::VideoChains>().space;
    const auto& arrival = origin.arrivals[index];
    const auto text = [&](const std::optional<int>& format) {
        return format ? standards::text(space.format(*format)) : "";
    };
    std::string stream, why;
    int count = 0;
    for (const auto& each : source.design.streams)
        if (count++ == arrival.stream) stream = each.tag;
    if (origin.sent && !arrival.left)
        if (const auto way = analysis::follow(ways, origin, index, *origin.sent); way.broken)
            why = base::fill(analysis::break_line(wiring, *way.broken), source.book);
    if (why.empty() && arrival.silent) why = place_words(wiring, *arrival.silent) + " states nothing";
    TableRow row;
    row.subject = "device:" + wiring.devices[at(origin.out.device)].row->id.text();
    row.cells = {text_cell(device_tag(wiring, origin.out.device)),
                 text_cell(port_label(wiring, origin.out)),
                 text_cell(origin.because == analysis::SentBecause::set ? "set" : ""),
                 text_cell(origin.sent ? text(origin.sent) : "not known"),
                 text_cell(stream),
                 text_cell(arrival.decoder >= 0 ? device_tag(wiring, arrival.decoder) : ""),
                 text_cell(place_words(wiring, arrival.at)),
                 text_cell(arrival.left  ? text(arrival.left)
                           : origin.sent ? "no picture"
                                         : "not known"),
                 text_cell(text(arrival.best)),
                 text_cell(why)};
    return row;
}

TablePart picture_part(const Source& source) {
    TablePart table;
    table.name = "Pictures";
    table.title = "What is sent, and what is left of it";
    table.columns = {{"Source", ColumnKind::text, 24, true},  {"Output", ColumnKind::text, 20},
                     {"Format", ColumnKind::text, 14},        {"Sends", ColumnKind::text, 34},
                     {"Stream", ColumnKind::text, 18},        {"Decoder", ColumnKind::text, 22},
                     {"Display", ColumnKind::text, 34, true}, {"Left of it", ColumnKind::text, 34},
                     {"Could be", ColumnKind::text, 34},      {"Why not, or what is not known", ColumnKind::text, 50}};
    const auto& facts = source.analysis.facts;
    analysis::PictureWays ways(facts.get<graph::Wiring>(), facts.get<graph::Runs>(), facts.get<graph::SignalGraph>());
    for (const auto& origin : facts.get<analysis::VideoChains>().origins)
        for (std::size_t i = 0; i < origin.arrivals.size(); ++i)
            if (origin.arrivals[i].shows) table.rows.push_back(picture_row(source, ways, origin, i));
    sort_by_first_cell(table);
    table.notes = {"Left of it: a picture that is scaled up counts as what it was before.",
                   "Could be: the best that the whole way allows, for this display alone."};
    return table;
}

}  // namespace edid_detail

Content make_edid(const Source& source) {
    return {"edid", "EDID and pictures", {edid_detail::edid_part(source), edid_detail::picture_part(source)}};
}

}  // namespace streamwright::deliver
