// A rule of the table: what it says, why, and a check whose parameters are exactly the facts it reads.
#pragma once

#include "core/analysis/facts_set.h"
#include "core/analysis/finding.h"
#include "core/standards/citation.h"

#include <span>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <vector>

namespace streamwright::analysis {

using Findings = std::vector<Finding>;

/// What a rule is about: the chapters of the page of rules.
enum class Theme { cabling, power, links, multicast, addresses, signals, drawing, plan };

/// What a rule's file hands to the table.
struct RuleWords {
    std::string_view id;                         // kebab-case, trade words
    int revision = 1;                            // raised when a waiver should be asked for again
    Severity severity = Severity::error;         // the gravest it gives
    Theme theme = Theme::drawing;                // where the page of rules lists it
    std::string_view title;                      // a few words
    std::string_view meaning;                    // why it matters on site, one or two sentences
    std::string_view measured;                   // what is compared with what, and when it is less than grave
    std::string_view remedy;                     // what a person can do about it
    std::string_view offers;                     // what the program offers to do; empty where it offers nothing
    std::span<const std::string_view> patterns;  // English sentences, places %1 to %9
    std::span<const standards::Citation> sources;
    std::string_view no_source;  // why there is none, where sources is empty
};

struct Rule {
    RuleWords words;
    FactSet reads;          // deduced from the signature of its check
    bool deferred = false;  // reads a deferred fact
    void (*run)(const Facts&, Findings&) = nullptr;
};

namespace detail {
template <class... A>
struct Signature {
    static constexpr std::size_t count = sizeof...(A) - 1;
    using AllArgs = std::tuple<std::remove_cvref_t<A>...>;
    template <std::size_t... I>
    static constexpr FactSet reads(std::index_sequence<I...>) {
        return (fact_bit<std::tuple_element_t<I, AllArgs>>() | ... | FactSet{});
    }
    template <auto check, std::size_t... I>
    static void call(const Facts& facts, Findings& out, std::index_sequence<I...>) {
        check(facts.template get<std::tuple_element_t<I, AllArgs>>()..., out);
    }
};
template <class... A>
constexpr Signature<A...> signature(void (*)(A...)) {
    return {};
}
}  // namespace detail

/// Makes the table's entry from a check of the form void check(const FactA&, const FactB&, ..., Findings&).
template <auto check>
constexpr Rule make_rule(const RuleWords& words) {
    using S = decltype(detail::signature(check));
    using I = std::make_index_sequence<S::count>;
    Rule rule{words, S::reads(I{}), false,
              [](const Facts& facts, Findings& out) { S::template call<check>(facts, out, I{}); }};
    rule.deferred = (rule.reads & deferred_facts).any();
    return rule;
}

/// All rules, by id.
std::span<const Rule> all_rules();
const Rule* find_rule(std::string_view id);

}  // namespace streamwright::analysis

template <>
struct streamwright::base::EnumText<streamwright::analysis::Theme> {
    using E = streamwright::analysis::Theme;
    static constexpr std::array<std::pair<E, std::string_view>, 8> names{{{E::cabling, "Cables and how far they reach"},
                                                                          {E::power, "Power over the network cable"},
                                                                          {E::links, "Links and what they carry"},
                                                                          {E::multicast, "Multicast and VLANs"},
                                                                          {E::addresses, "Addresses"},
                                                                          {E::signals, "Pictures, sound and USB"},
                                                                          {E::drawing, "Drawing, tags and racks"},
                                                                          {E::plan, "Plan and operation"}}};
};
