#include "core/analysis/facts/rate_table.h"

#include "core/model/stream_packets.h"
#include "core/standards/wire_overhead.h"

#include <algorithm>
#include <array>
#include <limits>
#include <map>
#include <numeric>
#include <utility>

namespace streamwright::analysis {

/// What is known already while the table is made. Streams of one essence are reckoned once: thousands share a few.
struct RateTable::Places {
    using Essence = std::array<std::int64_t, 12>;
    std::map<Ratio, int> ratios;
    std::map<std::pair<std::int64_t, int>, int> rates;
    std::map<Essence, Row> essences;
};

namespace rate_table_detail {

template <class Field>
std::int64_t number(const Field& field) {
    return static_cast<std::int64_t>(field);
}

/// Everything that packets follow from.
std::array<std::int64_t, 12> essence_key(const model::Stream& stream) {
    if (stream.sound) {
        const auto& flow = stream.sound->flow;
        return {-1, flow.sampling_hz, number(flow.coding), flow.channels, number(flow.packet_time)};
    }
    const auto& picture = *stream.picture;
    const auto& format = picture.format;
    return {number(picture.coding),  format.width,
            format.height,           number(format.interlaced),
            format.frame_rate.num(), format.frame_rate.den(),
            number(format.sampling), format.depth,
            number(picture.packing), picture.millibits_per_pixel,
            picture.rate.count(),    picture.udp_limit_octets};
}

std::int64_t wire_bits(const standards::PictureStream& packets, int tags) {
    std::int64_t octets = 0;
    for (const auto& run : packets.runs) octets += run.packets * standards::packet_wire_octets(run.payload, true, tags);
    return octets * 8;
}

}  // namespace rate_table_detail

RateTable::Term RateTable::placed(std::int64_t bits, const Ratio& ratio, Places& places) {
    const auto [ratio_place, new_ratio] = places.ratios.try_emplace(ratio, static_cast<int>(ratios_.size()));
    if (new_ratio) ratios_.push_back(ratio);
    const int ratio_index = ratio_place->second;
    const auto [rate_place, new_rate] = places.rates.try_emplace({bits, ratio_index}, static_cast<int>(rates_.size()));
    if (new_rate) {
        rates_.push_back(base::Rate::scaled(base::BitRate::from_count(bits), ratio.over, ratio.under));
        rate_origins_.emplace_back(bits, ratio_index);
    }
    return {bits, ratio_index, rate_place->second};
}

RateTable::Row RateTable::row_of(const model::Stream& stream, Places& places) {
    if (!model::packs_essence(stream)) {
        const std::int64_t bits = std::max<std::int64_t>(stream.payload_rate.count(), 0);
        const std::int64_t octets = std::clamp(stream.payload_octets, 1, 65535);
        const auto term = [&](int tags) {
            return placed(bits, {standards::packet_wire_octets(octets, stream.rtp, tags), octets}, places);
        };
        return {term(0), term(1)};
    }
    const auto [known, fresh] = places.essences.try_emplace(rate_table_detail::essence_key(stream));
    if (!fresh) return known->second;
    if (const auto packets = model::packets_of(stream)) {
        const Ratio often{packets->pictures.num(), packets->pictures.den()};
        known->second = {placed(rate_table_detail::wire_bits(*packets, 0), often, places),
                         placed(rate_table_detail::wire_bits(*packets, 1), often, places)};
    } else {
        known->second = {placed(0, {}, places), placed(0, {}, places)};
    }
    return known->second;
}

RateTable::RateTable(const model::Table<model::Stream>& streams) {
    Places places;
    rows_.reserve(streams.size());
    for (const auto& stream : streams) rows_.push_back(row_of(stream, places));
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
    for (const auto& [bits, ratio] : rate_origins_) {
        const auto& growth = ratios_[static_cast<std::size_t>(ratio)];
        const Parts product = Parts{bits} * growth.over * parts_per_bit_;
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
    const auto& term = this->term(stream, tagged);
    if (term.bits == 0) return;
    auto& sum = sums_[static_cast<std::size_t>(term.ratio)];
    if (sum > std::numeric_limits<std::int64_t>::max() - term.bits) flush(term.ratio, total);
    if (sum == 0) used_.push_back(term.ratio);
    sum += term.bits;
}

void RateTable::flush(int ratio, base::Rate& total) {
    const auto sum = std::exchange(sums_[static_cast<std::size_t>(ratio)], 0);
    if (sum == 0) return;
    const auto& growth = ratios_[static_cast<std::size_t>(ratio)];
    total += base::Rate::scaled(base::BitRate::from_count(sum), growth.over, growth.under);
}

}  // namespace streamwright::analysis
