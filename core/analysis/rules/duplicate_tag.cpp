// Tags are what people on site go by; two rows of a kind must not bear one.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::duplicate_tag {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT("%2 devices bear the tag \"%1\"."),
                                         STREAMWRIGHT_TEXT("%2 cables bear the tag \"%1\"."),
                                         STREAMWRIGHT_TEXT("%2 streams bear the tag \"%1\".")};

constexpr standards::Citation sources[] = {
    {"ANSI/TIA", "606-D", "identifiers are unique, permanent and match the record"}};

constexpr RuleWords words{.id = "duplicate-tag",
                          .severity = Severity::warning,
                          .theme = Theme::drawing,
                          .title = "Tag borne twice",
                          .meaning = "Labels, schedules and test sheets can no longer be told apart on site.",
                          .measured =
                              "The tags of all devices, of all cables and of all streams are compared, each kind "
                              "among itself.",
                          .remedy = "Give all but one a tag of their own.",
                          .patterns = patterns,
                          .sources = sources};

void check(const TagUse& tags, Findings& out) {
    for (const auto& shared : tags.shared) {
        std::vector<Subject> subjects;
        for (const auto& row : shared.rows) std::visit([&](const auto& id) { subjects.emplace_back(id); }, row);
        const auto count = static_cast<std::int64_t>(shared.rows.size());
        out.push_back(found(words.id, Severity::warning, std::move(subjects), {shared.tag, count},
                            static_cast<int>(shared.rows.front().index())));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::duplicate_tag
