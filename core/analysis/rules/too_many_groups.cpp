// A receiver joins a limited number of groups, often by a setting of its operating system; the join above it fails and
// that picture stays black. Judged where the type states the limit.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <map>
#include <set>
#include <tuple>

namespace streamwright::analysis::rules::too_many_groups {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 joins %2 groups in preset %3, and its type joins %4 at once: %5 too many.")};

constexpr standards::Citation sources[] = {
    {"trade", "receivers in software", "join a limited number of groups", standards::Standing::practice}};

constexpr RuleWords words{
    .id = "too-many-groups",
    .theme = Theme::multicast,
    .title = "Receiver joins too many groups",
    .meaning = "The joins above the limit fail: some of its pictures stay black, or change places.",
    .measured =
        "The different groups that its subscriptions ask for, in the preset that has most, are "
        "held against the number that its type can join at once.",
    .remedy =
        "Raise the setting where the receiver has one and state it in the type, spread the "
        "streams over more receivers, or show fewer.",
    .patterns = patterns,
    .sources = sources};

/// What tells one joined group from another; streams without a group each count as one of their own.
using Joined = std::tuple<base::Ipv4, std::uint64_t>;

void judge(const graph::Wiring& wiring, int device, model::PresetId preset, std::int64_t groups, Findings& out) {
    const std::int64_t limit = *wiring.devices[at(device)].type->codec->most_groups;
    if (groups <= limit) return;
    const auto id = device_id(wiring, device);
    auto finding = found(words.id, Severity::error, {id}, {named(id), groups, named(preset), limit, groups - limit});
    finding.measured = groups;
    finding.limit = limit;
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 - %2 = %3"), {groups, limit, groups - limit}));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, Findings& out) {
    std::vector<bool> limited;
    bool any = false;
    for (const auto& device : wiring.devices) {
        limited.push_back(device.type && device.type->codec && device.type->codec->most_groups);
        any = any || limited.back();
    }
    if (!any) return;
    std::map<std::pair<int, model::PresetId>, std::set<Joined>> joined;
    for (const auto& [row, index, device] : wiring.subscriptions) {
        if (device < 0 || !limited[at(device)] || index < 0) continue;
        const auto* stream = wiring.streams[at(index)].row;
        joined[{device, row->preset}].insert(stream->group ? Joined{*stream->group, 0}
                                                           : Joined{base::Ipv4{}, stream->id.bits()});
    }
    std::map<int, std::pair<std::int64_t, model::PresetId>> most;  // the first preset of those that have most
    for (const auto& [where, groups] : joined) {
        const auto count = static_cast<std::int64_t>(groups.size());
        auto& known = most.try_emplace(where.first, 0, where.second).first->second;
        if (known.first < count) known = {count, where.second};
    }
    for (const auto& [device, found_here] : most) judge(wiring, device, found_here.second, found_here.first, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::too_many_groups
