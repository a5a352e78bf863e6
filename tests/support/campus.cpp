#include "tests/support/campus.h"

#include "core/layout/plate.h"
#include "tests/support/demo_maker.h"

#include <algorithm>
#include <map>
#include <optional>

namespace streamwright::test {

namespace campus_detail {

constexpr int endpoints_per_access = 25, encoders_per_access = 10, access_per_aggregation = 10;
constexpr int uplink_port = 49;  // of the access switch, its first cage

base::Length mm(int count) { return base::Length::from_count(std::int64_t{count} * 1000); }

/// A core of as many 40 Gb/s cages as the campus has aggregation switches.
catalogue::DeviceType core_type(int cages) {
    auto type = *shipped_types().device({"switch-core-32"});
    type.key = {"campus-core"};
    type.name = "Core switch, 40 Gb/s cages only";
    auto cage = *type.find_port({"25"});
    type.ports.clear();
    for (int n = 1; n <= cages; ++n) {
        cage.key = {std::to_string(n)};
        cage.label = std::to_string(n);
        type.ports.push_back(cage);
    }
    return type;
}

class Builder {
public:
    Builder(int endpoints, std::uint64_t seed, CampusParts parts)
        : endpoints_(endpoints), rooms_(parts == CampusParts::with_rooms), ids_(seed) {}

    model::Design build() {
        settle();
        const int accesses = (endpoints_ + endpoints_per_access - 1) / endpoints_per_access;
        const int aggregations = (accesses + access_per_aggregation - 1) / access_per_aggregation;
        const auto core = build_core(std::max(1, aggregations));
        for (int n = 0; n < aggregations; ++n) build_aggregation(n, core, accesses);
        subscribe_all();
        leave_fast();
        return std::move(design_);
    }

private:
    struct Placed {
        model::DeviceId id;
        const catalogue::DeviceType* type;
        model::SheetPoint at;
    };

    template <class AnyId>
    AnyId fresh() {
        return ids_.next<AnyId>();
    }
    int draw(int below) { return static_cast<int>(ids_.next_bits() % static_cast<std::uint64_t>(below)); }

    /// Presets change the pictures of decoders that could not hold two at once.
    void leave_fast() {
        std::vector<model::Device> switches;
        for (const auto& row : design_.devices)
            if (const auto* type = design_.type_of(row);
                type && type->bridging && type->kind == catalogue::DeviceKind::network_switch)
                switches.push_back(row);
        for (auto& row : switches) {
            row.bridging.fast_leave = true;
            design_.devices.put(row);
        }
    }

    void settle() {
        auto vlan = model::Vlan::blank(fresh<model::VlanId>());
        vlan.vid = 10;
        vlan.name = "AV media";
        vlan.subnet = base::Ipv4Prefix{{0x0A400000}, 16};  // 10.64.0.0/16
        vlan_ = vlan.id;
        design_.vlans.put(vlan);
        model::Settings settings;
        settings.title = "Generated campus";
        settings.usual_vlan = vlan.id;
        settings.security = {true, true, "2028-06-30", true};
        design_.settings_table.put(settings);
        for (int n = 1; n <= 4; ++n) {
            auto preset = model::Preset::blank(fresh<model::PresetId>());
            preset.number = n;
            preset.name = "Preset " + std::to_string(n);
            presets_.push_back(preset.id);
            design_.presets.put(preset);
        }
    }

    const catalogue::DeviceType* embed(const catalogue::DeviceType& type) {
        if (!design_.device_types.contains(type.key))
            design_.device_types.put({std::make_shared<const catalogue::DeviceType>(type)});
        return design_.device_types.find(type.key)->type.get();
    }
    const catalogue::DeviceType* shipped(const std::string& key) { return embed(*shipped_types().device({key})); }

    model::SheetId sheet(const std::string& title) {
        auto row = model::Sheet::blank(fresh<model::SheetId>());
        row.number = static_cast<int>(design_.sheets.size()) + 1;
        row.title = title;
        row.paper = model::PaperSize::a1;
        design_.sheets.put(row);
        return row.id;
    }

    Placed device(const catalogue::DeviceType* type, const std::string& tag, model::SheetId on, int x, int y,
                  bool addressed) {
        auto row = model::Device::blank(fresh<model::DeviceId>());
        row.type = type->key;
        row.tag = tag;
        row.room = room_;
        if (addressed) {
            model::HostAddress host;
            host.vlan = vlan_;
            host.address = base::Ipv4{0x0A400000U + static_cast<std::uint32_t>(++hosts_ + 255)};
            row.addresses.push_back(host);
        }
        design_.devices.put(row);
        return place({row.id, type, {}}, on, x, y);
    }

    Placed place(Placed device, model::SheetId on, int x, int y) {
        auto row = model::Place::blank({on, device.id});
        row.at = device.at = {mm(x), mm(y)};
        design_.places.put(row);
        return device;
    }

    /// Where a cable meets the port, from the plate of the type laid once.
    model::SheetPoint lead_at(const Placed& device, const std::string& port) {
        auto [at, is_new] = plates_.try_emplace(device.type);
        if (is_new) at->second = layout::plate_of(device.type, {}, model::Place::blank({model::SheetId(0), device.id}));
        for (std::size_t i = 0; i < device.type->ports.size(); ++i)
            if (device.type->ports[i].key.text == port)
                return {at->second.spots[i].lead.x + device.at.x, at->second.spots[i].lead.y + device.at.y};
        return device.at;
    }

    void cable(const std::string& type, const Placed& a, const std::string& a_port, const Placed& b,
               const std::string& b_port, std::optional<int> metres, model::SheetId on) {
        if (!design_.cable_types.contains({type}))
            design_.cable_types.put({std::make_shared<const catalogue::CableType>(*shipped_types().cable({type}))});
        auto row = model::Cable::blank(fresh<model::CableId>());
        row.type = {type};
        row.tag = "N" + std::to_string(design_.cables.size() + 1);
        row.a = model::CableEnd{{a.id, {a_port}}};
        row.b = model::CableEnd{{b.id, {b_port}}};
        if (metres) row.length = mm(*metres * 1000);
        design_.cables.put(row);
        const auto from = lead_at(a, a_port);
        const auto to = lead_at(b, b_port);
        auto line = model::CableLine::blank({on, row.id});
        const auto middle = (from.x + to.x) / 2;
        if (from.y != to.y) line.bends = {{middle, from.y}, {middle, to.y}};
        design_.cable_lines.put(line);
    }

    void module(const Placed& device, const std::string& port, const std::string& type) {
        auto row = model::PortOverride::blank({device.id, {port}});
        row.module = shipped(type)->key;
        design_.port_overrides.put(row);
    }

    void stream(const Placed& encoder, catalogue::StreamKind kind, base::BitRate rate) {
        auto row = model::Stream::blank(fresh<model::StreamId>());
        const int number = static_cast<int>(design_.streams.size()) + 1;
        row.tag = "S-" + std::to_string(number);
        row.encoder = encoder.id;
        row.kind = kind;
        row.group = base::Ipv4{0xEFC00100U + static_cast<std::uint32_t>(number)};  // from 239.192.1.1
        row.payload_rate = rate;
        row.payload_octets = 1316;
        design_.streams.put(row);
        if (kind == catalogue::StreamKind::video) pictures_.push_back(row.id);
    }

    Placed build_core(int aggregations) {
        core_sheet_ = sheet("Core");
        auto core = device(embed(core_type(aggregations)), "SW-CORE", core_sheet_, 300, 60, true);
        auto row = *design_.devices.find(core.id);
        row.bridging.priority = 4096;
        row.bridging.queriers = {{vlan_, base::Ipv4{0x0A400001}}};
        design_.devices.put(row);
        return core;
    }

    void build_aggregation(int number, const Placed& core, int accesses) {
        const auto tag = "SW-G" + std::to_string(number + 1);
        const auto on = sheet("Aggregation " + std::to_string(number + 1));
        const auto* type = shipped("switch-aggregation-24");
        auto row_of = [](int n) { return 60 + 110 * n; };
        auto aggregation = device(type, tag, core_sheet_, number % 2 ? 520 : 60, row_of(number / 2), true);
        cable("dac-40g-3m", core, std::to_string(number + 1), aggregation, "25", std::nullopt, core_sheet_);
        aggregation = place(aggregation, on, 60, 60);
        const int first = number * access_per_aggregation;
        for (int n = 0; n < access_per_aggregation && first + n < accesses; ++n) {
            const auto access = build_access(first + n);
            const auto shown = place(access, on, 250 + 110 * (n % 5), 60 + 200 * (n / 5));
            const auto port = std::to_string(n + 1);
            module(aggregation, port, "sfp-10gbase-sr");
            module(access, std::to_string(uplink_port), "sfp-10gbase-sr");
            cable("fibre-om4", aggregation, port, shown, std::to_string(uplink_port), 20 + draw(120), on);
        }
    }

    Placed build_access(int number) {
        auto room = model::Room::blank(fresh<model::RoomId>());
        room.number = std::to_string(number + 1);
        room.name = "Building " + room.number;
        room_ = room.id;
        design_.rooms.put(room);
        const auto on = sheet(room.name);
        const auto access =
            device(shipped("switch-access-48-poe"), "SW-A" + std::to_string(number + 1), on, 300, 60, true);
        const int here = std::min(endpoints_per_access, endpoints_ - number * endpoints_per_access);
        for (int n = 0; n < here; ++n) build_endpoint(n, access, on);
        return access;
    }

    void build_endpoint(int n, const Placed& access, model::SheetId on) {
        const bool encodes = n < encoders_per_access;
        const int y = 60 + 35 * (encodes ? n : n - encoders_per_access);
        const auto number = std::to_string(++numbers_[encodes]);
        const auto endpoint = device(shipped(encodes ? "skiff-encoder" : "skiff-decoder"),
                                     (encodes ? "ENC-" : "DEC-") + number, on, encodes ? 130 : 450, y, true);
        cable("copper-cat6a", endpoint, "net", access, std::to_string(n + 1), 10 + draw(75), on);
        if (encodes) {
            stream(endpoint, catalogue::StreamKind::video, base::BitRate::from_count(200000000));
            stream(endpoint, catalogue::StreamKind::audio, base::BitRate::from_count(2304000));
        } else {
            decoders_.push_back(endpoint.id);
        }
        if (rooms_) build_partner(endpoint, encodes, number, on, y);
    }

    void build_partner(const Placed& endpoint, bool encodes, const std::string& number, model::SheetId on, int y) {
        const auto partner = device(shipped(encodes ? "laptop-plate" : "display-24"),
                                    (encodes ? "LP-" : "MON-") + number, on, encodes ? 45 : 540, y, false);
        cable("hdmi-2m", encodes ? partner : endpoint, "hdmi-out", encodes ? endpoint : partner, "hdmi-in",
              std::nullopt, on);
    }

    /// In three presets every decoder shows some picture, in the fourth about half of them do.
    void subscribe_all() {
        if (pictures_.empty()) return;
        for (std::size_t preset = 0; preset < presets_.size(); ++preset)
            for (const auto decoder : decoders_) {
                if (preset == 3 && draw(2) == 0) continue;
                auto row = model::Subscription::blank(fresh<model::SubscriptionId>());
                row.preset = presets_[preset];
                row.decoder = decoder;
                row.input = {"picture"};
                row.stream = pictures_[static_cast<std::size_t>(draw(static_cast<int>(pictures_.size())))];
                design_.subscriptions.put(row);
            }
    }

    int endpoints_;
    bool rooms_;
    base::IdSource ids_;
    model::Design design_;
    model::VlanId vlan_{0};
    std::optional<model::RoomId> room_;
    model::SheetId core_sheet_{0};
    int hosts_ = 0;
    std::map<bool, int> numbers_;
    std::vector<model::PresetId> presets_;
    std::vector<model::StreamId> pictures_;
    std::vector<model::DeviceId> decoders_;
    std::map<const catalogue::DeviceType*, layout::Plate> plates_;
};

}  // namespace campus_detail

model::Design campus(int endpoints, std::uint64_t seed, CampusParts parts) {
    return campus_detail::Builder(endpoints, seed, parts).build();
}

}  // namespace streamwright::test
