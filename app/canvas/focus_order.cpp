#include "app/canvas/focus_order.h"

#include <algorithm>

namespace streamwright::app {

std::vector<Chosen> focus_order(const SheetScene& scene) {
    std::vector<const PlateOnSheet*> plates;
    for (const auto& plate : scene.plates()) plates.push_back(&plate);
    // Plates whose tops differ by less than a band are read as one line.
    constexpr double band_mm = 30;
    const auto key = [](const PlateOnSheet* plate) {
        const QPointF at = to_mm(plate->plate.body.at);
        return std::tuple(std::floor(at.y() / band_mm), at.x(), at.y(), plate->device);
    };
    std::ranges::sort(plates, {}, key);
    std::vector<Chosen> order;
    for (const auto* plate : plates) {
        order.emplace_back(plate->device);
        for (const auto& spot : plate->plate.spots)
            if (const auto port = plate->port(spot.port)) order.emplace_back(*port);
    }
    return order;
}

std::optional<Chosen> next_in(const std::vector<Chosen>& order, const std::optional<Chosen>& from, bool forward) {
    if (order.empty()) return std::nullopt;
    const auto at = from ? std::ranges::find(order, *from) : order.end();
    if (at == order.end()) return forward ? order.front() : order.back();
    if (forward) return std::next(at) == order.end() ? std::nullopt : std::optional(*std::next(at));
    return at == order.begin() ? std::nullopt : std::optional(*std::prev(at));
}

}  // namespace streamwright::app
