#include "core/model/mounting.h"

#include "core/model/edits/all_edits.h"

#include <algorithm>
#include <set>

namespace streamwright::model {

namespace mounting_detail {

int height_of(const catalogue::DeviceType* type) { return type ? std::max(type->size.rack_units, 1) : 1; }

bool full_depth(const catalogue::DeviceType* type) { return type && type->size.full_depth.value_or(false); }

/// The units that the device cannot have.
std::set<int> taken_units(const Design& design, RackId rack, const Device& device, RackFace face) {
    const bool deep = full_depth(design.type_of(device));
    std::set<int> taken;
    for (const auto& other : design.devices) {
        if (other.id == device.id || !other.rack || other.rack->rack != rack) continue;
        const auto* type = design.type_of(other);
        if (other.rack->face != face && !deep && !full_depth(type)) continue;
        for (int unit = other.rack->unit; unit < other.rack->unit + height_of(type); ++unit) taken.insert(unit);
    }
    return taken;
}

}  // namespace mounting_detail

std::optional<int> lowest_free_unit(const Design& design, RackId rack, DeviceId device, RackFace face) {
    using namespace mounting_detail;
    const auto* row = design.racks.find(rack);
    const auto* mounted = design.devices.find(device);
    if (!row || !mounted) return std::nullopt;
    const auto taken = taken_units(design, rack, *mounted, face);
    const int height = height_of(design.type_of(*mounted));
    for (int unit = 1; unit + height - 1 <= row->units; ++unit) {
        const auto first = taken.lower_bound(unit);
        if (first == taken.end() || *first > unit + height - 1) return unit;
    }
    return std::nullopt;
}

std::optional<int> lowest_free_slot(const Design& design, DeviceId chassis, DeviceId card) {
    const auto* row = design.devices.find(chassis);
    const auto* type = row ? design.type_of(*row) : nullptr;
    if (!type || !type->chassis) return std::nullopt;
    std::set<int> taken;
    for (const auto& other : design.devices)
        if (other.id != card && other.chassis && other.chassis->chassis == chassis) taken.insert(other.chassis->slot);
    for (int slot = 1; slot <= type->chassis->slots; ++slot)
        if (!taken.contains(slot)) return slot;
    return std::nullopt;
}

std::string next_rack_name(const Design& design) {
    for (int number = 1;; ++number) {
        auto name = "Rack " + std::to_string(number);
        const bool used =
            std::any_of(design.racks.begin(), design.racks.end(), [&](const Rack& rack) { return rack.name == name; });
        if (!used) return name;
    }
}

base::Result<Delta> mount_in_new_rack(const Design& design, base::IdSource& ids, DeviceId device,
                                      const std::shared_ptr<const catalogue::DeviceType>& rack_type) {
    const auto* held = design.devices.find(device);
    if (!held) return base::Error{"The design has no device %1.", {device.text()}};
    auto rack = Rack::blank(ids.next<RackId>());
    rack.name = next_rack_name(design);
    rack.type = rack_type->key;
    rack.room = held->room;
    rack.units = rack_type->size.rack_units;
    rack.depth = rack_type->size.depth;
    auto after = design;
    const auto run = [&](const auto& edit) -> base::Result<void> {
        auto delta = make(after, edit);
        if (!delta) return delta.error();
        apply(after, *delta);
        return {};
    };
    if (!after.device_types.contains(rack.type))
        if (auto done = run(EmbedTypes{{rack_type}, {}}); !done) return done.error();
    if (auto done = run(AddRows{{rack}}); !done) return done.error();
    const auto mounted = StandInRoom{{device}, held->room, held->standing, RackPlace{rack.id, 1}, std::nullopt};
    if (auto done = run(mounted); !done) return done.error();
    return difference(design, after);
}

}  // namespace streamwright::model
