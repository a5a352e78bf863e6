// A sheet and what stands on it: places of devices, bends of cables, room frames, notes.
// Drawing only: nothing here can make or cure a finding. One canvas unit is 0.25 mm; stored in micrometres of paper.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/units.h"
#include "core/model/ids.h"
#include "core/model/rows/unknown_keys.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::model {

/// On the sheet, from its upper left corner, down and right.
struct SheetPoint {
    base::Length x, y;
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("x_um", s.x);
        v("y_um", s.y);
    }
    friend auto operator<=>(const SheetPoint&, const SheetPoint&) = default;
};

enum class PaperSize { a0, a1, a2, a3, a4 };  // landscape; A4 portrait (ISO 5457)

struct Sheet {
    SheetId id;
    int number = 1;
    std::string title;
    std::string supplement;
    PaperSize paper = PaperSize::a3;
    UnknownKeys unknown;

    using Key = SheetId;
    static Sheet blank(Key key) { return Sheet{key}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("number", s.number);
        v("title", s.title);
        v("supplement", s.supplement);
        v("paper", s.paper);
    }
    friend bool operator==(const Sheet&, const Sheet&) = default;
};

/// Where a device's plate stands; its upper left corner, without the lugs.
struct Place {
    struct Key {
        SheetId sheet;
        DeviceId device;
        friend auto operator<=>(const Key&, const Key&) = default;
    };
    Key on;
    SheetPoint at;
    bool turned = false;  // left and right exchanged
    bool folded = false;  // title row only
    UnknownKeys unknown;

    static Place blank(Key key) { return Place{key}; }
    Key key() const { return on; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("sheet", s.on.sheet);
        v("device", s.on.device);
        v("at", s.at);
        v("turned", s.turned);
        v("folded", s.folded);
    }
    friend bool operator==(const Place&, const Place&) = default;
};

/// The stored bends of a cable on a sheet, from end a to end b, the lugs themselves left out.
struct CableLine {
    struct Key {
        SheetId sheet;
        CableId cable;
        friend auto operator<=>(const Key&, const Key&) = default;
    };
    Key on;
    std::vector<SheetPoint> bends;
    bool pinned = false;  // set by hand: automatic routing leaves it alone
    UnknownKeys unknown;

    static CableLine blank(Key key) { return CableLine{key}; }
    Key key() const { return on; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("sheet", s.on.sheet);
        v("cable", s.on.cable);
        v("bends", s.bends);
        v("pinned", s.pinned);
    }
    friend bool operator==(const CableLine&, const CableLine&) = default;
};

/// A frame round the plates of a room on a sheet; a room may have several.
struct RoomFrame {
    FrameId id;
    SheetId sheet;
    RoomId room;
    std::string title;  // empty: the room's name
    SheetPoint at;
    base::Length width, height;
    UnknownKeys unknown;

    using Key = FrameId;
    static RoomFrame blank(Key key) { return RoomFrame{.id = key, .sheet = SheetId(0), .room = RoomId(0)}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("sheet", s.sheet);
        v("room", s.room);
        v("title", s.title);
        v("at", s.at);
        v("width_um", s.width);
        v("height_um", s.height);
    }
    friend bool operator==(const RoomFrame&, const RoomFrame&) = default;
};

struct Note {
    NoteId id;
    SheetId sheet;
    SheetPoint at;
    std::string text;
    UnknownKeys unknown;

    using Key = NoteId;
    static Note blank(Key key) { return Note{.id = key, .sheet = SheetId(0)}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("sheet", s.sheet);
        v("at", s.at);
        v("text", s.text);
    }
    friend bool operator==(const Note&, const Note&) = default;
};

}  // namespace streamwright::model

template <>
struct streamwright::base::EnumText<streamwright::model::PaperSize> {
    using E = streamwright::model::PaperSize;
    static constexpr std::array<std::pair<E, std::string_view>, 5> names{
        {{E::a0, "A0"}, {E::a1, "A1"}, {E::a2, "A2"}, {E::a3, "A3"}, {E::a4, "A4"}}};
};
