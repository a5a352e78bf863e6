// Watches a parser of JSON while it reads: text that nests too deeply, names a key twice in one object or has objects
// of a size that only an attack has is refused before it costs memory, stack or a value lost unseen. For .cpp files
// only.
#pragma once

#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>
#include <unordered_set>
#include <vector>

namespace streamwright::catalogue::json_detail {

inline constexpr int deepest = 64;             // levels; no text can exhaust the stack
inline constexpr std::size_t most_keys = 256;  // in one object; looking up among very many takes for ever

/// Thrown out of the parser. The reader makes the sentence, for it knows what it was reading.
struct RefusedText {
    enum class Why { too_deep, key_twice, too_wide };
    Why why = Why::too_deep;
    std::string key;  // that stands twice
};

class ParserWatch {
public:
    using Json = nlohmann::ordered_json;

    bool operator()(int depth, Json::parse_event_t event, Json& value) {
        if (depth > deepest) throw RefusedText{RefusedText::Why::too_deep, {}};
        if (event == Json::parse_event_t::object_start) {
            keys_.resize(static_cast<std::size_t>(depth) + 1);
            keys_.back().clear();
        } else if (event == Json::parse_event_t::key) {
            note_key(static_cast<std::size_t>(depth), value.get_ref<const std::string&>());
        }
        return true;
    }

private:
    void note_key(std::size_t depth, const std::string& key) {
        auto& keys = keys_.at(std::min(depth - 1, keys_.size() - 1));
        if (!keys.insert(key).second) throw RefusedText{RefusedText::Why::key_twice, key};
        if (keys.size() > most_keys) throw RefusedText{RefusedText::Why::too_wide, {}};
    }

    std::vector<std::unordered_set<std::string>> keys_;  // by depth
};

}  // namespace streamwright::catalogue::json_detail
