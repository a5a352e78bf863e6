// A design file as parsed text, before it becomes rows: what migrations edit and journals replay upon. For .cpp files
// only.
#pragma once

#include "core/base/result.h"
#include "core/catalogue/detail/json_codec.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace streamwright::io {

using Json = catalogue::json_detail::Json;

struct ParsedFile {
    Json top = Json::object();
    int version = 1;
};

/// Refuses what is too large, not JSON, cut short, nested too deeply, foreign or newer than this program, in one
/// sentence.
base::Result<ParsedFile> parse_file(std::string_view text, const std::string& where);

/// The line, from 1, on which the index-th record of a table begins in the text; nothing if it is not found.
std::optional<std::size_t> line_of_record(std::string_view text, std::string_view table, std::size_t index);

/// The fields whose texts, joined by blanks, are the key of a table's records; every table not listed has "id".
std::span<const std::string_view> key_fields(std::string_view table);
/// The key's text of a raw record; empty parts where fields are missing.
std::string raw_key(std::string_view table, const Json& record);

}  // namespace streamwright::io
