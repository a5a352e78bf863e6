// One message of a check, as data: rule, severity, subjects, typed values. Words are made when shown.
// Its identity is rule + subjects, never text.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/text.h"
#include "core/model/edits/all_edits.h"
#include "core/model/ids.h"

#include <compare>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace streamwright::analysis {

enum class Severity { error, warning, advice };

/// What a finding is about. A port counts as a subject of its own.
using Subject = std::variant<model::DeviceId, model::CableId, model::StreamId, model::SubscriptionId, model::PresetId,
                             model::VlanId, model::PortRef>;

/// "device:0123456789ab", "port:0123456789ab/lan1"; the form of files, command line and waivers.
std::string subject_text(const Subject& subject);
base::Ref ref(const Subject& subject);

/// A cure that one edit makes.
struct Remedy {
    base::Text label;
    model::AnyEdit edit;
    friend bool operator==(const Remedy&, const Remedy&) = default;
};

struct Finding {
    std::string_view rule;  // id in the rule table
    Severity severity = Severity::error;
    std::vector<Subject> subjects;    // the first is where the badge stands
    std::vector<base::Value> values;  // fill the places of the rule's pattern
    std::vector<base::Text> terms;    // the arithmetic, line by line ("94.8 + 5.2 = 100.0 m")
    std::optional<base::Value> measured, limit;
    std::vector<Remedy> remedies;  // best first
    int variant = 0;               // which of the rule's patterns, where it has several

    /// rule + subjects: equal keys are the same finding.
    std::string key() const;
    friend bool operator==(const Finding&, const Finding&) = default;
};

}  // namespace streamwright::analysis

template <>
struct streamwright::base::EnumText<streamwright::analysis::Severity> {
    using E = streamwright::analysis::Severity;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::error, "error"}, {E::warning, "warning"}, {E::advice, "advice"}}};
};
