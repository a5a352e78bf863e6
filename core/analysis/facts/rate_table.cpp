#include "core/analysis/facts/rate_table.h"

#include "core/standards/wire_overhead.h"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <utility>

namespace streamwright::analysis {

RateTable::RateTable(const model::Table<model::Stream>& streams) {
    std::map<Ratio, int> ratio_places;
    std::map<std::pair<std::int64_t, int>, int> rate_places;
    const auto place_ratio = [&](const model::Stream& stream, bool tagged) {
        const std::int64_t payload = std::clamp(stream.payload_octets, 1, 65535);
        const Ratio ratio{standards::packet_wire_octets(payload, stream.rtp, tagged ? 1 : 0), payload};
        const auto [place, fresh] = ratio_places.try_emplace(ratio, static_cast<int>(ratios_.size()));
        if (fresh) ratios_.push_back(ratio);
        return place->second;
    };
    const auto place_rate = [&](std::int64_t payload, int ratio) {
        const auto [place, fresh] = rate_places.try_emplace({payload, ratio}, static_cast<int>(rates_.size()));
        const auto& growth = ratios_[static_cast<std::size_t>(ratio)];
        if (fresh) {
            rates_.push_back(base::Rate::scaled(base::BitRate::from_count(payload), growth.over, growth.under));
            rate_origins_.emplace_back(payload, ratio);
        }
        return place->second;
    };
    rows_.reserve(streams.size());
    for (const auto& stream : streams) {
        Row row;
        row.payload = std::max<std::int64_t>(stream.payload_rate.count(), 0);
        row.plain = place_ratio(stream, false);
        row.tagged = place_ratio(stream, true);
        row.plain_rate = place_rate(row.payload, row.plain);
        row.tagged_rate = place_rate(row.payload, row.tagged);
        rows_.push_back(row);
    }
    sums_.assign(ratios_.size(), 0);
    rank_rates();
    count_parts();
}

/// So many parts that the sum of 100,000 of the greatest rates keeps within 128 bits.
void RateTable::count_parts() {
    constexpr std::int64_t most = std::int64_t{1} << 40;
    for (const auto& ratio : ratios_) {
        const auto under = ratio.under / std::gcd(ratio.over, ratio.under);
        const auto step = under / std::gcd(under, parts_per_bit_);
        if (parts_per_bit_ > most / step) parts_exact_ = false;
        if (!parts_exact_) break;
        parts_per_bit_ *= step;
    }
    if (!parts_exact_) parts_per_bit_ = 1'000'000;
    for (const auto& [payload, ratio] : rate_origins_) {
        const auto& growth = ratios_[static_cast<std::size_t>(ratio)];
        const Parts product = Parts{payload} * growth.over * parts_per_bit_;
        rate_parts_.push_back((product + growth.under - 1) / growth.under);
    }
}

base::BitRate RateTable::whole(Parts parts) const {
    constexpr Parts most = std::numeric_limits<std::int64_t>::max();
    const Parts bits = (parts + parts_per_bit_ - 1) / parts_per_bit_;
    return base::BitRate::from_count(static_cast<std::int64_t>(std::min(bits, most)));
}

void RateTable::rank_rates() {
    std::vector<std::size_t> order(rates_.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return rates_[a] < rates_[b]; });
    ranks_.assign(rates_.size(), 0);
    for (std::size_t i = 1; i < order.size(); ++i)
        ranks_[order[i]] = ranks_[order[i - 1]] + (rates_[order[i]] == rates_[order[i - 1]] ? 0 : 1);
}

void RateTable::add(int stream, bool tagged, base::Rate& total) {
    const auto& row = rows_[static_cast<std::size_t>(stream)];
    if (row.payload == 0) return;
    const int ratio = tagged ? row.tagged : row.plain;
    auto& sum = sums_[static_cast<std::size_t>(ratio)];
    if (sum > std::numeric_limits<std::int64_t>::max() - row.payload) flush(ratio, total);
    if (sum == 0) used_.push_back(ratio);
    sum += row.payload;
}

void RateTable::flush(int ratio, base::Rate& total) {
    const auto sum = std::exchange(sums_[static_cast<std::size_t>(ratio)], 0);
    if (sum == 0) return;
    const auto& growth = ratios_[static_cast<std::size_t>(ratio)];
    total += base::Rate::scaled(base::BitRate::from_count(sum), growth.over, growth.under);
}

}  // namespace streamwright::analysis
