// What a type may say and cannot mean: more power than its class gives, a rate above its fastest port, an inlet that
// draws nothing. Files of types are held to it; a design keeps the types it has, for these do no harm to reading.
#pragma once

#include "core/base/error.h"
#include "core/catalogue/cable_type.h"
#include "core/catalogue/device_type.h"

#include <optional>
#include <string>

namespace streamwright::catalogue {

/// The first inconsistency of a type without contradiction, naming the field; nothing if it makes sense.
std::optional<base::Error> inconsistency(const DeviceType& type, const std::string& where);
std::optional<base::Error> inconsistency(const CableType& type, const std::string& where);

}  // namespace streamwright::catalogue
