// What the design holds its cabling to, where published figures leave a choice or were only remembered: each may be
// changed, and what is not set follows core/standards.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/units.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::model {

/// Which published rule shortens copper in warm ways; the three differ by up to 3 m at 60 degrees C. `strictest` names
/// none: beyond all of them is an error, between them a warning.
enum class WarmRule { strictest, table, linear, quotient };

/// The design's own limit of a kind of line, by the name of the line ("HDMI 18 Gb/s", "3G-SDI", "RS-232").
struct LineLimit {
    std::string line;
    std::optional<base::Length> length;
    std::optional<base::Loss> loss;
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("line", s.line);
        v("length_um", s.length);
        v("loss_mdb", s.loss);
    }
    friend bool operator==(const LineLimit&, const LineLimit&) = default;
};

struct CablingSettings {
    WarmRule warm_rule = WarmRule::strictest;
    base::Temperature bundle_rise;         // what a bundle of powered cables is warmer than its way
    std::optional<base::Length> cat6_10g;  // channel of 10GBASE-T on category 6; none: 55 m (37 m among hostile cables)
    std::optional<base::Loss> joint_loss;  // of a mated pair of fibre connectors; none: 0.75 dB
    std::optional<base::Loss> splice_loss;  // none: 0.3 dB
    std::vector<LineLimit> lines;
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("warm_rule", s.warm_rule);
        v("bundle_rise_mdegc", s.bundle_rise);
        v("cat6_10g_um", s.cat6_10g);
        v("joint_loss_mdb", s.joint_loss);
        v("splice_loss_mdb", s.splice_loss);
        v("lines", s.lines);
    }
    friend bool operator==(const CablingSettings&, const CablingSettings&) = default;
};

}  // namespace streamwright::model

template <>
struct streamwright::base::EnumText<streamwright::model::WarmRule> {
    using E = streamwright::model::WarmRule;
    static constexpr std::array<std::pair<E, std::string_view>, 4> names{
        {{E::strictest, "strictest"}, {E::table, "table"}, {E::linear, "linear"}, {E::quotient, "quotient"}}};
};
