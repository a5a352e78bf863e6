// Keys of a row that this version does not know, kept as JSON text so that they travel with every edit and save.
#pragma once

#include <map>
#include <string>

namespace streamwright::model {

using UnknownKeys = std::map<std::string, std::string>;

}  // namespace streamwright::model
