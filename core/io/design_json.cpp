#include "core/io/design_json.h"

#include "core/io/detail/read_parsed.h"
#include "core/io/detail/row_json.h"
#include "core/io/migrations/all_migrations.h"
#include "core/model/integrity.h"

#include <set>

namespace streamwright::io {

namespace {

/// Keys of the file as a whole that this version does not know travel in the settings' row under this mark.
constexpr std::string_view whole_file_mark = "//";

bool is_table(const std::string& name) {
    bool found = false;
    model::for_each_table([&](std::string_view table, auto) { found = found || table == name; });
    return found;
}

/// Tables that the first files of the version did not have: left out while they are empty, so that such files are
/// written as they were read.
bool came_later(std::string_view table) { return table == "walls"; }

/// Where messages point: file, line if it can be found, table and row.
struct ReadPlace {
    std::string_view text;
    const std::string& where;

    std::string of(std::string_view table, std::size_t index, const std::string& key) const {
        std::string place = where;
        if (const auto line = text.empty() ? std::nullopt : line_of_record(text, table, index))
            place += ", line " + std::to_string(*line);
        place += ", " + std::string(table) + ' ';
        return place + (key.empty() ? '#' + std::to_string(index + 1) : key);
    }
};

template <class Row>
base::Result<std::vector<Row>> read_rows(const Json& list, std::string_view table, const ReadPlace& place) {
    if (!list.is_array())
        return base::Error{"%1: the table %2 must be a list; correct it or open an older copy.",
                           {place.where, std::string(table)}};
    std::vector<Row> rows;
    rows.reserve(list.size());
    std::set<typename Row::Key> keys;
    for (std::size_t index = 0; index < list.size(); ++index) {
        const auto here = [&] { return place.of(table, index, raw_key(table, list[index])); };
        auto row = read_row<Row>(list[index], here);
        if (!row) return row.error();
        if (!keys.insert(row->key()).second)
            return base::Error{"%1: this record is in the table twice; remove one of the two.", {here()}};
        rows.push_back(std::move(*row));
    }
    return rows;
}

base::Result<void> read_tables(model::Design& design, const Json& top, const ReadPlace& place) {
    base::Result<void> result;
    model::for_each_table([&](std::string_view name, auto member) {
        using Row = typename std::remove_reference_t<decltype(design.*member)>::Row;
        const auto at = top.find(std::string(name));
        if (!result || at == top.end()) return;
        auto rows = read_rows<Row>(*at, name, place);
        if (rows)
            design.*member = model::Table<Row>::of(std::move(*rows));
        else
            result = rows.error();
    });
    return result;
}

void keep_whole_file_keys(model::Design& design, const Json& top) {
    model::Settings settings = design.settings();
    bool found = false;
    for (const auto& [name, value] : top.items()) {
        if (name == "format" || name == "version" || is_table(name)) continue;
        settings.unknown[std::string(whole_file_mark) + name] =
            value.dump(-1, ' ', false, Json::error_handler_t::replace);
        found = true;
    }
    if (found) design.settings_table.put(std::move(settings));
}

std::size_t index_of_row(const Json& top, std::string_view table, const std::string& key) {
    const auto list = top.find(std::string(table));
    for (std::size_t index = 0; list != top.end() && index < list->size(); ++index)
        if (raw_key(table, (*list)[index]) == key) return index;
    return 0;
}

base::Result<void> check_bonds(const model::Design& design, const Json& top, const ReadPlace& place) {
    const auto broken = model::broken_bonds_with_places(design);
    if (broken.empty()) return {};
    const auto& first = broken.front();
    const auto index = index_of_row(top, first.table, first.row);
    return base::Error{"%1: %2 Correct this record or open an older copy.",
                       {place.of(first.table, index, first.row), first.error.english()}};
}

/// An array's records stand one a line, so that versions of a file compare well.
void write_list(std::string& out, const std::vector<std::string>& records) {
    out += '[';
    const char* before = "\n";
    for (const auto& record : records) {
        out += before;
        out += record;
        before = ",\n";
    }
    out += records.empty() ? "]" : "\n]";
}

void write_whole_file_keys(std::string& out, const model::Settings& settings) {
    constexpr auto replace = Json::error_handler_t::replace;
    for (const auto& [name, text] : settings.unknown) {
        if (name.compare(0, 2, whole_file_mark) != 0) continue;
        out += ",\n" + Json(name.substr(2)).dump(-1, ' ', false, replace) + ':';
        const auto value = Json::parse(text, nullptr, false);
        if (!value.is_array()) {
            out += text;
            continue;
        }
        std::vector<std::string> records;
        for (const auto& each : value) records.push_back(each.dump(-1, ' ', false, replace));
        write_list(out, records);
    }
}

}  // namespace

std::string write_design(const model::Design& design) {
    std::string out = "{\n\"format\":\"streamwright\",\n\"version\":" + std::to_string(format_version);
    model::for_each_table([&](std::string_view name, auto member) {
        if (came_later(name) && (design.*member).size() == 0) return;
        std::vector<std::string> records;
        for (const auto& row : design.*member) records.push_back(row_text(row));
        out += ",\n\"" + std::string(name) + "\":";
        write_list(out, records);
    });
    write_whole_file_keys(out, design.settings());
    return out + "\n}\n";
}

base::Result<model::Design> read_parsed(ParsedFile file, std::string_view text, const std::string& where) {
    if (auto migrated = migrate(file, format_version, all_migrations()); !migrated) return migrated.error();
    const ReadPlace place{text, where};
    model::Design design;
    if (auto read = read_tables(design, file.top, place); !read) return read.error();
    keep_whole_file_keys(design, file.top);
    if (auto sound = check_bonds(design, file.top, place); !sound) return sound.error();
    return design;
}

base::Result<model::Design> read_design(std::string_view text, const std::string& where) {
    auto parsed = parse_file(text, where);
    if (!parsed) return parsed.error();
    return read_parsed(std::move(*parsed), text, where);
}

}  // namespace streamwright::io
