// Whether accounts come from a directory is a question of the security plan: it is asked, never guessed.
#include "core/analysis/plan_help.h"
#include "core/analysis/rule.h"

namespace streamwright::analysis::rules::plan_accounts {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("The security plan does not say whether accounts come from a directory."),
    STREAMWRIGHT_TEXT("By the security plan accounts are kept in each device: who leaves must be removed from all.")};

constexpr RuleWords words{
    .id = "plan-accounts",
    .severity = Severity::warning,
    .theme = Theme::plan,
    .title = "Security plan: directory for accounts",
    .meaning =
        "Accounts kept in each device are shared, forgotten and never withdrawn. With a directory "
        "one place says who may change what.",
    .measured = "The answer in the security plan of the design. An open question is advice, an answer of no a warning.",
    .remedy = "Answer the question with the client, or accept it with a reason.",
    .offers = "Answer: accounts come from a directory.",
    .patterns = patterns,
    .no_source = "A question of the plan, common practice."};

void check(const graph::Wiring& wiring, Findings& out) {
    ask(wiring, words.id, &model::SecurityPlan::account_directory,
        STREAMWRIGHT_TEXT("Answer: accounts come from a directory"), out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::plan_accounts
