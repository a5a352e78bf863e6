#include "tests/support/random_network.h"

#include "tests/support/design_builder.h"

#include <algorithm>
#include <map>
#include <random>

namespace streamwright::test {

namespace random_network_detail {

namespace cat = catalogue;
using namespace base::literals;

class Maker {
public:
    Maker(unsigned seed, bool plain) : random_(seed), plain_(plain), b_(seed) {}

    model::Design make() {
        add_vlans();
        add_switches();
        add_links();
        if (plain_)
            for (const auto id : switches_)
                b_.change<model::Device>(id, [](auto& row) { row.bridging.snooping_off = true; });
        else
            set_up_switches();
        const int devices = 2 + below(9);
        for (int i = 0; i < devices; ++i) add_device(i);
        if (!plain_ && below(3) == 0) add_direct();
        if (!plain_ && once_in(2)) pair_streams();
        subscribe();
        if (!plain_) lay_ducts();
        return std::move(b_.design);
    }

private:
    int below(int n) { return static_cast<int>(random_() % static_cast<unsigned>(n)); }
    bool once_in(int n) { return below(n) == 0; }
    std::string next_port(std::size_t of) { return std::to_string(++ports_[of]); }
    void cable(const model::PortRef& a, const model::PortRef& b) {
        cables_.push_back(b_.cable(types::cat6a(), a, b, 10_m, "N" + std::to_string(cables_.size())));
    }

    void add_vlans() {
        vlans_.push_back(b_.vlan(1, "AV", "10.1.0.0/16"));
        b_.usual_vlan(vlans_.front());
        if (!plain_ && once_in(2)) vlans_.push_back(b_.vlan(20, "More", "10.2.0.0/16"));
    }

    cat::DeviceType switch_type() {
        auto type = types::make_switch(40, once_in(2) ? 1_Gbps : 10_Gbps, 0);
        if (plain_) return type;
        auto& facts = *type.bridging;
        const int kind = below(6);
        if (kind == 1) facts.unknown_groups = cat::UnknownGroups::flood;
        if (kind == 2) facts.unknown_groups = cat::UnknownGroups::drop;
        if (kind == 3) facts.lookup = cat::GroupLookup::mac;
        if (kind == 4) facts.floods_without_querier = true;
        if (kind == 5) facts.trees = cat::TreeKind::per_vlan;
        type.key.text += "-" + std::to_string(kind);
        auto inlet = types::make_port("mains", cat::Signal::power, cat::Way::in, cat::Connector::iec_c14);
        type.ports.push_back(inlet);
        return type;
    }

    void add_switches() {
        const int count = 1 + below(7);
        const bool alike = once_in(2);
        const auto first = switch_type();
        for (int i = 0; i < count; ++i) {
            switches_.push_back(b_.device(alike ? first : switch_type(), "SW-" + std::to_string(i)));
            ports_.push_back(0);
        }
        b_.querier(switches_[static_cast<std::size_t>(below(count))], vlans_.front(), "10.1.0.9");
    }

    /// A tree and some links more, some of them as groups.
    void add_links() {
        const int count = static_cast<int>(switches_.size());
        const auto link = [&](int x, int y, const std::string& group) {
            const auto a = static_cast<std::size_t>(x), b = static_cast<std::size_t>(y);
            const auto from = port_of(switches_[a], next_port(a)), to = port_of(switches_[b], next_port(b));
            cable(from, to);
            for (const auto& port : {from, to}) {
                if (!group.empty()) b_.port(port, [&](auto& row) { row.aggregate = group; });
                if (vlans_.size() > 1) b_.port(port, [&](auto& row) { row.tagged = {vlans_[1]}; });
                if (!plain_ && once_in(9)) b_.port(port, [&](auto& row) { row.path_cost = 1 + below(5000); });
                if (!plain_ && once_in(30)) b_.port(port, [&](auto& row) { row.router_port = true; });
            }
        };
        for (int i = 1; i < count; ++i) link(i, below(i), "");
        for (int more = below(4); count > 1 && more > 0; --more) {
            const int x = below(count), y = (x + 1 + below(count - 1)) % count;
            const auto group = !plain_ && once_in(2) ? "g" + std::to_string(more) : "";
            link(x, y, group);
            if (!group.empty()) link(x, y, group);
        }
    }

    void set_up_switches() {
        for (const auto id : switches_)
            b_.change<model::Device>(id, [&](auto& row) {
                auto& set = row.bridging;
                if (once_in(4)) set.priority = 4096 * below(16);
                if (once_in(9)) set.snooping_off = true;
                if (once_in(8)) set.stack = "stack";
                if (once_in(5) && set.queriers.empty()) set.queriers.push_back({vlans_.back(), base::Ipv4{0x0A020001}});
                if (once_in(12)) set.queriers.clear();
            });
        if (once_in(2)) feed_switches();
    }

    void feed_switches() {
        auto type = types::make_source();
        type.key = {"test.ups"};
        type.kind = cat::DeviceKind::ups;
        for (int i = 1; i <= 8; ++i)
            type.ports.push_back(types::make_port("out" + std::to_string(i), cat::Signal::power, cat::Way::out,
                                                  cat::Connector::iec_c13));
        const auto ups = b_.device(type, "UPS");
        int outlet = 0;
        for (const auto id : switches_)
            if (once_in(2)) cable(port_of(ups, "out" + std::to_string(++outlet)), port_of(id, "mains"));
    }

    void hang(model::DeviceId device, const std::string& port, std::optional<model::VlanId> vlan) {
        const auto at = static_cast<std::size_t>(below(static_cast<int>(switches_.size())));
        const auto there = port_of(switches_[at], next_port(at));
        cable(port_of(device, port), there);
        if (vlan) b_.port(there, [&](auto& row) { row.untagged = *vlan; });
    }

    void add_device(int number) {
        const auto vlan = vlans_.size() > 1 && once_in(2) ? std::optional(vlans_[1]) : std::nullopt;
        const auto name = std::to_string(number);
        const bool encodes = once_in(2);
        if (!plain_ && !encodes && once_in(3)) return add_chain(name, vlan);
        auto type = encodes ? types::make_encoder() : types::make_decoder();
        const bool two = !plain_ && once_in(3);
        if (two) {
            type.key.text += "-two";
            type.ports.push_back(types::make_network_port("net2", {1_Gbps}));
        }
        const auto id = b_.device(type, (encodes ? "ENC-" : "DEC-") + name);
        hang(id, "net", vlan);
        if (two) hang(id, "net2", vlan);
        if (encodes)
            for (int i = 0, n = 1 + below(2); i < n; ++i) send(id);
        else
            decoders_.push_back(id);
        if (!plain_ && once_in(12))
            b_.change<model::Device>(id, [&](auto& row) {
                row.bridging.queriers = {{vlans_.front(), base::Ipv4{0x0A010003}}};
            });
    }

    void send(model::DeviceId id) {
        const int number = static_cast<int>(streams_.size()) + 1;
        const bool shared = !plain_ && once_in(8);  // the same low 23 bits as another
        const auto group = (shared ? "239.128.1." : "239.0.1.") + std::to_string(shared ? 1 : number);
        streams_.push_back(b_.stream(id, base::BitRate::from_count((50 + below(500)) * 1'000'000LL), group));
    }

    void add_chain(const std::string& name, std::optional<model::VlanId> vlan) {
        const int length = 1 + below(3);
        model::DeviceId last{0};
        for (int i = 0; i < length; ++i) {
            auto type = types::make_chained_decoder();
            const auto id = b_.device(type, "CH-" + name + "-" + std::to_string(i));
            if (i == 0)
                hang(id, "net", vlan);
            else
                cable(port_of(last, "aux"), port_of(id, "net"));
            decoders_.push_back(id);
            last = id;
        }
        if (once_in(2)) hang(last, "aux", vlan);
    }

    void add_direct() {
        const auto encoder = b_.device(types::encoder(), "ENC-D"), decoder = b_.device(types::decoder(), "DEC-D");
        cable(port_of(encoder, "net"), port_of(decoder, "net"));
        send(encoder);
        decoders_.push_back(decoder);
    }

    /// Each stream is in one pair at most.
    void pair_streams() {
        for (std::size_t i = 0; i + 1 < streams_.size(); i += 2)
            if (once_in(2)) b_.change<model::Stream>(streams_[i], [&](auto& row) { row.twin = streams_[i + 1]; });
    }

    void subscribe() {
        const int presets = plain_ ? 1 : below(3);
        for (int p = 0; p < presets; ++p) {
            const auto preset = b_.preset("P" + std::to_string(p));
            for (const auto decoder : decoders_)
                if (!streams_.empty() && !once_in(5))
                    b_.subscribe(preset, streams_[static_cast<std::size_t>(below(static_cast<int>(streams_.size())))],
                                 decoder);
        }
    }

    void lay_ducts() {
        for (const auto id : cables_)
            if (once_in(3)) b_.change<model::Cable>(id, [&](auto& row) { row.duct = once_in(2) ? "North" : "South"; });
    }

    std::mt19937 random_;
    bool plain_;
    DesignBuilder b_;
    std::vector<model::VlanId> vlans_;
    std::vector<model::DeviceId> switches_, decoders_;
    std::vector<int> ports_;
    std::vector<model::CableId> cables_;
    std::vector<model::StreamId> streams_;
};

}  // namespace random_network_detail

model::Design random_network(unsigned seed) { return random_network_detail::Maker(seed, false).make(); }
model::Design random_plain_network(unsigned seed) { return random_network_detail::Maker(seed, true).make(); }

}  // namespace streamwright::test
