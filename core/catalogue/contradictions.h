// What a type may not say at once: a port that passes to a port that is not there, a decoder without inputs, ...
// A library is written by hand and by others, so it is judged before anything is placed from it.
#pragma once

#include "core/base/error.h"
#include "core/catalogue/cable_type.h"
#include "core/catalogue/device_type.h"

#include <optional>
#include <string>

namespace streamwright::catalogue {

/// The first contradiction, naming the field; nothing if the type is sound. `where` names the file in the sentence.
std::optional<base::Error> contradiction(const DeviceType& type, const std::string& where);
std::optional<base::Error> contradiction(const CableType& type, const std::string& where);

}  // namespace streamwright::catalogue
