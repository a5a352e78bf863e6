// Reading a journal back: its sound lines are put upon the file's parsed text, and the result is read as any file.
#include "core/catalogue/detail/parser_watch.h"
#include "core/io/design_json.h"
#include "core/io/detail/journal_lines.h"
#include "core/io/detail/read_parsed.h"
#include "core/io/journal.h"
#include "core/io/migrations/all_migrations.h"

#include <algorithm>
#include <cstdint>
#include <fstream>
#include <map>
#include <unordered_map>
#include <vector>

namespace streamwright::io {

namespace fs = std::filesystem;

namespace {

struct JournalText {
    std::vector<std::string_view> payloads;
    bool cut_short = false;
};

JournalText sound_lines(std::string_view text) {
    JournalText lines;
    std::string chain;
    while (!text.empty()) {
        const auto end = text.find('\n');
        const auto line = text.substr(0, end);
        const bool whole =
            end != std::string_view::npos && line.size() > checksum_length && line[checksum_length] == ' ';
        const auto payload = whole ? line.substr(checksum_length + 1) : std::string_view{};
        if (!whole || line_checksum(chain, payload) != line.substr(0, checksum_length)) {
            lines.cut_short = true;
            break;
        }
        chain = std::string(line.substr(0, checksum_length));
        lines.payloads.push_back(payload);
        text.remove_prefix(end + 1);
    }
    return lines;
}

/// The tables of the parsed text with their rows found by key; rows that go are taken out at the end, once.
class TableReplay {
public:
    explicit TableReplay(Json& top) : top_(top) {}

    void put(const std::string& table, const std::string& key, const Json& record) {
        auto& places = index_of(table);
        auto& list = top_[table];
        const auto at = places.find(key);
        if (at != places.end()) {
            list[at->second] = record;
        } else if (!record.is_null()) {
            places.emplace(key, list.size());
            list.push_back(record);
        }
    }

    void finish() {
        for (const auto& [table, places] : index_) {
            Json kept = Json::array();
            for (auto& record : top_[table])
                if (!record.is_null()) kept.push_back(std::move(record));
            top_[table] = std::move(kept);
        }
    }

private:
    using Places = std::unordered_map<std::string, std::size_t>;

    Places& index_of(const std::string& table) {
        const auto [at, fresh] = index_.try_emplace(table);
        if (!fresh) return at->second;
        auto& list = top_[table];
        if (!list.is_array()) list = Json::array();
        for (std::size_t i = 0; i < list.size(); ++i) at->second.emplace(raw_key(table, list[i]), i);
        return at->second;
    }

    Json& top_;
    std::map<std::string, Places> index_;
};

bool is_change(const Json& change) {
    const auto text_at = [&](const char* name) { return change.contains(name) && change[name].is_string(); };
    return change.is_object() && text_at("table") && text_at("id") && change.contains("record") &&
           (change["record"].is_object() || change["record"].is_null());
}

/// Nothing for what is not JSON, or nests as no edit does.
Json parsed_payload(std::string_view payload) {
    try {
        return Json::parse(payload.begin(), payload.end(), catalogue::json_detail::ParserWatch(), false);
    } catch (const catalogue::json_detail::RefusedText&) {
        return {};
    }
}

bool replay_edit(TableReplay& tables, std::string_view payload) {
    const Json edit = parsed_payload(payload);
    if (!edit.is_array()) return false;
    for (const auto& change : edit)
        if (!is_change(change)) return false;
    for (const auto& change : edit)
        tables.put(change["table"].get<std::string>(), change["id"].get<std::string>(), change["record"]);
    return true;
}

struct JournalHeader {
    int version = 0;
    std::string digest;
};

std::optional<JournalHeader> read_header(std::string_view payload) {
    const Json json = parsed_payload(payload);
    if (!json.is_object() || json.value("format", Json()) != "streamwright-journal") return std::nullopt;
    const auto version = json.value("version", Json());
    const auto digest = json.value("digest", Json());
    if (!version.is_number_integer() || !digest.is_string()) return std::nullopt;
    return JournalHeader{version.get<int>(), digest.get<std::string>()};
}

base::Result<ParsedFile> file_to_continue(std::string_view file_text, const std::string& where, int version) {
    ParsedFile file;
    file.version = version;
    file.top["format"] = "streamwright";
    file.top["version"] = version;
    if (file_text.empty()) return file;
    auto parsed = parse_file(file_text, where);
    if (!parsed) return parsed;
    // A journal is in the form of the program that wrote it, which had migrated the older file it opened.
    if (auto migrated = migrate(*parsed, version, all_migrations()); !migrated) return migrated.error();
    if (parsed->version > version)
        return base::Error{"The journal of %1 is older than the file; keep the file and remove the journal.", {where}};
    return parsed;
}

constexpr std::size_t header_limit = 4096;
constexpr std::size_t journal_limit = 4 * size_limit;  // what is beyond counts as cut off

/// The whole journal if its first line is sound; else no more than shows that it is not.
base::Result<std::string> journal_text(const fs::path& journal) {
    std::ifstream stream(journal, std::ios::binary);
    std::string text(header_limit, '\0');
    const auto read_on = [&](std::size_t from) {
        stream.read(text.data() + from, static_cast<std::streamsize>(text.size() - from));
        text.resize(from + static_cast<std::size_t>(stream.gcount()));
    };
    read_on(0);
    std::error_code trouble;
    const auto size = fs::file_size(journal, trouble);
    if (!stream.is_open() || stream.bad() || trouble)
        return base::Error{"The journal %1 cannot be read; ask for leave to read it, or remove it.",
                           {journal.string()}};
    const auto already = text.size();
    if (size <= already || sound_lines(text).payloads.empty()) return text;
    text.resize(static_cast<std::size_t>(std::min<std::uintmax_t>(size, journal_limit)));
    read_on(already);
    return text;
}

}  // namespace

base::Result<std::optional<Recovery>> recover(const fs::path& journal, std::string_view file_text,
                                              const std::string& where) {
    std::error_code trouble;
    if (!fs::is_regular_file(journal, trouble)) return std::optional<Recovery>{};
    const auto text = journal_text(journal);
    if (!text) return text.error();
    const auto lines = sound_lines(*text);
    const bool torn_header = text->find('\n') == std::string::npos && text->size() < header_limit;
    if (lines.payloads.empty() && torn_header) return std::optional<Recovery>{};
    const auto header = lines.payloads.empty() ? std::nullopt : read_header(lines.payloads.front());
    if (!header)
        return base::Error{
            "The journal %1 is damaged in its first line, so that nothing of it can be trusted; remove it.",
            {journal.string()}};
    if (header->version > format_version)
        return base::Error{
            "The journal %1 was written by a newer version of the program; update the program to use it.",
            {journal.string()}};
    if (lines.payloads.size() == 1) return std::optional<Recovery>{};
    auto file = file_to_continue(file_text, where, header->version);
    if (!file) return file.error();
    Recovery recovery;
    recovery.cut_short = lines.cut_short;
    recovery.other_file = header->digest != (file_text.empty() ? std::string() : sha256_hex(file_text));
    TableReplay tables(file->top);
    for (std::size_t i = 1; i < lines.payloads.size(); ++i) {
        if (!replay_edit(tables, lines.payloads[i])) {
            recovery.cut_short = true;
            break;
        }
        ++recovery.records;
    }
    tables.finish();
    auto design = read_parsed(std::move(*file), {}, where + " with its journal");
    if (!design) return design.error();
    recovery.design = std::move(*design);
    return std::optional<Recovery>(std::move(recovery));
}

}  // namespace streamwright::io
