// A finding accepted with a reason. An update never deletes a waiver; one made for an older rule revision asks again.
#pragma once

#include "core/model/ids.h"
#include "core/model/rows/unknown_keys.h"

#include <string>
#include <vector>

namespace streamwright::model {

struct Waiver {
    WaiverId id;
    std::string rule;
    int rule_revision = 1;
    std::vector<std::string> subjects;  // as findings name them, "device:0123456789ab"
    std::string reason;
    std::string by;  // a role
    UnknownKeys unknown;

    using Key = WaiverId;
    static Waiver blank(Key key) { return Waiver{key}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("rule", s.rule);
        v("rule_revision", s.rule_revision);
        v("subjects", s.subjects);
        v("reason", s.reason);
        v("by", s.by);
    }
    friend bool operator==(const Waiver&, const Waiver&) = default;
};

}  // namespace streamwright::model
