#include "core/model/edits/embed_types.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

namespace {

template <class Row, class Types>
Trouble put_types(Editing& editing, const Types& types) {
    for (const auto& type : types) {
        if (!type) return base::Error{"A type to embed is missing.", {}};
        if (auto trouble = edit_detail::embed(editing, Row{type})) return trouble;
    }
    return std::nullopt;
}

}  // namespace

base::Result<Delta> make(const Design& design, const EmbedTypes& edit) {
    Editing editing(design);
    if (auto trouble = put_types<DeviceTypeRow>(editing, edit.devices)) return *trouble;
    if (auto trouble = put_types<CableTypeRow>(editing, edit.cables)) return *trouble;
    return editing.done();
}

}  // namespace streamwright::model
