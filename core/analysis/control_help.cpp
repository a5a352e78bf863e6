#include "core/analysis/control_help.h"

namespace streamwright::analysis {

std::vector<catalogue::ControlMethod> asked_control(const graph::WiredDevice& device) {
    if (device.row->control) return {*device.row->control};
    return device.type->controlled_by;
}

std::string control_words(const std::vector<catalogue::ControlMethod>& methods) {
    std::string text;
    for (const auto method : methods) {
        const bool ir = method == catalogue::ControlMethod::ir;
        text += (text.empty() ? "" : " or ") + (ir ? std::string("IR") : std::string(base::enum_text(method)));
    }
    return text;
}

bool gives_control(const graph::WiredDevice& device) {
    using Kind = catalogue::DeviceKind;
    if (!device.type) return false;
    const auto kind = device.type->kind;
    return device.type->codec || kind == Kind::control_processor || kind == Kind::extender_sender ||
           kind == Kind::extender_receiver;
}

}  // namespace streamwright::analysis
