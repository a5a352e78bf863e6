// What the judges of types share: the first complaint is kept, with the file and the field; what follows it is not
// looked at. For .cpp files only.
#pragma once

#include "core/base/error.h"

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <type_traits>

namespace streamwright::catalogue {

class Judge {
public:
    explicit Judge(const std::string& where) : where_(where) {}

    void refuse_if(bool wrong, const std::string& field, std::string_view why) {
        if (wrong && !error_) error_ = base::Error{"%1: %2: %3; correct it.", {where_, field, std::string(why)}};
    }
    std::optional<base::Error> error() const { return error_; }

private:
    std::string where_;
    std::optional<base::Error> error_;
};

template <class List, class Get>
bool any_twice(const List& list, Get&& get) {
    std::set<std::decay_t<decltype(get(*list.begin()))>> seen;
    for (const auto& each : list)
        if (!seen.insert(get(each)).second) return true;
    return false;
}

}  // namespace streamwright::catalogue
