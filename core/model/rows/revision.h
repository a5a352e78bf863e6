// One line of the revision table that every document carries.
#pragma once

#include "core/model/ids.h"
#include "core/model/rows/unknown_keys.h"

#include <string>

namespace streamwright::model {

struct Revision {
    RevisionId id;
    int number = 1;  // order
    std::string letter;
    std::string date;  // ISO 8601, as written by the issuer
    std::string what;
    std::string by;  // a role
    UnknownKeys unknown;

    using Key = RevisionId;
    static Revision blank(Key key) { return Revision{key}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("number", s.number);
        v("letter", s.letter);
        v("date", s.date);
        v("what", s.what);
        v("by", s.by);
    }
    friend bool operator==(const Revision&, const Revision&) = default;
};

}  // namespace streamwright::model
