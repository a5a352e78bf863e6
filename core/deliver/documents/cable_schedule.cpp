// Cable schedule: one row a cable, from end to end, with its label texts and how far the work on site has come.
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"

namespace streamwright::deliver {

namespace cable_schedule_detail {

struct End {
    Cell device, port, connector, room, place;
    std::string label;
};

End end_words(const Source& source, const std::optional<graph::PortAt>& at) {
    if (!at) return {text_cell("open end"), {}, {}, {}, {}, "open end"};
    const auto& wiring = wiring_of(source);
    const auto& device = *wiring.devices[static_cast<std::size_t>(at->device)].row;
    const auto tag = device_tag(wiring, at->device), port = port_label(wiring, *at);
    return {text_cell(tag),
            text_cell(port),
            text_cell(std::string(connector_words(wiring.port_type(*at).connector))),
            text_cell(room_words(source.design, device)),
            text_cell(rack_words(source.design, device)),
            tag + " " + port};
}

std::vector<Column> columns() {
    return {{"Cable", ColumnKind::text, 16, true},
            {"Signal", ColumnKind::text, 26},
            {"From device", ColumnKind::text, 24, true},
            {"From port", ColumnKind::text, 20},
            {"From connector", ColumnKind::text, 18},
            {"From room", ColumnKind::text, 14},
            {"From rack", ColumnKind::text, 16},
            {"To device", ColumnKind::text, 24, true},
            {"To port", ColumnKind::text, 20},
            {"To connector", ColumnKind::text, 18},
            {"To room", ColumnKind::text, 14},
            {"To rack", ColumnKind::text, 16},
            {"Cable type", ColumnKind::text, 36},
            {"Length, m", ColumnKind::length_m, 16},
            {"Channel, m", ColumnKind::length_m, 16},
            {"Duct", ColumnKind::text, 16},
            {"Label at from", ColumnKind::text, 40},
            {"Label at to", ColumnKind::text, 40},
            {"Pulled", ColumnKind::text, 12},
            {"Terminated", ColumnKind::text, 12},
            {"Tested", ColumnKind::text, 12},
            {"Labelled", ColumnKind::text, 12},
            {"Test result", ColumnKind::tick, 22},
            {"Date, initials", ColumnKind::tick, 22},
            {"Rev.", ColumnKind::text, 10}};
}

std::optional<base::Length> channel_of(const Source& source, std::size_t cable) {
    const auto& runs = source.analysis.facts.get<graph::Runs>();
    const auto& lengths = source.analysis.facts.get<analysis::CableLengths>();
    if (cable >= runs.run_of_cable.size()) return std::nullopt;
    const auto run = static_cast<std::size_t>(runs.run_of_cable[cable]);
    if (run >= lengths.runs.size() || runs.list[run].cables.size() < 2) return std::nullopt;
    return lengths.runs[run].channel;
}

TableRow row_of(const Source& source, std::size_t index, const std::string& revision) {
    const auto& cable = wiring_of(source).cables[index];
    const auto& lengths = source.analysis.facts.get<analysis::CableLengths>().cables;
    const auto from = end_words(source, cable.a), to = end_words(source, cable.b);
    const auto& progress = cable.row->progress;
    TableRow row;
    row.subject = "cable:" + cable.row->id.text();
    row.group = cable.type ? std::string(signal_words(cable.type->signal)) : "type not known";
    row.cells = {text_cell(cable.row->tag),
                 text_cell(row.group),
                 from.device,
                 from.port,
                 from.connector,
                 from.room,
                 from.place,
                 to.device,
                 to.port,
                 to.connector,
                 to.room,
                 to.place,
                 text_cell(cable.type ? cable.type->name : cable.row->type.text),
                 index < lengths.size() ? quantity_cell(lengths[index].length) : Cell(),
                 quantity_cell(channel_of(source, index)),
                 text_cell(cable.row->duct),
                 text_cell(cable.row->tag + " > " + to.label),
                 text_cell(cable.row->tag + " > " + from.label),
                 yes_cell(progress.pulled),
                 yes_cell(progress.terminated),
                 yes_cell(progress.tested),
                 yes_cell(progress.labelled),
                 Cell(),
                 Cell(),
                 text_cell(revision)};
    return row;
}

std::vector<std::string> notes() {
    return {"Every cable carries its label at both ends, 25 to 75 mm from the connector, all facing alike.",
            "Channel: all cables and leads between the two active devices.",
            "Caution, fibre: invisible laser light. Never look into a connector or a cage; cap open ends.",
            "Caution, ladders and ceilings: work at height and near mains only as the local rules allow.",
            "Keep distance from mains cables in shared ways as the local rules for cabling ask."};
}

}  // namespace cable_schedule_detail

Content make_cable_schedule(const Source& source) {
    using namespace cable_schedule_detail;
    TablePart table;
    table.name = "Cables";
    table.title = "Cable schedule";
    table.columns = columns();
    table.notes = notes();
    const auto revision = revision_letter(source.design);
    for (std::size_t i = 0; i < wiring_of(source).cables.size(); ++i) table.rows.push_back(row_of(source, i, revision));
    const auto tag = [](const TableRow& row) {
        const auto* text = std::get_if<std::string>(&row.cells.front());
        return text ? std::string_view(*text) : std::string_view();
    };
    std::ranges::stable_sort(table.rows, [&](const TableRow& a, const TableRow& b) {
        return a.group != b.group ? a.group < b.group : counts_before(tag(a), tag(b));
    });
    return {"cable-schedule", "Cable schedule", {std::move(table)}};
}

}  // namespace streamwright::deliver
