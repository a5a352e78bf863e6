// A named set of subscriptions, recalled as one ("Lecture").
#pragma once

#include "core/model/ids.h"
#include "core/model/rows/unknown_keys.h"

#include <string>

namespace streamwright::model {

struct Preset {
    PresetId id;
    int number = 1;  // presets are listed by number, then id
    std::string name;
    std::string note;
    UnknownKeys unknown;

    using Key = PresetId;
    static Preset blank(Key key) { return Preset{key}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("number", s.number);
        v("name", s.name);
        v("note", s.note);
    }
    friend bool operator==(const Preset&, const Preset&) = default;
};

}  // namespace streamwright::model
