// A fibre link as it is built: transceiver, lead of 1 m, panel, fixed fibre, panel, lead, transceiver. For the tests of
// what lies on such a way.
#pragma once

#include "core/analysis/facts/fibre_channel.h"
#include "tests/support/clean_design.h"

namespace streamwright::test {

class FibreWay {
public:
    /// The leads are of OM4; the transceivers 10GBASE-SR unless another type is given.
    FibreWay(catalogue::CableGrade grade, base::Length length, const types::DevicePtr& module = types::module_sr())
        : module_(*module) {
        fixed_type_ = *types::om3();
        fixed_type_.key = {"test.way.fixed"};
        fixed_type_.grade = grade;
        lead_type_ = *types::om3();
        lead_type_.key = {"test.way.lead"};
        lead_type_.grade = catalogue::CableGrade::om4;
        lead_type_.use = catalogue::CableUse::lead;
        panel_type_ = *types::patch_panel();
        panel_type_.key = {"test.way.panel"};
        for (auto& port : panel_type_.ports) {
            port.signal = catalogue::Signal::fibre;
            port.connector = catalogue::Connector::lc_duplex;
        }
        build(length);
    }

    analysis::FibreChannel channel() const {
        const auto wiring = graph::wire(b.design);
        const auto runs = graph::find_runs(wiring);
        const auto run =
            static_cast<std::size_t>(runs.run_of_cable.at(static_cast<std::size_t>(*wiring.cable_index(fixed_cable))));
        return analysis::find_fibre_channels(wiring, runs).runs.at(run).value();
    }
    template <class Change>
    void fixed(Change&& change) {
        b.change<model::Cable>(fixed_cable, change);
    }
    template <class Change>
    void type(Change&& change) {
        change(fixed_type_);
        b.embed(std::make_shared<const catalogue::CableType>(fixed_type_));
    }
    template <class Change>
    void lead(Change&& change) {
        change(lead_type_);
        b.embed(std::make_shared<const catalogue::CableType>(lead_type_));
    }
    template <class Change>
    void panel(Change&& change) {
        for (auto& port : panel_type_.ports) change(port);
        b.embed(std::make_shared<const catalogue::DeviceType>(panel_type_));
    }
    template <class Change>
    void modules(Change&& change) {
        change(*module_.module);
        b.embed(std::make_shared<const catalogue::DeviceType>(module_));
    }

private:
    catalogue::CableType fixed_type_, lead_type_;
    catalogue::DeviceType panel_type_, module_;

    void build(base::Length length) {
        using namespace base::literals;
        const auto lead_ptr = std::make_shared<const catalogue::CableType>(lead_type_);
        const auto bridge = [&](const char* tag) {
            const auto id = b.device(types::switch_24(), tag);
            b.port(port_of(id, "s1"), [&](auto& row) { row.module = module_.key; });
            return id;
        };
        b.embed(std::make_shared<const catalogue::DeviceType>(module_));
        const auto left = bridge("SW-L"), right = bridge("SW-R");
        b.change<model::Device>(left, [](auto& row) { row.bridging.priority = 4096; });
        const auto near = b.device(panel_type_, "PP-L"), far = b.device(panel_type_, "PP-R");
        lead_left = b.cable(lead_ptr, port_of(left, "s1"), port_of(near, "f1"), 1_m);
        fixed_cable = b.cable(std::make_shared<const catalogue::CableType>(fixed_type_), port_of(near, "r1"),
                              port_of(far, "r1"), length);
        lead_right = b.cable(lead_ptr, port_of(far, "f1"), port_of(right, "s1"), 1_m);
    }

public:
    DesignBuilder b{9};
    model::CableId fixed_cable{0}, lead_left{0}, lead_right{0};
};

}  // namespace streamwright::test
