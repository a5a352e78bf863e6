#include "core/analysis/finding.h"

#include <type_traits>

namespace streamwright::analysis {

namespace finding_detail {

template <class Id>
constexpr std::string_view kind_of() {
    if constexpr (std::is_same_v<Id, model::DeviceId>) return "device";
    if constexpr (std::is_same_v<Id, model::CableId>) return "cable";
    if constexpr (std::is_same_v<Id, model::StreamId>) return "stream";
    if constexpr (std::is_same_v<Id, model::SubscriptionId>) return "subscription";
    if constexpr (std::is_same_v<Id, model::PresetId>) return "preset";
    if constexpr (std::is_same_v<Id, model::VlanId>) return "vlan";
    return {};
}

}  // namespace finding_detail

std::string subject_text(const Subject& subject) {
    return std::visit(
        [](const auto& id) -> std::string {
            using Id = std::decay_t<decltype(id)>;
            if constexpr (std::is_same_v<Id, model::PortRef>)
                return "port:" + id.device.text() + '/' + id.port.text;
            else
                return std::string(finding_detail::kind_of<Id>()) + ':' + id.text();
        },
        subject);
}

base::Ref ref(const Subject& subject) { return {subject_text(subject)}; }

std::string Finding::key() const {
    std::string text(rule);
    for (const auto& subject : subjects) text += ' ' + subject_text(subject);
    return text;
}

}  // namespace streamwright::analysis
