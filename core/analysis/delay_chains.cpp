// A decoder: how late its pictures are, and how far sound and picture are apart at what it feeds.
#include "core/analysis/chain_parts.h"
#include "core/analysis/latency.h"
#include "core/analysis/lip_sync.h"
#include "core/analysis/rule_help.h"

#include <map>

namespace streamwright::analysis {

namespace delay_chains_detail {

void add_part(NumberChain& chain, const char* name, const std::optional<base::Duration>& delay) {
    if (delay)
        tell(chain, name, {}, *delay);
    else
        tell(chain, name, {}, std::string(STREAMWRIGHT_TEXT("not known")));
}

NumberChain lateness(const SubscriptionLatency& each) {
    NumberChain chain{line(STREAMWRIGHT_TEXT("Delay of %1 in preset %2"), {named(each.stream), named(each.preset)}),
                      {}};
    const auto& parts = each.parts;
    add_part(chain, STREAMWRIGHT_TEXT("Encoding"), parts.encoding);
    add_part(chain, STREAMWRIGHT_TEXT("A full packet put on every line"), parts.serialising);
    add_part(chain, STREAMWRIGHT_TEXT("Switches"), parts.switching);
    add_part(chain, STREAMWRIGHT_TEXT("Queues, at most"), parts.queueing);
    add_part(chain, STREAMWRIGHT_TEXT("Cables"), parts.propagation);
    add_part(chain, STREAMWRIGHT_TEXT("Decoding"), parts.decoding);
    if (each.most)
        tell(chain, STREAMWRIGHT_TEXT("From end to end, at most"), {}, *each.most, true);
    else
        tell(chain, STREAMWRIGHT_TEXT("From end to end, at most"), {}, std::string(STREAMWRIGHT_TEXT("not known")),
             true);
    return chain;
}

void add_way(NumberChain& chain, const DelayWay& way, const char* part, const char* sum) {
    for (const auto& each : way.parts)
        if (each.delay.count() != 0) tell(chain, part, {named(each.device)}, each.delay);
    if (way.known)
        tell(chain, sum, {}, way.sum(), true);
    else
        tell(chain, sum, {}, std::string(STREAMWRIGHT_TEXT("not known")), true);
}

bool passes(const DelayWay& way, model::DeviceId device) {
    for (const auto& part : way.parts)
        if (part.device == device) return true;
    return false;
}

NumberChain together(const LipSyncPair& pair) {
    NumberChain chain{line(STREAMWRIGHT_TEXT("Sound at %1 and picture at %2 in preset %3"),
                           {named(pair.speaker), named(pair.display), named(pair.preset)}),
                      {}};
    add_way(chain, pair.picture, STREAMWRIGHT_TEXT("Picture, %1"), STREAMWRIGHT_TEXT("Picture"));
    add_way(chain, pair.sound, STREAMWRIGHT_TEXT("Sound, %1"), STREAMWRIGHT_TEXT("Sound"));
    if (const auto lead = pair.lead())
        tell(chain, lead->count() < 0 ? STREAMWRIGHT_TEXT("Sound late by") : STREAMWRIGHT_TEXT("Sound early by"), {},
             base::Duration::from_count(lead->count() < 0 ? -lead->count() : lead->count()), true);
    return chain;
}

}  // namespace delay_chains_detail

void add_delay_chains(const Facts& facts, int decoder, std::vector<NumberChain>& out) {
    using namespace delay_chains_detail;
    const auto& wiring = facts.get<graph::Wiring>();
    const auto id = device_id(wiring, decoder);
    for (const auto& each : find_latencies(facts, id)) keep(lateness(each), out);
    for (const auto& preset : wiring.design.presets)
        for (const auto& pair : find_lip_sync(wiring, facts.get<graph::SignalGraph>(), preset.id))
            if (pair.display == id || pair.speaker == id || passes(pair.picture, id) || passes(pair.sound, id))
                keep(together(pair), out);
}

}  // namespace streamwright::analysis
