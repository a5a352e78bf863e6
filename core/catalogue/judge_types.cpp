#include "core/catalogue/judge_types.h"

#include "core/catalogue/catalogue.h"
#include "core/catalogue/inconsistencies.h"
#include "core/catalogue/type_files.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <system_error>

namespace streamwright::catalogue {

namespace judge_types_detail {

namespace fs = std::filesystem;

/// What the judgement against other files needs of the sound types.
struct Sound {
    std::size_t file;  // index of its JudgedFile
    std::string key, name;
    std::optional<std::string> card_form;  // that it has
    std::optional<std::string> takes;      // card form that its slots take
};

struct Bench {
    std::vector<JudgedFile> files;
    std::vector<Sound> sound;
};

/// In a folder without parts a cable type is known by what only cables have.
bool looks_like_cable(const std::string& text) {
    return text.find("\"plugs\"") != std::string::npos || text.find("\"grade\"") != std::string::npos;
}

std::optional<base::Error> remark_on(const std::map<std::string, std::string>& unknown, const std::string& where) {
    if (unknown.empty()) return std::nullopt;
    std::string names;
    for (const auto& [name, value] : unknown) names += (names.empty() ? "" : ", ") + name;
    return base::Error{"%1: nothing reads %2; correct the spelling, or leave it if another program needs it.",
                       {where, names}};
}

Sound sound_of(const DeviceType& type, std::size_t file) {
    Sound sound{file, type.key.text, type.name, type.card_form, {}};
    if (type.chassis) sound.takes = type.chassis->takes;
    return sound;
}
Sound sound_of(const CableType& type, std::size_t file) { return {file, type.key.text, type.name, {}, {}}; }

template <class Type>
void judge_type(Bench& bench, JudgedFile& judged, const base::Result<Type>& type) {
    if (!type) {
        judged.fault = type.error();
        return;
    }
    const auto where = judged.path.string();
    if (type->key.text != judged.path.stem().string())
        judged.fault = misnamed(judged.path, type->key.text);
    else
        judged.fault = inconsistency(*type, where);
    judged.remark = remark_on(type->unknown, where);
    if (!judged.fault) bench.sound.push_back(sound_of(*type, bench.files.size()));
}

void judge_file(Bench& bench, const fs::path& path, std::optional<bool> cable) {
    JudgedFile judged{path, cable.value_or(false), {}, {}};
    const auto text = read_type_file(path);
    if (!text) {
        judged.fault = text.error();
    } else {
        judged.cable = cable.value_or(looks_like_cable(*text));
        if (judged.cable)
            judge_type(bench, judged, read_cable_type(*text, path.string()));
        else
            judge_type(bench, judged, read_device_type(*text, path.string()));
    }
    bench.files.push_back(std::move(judged));
}

/// Nothing if all went well; a part that is not there is no trouble.
std::optional<base::Error> judge_part(Bench& bench, const fs::path& folder, std::optional<bool> cable) {
    std::error_code trouble;
    if (cable && !fs::is_directory(folder, trouble)) return std::nullopt;
    const auto files = type_files(folder);
    if (!files) return files.error();
    for (const auto& path : *files) judge_file(bench, path, cable);
    return std::nullopt;
}

void judge_twins(Bench& bench) {
    std::map<std::pair<bool, std::string>, std::size_t> keys, names;  // kind and text to the first file that bears it
    for (const auto& each : bench.sound) {
        auto& file = bench.files[each.file];
        const auto [key, fresh_key] = keys.emplace(std::pair(file.cable, each.key), each.file);
        const auto [name, fresh_name] = names.emplace(std::pair(file.cable, each.name), each.file);
        if (!fresh_key)
            file.fault = base::Error{"%1: key: %2 has it too; remove one of the two files.",
                                     {file.path.string(), bench.files[key->second].path.string()}};
        else if (!fresh_name)
            file.fault =
                base::Error{"%1: name: %2 has it too, so nobody can tell the two apart; give one another name.",
                            {file.path.string(), bench.files[name->second].path.string()}};
    }
}

void judge_cards(Bench& bench) {
    std::set<std::string> forms;
    for (const auto& each : bench.sound)
        if (each.takes) forms.insert(*each.takes);
    for (const auto& each : bench.sound) {
        auto& file = bench.files[each.file];
        if (!each.card_form || forms.count(*each.card_form) != 0 || file.fault) continue;
        file.fault = base::Error{"%1: card_form: no chassis here takes \"%2\"; correct it, or add the chassis.",
                                 {file.path.string(), *each.card_form}};
    }
}

}  // namespace judge_types_detail

base::Result<std::vector<JudgedFile>> judge_types(const std::filesystem::path& folder) {
    using namespace judge_types_detail;
    Bench bench;
    if (const auto trouble = judge_part(bench, folder, std::nullopt)) return *trouble;
    if (const auto trouble = judge_part(bench, folder / "cables", true)) return *trouble;
    if (const auto trouble = judge_part(bench, folder / "devices", false)) return *trouble;
    if (bench.files.empty())
        return base::Error{
            "The folder %1 holds no type files (*.json, or in it devices and cables); name another folder.",
            {folder.string()}};
    judge_twins(bench);
    judge_cards(bench);
    std::sort(bench.files.begin(), bench.files.end(), [](const auto& a, const auto& b) { return a.path < b.path; });
    return std::move(bench.files);
}

}  // namespace streamwright::catalogue
