#include "core/model/edits/subscribe.h"

#include "core/model/edits/edit_helpers.h"

#include <algorithm>

namespace streamwright::model {

namespace {

bool has_input(const catalogue::DeviceType* type, const InputKey& input) {
    if (!type || !type->codec) return false;
    const auto& inputs = type->codec->inputs;
    return std::any_of(inputs.begin(), inputs.end(), [&](const auto& each) { return each.key == input; });
}

const Subscription* subscription_of_input(const Design& design, const Subscribe& edit) {
    for (const auto& row : design.subscriptions)
        if (row.preset == edit.preset && row.decoder == edit.decoder && row.input == edit.input) return &row;
    return nullptr;
}

}  // namespace

base::Result<Delta> make(const Design& design, const Subscribe& edit) {
    if (!design.presets.contains(edit.preset)) return edit_detail::no_such("preset", edit.preset);
    const Device* decoder = design.devices.find(edit.decoder);
    if (!decoder) return edit_detail::no_such("device", edit.decoder);
    const Subscription* held = subscription_of_input(design, edit);
    Editing editing(design);
    if (!edit.stream) {
        if (held) editing.erase<Subscription>(held->id);
        return editing.done();
    }
    if (!has_input(design.type_of(*decoder), edit.input))
        return base::Error{"%1 has no decoder input %2.", {decoder->tag, edit.input.text}};
    if (!held && design.subscriptions.contains(edit.id))
        return base::Error{"The design already has a subscription %1.", {edit.id.text()}};
    const auto id = held ? held->id : edit.id;
    Subscription row{id, edit.preset, *edit.stream, edit.decoder, edit.input, {}};
    if (auto trouble = edit_detail::put_checked(editing, std::move(row))) return *trouble;
    return editing.done();
}

}  // namespace streamwright::model
