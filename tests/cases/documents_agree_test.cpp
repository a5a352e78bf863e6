// Joins the documents of Ferrow Quay with the drawing, row by row: counts are made here from the design's rows alone.
#include "core/analysis/analyser.h"
#include "core/deliver/document.h"
#include "core/io/design_file.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::test::ferrow_documents {

using deliver::Cell;
using deliver::TablePart;

struct Made {
    Made()
        : design(io::open_design(STREAMWRIGHT_SOURCE_DIR "/demo/ferrow-quay.streamwright")->design),
          analysis(analysis::analyse(design)) {}

    std::vector<TablePart> tables(std::string_view document) const {
        const deliver::Source source{design, analysis, analysis::report(design, analysis.findings),
                                     analysis::english(design)};
        std::vector<TablePart> all;
        for (const auto& kind : deliver::all_documents())
            if (kind.name == document)
                for (auto& part : kind.make(source).parts)
                    if (auto* table = std::get_if<TablePart>(&part)) all.push_back(std::move(*table));
        return all;
    }

    model::Design design;
    analysis::Analysis analysis;
};

std::string text(const Cell& cell) {
    if (const auto* words = std::get_if<std::string>(&cell)) return *words;
    if (const auto* number = std::get_if<std::int64_t>(&cell)) return std::to_string(*number);
    return {};
}

std::size_t column(const TablePart& table, std::string_view title) {
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        if (table.columns[i].title == title) return i;
    ADD_FAILURE() << "no column " << title << " in " << table.title;
    return 0;
}

std::string tag_of(const model::Design& design, const std::optional<model::CableEnd>& end) {
    const auto* device = end ? design.devices.find(end->port.device) : nullptr;
    return device ? device->tag : std::string();
}

TEST(FerrowQuayDocuments, TheCableScheduleHasEveryCableOnceWithItsEnds) {
    const Made made;
    std::map<std::string, std::multiset<std::string>> listed;
    std::size_t rows = 0;
    for (const auto& table : made.tables("cable-schedule"))
        for (const auto& row : table.rows) {
            ++rows;
            listed[text(row.cells[column(table, "Cable")])] = {text(row.cells[column(table, "From device")]),
                                                               text(row.cells[column(table, "To device")])};
        }
    EXPECT_EQ(rows, made.design.cables.size());
    ASSERT_GT(rows, 200U);
    for (const auto& cable : made.design.cables) {
        const std::multiset<std::string> ends{tag_of(made.design, cable.a), tag_of(made.design, cable.b)};
        EXPECT_EQ(listed[cable.tag], ends) << cable.tag;
    }
}

TEST(FerrowQuayDocuments, ThePortScheduleHasEveryCableEndAtASwitch) {
    const Made made;
    std::map<std::string, std::multiset<std::string>> listed;  // switch tag to cables
    std::size_t ports = 0;
    for (const auto& table : made.tables("port-schedule"))
        for (const auto& row : table.rows) {
            ++ports;
            if (const auto cable = text(row.cells[column(table, "Cable")]); !cable.empty())
                listed[table.title.substr(0, table.title.find(':'))].insert(cable);
        }
    std::map<std::string, std::multiset<std::string>> drawn;
    std::size_t drawn_ports = 0;
    const auto is_switch = [&](const model::Device* device) {
        const auto* type = device ? made.design.type_of(*device) : nullptr;
        return type && type->kind == catalogue::DeviceKind::network_switch;
    };
    for (const auto& device : made.design.devices)
        if (is_switch(&device))
            drawn_ports += static_cast<std::size_t>(
                std::ranges::count_if(made.design.type_of(device)->ports,
                                      [](const auto& port) { return catalogue::is_network(port.signal); }));
    for (const auto& cable : made.design.cables)
        for (const auto& end : {cable.a, cable.b}) {
            const auto* device = end ? made.design.devices.find(end->port.device) : nullptr;
            if (!is_switch(device)) continue;
            const auto* port = made.design.type_of(*device)->find_port(end->port.port);
            if (port && catalogue::is_network(port->signal)) drawn[device->tag].insert(cable.tag);
        }
    EXPECT_EQ(listed, drawn);
    EXPECT_EQ(drawn.size(), 9U);
    EXPECT_EQ(ports, drawn_ports) << "spare ports have their rows too";
}

const catalogue::PortType* port_of(const model::Design& design, const model::CableEnd& end) {
    const auto* device = design.devices.find(end.port.device);
    const auto* type = device ? design.type_of(*device) : nullptr;
    return type ? type->find_port(end.port.port) : nullptr;
}

std::set<model::PortRef> ports_of_direct_attach(const model::Design& design) {
    std::set<model::PortRef> ports;
    for (const auto& cable : design.cables)
        if (cable.type.text.starts_with("dac-"))
            for (const auto& end : {cable.a, cable.b})
                if (end) ports.insert(end->port);
    return ports;
}

/// Sums the quantities of the rows under one column's text, for rows that `wanted` takes.
template <class Wanted>
std::map<std::string, std::int64_t> billed_by(const Made& made, std::string_view by, Wanted wanted) {
    std::map<std::string, std::int64_t> billed;
    for (const auto& table : made.tables("bill-of-materials"))
        for (const auto& row : table.rows)
            if (const auto* quantity = std::get_if<std::int64_t>(&row.cells[column(table, "Quantity")]);
                quantity && wanted(text(row.cells[column(table, "Type")]), row.group))
                billed[text(row.cells[column(table, by)])] += *quantity;
    return billed;
}

TEST(FerrowQuayDocuments, EveryQuantityOfTheBillEqualsTheDrawing) {
    const Made made;
    const auto direct = ports_of_direct_attach(made.design);
    EXPECT_EQ(direct.size(), 10U) << "five assemblies, two ends each";
    std::map<std::string, std::int64_t> drawn;
    for (const auto& device : made.design.devices) ++drawn[device.type.text];
    for (const auto& rack : made.design.racks) ++drawn[rack.type.text];
    for (const auto& port : made.design.port_overrides)
        if (port.module && !direct.contains(port.port)) ++drawn[port.module->text];
    for (const auto& cable : made.design.cables) ++drawn[cable.type.text];
    const auto billed = billed_by(made, "Type", [](const auto& type, const auto&) { return !type.empty(); });
    EXPECT_EQ(billed, drawn);
}

TEST(FerrowQuayDocuments, LeadsThatAreNotDrawnAreTheBareEndsOfInstalledCable) {
    const Made made;
    std::int64_t bare = 0, inlets = 0;
    for (const auto& cable : made.design.cables) {
        const auto* type = made.design.type_of(cable);
        if (!type || type->use != catalogue::CableUse::installed || !catalogue::is_network(type->signal)) continue;
        for (const auto& end : {cable.a, cable.b}) {
            const auto* port = end ? port_of(made.design, *end) : nullptr;
            if (!port || !catalogue::is_network(port->signal)) continue;
            if (port->way != catalogue::Way::through || end->port.port.text.starts_with("front-")) ++bare;
        }
    }
    for (const auto& device : made.design.devices)  // no mains lead is drawn in this venue
        if (const auto* type = made.design.type_of(device))
            for (const auto inlet : {catalogue::Connector::iec_c14, catalogue::Connector::iec_c20})
                inlets += std::ranges::count(type->ports, inlet, &catalogue::PortType::connector);
    EXPECT_GT(bare, 100);
    EXPECT_GT(inlets, 10);
    std::int64_t leads = 0, mains = 0;
    for (const auto& [name, quantity] :
         billed_by(made, "Description", [](const auto&type, const auto&) { return type.empty(); })) {
        if (name.starts_with("Patch lead") || name.starts_with("Fibre lead")) leads += quantity;
        if (name.starts_with("Mains lead")) mains += quantity;
    }
    EXPECT_EQ(leads, bare);
    EXPECT_EQ(mains, inlets);
}

// The plan: 5 % of each endpoint type, rounded up; two transceivers of each kind; five network leads of each kind.
TEST(FerrowQuayDocuments, SparesFollowThePlan) {
    const Made made;
    std::map<std::string, std::int64_t> endpoints;
    for (const auto& device : made.design.devices)
        if (const auto* type = made.design.type_of(device); type && type->codec) ++endpoints[device.type.text];
    std::map<std::string, std::int64_t> wanted, billed;
    for (const auto& [type, count] : endpoints) wanted[type] = count <= 20 ? 1 : count <= 40 ? 2 : 3;
    for (const auto& [type, count] : wanted) EXPECT_LE(endpoints[type], 60) << "the line above counts no further";
    int modules = 0, leads = 0;
    for (const auto& table : made.tables("bill-of-materials"))
        for (const auto& row : table.rows) {
            const auto* cell = std::get_if<std::int64_t>(&row.cells[column(table, "Spare")]);
            const auto spare = cell ? *cell : 0;
            const auto type = text(row.cells[column(table, "Type")]);
            const auto name = text(row.cells[column(table, "Description")]);
            if (endpoints.contains(type)) billed[type] = spare;
            if (type.starts_with("sfp-") || type.starts_with("qsfp-")) {
                ++modules;
                EXPECT_EQ(spare, 2) << type;
            }
            if (name.starts_with("Patch lead") || name.starts_with("Fibre lead") || type.starts_with("patch-") ||
                type.starts_with("dac-")) {
                ++leads;
                EXPECT_EQ(spare, 5) << name;
            }
        }
    EXPECT_EQ(billed, wanted);
    EXPECT_GE(modules, 2);
    EXPECT_GE(leads, 3);
}

TEST(FerrowQuayDocuments, ManagementLicencesFollowTheEncoders) {
    const Made made;
    std::int64_t encoders = 0, servers = 0;
    for (const auto& device : made.design.devices) {
        const auto* type = made.design.type_of(device);
        if (type && type->kind == catalogue::DeviceKind::management_server) ++servers;
        if (!type || !type->codec) continue;
        const auto& roles = device.roles.empty() ? type->codec->roles : device.roles;
        encoders += std::ranges::count(roles, catalogue::Role::encoder);
    }
    ASSERT_EQ(servers, 1);
    // The server's data sheet: two licences for each ten encoders begun.
    const auto billed =
        billed_by(made, "Description", [](const auto&, const auto& group) { return group == "Licences"; });
    ASSERT_EQ(billed.size(), 1U);
    EXPECT_EQ(billed.begin()->second, (encoders + 9) / 10 * 2);
}

}  // namespace streamwright::test::ferrow_documents
