// The clean design with one more link between its two switches, for the rules about spanning trees.
#pragma once

#include "core/analysis/rule_help.h"
#include "tests/support/clean_design.h"

#include <memory>
#include <string>

namespace streamwright::test {

namespace analysis_test {
inline constexpr base::Length short_run = base::Length::from_count(20'000'000);  // 20 m
}

/// 1 Gb/s on port n of both switches; carries what the trunk carries.
inline model::CableId add_copper_trunk(CleanDesign& c, const std::string& port) {
    for (const auto id : {c.switch_a, c.switch_b})
        c.b.port(port_of(id, port), [&](auto& row) { row.tagged = {c.second}; });
    return c.b.cable(types::cat6a(), port_of(c.switch_a, port), port_of(c.switch_b, port), analysis_test::short_run);
}

/// 10 Gb/s on cage s2 of both switches; carries what the trunk carries.
inline model::CableId add_fibre_trunk(CleanDesign& c) {
    for (const auto id : {c.switch_a, c.switch_b})
        c.b.port(port_of(id, "s2"), [&](auto& row) {
            row.module = types::module_sr()->key;
            row.tagged = {c.second};
        });
    return c.b.cable(types::om3(), port_of(c.switch_a, "s2"), port_of(c.switch_b, "s2"), analysis_test::short_run);
}

/// Gives one device a type of its own, changed as said.
template <class Change>
void change_type(CleanDesign& c, model::DeviceId device, Change&& change) {
    auto type = *c.design().type_of(*c.design().devices.find(device));
    type.key.text += ".changed";
    change(type);
    c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    c.b.change<model::Device>(device, [&](auto& row) { row.type = type.key; });
}

}  // namespace streamwright::test
