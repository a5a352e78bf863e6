// Failures: what is lost, what overflows and how long pictures are gone when one thing goes, one row a thing.
#include "core/analysis/every_failure.h"
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"

#include <map>

namespace streamwright::deliver {

namespace failures_document_detail {

using analysis::Failing;
using analysis::FailingKind;
using analysis::Outcome;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

std::vector<Column> columns() {
    return {{"What fails", ColumnKind::text, 30, true},  {"Kind", ColumnKind::text, 30},
            {"Between, or feeds", ColumnKind::text, 52}, {"Pictures lost", ColumnKind::number, 24},
            {"Lost, by preset", ColumnKind::text, 84},   {"Overfull then", ColumnKind::text, 70},
            {"Pictures moved", ColumnKind::number, 26},  {"Return after", ColumnKind::text, 32},
            {"Network parts", ColumnKind::number, 26}};
}

std::string kind_words(const Source& source, const Failing& failing) {
    const auto& network = source.analysis.facts.get<graph::NetworkGraph>();
    switch (failing.kind) {
        case FailingKind::link:
            return "link";
        case FailingKind::access:
            return "cable of a device";
        case FailingKind::power:
            return "power";
        case FailingKind::duct:
            return "duct";
        case FailingKind::device:
            break;
    }
    const int bridge = network.bridge_of_device[at(failing.device)];
    if (bridge < 0) return "chassis";
    const auto& row = network.bridges[at(bridge)];
    return row.endpoint ? "built-in switch" : row.devices.size() > 1 ? "stack member" : "switch";
}

/// The ends of a cable; of others, the devices that go with it.
std::string company_words(const Source& source, const Failing& failing) {
    const auto& wiring = wiring_of(source);
    std::vector<std::string> tags;
    if (failing.cable >= 0) {
        const auto& runs = source.analysis.facts.get<graph::Runs>();
        const auto& run = runs.list[at(runs.run_of_cable[at(failing.cable)])];
        for (const auto& end : {run.a, run.b}) tags.push_back(end ? device_tag(wiring, end->device) : "open end");
        return listed(tags);
    }
    for (const int device : failing.lost.devices)
        if (device != failing.device) tags.push_back(device_tag(wiring, device));
    std::ranges::sort(tags, counts_before);
    if (failing.kind == FailingKind::duct)
        tags.insert(tags.begin(), std::to_string(failing.lost.cables.size()) + " cables");
    return listed_in_runs(tags);
}

std::string name_of(const Source& source, const Failing& failing) {
    const auto& wiring = wiring_of(source);
    if (failing.cable >= 0) return wiring.cables[at(failing.cable)].row->tag;
    return failing.device >= 0 ? device_tag(wiring, failing.device) : failing.duct;
}

std::string subject_of(const Source& source, const Failing& failing) {
    const auto& wiring = wiring_of(source);
    if (failing.device >= 0) return "device:" + wiring.devices[at(failing.device)].row->id.text();
    const int cable = failing.cable >= 0 ? failing.cable : failing.lost.cables.front();
    return "cable:" + wiring.cables[at(cable)].row->id.text();
}

/// Looks names up once for all rows.
struct Names {
    std::vector<const model::Subscription*> subscriptions;
    std::vector<std::string> presets;

    explicit Names(const Source& source) {
        for (const auto& row : source.design.subscriptions) subscriptions.push_back(&row);
        for (const auto& load : source.analysis.facts.get<analysis::LinkLoads>().presets) {
            const auto* preset = source.design.presets.find(load.preset);
            presets.push_back(preset ? preset->name : std::string());
        }
    }
};

/// "Lecture: DEC-001, DEC-002 to DEC-004; Empty: DEC-001".
std::string lost_words(const Source& source, const Names& names, const Outcome& outcome) {
    std::map<int, std::vector<std::string>> by_preset;
    for (const auto& picture : outcome.lost) {
        const auto* device = source.design.devices.find(names.subscriptions[at(picture.subscription)]->decoder);
        if (device) by_preset[picture.preset].push_back(device->tag);
    }
    std::string words;
    for (auto& [preset, tags] : by_preset) {
        std::ranges::sort(tags, counts_before);
        tags.erase(std::unique(tags.begin(), tags.end()), tags.end());
        words += (words.empty() ? "" : "; ") + names.presets[at(preset)] + ": " + listed_in_runs(tags);
    }
    return words;
}

/// "SW-1 to SW-2: 1.7 of 1 Gb/s in Lecture"; the preset that fills it most, once a direction.
std::string overfull_words(const Source& source, const Names& names, const Outcome& outcome) {
    const auto& facts = source.analysis.facts;
    std::map<int, const analysis::OverfullArc*> fullest;
    for (const auto& each : outcome.overfull) {
        auto& known = fullest[each.arc];
        if (!known || known->wire < each.wire) known = &each;
    }
    std::string words;
    for (const auto& [arc, over] : fullest) {
        const auto ends =
            graph::arc_ends(wiring_of(source), facts.get<graph::Runs>(), facts.get<graph::NetworkGraph>(), arc);
        words += (words.empty() ? "" : "; ") + device_tag(wiring_of(source), ends.from_port.device) + " to " +
                 device_tag(wiring_of(source), ends.to_port.device) + ": " +
                 print(over->wire.ceil(), source.book.numbers) + " of " + print(over->capacity, source.book.numbers);
        if (over->preset >= 0) words += " in " + names.presets[at(over->preset)];
        if (over->already) words += " (without the failure too)";
    }
    return words;
}

std::string time_words(const Source& source, const Outcome& outcome) {
    if (outcome.moved.empty()) return {};
    if (!outcome.back) return "not known";
    return print(outcome.back->from, source.book.numbers) + " to " + print(outcome.back->to, source.book.numbers);
}

TableRow row_of(const Source& source, const Names& names, const Outcome& outcome) {
    TableRow row;
    row.subject = subject_of(source, outcome.failing);
    row.group = kind_words(source, outcome.failing);
    row.cells = {text_cell(name_of(source, outcome.failing)),
                 text_cell(row.group),
                 text_cell(company_words(source, outcome.failing)),
                 static_cast<std::int64_t>(outcome.lost.size()),
                 text_cell(lost_words(source, names, outcome)),
                 text_cell(overfull_words(source, names, outcome)),
                 static_cast<std::int64_t>(outcome.moved.size()),
                 text_cell(time_words(source, outcome)),
                 std::int64_t{outcome.parts}};
    return row;
}

std::vector<std::string> notes(int parts) {
    return {
        "One thing fails at a time; what it alone feeds with power fails with it. Pictures are counted in all presets.",
        "Pictures moved come another way. Return after: the spanning tree opens another way, then switches hear who "
        "wants what, at the latest with "
        "the next query. Blank where no picture comes another way.",
        "Whole, the network is in " + std::to_string(parts) + (parts == 1 ? " part." : " parts.")};
}

}  // namespace failures_document_detail

Content make_failures(const Source& source) {
    using namespace failures_document_detail;
    const auto failures = analysis::find_every_failure(source.analysis.facts);
    TablePart table;
    table.name = "Failures";
    table.title = "What is lost when one thing fails";
    table.columns = columns();
    if (failures) {
        const Names names(source);
        for (const auto& outcome : failures->outcomes) table.rows.push_back(row_of(source, names, outcome));
        table.notes = notes(failures->parts);
    }
    const auto text = [](const TableRow& row, std::size_t column) {
        const auto* held = std::get_if<std::string>(&row.cells[column]);
        return held ? *held : std::string();
    };
    std::ranges::stable_sort(table.rows, [&](const TableRow& a, const TableRow& b) {
        if (a.group != b.group) return a.group < b.group;
        return counts_before(text(a, 0), text(b, 0));
    });
    return {"failures", "Failures", {std::move(table)}};
}

}  // namespace streamwright::deliver
