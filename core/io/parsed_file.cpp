#include "core/io/detail/parsed_file.h"

#include "core/catalogue/detail/parser_watch.h"
#include "core/io/design_json.h"

#include <algorithm>
#include <array>

namespace streamwright::io {

namespace {

using catalogue::json_detail::ParserWatch;
using catalogue::json_detail::RefusedText;

base::Error refusal(const RefusedText& refused, const std::string& where) {
    using catalogue::json_detail::deepest;
    using catalogue::json_detail::most_keys;
    switch (refused.why) {
        case RefusedText::Why::too_deep:
            return {"%1 nests deeper than %2 levels, which no design does; open another file.",
                    {where, std::to_string(deepest)}};
        case RefusedText::Why::key_twice:
            return {"%1 names \"%2\" twice in one record; remove one of the two.", {where, refused.key}};
        case RefusedText::Why::too_wide:
            break;
    }
    return {"%1 has a record of more than %2 fields, which no design has; open another file.",
            {where, std::to_string(most_keys)}};
}

std::size_t line_at(std::string_view text, std::size_t byte) {
    const auto end = text.begin() + static_cast<std::ptrdiff_t>(std::min(byte, text.size()));
    return 1 + static_cast<std::size_t>(std::count(text.begin(), end, '\n'));
}

base::Error not_json(std::string_view text, std::size_t byte, const std::string& where) {
    const auto line = std::to_string(line_at(text, byte == 0 ? 0 : byte - 1));
    const bool looks_ours = text.substr(0, 200).find("streamwright") != std::string_view::npos;
    if (byte >= text.size() && looks_ours)
        return {"%1 is cut short: it ends in line %2 before the design is complete; open a copy that was saved whole.",
                {where, line}};
    if (!looks_ours)
        return {"%1 is not a Streamwright design (line %2 is not its form); open another file.", {where, line}};
    return {"%1 cannot be read: line %2 is not well-formed JSON; correct the line or open an older copy.",
            {where, line}};
}

base::Result<Json> parse_text(std::string_view text, const std::string& where) {
    try {
        return Json::parse(text.begin(), text.end(), ParserWatch());
    } catch (const RefusedText& refused) {
        return refusal(refused, where);
    } catch (const Json::parse_error& trouble) {
        return not_json(text, trouble.byte, where);
    } catch (const Json::exception&) {
        return base::Error{"%1 cannot be read: it holds a number that is too large; correct it or open an older copy.",
                           {where}};
    }
}

base::Result<int> known_version(const Json& top, const std::string& where) {
    const auto format = top.find("format");
    if (format == top.end() || !format->is_string() || format->get_ref<const std::string&>() != "streamwright")
        return base::Error{"%1 is not a Streamwright design; open another file.", {where}};
    const auto version = top.find("version");
    if (version == top.end() || !version->is_number_integer() || version->get<std::int64_t>() < 1)
        return base::Error{"%1 does not say which version of the form it is in; open an older copy.", {where}};
    if (version->get<std::int64_t>() > format_version)
        return base::Error{
            "%1 is in version %2 of the form and this program reads up to %3; update the program to open it.",
            {where, version->dump(), std::to_string(format_version)}};
    return static_cast<int>(version->get<std::int64_t>());
}

/// Follows JSON text far enough to know where it stands: depth, and the last key at the top.
class TextScan {
public:
    int depth = 0;
    std::string top_key;
    bool in_string = false;

    void step(char c) {
        if (in_string) {
            step_in_string(c);
        } else if (c == '"') {
            in_string = true;
            if (depth == 1) top_key.clear();
        } else if (c == '{' || c == '[') {
            ++depth;
        } else if (c == '}' || c == ']') {
            --depth;
        }
    }

private:
    void step_in_string(char c) {
        if (escaped_)
            escaped_ = false;
        else if (c == '\\')
            escaped_ = true;
        else if (c == '"')
            in_string = false;
        else if (depth == 1)
            top_key += c;
    }
    bool escaped_ = false;
};

}  // namespace

base::Result<ParsedFile> parse_file(std::string_view text, const std::string& where) {
    if (text.size() > size_limit)
        return base::Error{"%1 is larger than %2 MiB, the most a design may have; check that it is the right file.",
                           {where, std::to_string(size_limit >> 20U)}};
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
        return base::Error{"%1 is empty; open a copy that was saved whole.", {where}};
    auto top = parse_text(text, where);
    if (!top) return top.error();
    if (!top->is_object()) return base::Error{"%1 is not a Streamwright design; open another file.", {where}};
    const auto version = known_version(*top, where);
    if (!version) return version.error();
    return ParsedFile{std::move(*top), *version};
}

std::optional<std::size_t> line_of_record(std::string_view text, std::string_view table, std::size_t index) {
    TextScan scan;
    std::size_t line = 1;
    std::size_t record = 0;
    for (const char c : text) {
        if (c == '\n') ++line;
        const bool here = scan.depth == 2 && !scan.in_string && scan.top_key == table;
        const bool blank = c == ' ' || c == '\t' || c == '\r' || c == '\n';
        if (here && c == ',')
            ++record;
        else if (here && !blank && record == index)
            return line;
        scan.step(c);
    }
    return std::nullopt;
}

std::span<const std::string_view> key_fields(std::string_view table) {
    static constexpr std::array<std::string_view, 1> id{"id"}, type{"key"};
    static constexpr std::array<std::string_view, 2> place{"sheet", "device"}, line{"sheet", "cable"},
        port{"device", "port"};
    if (table == "settings") return {};
    if (table == "places") return place;
    if (table == "cable_lines") return line;
    if (table == "port_overrides") return port;
    if (table == "device_types" || table == "cable_types") return type;
    return id;
}

std::string raw_key(std::string_view table, const Json& record) {
    std::string key;
    for (const auto field : key_fields(table)) {
        if (!key.empty()) key += ' ';
        const auto at = record.is_object() ? record.find(std::string(field)) : record.end();
        if (record.is_object() && at != record.end() && at->is_string()) key += at->get_ref<const std::string&>();
    }
    return key;
}

}  // namespace streamwright::io
