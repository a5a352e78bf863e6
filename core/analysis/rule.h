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

/// What a rule's file hands to the table.
struct RuleWords {
    std::string_view id;                         // kebab-case, trade words
    int revision = 1;                            // raised when a waiver should be asked for again
    Severity severity = Severity::error;         // the gravest it gives
    std::string_view title;                      // a few words
    std::string_view meaning;                    // why it matters on site, one or two sentences
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
