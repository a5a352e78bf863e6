// The dice of random_edit, and the verbs that its files draw.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/model/edits/all_edits.h"

#include <iterator>
#include <optional>
#include <random>
#include <string>
#include <vector>

namespace streamwright::test::random_edit_detail {

using namespace model;
using namespace base::literals;
namespace cat = catalogue;

/// The design, what may be placed, and the dice.
struct Draw {
    const Design& design;
    const cat::Catalogue& library;
    std::mt19937_64& random;

    std::size_t below(std::size_t count) { return static_cast<std::size_t>(random() % count); }
    int between(int low, int high) { return low + static_cast<int>(below(static_cast<std::size_t>(high - low + 1))); }
    bool once_in(std::size_t times) { return below(times) == 0; }

    template <class Rows>
    const auto* row(const Rows& rows) {
        if (rows.size() == 0) return static_cast<decltype(&*rows.begin())>(nullptr);
        auto at = rows.begin();
        std::advance(at, static_cast<std::ptrdiff_t>(below(rows.size())));
        return &*at;
    }
    /// The key of a random row, or nothing; nothing now and then even if there are some.
    template <class Rows>
    auto maybe_key(const Rows& rows) {
        using Key = std::remove_cvref_t<decltype(rows.begin()->key())>;
        const auto* found = once_in(4) ? nullptr : row(rows);
        return found ? std::optional<Key>(found->key()) : std::nullopt;
    }
    template <class AnyId>
    AnyId fresh() {
        return AnyId(random());
    }
    SheetPoint point() {
        return {base::Length::from_count(between(0, 1600) * 250), base::Length::from_count(between(0, 1100) * 250)};
    }
    std::vector<SheetPoint> points() {
        std::vector<SheetPoint> list(below(4));
        for (auto& each : list) each = point();
        return list;
    }
    std::string word() {
        static const std::vector<std::string> words{"Hall", "Foyer", "Lectern", "Grün 2", "Écran", "a, \"b\"", "日本"};
        return words[below(words.size())] + ' ' + std::to_string(below(1000));
    }
    std::optional<PortRef> port() {
        const auto* device = row(design.devices);
        const auto* type = device ? design.type_of(*device) : nullptr;
        const auto* found = type ? row(type->ports) : nullptr;
        return found ? std::optional(PortRef{device->id, found->key}) : std::nullopt;
    }
    base::Ipv4 group() { return {0xEF010000U + static_cast<std::uint32_t>(below(40)) + (once_in(5) ? 0x800000U : 0U)}; }
    base::Ipv4 host() { return {0x0A000000U + static_cast<std::uint32_t>(below(300))}; }
};

using Drawn = std::optional<AnyEdit>;

Drawn configure_device(Draw& d);
Drawn configure_port(Draw& d);
Drawn connect(Draw& d);
Drawn move_querier(Draw& d);
Drawn reconnect(Draw& d);
Drawn set_cable_type(Draw& d);
Drawn set_length(Draw& d);
Drawn set_stream(Draw& d);
Drawn subscribe(Draw& d);

}  // namespace streamwright::test::random_edit_detail
