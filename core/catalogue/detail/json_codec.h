// Plain structs to JSON and back, driven by each struct's static visit(): one place that knows how a value looks in a
// file. Fields equal to a blank struct's are left out; keys nobody asks for are kept; what is wrong is told with its
// path. For .cpp files only.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/error.h"
#include "core/base/id.h"
#include "core/base/net_address.h"
#include "core/base/quantity.h"
#include "core/standards/video_format.h"

#include <nlohmann/json.hpp>

#include <cstdint>
#include <limits>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <type_traits>
#include <vector>

namespace streamwright::catalogue::json_detail {

using Json = nlohmann::ordered_json;  // keeps the order in which fields are visited

/// Specialise for structs that cannot bear a visit() of their own.
template <class T>
struct Fields {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        T::visit(s, v);
    }
};

template <class T>
T blank_of();

/// Stands for the blank value of whichever member it is given to.
struct BlankMember {
    template <class T>
    operator T() const {  // NOLINT: meant to convert
        return blank_of<T>();
    }
};

/// The struct that absent fields mean: ids zero, all else as the struct says.
template <class T>
T blank_of() {
    if constexpr (requires { T::blank(); })
        return T::blank();
    else if constexpr (requires(typename T::Key key) { T::blank(key); })
        return T::blank(blank_of<typename T::Key>());
    else if constexpr (std::is_constructible_v<T, std::uint64_t> && requires(T id) { id.bits(); })
        return T(0);
    else if constexpr (std::is_default_constructible_v<T>)
        return T{};
    else
        return T{BlankMember{}, BlankMember{}};  // a key of two ids
}

template <class T>
struct IsId : std::false_type {};
template <class Tag>
struct IsId<base::Id<Tag>> : std::true_type {};

/// One reading of one record: where it stands, the first thing wrong, the keys it did not know.
struct Reading {
    std::vector<std::string> path;
    std::optional<base::Error> trouble;
    std::map<std::string, std::string> unknown;  // by name; nested ones by "/outer/name"

    /// "ports[3].way"
    std::string place() const {
        std::string text;
        for (const auto& step : path) {
            if (!text.empty() && step.front() != '[') text += '.';
            text += step;
        }
        return text.empty() ? "the record" : text;
    }
    /// The pattern's %1 is the place; further arguments follow. Keeps the first trouble only.
    bool refuse(std::string pattern, std::vector<std::string> args = {}) {
        if (!trouble) {
            args.insert(args.begin(), place());
            trouble = base::Error{std::move(pattern), std::move(args)};
        }
        return false;
    }
    void keep_unknown(const std::string& name, const Json& value) {
        constexpr auto replace = Json::error_handler_t::replace;
        if (path.empty() && (name.empty() || name.front() != '/')) {
            unknown.emplace(name, value.dump(-1, ' ', false, replace));
            return;
        }
        std::string pointer;
        for (const auto& step : path)
            pointer += '/' + (step.front() == '[' ? step.substr(1, step.size() - 2) : escaped(step));
        unknown.emplace(pointer + '/' + escaped(name), value.dump(-1, ' ', false, replace));
    }
    static std::string escaped(const std::string& step) {  // RFC 6901, section 3
        std::string text;
        for (const char c : step)
            text += c == '~' ? std::string("~0") : c == '/' ? std::string("~1") : std::string(1, c);
        return text;
    }
};

// ---- writing ----

template <class T>
Json to_json_value(const T& value);

template <class T>
Json to_json_object(const T& value) {
    static const T usual = blank_of<T>();
    std::vector<const void*> usual_fields;
    Fields<T>::visit(usual, [&](const char*, const auto& field) { usual_fields.push_back(&field); });
    Json object = Json::object();
    std::size_t at = 0;
    Fields<T>::visit(value, [&]<class F>(const char* name, const F& field) {
        const auto& usual_field = *static_cast<const F*>(usual_fields[at++]);
        if (IsId<F>::value || !(field == usual_field)) object[name] = to_json_value(field);
    });
    return object;
}

inline Json json_of(const std::string& text) { return text; }
inline Json json_of(bool value) { return value; }
inline Json json_of(int value) { return value; }
inline Json json_of(std::int64_t value) { return value; }
inline Json json_of(base::Ipv4 value) { return base::print(value); }
inline Json json_of(const base::Ipv4Prefix& value) { return base::print(value); }
inline Json json_of(base::MacAddress value) { return base::print(value); }
inline Json json_of(const standards::VideoFormat& value) { return standards::text(value); }
template <class Tag>
Json json_of(base::Quantity<Tag> value) {
    return value.count();
}
template <class Tag>
Json json_of(base::Id<Tag> value) {
    return value.text();
}
template <class Tag>
Json json_of(const base::Key<Tag>& value) {
    return value.text;
}
template <class E>
requires std::is_enum_v<E> Json json_of(E value) { return std::string(base::enum_text(value)); }
template <class T>
Json json_of(const std::optional<T>& value) {
    return value ? to_json_value(*value) : Json(nullptr);
}
template <class T>
Json json_of(const std::vector<T>& values) {
    Json list = Json::array();
    for (const auto& value : values) list.push_back(to_json_value(value));
    return list;
}

template <class T>
Json to_json_value(const T& value) {
    if constexpr (requires { json_of(value); })
        return json_of(value);
    else
        return to_json_object(value);
}

/// Whether the field of T is a struct that is always there, though left out where it is blank.
template <class T>
bool is_plain_struct(const std::string& field) {
    bool plain = false;
    static const T usual = blank_of<T>();
    Fields<T>::visit(usual, [&]<class F>(const char* name, const F&) {
        plain = plain || (field == name && !requires(F f) { json_of(f); });
    });
    return plain;
}

/// Puts kept keys back where they stood. One whose list element or optional part has gone meanwhile goes with it:
/// making that part anew would say what nobody said. `plain_struct` tells which parts may be made anew.
template <class IsPlainStruct>
void restore_unknown(Json& object, const std::map<std::string, std::string>& unknown, IsPlainStruct&& plain_struct) {
    for (const auto& [name, text] : unknown) {
        Json value = Json::parse(text, nullptr, false);
        if (value.is_discarded()) continue;
        if (name.empty() || name.front() != '/') {
            if (!object.contains(name)) object[name] = std::move(value);
            continue;
        }
        if (name.compare(0, 2, "//") == 0) continue;  // belongs to the file as a whole
        const Json::json_pointer pointer(name);
        const auto parent = pointer.parent_pointer();
        if (!object.contains(parent)) {
            if (!parent.parent_pointer().empty() || !plain_struct(parent.back())) continue;
            object[parent] = Json::object();
        }
        Json& home = object[parent];
        if (home.is_object() && !home.contains(pointer.back())) home[pointer.back()] = std::move(value);
    }
}

inline void restore_unknown(Json& object, const std::map<std::string, std::string>& unknown) {
    restore_unknown(object, unknown, [](const std::string&) { return false; });
}

// ---- reading ----

template <class T>
bool from_json_value(const Json& json, T& out, Reading& reading);

template <class T>
bool from_json_object(const Json& json, T& out, Reading& reading) {
    if (!json.is_object()) return reading.refuse("%1 must be an object in braces.");
    std::set<std::string, std::less<>> known;
    bool good = true;
    Fields<T>::visit(out, [&]<class F>(const char* name, F& field) {
        known.emplace(name);
        if (!good) return;
        const auto at = json.find(name);
        reading.path.emplace_back(name);
        if (at != json.end())
            good = from_json_value(*at, field, reading);
        else if (IsId<F>::value)
            good = reading.refuse("%1 is missing.");
        reading.path.pop_back();
    });
    if (!good) return false;
    for (const auto& [name, value] : json.items())
        if (!known.contains(name)) reading.keep_unknown(name, value);
    return true;
}

inline bool whole_number(const Json& json, std::int64_t& out, Reading& reading) {
    if (json.is_number_unsigned()) {
        const auto value = json.get<std::uint64_t>();
        if (value > static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max()))
            return reading.refuse("%1 is too large a number.");
        out = static_cast<std::int64_t>(value);
        return true;
    }
    if (!json.is_number_integer()) return reading.refuse("%1 must be a whole number.");
    out = json.get<std::int64_t>();
    return true;
}

template <class T, class Parse>
bool parsed_text(const Json& json, T& out, Reading& reading, Parse&& parse, const char* wanted) {
    if (!json.is_string()) return reading.refuse("%1 must be a text in quotes.");
    const auto value = parse(json.get_ref<const std::string&>());
    if (!value) return reading.refuse("%1 is \"%2\", which is not %3.", {json.get<std::string>(), wanted});
    out = *value;
    return true;
}

inline bool read_json(const Json& json, std::string& out, Reading& reading) {
    if (!json.is_string()) return reading.refuse("%1 must be a text in quotes.");
    out = json.get<std::string>();
    return true;
}
inline bool read_json(const Json& json, bool& out, Reading& reading) {
    if (!json.is_boolean()) return reading.refuse("%1 must be true or false.");
    out = json.get<bool>();
    return true;
}
inline bool read_json(const Json& json, std::int64_t& out, Reading& reading) {
    return whole_number(json, out, reading);
}
inline bool read_json(const Json& json, int& out, Reading& reading) {
    std::int64_t wide = 0;
    if (!whole_number(json, wide, reading)) return false;
    if (wide < std::numeric_limits<int>::min() || wide > std::numeric_limits<int>::max())
        return reading.refuse("%1 is too large a number.");
    out = static_cast<int>(wide);
    return true;
}
inline bool read_json(const Json& json, base::Ipv4& out, Reading& reading) {
    return parsed_text(json, out, reading, base::parse_ipv4, "an IPv4 address such as 10.0.0.1");
}
inline bool read_json(const Json& json, base::Ipv4Prefix& out, Reading& reading) {
    return parsed_text(json, out, reading, base::parse_ipv4_prefix, "a subnet such as 10.0.0.0/24");
}
inline bool read_json(const Json& json, base::MacAddress& out, Reading& reading) {
    return parsed_text(json, out, reading, base::parse_mac, "a MAC address such as 02-00-00-00-00-01");
}
inline bool read_json(const Json& json, standards::VideoFormat& out, Reading& reading) {
    return parsed_text(json, out, reading, standards::parse_video_format,
                       "a picture format such as 2160p60 4:2:2 10-bit");
}
template <class Tag>
bool read_json(const Json& json, base::Quantity<Tag>& out, Reading& reading) {
    std::int64_t count = 0;
    if (!whole_number(json, count, reading)) return false;
    out = base::Quantity<Tag>::from_count(count);
    return true;
}
template <class Tag>
bool read_json(const Json& json, base::Id<Tag>& out, Reading& reading) {
    return parsed_text(json, out, reading, base::Id<Tag>::parse, "an id of 12 characters");
}
template <class Tag>
bool read_json(const Json& json, base::Key<Tag>& out, Reading& reading) {
    return read_json(json, out.text, reading);
}
template <class E>
requires std::is_enum_v<E>
bool read_json(const Json& json, E& out, Reading& reading) {
    if (!json.is_string()) return reading.refuse("%1 must be a text in quotes.");
    const auto value = base::parse_enum<E>(json.get_ref<const std::string&>());
    if (value) {
        out = *value;
        return true;
    }
    std::string names;
    for (const auto& [each, name] : base::EnumText<E>::names) names += (names.empty() ? "" : ", ") + std::string(name);
    return reading.refuse("%1 is \"%2\"; it must be one of %3.", {json.get<std::string>(), names});
}
template <class T>
bool read_json(const Json& json, std::optional<T>& out, Reading& reading) {
    out.reset();
    if (json.is_null()) return true;
    T value = blank_of<T>();
    if (!from_json_value(json, value, reading)) return false;
    out = std::move(value);
    return true;
}
template <class T>
bool read_json(const Json& json, std::vector<T>& out, Reading& reading) {
    if (!json.is_array()) return reading.refuse("%1 must be a list in square brackets.");
    out.clear();
    for (std::size_t at = 0; at < json.size(); ++at) {
        T value = blank_of<T>();
        reading.path.push_back('[' + std::to_string(at) + ']');
        if (!from_json_value(json[at], value, reading)) return false;
        reading.path.pop_back();
        out.push_back(std::move(value));
    }
    return true;
}

template <class T>
bool from_json_value(const Json& json, T& out, Reading& reading) {
    if constexpr (requires { read_json(json, out, reading); })
        return read_json(json, out, reading);
    else
        return from_json_object(json, out, reading);
}

}  // namespace streamwright::catalogue::json_detail
