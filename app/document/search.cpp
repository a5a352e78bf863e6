#include "app/document/search.h"

#include "app/words/words.h"
#include "core/base/enum_text.h"
#include "core/base/net_address.h"

#include <algorithm>

namespace streamwright::app {

namespace search_detail {

constexpr Qt::CaseSensitivity any_case = Qt::CaseInsensitive;

QString room_name(const model::Design& design, const model::RoomId& id) {
    const auto* room = design.rooms.find(id);
    return room ? shown(room->number + ' ' + room->name).trimmed() : QString();
}

Findable of(const model::Design& design, const model::Device& device) {
    Findable found{Chosen(device.id), shown(device.tag), {}};
    if (const auto* type = design.type_of(device)) {
        found.also << shown(type->name);
        found.also << shown(std::string(base::enum_text(type->kind))).replace('_', ' ');
    }
    if (device.room) found.also << room_name(design, *device.room);
    found.also << shown(device.host_name) << shown(device.serial) << shown(device.note);
    for (const auto& host : device.addresses)
        if (host.address) found.also << shown(base::print(*host.address));
    return found;
}

Findable of(const model::Design& design, const model::Cable& cable) {
    Findable found{Chosen(cable.id), shown(cable.tag), {shown(cable.note)}};
    if (const auto* row = design.cable_types.find(cable.type)) found.also << shown(row->type->name);
    return found;
}

Findable of(const model::Stream& stream) {
    Findable found{Chosen(stream.id), shown(stream.tag), {shown(stream.note)}};
    if (stream.group) found.also << shown(base::print(*stream.group));
    return found;
}

/// How well the text fits, 0 best; nothing where a word of it is missing.
std::optional<int> rank(const Findable& each, const QString& text, const QStringList& words) {
    const auto fits = [&](const QString& word) {
        return each.name.contains(word, any_case) ||
               std::ranges::any_of(each.also, [&](const QString& a) { return a.contains(word, any_case); });
    };
    if (!std::ranges::all_of(words, fits)) return std::nullopt;
    if (each.name.compare(text, any_case) == 0) return 0;
    if (each.also.contains(text, any_case)) return 1;
    if (each.name.startsWith(text, any_case)) return 2;
    return each.name.contains(text, any_case) ? 3 : 4;
}

/// A run of digits of the text, from there; empty where none begins.
QString digits_at(const QString& text, qsizetype at) {
    auto end = at;
    while (end < text.size() && text[end].isDigit()) ++end;
    return text.mid(at, end - at);
}

/// Letters by the alphabet, figures by their value; the collator of the plain locale knows no figures.
bool counts_before(const QString& a, const QString& b) {
    qsizetype i = 0, j = 0;
    while (i < a.size() && j < b.size()) {
        const auto x = digits_at(a, i), y = digits_at(b, j);
        if (!x.isEmpty() && !y.isEmpty()) {
            const auto m = x.toULongLong(), n = y.toULongLong();
            if (m != n) return m < n;
            i += x.size(), j += y.size();
            continue;
        }
        const auto c = a[i++].toCaseFolded(), d = b[j++].toCaseFolded();
        if (c != d) return c < d;
    }
    return a.size() - i < b.size() - j;
}

}  // namespace search_detail

std::vector<Findable> findables(const model::Design& design) {
    using namespace search_detail;
    std::vector<Findable> all;
    for (const auto& device : design.devices) all.push_back(of(design, device));
    for (const auto& cable : design.cables) all.push_back(of(design, cable));
    for (const auto& stream : design.streams) all.push_back(of(stream));
    for (const auto& frame : design.room_frames)
        all.push_back({Chosen(frame.id), room_name(design, frame.room), {shown(frame.title)}});
    for (const auto& note : design.notes) all.push_back({Chosen(note.id), shown(note.text), {}});
    for (auto& each : all) each.also.removeAll(QString());
    return all;
}

std::vector<Chosen> found_in(const model::Design& design, const QString& text) {
    const auto wanted = text.simplified();
    if (wanted.isEmpty()) return {};
    struct Found {
        int rank;
        Findable found;
    };
    std::vector<Found> hits;
    const auto words = wanted.split(' ');
    for (auto& each : findables(design))
        if (const auto rank = search_detail::rank(each, wanted, words)) hits.push_back({*rank, std::move(each)});
    std::ranges::stable_sort(hits, [](const Found& a, const Found& b) {
        if (a.rank != b.rank) return a.rank < b.rank;
        return search_detail::counts_before(a.found.name, b.found.name);
    });
    std::vector<Chosen> found;
    for (const auto& hit : hits) found.push_back(hit.found.subject);
    return found;
}

}  // namespace streamwright::app
