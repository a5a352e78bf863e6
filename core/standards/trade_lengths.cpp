#include "core/standards/trade_lengths.h"

#include <array>

namespace streamwright::standards {

namespace trade_lengths_detail {

using namespace base::literals;

constexpr Citation trade{"trade practice", "", "", Standing::memory};
constexpr Citation remembered(std::string_view document, std::string_view clause) {
    return {"IEEE", document, clause, Standing::memory};
}

constexpr std::array rows{
    TradeLength{"HDMI 18 Gbit/s, passive copper", 5_m, 7_m, trade},
    TradeLength{"HDMI 10.2 Gbit/s, passive copper", 7_m, 10_m, trade},
    TradeLength{"HDMI 4.95 Gbit/s, passive copper", 10_m, 15_m, trade},
    TradeLength{"HDMI 48 Gbit/s, passive copper", 3_m, 5_m, trade},
    TradeLength{"HDMI, active optical", 10_m, 100_m, trade},
    TradeLength{"DisplayPort HBR2 or HBR3, passive copper", 2_m, 3_m, trade},
    TradeLength{"DisplayPort UHBR, passive copper", 1_m, 2_m, trade},
    TradeLength{"DisplayPort, active optical", 10_m, 50_m, trade},
    TradeLength{"infrared emitter", 60_m, 90_m, trade},
    TradeLength{"contact closure", 100_m, 300_m, trade},
    TradeLength{"analogue sound, balanced line", 300_m, 300_m, trade},
    TradeLength{"analogue sound, unbalanced line", 5_m, 10_m, trade},
    TradeLength{"AES3, 110 ohm", 100_m, 100_m, trade},
    TradeLength{"3G-SDI, whole path", 70_m, 140_m, {"trade practice", "", "depends on cable and devices"}},
    TradeLength{"pictures over twisted pairs", 100_m, 100_m, {"IEEE", "1911", "any class"}},
    TradeLength{"pictures over twisted pairs, class A, 1080p60", 100_m, 100_m, remembered("1911.1", "class A")},
    TradeLength{"pictures over twisted pairs, class A, 4K", 70_m, 70_m, remembered("1911.1", "class A")},
    TradeLength{"pictures over twisted pairs, class B, 1080p60", 70_m, 70_m, remembered("1911", "class B")},
    TradeLength{"pictures over twisted pairs, class B, 4K30", 35_m, 40_m, remembered("1911", "class B")},
};

}  // namespace trade_lengths_detail

std::span<const TradeLength> trade_lengths() { return trade_lengths_detail::rows; }

const TradeLength* trade_length(std::string_view name) {
    for (const auto& row : trade_lengths_detail::rows)
        if (row.name == name) return &row;
    return nullptr;
}

}  // namespace streamwright::standards
