// Port-based access control is a question of the security plan, and where it is planned, so is the day on which its
// certificates expire.
#include "core/analysis/plan_help.h"
#include "core/analysis/rule.h"

namespace streamwright::analysis::rules::plan_access_control {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("The security plan does not say whether ports that people can reach are under access control."),
    STREAMWRIGHT_TEXT(
        "By the security plan no port is under access control: whatever is plugged in is on the network."),
    STREAMWRIGHT_TEXT("Ports are under access control, but no date is planned on which the certificates expire.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.1X", "port-based network access control", standards::Standing::memory}};

constexpr RuleWords words{.id = "plan-access-control",
                          .severity = Severity::warning,
                          .theme = Theme::plan,
                          .title = "Security plan: port-based access control",
                          .meaning =
                              "An outlet in a foyer is a door into the network. Where certificates open the ports, all "
                              "endpoints go dark on the day they expire, unless somebody has that day in the diary.",
                          .measured =
                              "The answers in the security plan of the design. An open question is advice, an answer"
                              " of no a warning, and so are certificates without an expiry date.",
                          .remedy =
                              "Answer the question with the client, plan the day of expiry, or accept it with a "
                              "reason.",
                          .offers = "Answer: ports are under access control.",
                          .patterns = patterns,
                          .sources = sources};

void check(const graph::Wiring& wiring, Findings& out) {
    ask(wiring, words.id, &model::SecurityPlan::port_access_control,
        STREAMWRIGHT_TEXT("Answer: ports are under access control"), out);
    const auto& plan = wiring.design.settings().security;
    if (wiring.design.streams.empty() || !plan.port_access_control.value_or(false)) return;
    if (plan.certificates_expire.empty()) out.push_back(found(words.id, Severity::warning, {}, {}, 2));
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::plan_access_control
