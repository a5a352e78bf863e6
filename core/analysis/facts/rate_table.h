// The wire rates of all streams, made once. Streams whose payload grows by the same ratio add up as whole numbers, so
// that a sum over many streams needs few exact fractions.
#pragma once

#include "core/base/rate.h"
#include "core/model/design.h"

#include <compare>
#include <cstdint>
#include <span>
#include <utility>
#include <vector>

namespace streamwright::analysis {

class RateTable {
public:
    __extension__ using Parts = __int128;

    explicit RateTable(const model::Table<model::Stream>& streams);

    const base::Rate& of(int stream, bool tagged) const {
        return rates_[static_cast<std::size_t>(term(stream, tagged).rate)];
    }
    /// Orders streams by rate without exact arithmetic: a higher rank is a higher rate, equal ranks are equal rates.
    int rank(int stream, bool tagged) const { return ranks_[static_cast<std::size_t>(term(stream, tagged).rate)]; }

    /// Exact; `tagged(stream)` tells whether the stream bears a tag there.
    template <class Tagged>
    base::Rate sum(std::span<const int> streams, Tagged&& tagged) {
        if (streams.empty()) return {};
        if (streams.size() == 1) return of(streams[0], tagged(streams[0]));
        base::Rate total;
        used_.clear();
        for (const int stream : streams) add(stream, tagged(stream), total);
        for (const int ratio : used_) flush(ratio, total);
        return total;
    }

    /// The rate as a whole number of parts of a bit per second, as many to the bit as all rates need. Where that were
    /// too many, of millionths, rounded up: `parts_exact` tells.
    Parts parts(int stream, bool tagged) const {
        return rate_parts_[static_cast<std::size_t>(term(stream, tagged).rate)];
    }
    bool parts_exact() const { return parts_exact_; }
    /// Rounded up to whole bits.
    base::BitRate whole(Parts parts) const;

private:
    /// How payload grows on the wire, or how often something comes in a second.
    struct Ratio {
        std::int64_t over = 1, under = 1;
        friend auto operator<=>(const Ratio&, const Ratio&) = default;
    };
    /// One way to send a stream: so many bits, times a ratio. Of what is typed in, the payload and its growth; of what
    /// is packed by a format, the bits of one picture or packet of sound on the wire and how often it comes.
    struct Term {
        std::int64_t bits = 0;
        int ratio = 0;
        int rate = 0;
    };
    struct Row {
        Term plain, tagged;
    };
    struct Places;
    Term placed(std::int64_t bits, const Ratio& ratio, Places& places);
    Row row_of(const model::Stream& stream, Places& places);
    const Term& term(int stream, bool tagged) const {
        const auto& row = rows_[static_cast<std::size_t>(stream)];
        return tagged ? row.tagged : row.plain;
    }
    void add(int stream, bool tagged, base::Rate& total);
    void flush(int ratio, base::Rate& total);
    void rank_rates();
    void count_parts();

    std::vector<Ratio> ratios_;
    std::vector<Row> rows_;
    std::vector<base::Rate> rates_;                           // distinct combinations of bits and ratio
    std::vector<std::pair<std::int64_t, int>> rate_origins_;  // per rate: bits and ratio
    std::vector<Parts> rate_parts_;                           // per rate
    std::int64_t parts_per_bit_ = 1;
    bool parts_exact_ = true;
    std::vector<int> ranks_;
    std::vector<std::int64_t> sums_;  // per ratio, of the sum under way
    std::vector<int> used_;
};

}  // namespace streamwright::analysis
