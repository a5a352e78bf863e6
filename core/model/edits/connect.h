// Connects two ports by a fresh cable, or leaves one end open. May refuse, in words, what can never be plugged;
// what merely will not work is drawn and found by the rules.
#pragma once

#include "core/base/result.h"
#include "core/catalogue/cable_type.h"
#include "core/model/delta.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::model {

struct Connect {
    CableId id;  // fresh
    std::shared_ptr<const catalogue::CableType> type;
    std::optional<PortRef> a, b;
    std::optional<base::Length> length;
    std::string tag;               // empty: letter of the signal and the next free number
    std::optional<SheetId> sheet;  // whose bends are given
    std::vector<SheetPoint> bends;
    friend bool operator==(const Connect&, const Connect&) = default;
};

base::Result<Delta> make(const Design& design, const Connect& edit);

/// Why a lead from `from` cannot be plugged into `to`; nothing if it can. Asked while a cable is pulled.
std::optional<base::Error> refusal(const Design& design, const PortRef& from, const PortRef& to);
/// The same while one end of the cable `moving` is dragged: the ports it holds are free for it.
std::optional<base::Error> refusal(const Design& design, const PortRef& from, const PortRef& to,
                                   std::optional<CableId> moving);
/// Why these two ends do not take this type of cable; nothing if they do.
std::optional<base::Error> refusal(const Design& design, const catalogue::CableType& type, const PortRef& end);
std::string next_cable_tag(const Design& design, catalogue::Signal signal);

}  // namespace streamwright::model
