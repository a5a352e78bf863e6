// What may be placed: the device and cable types of one or more libraries, sorted by key.
#pragma once

#include "core/base/result.h"
#include "core/catalogue/cable_type.h"
#include "core/catalogue/device_type.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace streamwright::catalogue {

struct Catalogue {
    std::vector<DeviceType> devices;  // sorted by key
    std::vector<CableType> cables;    // sorted by key

    const DeviceType* device(const TypeKey& key) const;
    const CableType* cable(const CableTypeKey& key) const;
};

/// One type from its JSON text; `where` names the file in messages. Refuses contradictions (a port passing to a port
/// that is not there, a key twice, a module without a rate, negative sizes, ...) naming the field.
base::Result<DeviceType> read_device_type(std::string_view json, const std::string& where);
base::Result<CableType> read_cable_type(std::string_view json, const std::string& where);

/// One type as JSON text on one line, the form in which a design embeds it; reads back equal.
std::string write_device_type(const DeviceType& type);
std::string write_cable_type(const CableType& type);

/// All types below FOLDER/devices and FOLDER/cables, one file each. Stops at the first bad file, naming it.
base::Result<Catalogue> read_catalogue(const std::filesystem::path& folder);

}  // namespace streamwright::catalogue
