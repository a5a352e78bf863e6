// The design as text: JSON, each table an array sorted by id, one record a line, so that versions compare well.
#pragma once

#include "core/base/result.h"
#include "core/model/design.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace streamwright::io {

inline constexpr int format_version = 1;
inline constexpr std::size_t size_limit = std::size_t{64} << 20;  // octets; refused before parsing

std::string write_design(const model::Design& design);

/// `where` names the file in messages. Refuses what is unreadable, truncated, foreign, of a newer version, doubled or
/// dangling in one sentence with the place (line, table and row) and the cure.
base::Result<model::Design> read_design(std::string_view text, const std::string& where);

}  // namespace streamwright::io
