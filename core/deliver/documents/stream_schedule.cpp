// Stream schedule: every stream with its group, rate and who shows it in which preset.
#include "core/analysis/latency.h"
#include "core/analysis/stream_chain.h"
#include "core/analysis/stream_decoding.h"
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"
#include "core/model/stream_packets.h"

#include <map>

namespace streamwright::deliver {

namespace stream_schedule_detail {

std::vector<Column> columns() {
    return {{"Stream", ColumnKind::text, 16, true},
            {"Encoder", ColumnKind::text, 24, true},
            {"Kind", ColumnKind::text, 14},
            {"VLAN", ColumnKind::text, 12},
            {"Group", ColumnKind::text, 28},
            {"Group MAC", ColumnKind::text, 34},
            {"UDP port", ColumnKind::number, 16},
            {"Payload, Mb/s", ColumnKind::rate_mbps, 20},
            {"On the wire, Mb/s", ColumnKind::rate_mbps, 20},
            {"Encrypted", ColumnKind::text, 16},
            {"Note", ColumnKind::text, 40}};
}

std::string vlan_words(const Source& source, std::size_t index, const model::Stream& stream) {
    auto id = stream.vlan;
    const auto& facts = source.analysis.facts;
    const auto& ways = facts.get<analysis::Forwarding>().streams;
    const auto& vlans = facts.get<analysis::VlanPaths>().vlans;
    if (!id && index < ways.size() && static_cast<std::size_t>(ways[index].vlan) < vlans.size())
        id = vlans[static_cast<std::size_t>(ways[index].vlan)];
    const auto* vlan = id ? source.design.vlans.find(*id) : nullptr;
    return vlan ? std::to_string(vlan->vid) : std::string{};
}

std::string group_mac(const Source& source, int index) {
    for (const auto& use : source.analysis.facts.get<analysis::AddressPlan>().groups)
        if (use.stream == index) return print(use.mac);
    return {};
}

TablePart streams_table(const Source& source) {
    TablePart table;
    table.name = "Streams";
    table.title = "Stream schedule";
    table.columns = columns();
    int index = 0;
    for (const auto& stream : source.design.streams) {
        const auto* encoder = source.design.devices.find(stream.encoder);
        TableRow row;
        row.subject = "stream:" + stream.id.text();
        row.cells = {text_cell(stream.tag),
                     text_cell(encoder ? encoder->tag : ""),
                     text_cell(std::string(base::enum_text(stream.kind))),
                     text_cell(vlan_words(source, static_cast<std::size_t>(index), stream)),
                     stream.group ? text_cell(print(*stream.group)) : Cell(),
                     text_cell(group_mac(source, index)),
                     std::int64_t{stream.udp_port},
                     model::payload_rate_of(stream).ceil(),
                     analysis::wire_rate(stream, false).ceil(),
                     yes_cell(stream.encrypted),
                     text_cell(stream.note)};
        table.rows.push_back(std::move(row));
        ++index;
    }
    std::ranges::stable_sort(table.rows, [](const TableRow& a, const TableRow& b) {
        const auto *x = std::get_if<std::string>(&a.cells[0]), *y = std::get_if<std::string>(&b.cells[0]);
        return counts_before(x ? *x : "", y ? *y : "");
    });
    table.notes = {"On the wire: with RTP, UDP, IP and Ethernet overhead, preamble and gap; untagged."};
    return table;
}

/// What is not stated is told to be so: a rate alone says nothing of the picture.
std::string or_not_stated(std::string words) { return words.empty() ? "not stated" : words; }

std::string level_cell(const model::Stream& stream) {
    if (stream.picture) return analysis::level_words(*stream.picture);
    const auto* level = stream.sound ? standards::audio_level(stream.sound->flow) : nullptr;
    return level ? std::string(level->name) : std::string{};
}

TableRow packets_row(const model::Stream& stream) {
    TableRow row;
    row.subject = "stream:" + stream.id.text();
    row.cells = {text_cell(stream.tag),
                 text_cell(or_not_stated(analysis::essence_words(stream))),
                 text_cell(or_not_stated(analysis::packing_words(stream))),
                 text_cell(level_cell(stream)),
                 text_cell(analysis::packets_a_second(stream)),
                 model::full_payload_octets(stream),
                 model::full_frame_octets(stream),
                 model::payload_rate_of(stream).ceil(),
                 analysis::wire_rate(stream, false).ceil()};
    return row;
}

TablePart packets_table(const Source& source) {
    TablePart table;
    table.name = "Packets";
    table.title = "What streams carry, and in which packets";
    table.columns = {{"Stream", ColumnKind::text, 18, true},          {"Carries", ColumnKind::text, 48},
                     {"Coding and packing", ColumnKind::text, 50},    {"Level", ColumnKind::text, 16},
                     {"Packets a second", ColumnKind::text, 30},      {"Payload, octets", ColumnKind::number, 28},
                     {"Frame, octets", ColumnKind::number, 26},       {"Payload, Mb/s", ColumnKind::rate_mbps, 26},
                     {"On the wire, Mb/s", ColumnKind::rate_mbps, 34}};
    for (const auto& stream : source.design.streams) table.rows.push_back(packets_row(stream));
    std::ranges::stable_sort(table.rows, [](const TableRow& a, const TableRow& b) {
        const auto *x = std::get_if<std::string>(&a.cells[0]), *y = std::get_if<std::string>(&b.cells[0]);
        return counts_before(x ? *x : "", y ? *y : "");
    });
    table.notes = {
        "Where a stream states what it carries, packets and rates follow from it: SMPTE ST 2110-20 and RFC 4175, "
        "ST 2110-22 and RFC 9134, RFC 6184 and 7798, AES67, ST 2110-30 and ST 2110-31. Else its rate is typed in.",
        "Octets: of the largest packet, the payload with its own header, the Ethernet frame untagged.",
        "H.264 and H.265: each picture taken as a mean one of the bit rate."};
    return table;
}

std::string input_label(const Source& source, const model::Device& decoder, const model::InputKey& input) {
    const auto* type = source.design.type_of(decoder);
    if (type && type->codec)
        for (const auto& each : type->codec->inputs)
            if (each.key == input && !each.label.empty()) return each.label;
    return input.text;
}

std::string time_words(const std::optional<base::Duration>& time) { return time ? base::print(*time) : "not known"; }

/// What each stream of each preset is shown by: skew is asked among those alone.
using Together = std::map<std::pair<model::PresetId, model::StreamId>, std::vector<analysis::SubscriptionLatency>>;

/// Blank where no other display shows the stream.
std::string skew_words(const Together& together, const analysis::SubscriptionLatency& latency) {
    const auto& shows = together.at({latency.preset, latency.stream});
    return shows.size() < 2 ? std::string() : time_words(analysis::skew(shows, latency));
}

TableRow subscription_row(const Source& source, const model::Subscription& subscription, const model::Preset& preset,
                          const analysis::SubscriptionLatency& latency, const Together& together) {
    const auto* decoder = source.design.devices.find(subscription.decoder);
    const auto* stream = source.design.streams.find(subscription.stream);
    TableRow row;
    row.subject = "subscription:" + subscription.id.text();
    row.group = preset.name;
    row.cells = {text_cell(preset.name),
                 text_cell(decoder ? decoder->tag : ""),
                 text_cell(decoder ? input_label(source, *decoder, subscription.input) : subscription.input.text),
                 text_cell(decoder ? room_words(source.design, *decoder) : ""),
                 text_cell(stream ? stream->tag : ""),
                 text_cell(time_words(latency.most)),
                 text_cell(skew_words(together, latency))};
    return row;
}

TablePart presets_table(const Source& source) {
    TablePart table;
    table.name = "Presets";
    table.title = "Who shows what, by preset";
    table.columns = {{"Preset", ColumnKind::text, 30},       {"Decoder", ColumnKind::text, 24, true},
                     {"Input", ColumnKind::text, 24},        {"Room", ColumnKind::text, 14},
                     {"Stream", ColumnKind::text, 16, true}, {"Latency at most", ColumnKind::text, 24},
                     {"Skew at most", ColumnKind::text, 24}};
    const auto latencies = analysis::find_latencies(source.analysis.facts);
    Together together;
    for (const auto& each : latencies) together[{each.preset, each.stream}].push_back(each);
    std::vector<const model::Preset*> presets;
    for (const auto& preset : source.design.presets) presets.push_back(&preset);
    std::ranges::stable_sort(presets, {}, [](const model::Preset* p) { return std::pair(p->number, p->id); });
    for (const auto* preset : presets) {
        const auto first = table.rows.size();
        std::size_t index = 0;
        for (const auto& subscription : source.design.subscriptions) {
            const auto at = index++;
            if (subscription.preset == preset->id)
                table.rows.push_back(subscription_row(source, subscription, *preset, latencies[at], together));
        }
        std::sort(table.rows.begin() + static_cast<std::ptrdiff_t>(first), table.rows.end(),
                  [](const TableRow& a, const TableRow& b) {
                      const auto *x = std::get_if<std::string>(&a.cells[1]), *y = std::get_if<std::string>(&b.cells[1]);
                      return counts_before(x ? *x : "", y ? *y : "");
                  });
    }
    table.notes = {
        "Latency: encoding, one full packet put on every line of the way, forwarding of each switch, cables and "
        "decoding, "
        "and at most one packet of each other stream of the preset ahead on each line.",
        "Skew: how far apart displays of one stream may be. The display's own delay comes on top."};
    return table;
}

}  // namespace stream_schedule_detail

Content make_stream_schedule(const Source& source) {
    using namespace stream_schedule_detail;
    return {
        "stream-schedule", "Stream schedule", {streams_table(source), presets_table(source), packets_table(source)}};
}

}  // namespace streamwright::deliver
