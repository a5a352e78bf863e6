// The types that may be placed: those shipped with the program, read from its resources.
#pragma once

#include "core/base/result.h"
#include "core/catalogue/catalogue.h"

#include <QString>

#include <memory>
#include <vector>

namespace streamwright::app {

struct Library {
    std::vector<std::shared_ptr<const catalogue::DeviceType>> devices;  // by key
    std::vector<std::shared_ptr<const catalogue::CableType>> cables;    // by key

    std::shared_ptr<const catalogue::DeviceType> device(const catalogue::TypeKey& key) const;
    std::shared_ptr<const catalogue::CableType> cable(const catalogue::CableTypeKey& key) const;
};

Library library_of(const catalogue::Catalogue& catalogue);
base::Result<Library> bundled_library();

/// What a dragged row of the catalogue carries: the key of its type.
inline constexpr char type_mime[] = "application/x-streamwright-type";

}  // namespace streamwright::app
