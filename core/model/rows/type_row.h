// The design's own copy of each type it uses, so that a file opens anywhere. Refreshing a copy is an edit like any
// other.
#pragma once

#include "core/catalogue/cable_type.h"
#include "core/catalogue/device_type.h"
#include "core/model/ids.h"

#include <memory>

namespace streamwright::model {

/// A row whose value is an immutable catalogue type; sharing keeps copies of a design cheap.
template <class Type, class TypeKeyOf>
struct TypeRow {
    std::shared_ptr<const Type> type;

    using Key = TypeKeyOf;
    Key key() const { return type->key; }
    friend bool operator==(const TypeRow& a, const TypeRow& b) { return a.type == b.type || *a.type == *b.type; }
};

using DeviceTypeRow = TypeRow<catalogue::DeviceType, TypeKey>;
using CableTypeRow = TypeRow<catalogue::CableType, CableTypeKey>;

}  // namespace streamwright::model
