// Whether streams are encrypted is a question of the security plan: it is asked, never guessed from the drawing.
#include "core/analysis/plan_help.h"
#include "core/analysis/rule.h"

namespace streamwright::analysis::rules::plan_encryption {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("The security plan does not say whether streams are encrypted."),
    STREAMWRIGHT_TEXT("By the security plan streams are not encrypted: whoever joins a group sees its picture.")};

constexpr RuleWords words{.id = "plan-encryption",
                          .severity = Severity::warning,
                          .theme = Theme::plan,
                          .title = "Security plan: encryption of streams",
                          .meaning =
                              "On a network that others share, a picture that is not encrypted can be watched "
                              "from any port of its VLAN.",
                          .measured =
                              "The answer in the security plan of the design. An open question is advice, an answer "
                              "of no a warning.",
                          .remedy = "Answer the question with the client, or accept it with a reason.",
                          .offers = "Answer: streams are encrypted.",
                          .patterns = patterns,
                          .no_source = "A question of the plan, common practice."};

void check(const graph::Wiring& wiring, Findings& out) {
    ask(wiring, words.id, &model::SecurityPlan::streams_encrypted, STREAMWRIGHT_TEXT("Answer: streams are encrypted"),
        out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::plan_encryption
