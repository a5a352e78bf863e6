// Makes a design by ordinary edits, one after the other, and keeps the list: what a person would have done by hand.
// Everything is made the same each time, ids included.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/model/edits/all_edits.h"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace streamwright::test {

/// A design and the edits that made it from nothing.
struct Demo {
    std::vector<model::AnyEdit> edits;
    model::Design design;
};

class DemoMaker {
public:
    explicit DemoMaker(std::uint64_t seed);

    /// Makes and applies the edit; throws with the refusal's words, since a demo must never be refused.
    void run(const model::AnyEdit& edit);

    model::RoomId room(const std::string& number, const std::string& name, const std::string& floor);
    model::RackId rack(const std::string& name, const std::string& type, model::RoomId room);
    model::VlanId vlan(int vid, const std::string& name, model::VlanPurpose purpose, const std::string& subnet,
                       const std::string& gateway = "");
    model::PresetId preset(int number, const std::string& name, const std::string& note = "");
    model::SheetId sheet(int number, const std::string& title, const std::string& supplement, model::PaperSize paper);
    void revision(int number, const std::string& letter, const std::string& date, const std::string& what);

    model::DeviceId device(const std::string& type, const std::string& tag, std::optional<model::RoomId> room,
                           const std::string& note = "");
    void mount(model::DeviceId device, model::RackId rack, int unit, model::RackFace face = model::RackFace::front);
    void slot(model::DeviceId card, model::DeviceId chassis, int slot);
    void role(model::DeviceId device, catalogue::Role role);
    void address(model::DeviceId device, model::VlanId vlan, const std::string& address);
    /// Sets up a device by a function on its row.
    template <class F>
    void configure(model::DeviceId device, F&& f) {
        model::ConfigureDevice edit{*demo_.design.devices.find(device)};
        f(edit.row);
        run(edit);
    }
    template <class F>
    void configure_port(model::DeviceId device, const std::string& port, F&& f) {
        const model::PortRef ref{device, {port}};
        const auto* held = demo_.design.port_overrides.find(ref);
        model::ConfigurePort edit{held ? *held : model::PortOverride::blank(ref), nullptr};
        f(edit.row);
        run(edit);
    }
    void module(model::DeviceId device, const std::string& port, const std::string& type);

    /// Installed cable takes its length; a lead has its own.
    model::CableId cable(const std::string& type, model::DeviceId a, const std::string& a_port, model::DeviceId b,
                         const std::string& b_port, std::optional<int> metres = std::nullopt,
                         const std::string& tag = "");
    /// A picture stream with the rate and packets that the encoder's type states.
    model::StreamId stream(model::DeviceId encoder, const std::string& tag, const std::string& group,
                           const std::string& note = "");
    /// A picture packed by its format; a flow of network audio. The rates follow.
    model::StreamId packed_picture(model::DeviceId encoder, const std::string& tag, const std::string& group,
                                   const model::PictureEssence& picture, const std::string& note = "");
    model::StreamId sound_flow(model::DeviceId encoder, const std::string& tag, const std::string& group,
                               const standards::AudioStream& flow, const std::string& note = "");
    void show(model::PresetId preset, model::DeviceId decoder, model::StreamId stream, const std::string& input = "");

    std::shared_ptr<const catalogue::DeviceType> device_type(const std::string& key) const;
    std::shared_ptr<const catalogue::CableType> cable_type(const std::string& key) const;
    const model::Design& design() const { return demo_.design; }
    model::DeviceId tagged(const std::string& tag) const;
    template <class AnyId>
    AnyId fresh() {
        return ids_.next<AnyId>();
    }
    Demo done() && { return std::move(demo_); }

private:
    Demo demo_;
    base::IdSource ids_;
    catalogue::Catalogue library_;
    std::map<std::string, model::DeviceId> by_tag_;
};

/// The catalogue that the program ships with.
const catalogue::Catalogue& shipped_types();

}  // namespace streamwright::test
