// The faulty design's faults of spanning trees, tables and VLANs, each on switches of its own that are cabled to
// nothing else, and on a sheet of their own. That one lost report is enough stands in the settings.
#include "tests/support/demo_faulty.h"

namespace streamwright::test::demo_faulty_detail {

namespace {

/// A type of its own, changed as said from one of the library.
template <class Change>
std::string changed_type(Faulty& f, const std::string& from, const std::string& key, const std::string& name,
                         Change&& change) {
    auto type = *f.make.device_type(from);
    type.key = {key};
    type.name = name;
    change(*type.bridging);
    f.make.run(model::EmbedTypes{{std::make_shared<const catalogue::DeviceType>(type)}, {}});
    return key;
}

DeviceId root_switch(Faulty& f, const std::string& type, const std::string& tag) {
    const auto id = f.device(type, tag);
    f.make.configure(id, [](model::Device& row) { row.bridging.priority = 4096; });
    return id;
}

void join_twice(Faulty& f, DeviceId a, DeviceId b) {
    for (const char* port : {"1", "2"}) f.make.cable("copper-cat6a", a, port, b, port, 20);
}

/// Nobody is set to be root, and by that choice one of two cables is blocked.
void chance_root(Faulty& f) {
    join_twice(f, f.device("switch-access-8", "SW-981"), f.device("switch-access-8", "SW-982"));
}

/// 100 Mb/s carry the tree, because somebody set a cost at the fast port.
void slow_tree(Faulty& f) {
    const auto root = root_switch(f, "switch-access-8", "SW-983"), other = f.device("switch-access-8", "SW-984");
    join_twice(f, root, other);
    f.make.configure_port(root, "1", [](PortOverride& row) { row.rate_limit = base::BitRate::from_count(100000000); });
    f.make.configure_port(other, "2", [](PortOverride& row) { row.path_cost = 300000; });
}

/// Two scales of costs, a trunk with the guard of an endpoint's port, guards that exclude each other, and a querier
/// whose queries the other switch ignores.
void marks_and_scales(Faulty& f) {
    const auto old = changed_type(f, "switch-access-8", "switch-short-costs", "Switch with short path costs",
                                  [](auto& facts) { facts.long_path_costs = false; });
    const auto root = root_switch(f, "switch-access-8", "SW-985"), other = f.device(old, "SW-986");
    f.make.cable("copper-cat6a", root, "1", other, "1", 20);
    f.make.configure_port(root, "1", [](PortOverride& row) { row.bpdu_guard = true; });
    f.make.configure_port(root, "7", [](PortOverride& row) { row.bpdu_guard = row.loop_guard = true; });
    f.make.configure(root, [&](model::Device& row) { row.bridging.queriers = {{f.av, std::nullopt}}; });
}

/// Two cables between switches of which neither runs a tree.
void storm(Faulty& f) {
    const auto near = f.device("switch-access-8", "SW-987"), far = f.device("switch-access-8", "SW-988");
    for (const auto id : {near, far}) f.make.configure(id, [](model::Device& row) { row.bridging.tree_off = true; });
    join_twice(f, near, far);
}

/// A table of one group and of two addresses for two pairs, and an office computer that has the AV VLAN too.
void small_tables(Faulty& f) {
    const auto type =
        changed_type(f, "switch-access-24-poe", "switch-small-tables", "Switch with small tables", [](auto& facts) {
            facts.group_table_size = 1;
            facts.address_table_size = 2;
        });
    const auto bridge = f.device(type, "SW-989");
    f.make.configure(bridge, [&](model::Device& row) {
        row.bridging.queriers = {{f.av, base::parse_ipv4("10.90.0.2")}};
    });
    f.encoder("skiff-encoder", "988", "239.192.9.88", bridge, "1");
    f.encoder("skiff-encoder", "989", "239.192.9.89", bridge, "2");
    f.decoder("skiff-decoder", "988", bridge, "3");
    f.decoder("skiff-decoder", "989", bridge, "4");
    f.show("988", "988");
    f.show("989", "989");
    const auto office = f.make.vlan(40, "Office", model::VlanPurpose::corporate, "10.90.3.0/24");
    f.make.cable("copper-cat6a", f.device("pc", "PC-989"), "lan", bridge, "9", 20);
    f.make.configure_port(bridge, "9", [&](PortOverride& row) {
        row.untagged = office;
        row.tagged = {f.av};
    });
}

/// A second copy of the picture that goes the same way.
void twin_beside(Faulty& f, const std::string& number, const std::string& group) {
    const auto first = f.streams.at(number);
    auto row = *f.make.design().streams.find(f.make.stream(f.make.tagged("ENC-" + number), "S-" + number + "B", group));
    row.twin = first;
    f.make.run(model::SetStream{row});
}

/// What the closing speech needs: one picture over the only link to SW-993, and one over a trunk whose spare is too
/// narrow for it. Of this preset alone it is asked that pictures outlive any one link.
void no_way_around(Faulty& f) {
    const auto speech = f.make.preset(3, "Closing speech");
    const auto root = root_switch(f, "switch-access-24-poe", "SW-991");
    const auto far = f.device("switch-access-24-poe", "SW-992"), lone = f.device("switch-access-24-poe", "SW-993");
    f.make.configure(root, [&](model::Device& row) {
        row.bridging.queriers = {{f.av, base::parse_ipv4("10.90.0.3")}};
    });
    f.make.cable("copper-cat6a", root, "23", far, "23", 20);
    f.make.cable("copper-cat6a", root, "24", far, "24", 20);
    f.make.cable("copper-cat6a", root, "22", lone, "22", 20);
    f.make.configure_port(far, "24", [](PortOverride& row) { row.rate_limit = base::BitRate::from_count(100000000); });
    f.encoder("skiff-encoder", "991", "239.192.9.91", far, "1");
    f.decoder("skiff-decoder", "991", root, "1");
    f.encoder("skiff-encoder", "993", "239.192.9.93", lone, "1");
    f.decoder("skiff-decoder", "993", root, "3");
    twin_beside(f, "993", "239.192.9.94");
    for (const char* number : {"991", "993"})
        f.make.show(speech, f.make.tagged(std::string("DEC-") + number), f.streams.at(number));
    auto settings = f.make.design().settings();
    settings.survive = model::Survival::link;
    settings.survive_presets = {speech};
    f.make.run(model::SetSettings{settings});
}

/// The encoder's switch drops what nobody asks for, and the decoder asks at the querier, where that switch is not.
void deaf_switch(Faulty& f) {
    const auto type =
        changed_type(f, "switch-access-24-poe", "switch-drops-unknown", "Switch that drops unknown groups",
                     [](auto& facts) { facts.unknown_groups = catalogue::UnknownGroups::drop; });
    const auto root = root_switch(f, "switch-access-24-poe", "SW-997"), other = f.device(type, "SW-998");
    f.make.cable("copper-cat6a", root, "1", other, "1", 20);
    f.make.configure(root, [&](model::Device& row) {
        row.bridging.queriers = {{f.av, base::parse_ipv4("10.90.0.4")}};
    });
    f.encoder("skiff-encoder", "998", "239.192.9.98", other, "2");
    f.decoder("skiff-decoder", "998", root, "2");
    f.show("998", "998");
}

}  // namespace

void tree_faults(Faulty& f) {
    chance_root(f);
    slow_tree(f);
    marks_and_scales(f);
    storm(f);
    small_tables(f);
    no_way_around(f);
    deaf_switch(f);
}

void tree_fault_sheet(Faulty& f) {
    SheetPlan trees(f.make, f.make.sheet(5, "Faulty design", "spanning trees and tables", model::PaperSize::a1));
    trees.rows({60, 180}, 60, {{"SW-981", "SW-982"}, {"SW-983", "SW-984"}, {"SW-985", "SW-986"}, {"SW-987", "SW-988"}},
               15);
    trees.rows({320, 400}, 60, {{"LP-988", "ENC-988"}, {"LP-989", "ENC-989"}, {"", "PC-989"}}, 10);
    trees.put("SW-989", 500, 60);
    trees.rows({320, 400}, 420, {{"LP-998", "ENC-998"}, {"MON-998", "DEC-998"}}, 10);
    trees.put("SW-998", 500, 420);
    trees.put("SW-997", 570, 420);
    trees.rows({640, 720}, 60, {{"DEC-988", "MON-988"}, {"DEC-989", "MON-989"}}, 10);
    trees.rows({320, 400}, 330, {{"LP-991", "ENC-991"}, {"LP-993", "ENC-993"}}, 10);
    trees.rows({500}, 250, {{"SW-991"}, {"SW-992"}, {"SW-993"}}, 10);
    trees.rows({640, 720}, 330, {{"DEC-991", "MON-991"}, {"DEC-993", "MON-993"}}, 10);
    trees.finish();
}

}  // namespace streamwright::test::demo_faulty_detail
