// A cable: what is drawn and pulled, between two ports. An end may be open.
#pragma once

#include "core/base/units.h"
#include "core/model/ids.h"
#include "core/model/rows/unknown_keys.h"

#include <optional>
#include <string>

namespace streamwright::model {

struct CableEnd {
    PortRef port;
    static CableEnd blank() { return {PortRef{DeviceId(0), {}}}; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("device", s.port.device);
        v("port", s.port.port);
    }
    friend bool operator==(const CableEnd&, const CableEnd&) = default;
};

/// How far the work on site has come.
struct CableProgress {
    bool pulled = false, terminated = false, tested = false, labelled = false;
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("pulled", s.pulled);
        v("terminated", s.terminated);
        v("tested", s.tested);
        v("labelled", s.labelled);
    }
    friend bool operator==(const CableProgress&, const CableProgress&) = default;
};

/// How many different picture streams may cross the link at once, either way, as people have agreed; it stands on one
/// cable of the link.
struct AgreedContention {
    int sources = 1;
    std::string by;  // a role
    std::string on;  // date, ISO 8601
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("sources", s.sources);
        v("by", s.by);
        v("on", s.on);
    }
    friend bool operator==(const AgreedContention&, const AgreedContention&) = default;
};

/// What was done to a fibre on its way: what loses light or swaps the strands, beyond its type and the panels drawn.
struct FibreWork {
    std::optional<int> pair_swaps;  // as installed; none: as the type states
    int splices = 0;
    int joints = 0;  // mated pairs that are not drawn
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("pair_swaps", s.pair_swaps);
        v("splices", s.splices);
        v("joints", s.joints);
    }
    friend bool operator==(const FibreWork&, const FibreWork&) = default;
};

struct Cable {
    CableId id;
    CableTypeKey type;
    std::string tag;
    std::string note;
    std::optional<CableEnd> a, b;
    std::optional<base::Length> length;  // typed by hand; leads of a made length need none
    std::string duct;                    // named way it takes, until a plan gives routes
    CableProgress progress;
    std::optional<AgreedContention> agreed;
    FibreWork fibre;
    UnknownKeys unknown;

    using Key = CableId;
    static Cable blank(Key key) { return Cable{key}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("type", s.type);
        v("tag", s.tag);
        v("note", s.note);
        v("a", s.a);
        v("b", s.b);
        v("length_um", s.length);
        v("duct", s.duct);
        v("progress", s.progress);
        v("agreed", s.agreed);
        v("fibre", s.fibre);
    }
    friend bool operator==(const Cable&, const Cable&) = default;
};

}  // namespace streamwright::model
