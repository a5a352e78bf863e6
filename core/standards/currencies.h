// Minor units of currencies (ISO 4217).
#pragma once

#include <optional>
#include <string_view>

namespace streamwright::standards {

/// Decimals of the minor unit: 2 for EUR, 0 for JPY, 3 for KWD. Nothing: not in the table.
std::optional<int> minor_unit_decimals(std::string_view code);

}  // namespace streamwright::standards
