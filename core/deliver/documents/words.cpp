// Shared words of tables.
#include "core/deliver/documents/words.h"

#include <cctype>

namespace streamwright::deliver {

namespace words_detail {

bool is_digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }

/// The digits at the front of a text, without leading zeros.
std::string_view number_at(std::string_view text) {
    std::size_t end = 0;
    while (end < text.size() && is_digit(text[end])) ++end;
    std::size_t start = 0;
    while (start + 1 < end && text[start] == '0') ++start;
    return text.substr(start, end - start);
}

std::size_t digits_at(std::string_view text) {
    std::size_t end = 0;
    while (end < text.size() && is_digit(text[end])) ++end;
    return end;
}

/// The text without the digits at its end.
std::string_view stem_of(std::string_view text) {
    while (!text.empty() && is_digit(text.back())) text.remove_suffix(1);
    return text;
}

/// One more than the digits say, in as many places at least: 009 becomes 010, 999 becomes 1000.
std::string next_number(std::string_view digits) {
    std::string next(digits);
    for (auto digit = next.rbegin(); digit != next.rend(); ++digit) {
        if (*digit != '9') return ++*digit, next;
        *digit = '0';
    }
    return '1' + next;
}

}  // namespace words_detail

const graph::Wiring& wiring_of(const Source& source) { return source.analysis.facts.get<graph::Wiring>(); }

std::string revision_letter(const model::Design& design) {
    const model::Revision* newest = nullptr;
    for (const auto& revision : design.revisions)
        if (!newest || revision.number > newest->number) newest = &revision;
    return newest ? newest->letter : std::string{};
}

std::string device_tag(const graph::Wiring& wiring, int device) {
    return wiring.devices[static_cast<std::size_t>(device)].row->tag;
}

std::string port_label(const graph::Wiring& wiring, graph::PortAt at) {
    const auto& port = wiring.port_type(at);
    return port.label.empty() ? port.key.text : port.label;
}

std::string room_words(const model::Design& design, const model::Device& device) {
    const auto* room = device.room ? design.rooms.find(*device.room) : nullptr;
    if (!room && device.rack)
        if (const auto* rack = design.racks.find(device.rack->rack); rack && rack->room)
            room = design.rooms.find(*rack->room);
    if (!room) return {};
    return room->number.empty() ? room->name : room->number;
}

std::string rack_words(const model::Design& design, const model::Device& device) {
    const auto* rack = device.rack ? design.racks.find(device.rack->rack) : nullptr;
    return rack ? rack->name + " U" + std::to_string(device.rack->unit) : std::string{};
}

std::string_view connector_words(catalogue::Connector connector) {
    using catalogue::Connector;
    static constexpr std::pair<Connector, std::string_view> names[] = {{Connector::hdmi, "HDMI"},
                                                                       {Connector::displayport, "DisplayPort"},
                                                                       {Connector::bnc, "BNC"},
                                                                       {Connector::usb_a, "USB-A"},
                                                                       {Connector::usb_b, "USB-B"},
                                                                       {Connector::usb_c, "USB-C"},
                                                                       {Connector::rj45, "RJ45"},
                                                                       {Connector::sfp, "SFP"},
                                                                       {Connector::sfp_plus, "SFP+"},
                                                                       {Connector::sfp28, "SFP28"},
                                                                       {Connector::qsfp_plus, "QSFP+"},
                                                                       {Connector::lc_duplex, "LC duplex"},
                                                                       {Connector::lc_simplex, "LC"},
                                                                       {Connector::sc_duplex, "SC duplex"},
                                                                       {Connector::mpo, "MPO"},
                                                                       {Connector::jack_3_5, "3.5 mm jack"},
                                                                       {Connector::terminal, "terminals"},
                                                                       {Connector::xlr, "XLR"},
                                                                       {Connector::de9, "DE-9"},
                                                                       {Connector::ir_jack, "infrared jack"},
                                                                       {Connector::iec_c14, "IEC C14"},
                                                                       {Connector::iec_c13, "IEC C13"},
                                                                       {Connector::iec_c8, "IEC C8"},
                                                                       {Connector::iec_c20, "IEC C20"},
                                                                       {Connector::iec_c19, "IEC C19"},
                                                                       {Connector::speaker, "speaker"}};
    for (const auto& [each, name] : names)
        if (each == connector) return name;
    return {};
}

std::string_view signal_words(catalogue::Signal signal) {
    using catalogue::Signal;
    static constexpr std::pair<Signal, std::string_view> names[] = {
        {Signal::video, "video"}, {Signal::extender, "extender link"}, {Signal::copper, "network, copper"},
        {Signal::audio, "audio"}, {Signal::fibre, "network, fibre"},   {Signal::usb, "USB"},
        {Signal::power, "power"}, {Signal::control, "control"}};
    for (const auto& [each, name] : names)
        if (each == signal) return name;
    return {};
}

std::string role_words(const graph::Wiring& wiring, int device) {
    const auto* type = wiring.devices[static_cast<std::size_t>(device)].type;
    if (!type) return {};
    if (type->kind == catalogue::DeviceKind::network_switch) return "trunk";
    const auto roles = wiring.roles(device);
    std::vector<std::string> names;
    for (const auto role : roles) names.emplace_back(base::enum_text(role));
    if (!names.empty()) return listed(names);
    std::string name(base::enum_text(type->kind));
    std::ranges::replace(name, '_', ' ');
    return name;
}

std::optional<FarEnd> far_end_of(const Source& source, graph::PortAt at) {
    const auto& wiring = wiring_of(source);
    const auto cables = wiring.cables_at(at);
    if (cables.empty()) return std::nullopt;
    FarEnd far;
    const auto first = wiring.far_end(cables.front(), at);
    const auto& runs = source.analysis.facts.get<graph::Runs>();
    const auto index = static_cast<std::size_t>(cables.front());
    far.cables = {cables.front()};
    far.device = first;
    if (index >= runs.run_of_cable.size()) return far;
    const auto& run = runs.list[static_cast<std::size_t>(runs.run_of_cable[index])];
    far.cables = run.cables;
    if (run.a == at) {
        far.device = run.b;
    } else {
        far.device = run.a;
        std::ranges::reverse(far.cables);
    }
    if (first && first != far.device) far.panel = first;
    return far;
}

Cell text_cell(std::string text) { return text.empty() ? Cell() : Cell(std::move(text)); }
Cell yes_cell(bool value) { return value ? Cell(std::string("yes")) : Cell(); }

bool counts_before(std::string_view a, std::string_view b) {
    using namespace words_detail;
    while (!a.empty() && !b.empty()) {
        if (is_digit(a.front()) && is_digit(b.front())) {
            const auto x = number_at(a), y = number_at(b);
            if (x.size() != y.size()) return x.size() < y.size();
            if (x != y) return x < y;
            a.remove_prefix(digits_at(a));
            b.remove_prefix(digits_at(b));
        } else {
            if (a.front() != b.front()) return a.front() < b.front();
            a.remove_prefix(1);
            b.remove_prefix(1);
        }
    }
    return a.size() < b.size();
}

bool follows(std::string_view tag, std::string_view before) {
    using namespace words_detail;
    const auto stem = stem_of(before);
    return stem.size() < before.size() && tag == std::string(stem) + next_number(before.substr(stem.size()));
}

std::string listed_in_runs(const std::vector<std::string>& tags) {
    std::vector<std::string> items;
    for (std::size_t first = 0; first < tags.size();) {
        std::size_t last = first;
        while (last + 1 < tags.size() && follows(tags[last + 1], tags[last])) ++last;
        if (last - first < 2) last = first;  // two stand as they are
        items.push_back(last == first ? tags[first] : tags[first] + " to " + tags[last]);
        first = last + 1;
    }
    return listed(items);
}

std::string listed(const std::vector<std::string>& items) {
    std::string text;
    for (const auto& item : items) text += (text.empty() ? "" : ", ") + item;
    return text;
}

}  // namespace streamwright::deliver
