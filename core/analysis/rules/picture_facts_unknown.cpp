// Somebody set what a source sends, but a type on the way does not say what it takes: whether the picture comes is not
// known.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <map>

namespace streamwright::analysis::rules::picture_facts_unknown {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT(
    "%1 is set to %2; the type of %3 does not state which pictures it takes, so whether there is a picture is not "
    "known.")};

constexpr RuleWords words{.id = "picture-facts-unknown",
                          .severity = Severity::advice,
                          .theme = Theme::signals,
                          .title = "Picture port of which nothing is stated",
                          .meaning = "What a device takes cannot be checked where its type is silent.",
                          .measured =
                              "The types on the way of a source whose format is set; those that state no picture "
                              "facts are named, each port once.",
                          .remedy = "State in the type which formats the port takes.",
                          .patterns = patterns,
                          .no_source = "Follows from what types state."};

void check(const graph::Wiring& wiring, const VideoChains& chains, Findings& out) {
    std::map<graph::PortAt, const PictureOrigin*> silent;
    for (const auto& origin : chains.origins) {
        if (origin.because != SentBecause::set) continue;
        for (const auto& arrival : origin.arrivals)
            if (arrival.left && arrival.silent && *arrival.silent != origin.out)
                silent.try_emplace(*arrival.silent, &origin);
    }
    for (const auto& [port, origin] : silent)
        out.push_back(found(words.id, Severity::advice, {port_subject(wiring, port)},
                            {port_ref(wiring, origin->out), standards::text(chains.space.format(*origin->sent)),
                             port_ref(wiring, port)}));
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::picture_facts_unknown
