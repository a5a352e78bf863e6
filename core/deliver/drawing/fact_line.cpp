// Facts on plates.
#include "core/deliver/drawing/fact_line.h"

#include "core/deliver/drawing/sheet_lines.h"

#include <algorithm>

namespace streamwright::deliver {

namespace fact_detail {

std::string sends(const Scene& scene, const model::Device& device) {
    const model::Stream* first = nullptr;
    int more = -1;
    for (const auto& stream : scene.design.streams) {
        if (stream.encoder != device.id) continue;
        ++more;
        if (!first || stream.tag < first->tag) first = &stream;
    }
    if (!first) return "no stream";
    auto words = first->tag + " " + wire_words(*first, scene.book.numbers);
    if (more > 0) words += " + " + std::to_string(more);
    return words;
}

const model::Preset* first_preset(const model::Design& design) {
    const model::Preset* first = nullptr;
    for (const auto& preset : design.presets)
        if (!first || std::pair(preset.number, preset.id) < std::pair(first->number, first->id)) first = &preset;
    return first;
}

std::string shows(const Scene& scene, const model::Device& device) {
    const auto* preset = first_preset(scene.design);
    std::vector<std::string> tags;
    for (const auto& subscription : scene.design.subscriptions) {
        if (!preset || subscription.preset != preset->id || subscription.decoder != device.id) continue;
        const auto* stream = scene.design.streams.find(subscription.stream);
        if (stream && std::ranges::find(tags, stream->tag) == tags.end()) tags.push_back(stream->tag);
    }
    if (tags.empty()) return "shows nothing";
    std::ranges::sort(tags);
    std::string words = "shows";
    for (std::size_t i = 0; i < tags.size(); ++i) words += (i == 0 ? " " : ", ") + tags[i];
    return words;
}

std::string whole_watts(base::Power power) { return std::to_string((power.count() + 999) / 1000); }

std::string feeds(const Scene& scene, int index, const catalogue::DeviceType& type) {
    const auto& wiring = scene.facts.get<graph::Wiring>();
    int free = 0;
    for (std::size_t i = 0; i < type.ports.size(); ++i)
        free += is_network(type.ports[i].signal) && wiring.cables_at({index, static_cast<int>(i)}).empty();
    auto words = std::to_string(free) + " free";
    for (const auto& power : scene.facts.get<analysis::PowerBudget>().switches)
        if (power.device == index && power.budget)
            words = "PoE " + whole_watts(power.reserved) + " of " + whole_watts(*power.budget) + " W, " + words;
    return words;
}

}  // namespace fact_detail

std::string wire_words(const model::Stream& stream, const base::NumberStyle& numbers) {
    constexpr std::int64_t mega = 1'000'000;
    const auto bits = analysis::wire_rate(stream, false).ceil().count();
    return print(base::BitRate::from_count((bits + mega - 1) / mega * mega), numbers);
}

std::string fact_line(const Scene& scene, const model::Device& device) {
    using namespace fact_detail;
    const auto* type = type_in(scene, device);
    if (!type) return {};
    const auto index = scene.facts.get<graph::Wiring>().device_index(device.id);
    if (type->kind == catalogue::DeviceKind::network_switch) return index ? feeds(scene, *index, *type) : "";
    if (!type->codec) return {};
    const auto roles = roles_in(scene, device);
    const bool encodes = std::ranges::find(roles, catalogue::Role::encoder) != roles.end();
    const bool decodes = std::ranges::find(roles, catalogue::Role::decoder) != roles.end();
    if (encodes && decodes) return sends(scene, device) + ", " + shows(scene, device);
    if (encodes) return sends(scene, device);
    return decodes ? shows(scene, device) : "role not chosen";
}

}  // namespace streamwright::deliver
