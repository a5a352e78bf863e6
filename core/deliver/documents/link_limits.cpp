// Link limits: what each copper and fibre link measures and loses, what it may, and what a test on site should show.
#include "core/analysis/limit_chain.h"
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"
#include "core/standards/workmanship.h"

namespace streamwright::deliver {

namespace link_limits_detail {

struct Ends {
    std::vector<std::string> cables;
    std::string from, to;
    std::string subject;
};

std::string end_words(const graph::Wiring& wiring, graph::PortAt at) {
    return device_tag(wiring, at.device) + " " + port_label(wiring, at);
}

Ends ends_of(const Source& source, const graph::Run& run) {
    const auto& wiring = wiring_of(source);
    Ends ends{{}, end_words(wiring, *run.a), end_words(wiring, *run.b), {}};
    for (const int cable : run.cables) {
        const auto& row = *wiring.cables[static_cast<std::size_t>(cable)].row;
        ends.cables.push_back(row.tag);
        if (ends.subject.empty()) ends.subject = "cable:" + row.id.text();
    }
    return ends;
}

std::string loss_words(const Source& source, const std::optional<base::Loss>& loss) {
    return loss ? base::print(*loss, source.book.numbers) : std::string();
}

TablePart copper_table() {
    return {
        "Copper",
        "Copper links",
        {{"Cables", ColumnKind::text, 34, true},
         {"From", ColumnKind::text, 34},
         {"To", ColumnKind::text, 34},
         {"Expected speed, Mb/s", ColumnKind::rate_mbps, 20},
         {"Over", ColumnKind::text, 18},
         {"Installed, m", ColumnKind::length_m, 16},
         {"at most, m", ColumnKind::length_m, 16},
         {"Channel, m", ColumnKind::length_m, 16},
         {"Channel at most, m", ColumnKind::length_m, 18},
         {"Warmth", ColumnKind::text, 16},
         {"Warm cable by", ColumnKind::text, 44},
         {"Speed on site", ColumnKind::tick, 20},
         {"Test result", ColumnKind::tick, 20}},
        {},
        {"Installed and channel at most: by the strictest rule that the design holds warm cable to.",
         "Caution, heat: cables that carry power warm their bundle. Local electrical codes limit bundles and gauges "
         "and come before this table.",
         "Bends, in outside diameters: " + std::to_string(standards::copper_bend.installed) + " at least, screened " +
             std::to_string(standards::screened_copper_bend.installed) + "; pairs untwisted by " +
             base::print(standards::pair_untwist) + " at most.",
         "A link that shows less than the expected speed has a bad pair, a wrong port or a wrong lead."}};
}

TablePart fibre_table() {
    return {"Fibre",
            "Fibre links",
            {{"Cables", ColumnKind::text, 34, true},
             {"From", ColumnKind::text, 34},
             {"To", ColumnKind::text, 34},
             {"Physical layer", ColumnKind::text, 24},
             {"Grade", ColumnKind::text, 16},
             {"Length, m", ColumnKind::length_m, 16},
             {"Reach, m", ColumnKind::length_m, 16},
             {"Connector pairs", ColumnKind::number, 16},
             {"Splices", ColumnKind::number, 14},
             {"Loss", ColumnKind::text, 16},
             {"Budget", ColumnKind::text, 16},
             {"Strands", ColumnKind::number, 14},
             {"Pair swaps", ColumnKind::text, 16},
             {"Loss a to b", ColumnKind::tick, 20},
             {"Loss b to a", ColumnKind::tick, 20}},
            {},
            {"Caution, fibre: invisible laser light. Never look into a connector or a cage; cap open ends; use no "
             "magnifier without a filter. The local rules for laser safety come first.",
             "Bends, in outside diameters: " + std::to_string(standards::fibre_bend.installed) + " installed, " +
                 std::to_string(standards::fibre_bend.while_pulled) + " while pulled, at least.",
             "Clean and inspect every end face before it is mated.",
             "Pair swaps of a duplex link must be odd in number: what one end sends, the other hears."}};
}

void add_copper(const Source& source, TablePart& table, const graph::Run& run, int index) {
    const auto& facts = source.analysis.facts;
    const auto limit = analysis::copper_limit(facts, index);
    if (!limit) return;
    const auto ends = ends_of(source, run);
    const auto& length = facts.get<analysis::CableLengths>().runs[static_cast<std::size_t>(index)];
    TableRow row;
    row.subject = ends.subject;
    row.cells = {text_cell(listed(ends.cables)),
                 text_cell(ends.from),
                 text_cell(ends.to),
                 quantity_cell(facts.get<analysis::LinkCapacity>().runs[static_cast<std::size_t>(index)].rate),
                 text_cell(limit->grade),
                 quantity_cell(length.permanent),
                 Cell(limit->installed),
                 quantity_cell(length.channel),
                 Cell(limit->channel),
                 text_cell(base::print(limit->warmth, source.book.numbers)),
                 text_cell(limit->rule),
                 Cell(),
                 Cell()};
    table.rows.push_back(std::move(row));
}

void add_fibre(const Source& source, TablePart& table, const graph::Run& run, int index) {
    const auto& facts = source.analysis.facts;
    const auto& channel = facts.get<analysis::FibreChannels>().runs[static_cast<std::size_t>(index)];
    if (!channel) return;
    const auto limit = analysis::fibre_limit(facts, index).value_or(analysis::FibreLimit{});
    const auto ends = ends_of(source, run);
    TableRow row;
    row.subject = ends.subject;
    row.cells = {text_cell(listed(ends.cables)),
                 text_cell(ends.from),
                 text_cell(ends.to),
                 text_cell(limit.phy),
                 text_cell(channel->grade_name),
                 quantity_cell(channel->length),
                 quantity_cell(limit.most),
                 Cell(std::int64_t{channel->joints}),
                 Cell(std::int64_t{channel->splices}),
                 text_cell(loss_words(source, channel->loss)),
                 text_cell(loss_words(source, limit.budget)),
                 Cell(std::int64_t{channel->strands}),
                 text_cell(channel->swaps ? std::to_string(*channel->swaps) : "not stated"),
                 Cell(),
                 Cell()};
    table.rows.push_back(std::move(row));
}

}  // namespace link_limits_detail

Content make_link_limits(const Source& source) {
    using namespace link_limits_detail;
    auto copper = copper_table(), fibre = fibre_table();
    const auto& wiring = wiring_of(source);
    const auto& runs = source.analysis.facts.get<graph::Runs>().list;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        const auto& run = runs[i];
        if (!run.a || !run.b || !wiring.is_network_port(*run.a) || !wiring.is_network_port(*run.b)) continue;
        add_copper(source, copper, run, static_cast<int>(i));
        add_fibre(source, fibre, run, static_cast<int>(i));
    }
    for (auto* table : {&copper, &fibre})
        std::ranges::stable_sort(table->rows, [](const TableRow& a, const TableRow& b) {
            const auto* one = std::get_if<std::string>(&a.cells.front());
            const auto* other = std::get_if<std::string>(&b.cells.front());
            return counts_before(one ? *one : std::string(), other ? *other : std::string());
        });
    return {"link-limits", "Link limits", {std::move(copper), std::move(fibre)}};
}

}  // namespace streamwright::deliver
