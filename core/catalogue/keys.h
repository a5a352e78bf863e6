// Strong keys of the catalogue: types, and ports within a type.
#pragma once

#include "core/base/id.h"

namespace streamwright::catalogue {

using TypeKey = base::Key<struct TypeKeyTag>;  // device type
using CableTypeKey = base::Key<struct CableTypeKeyTag>;
using PortKey = base::Key<struct PortKeyTag>;    // within its device type
using InputKey = base::Key<struct InputKeyTag>;  // a decoder input (window) within its device type

}  // namespace streamwright::catalogue
