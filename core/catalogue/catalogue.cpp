#include "core/catalogue/catalogue.h"

#include <algorithm>

namespace streamwright::catalogue {

namespace catalogue_detail {

template <class Type, class KeyOf>
const Type* find_sorted(const std::vector<Type>& types, const KeyOf& key) {
    const auto at = std::lower_bound(types.begin(), types.end(), key,
                                     [](const Type& type, const KeyOf& wanted) { return type.key < wanted; });
    return at != types.end() && at->key == key ? &*at : nullptr;
}

}  // namespace catalogue_detail

const DeviceType* Catalogue::device(const TypeKey& key) const { return catalogue_detail::find_sorted(devices, key); }

const CableType* Catalogue::cable(const CableTypeKey& key) const { return catalogue_detail::find_sorted(cables, key); }

}  // namespace streamwright::catalogue
