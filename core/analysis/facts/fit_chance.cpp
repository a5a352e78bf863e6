#include "core/analysis/facts/fit_chance.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <optional>
#include <random>
#include <vector>

namespace streamwright::analysis {

namespace fit_chance_detail {

/// Loads saturate: what no member holds need not be exact.
std::int64_t sum_of(std::int64_t a, std::int64_t b) {
    constexpr auto top = std::numeric_limits<std::int64_t>::max();
    return a > top - b ? top : a + b;
}

std::int64_t total_of(std::span<const AlikeStreams> streams) {
    std::int64_t total = 0;
    for (const auto& each : streams)
        for (int i = 0; i < each.count; ++i) total = sum_of(total, each.wire.count());
    return total;
}

/// Vectors of counts per class, numbered: the number of a vector is the sum of count x stride.
struct Counting {
    std::span<const AlikeStreams> streams;
    std::vector<std::size_t> strides;
    std::size_t states = 1;
    std::vector<std::vector<int>> counts;                // per state
    std::vector<bool> fits;                              // per state: one member holds it
    std::vector<std::vector<std::vector<double>>> ways;  // of u of v by one member's share: [class][v][u]

    Counting(std::span<const AlikeStreams> from, base::BitRate each) : streams(from) {
        for (const auto& alike : streams) {
            strides.push_back(states);
            states *= static_cast<std::size_t>(alike.count) + 1;
        }
        counts.assign(states, std::vector<int>(streams.size()));
        for (std::size_t s = 0; s < states; ++s) {
            std::int64_t load = 0;
            for (std::size_t c = 0; c < streams.size(); ++c) {
                counts[s][c] = static_cast<int>(s / strides[c] % (static_cast<std::size_t>(streams[c].count) + 1));
                for (int i = 0; i < counts[s][c]; ++i) load = sum_of(load, streams[c].wire.count());
            }
            fits.push_back(load <= each.count());
        }
    }

    /// P(u of v) at a share, for all v and u, by the recursion of Pascal's triangle: only additions of what is
    /// positive.
    void set_share(double share) {
        ways.clear();
        for (const auto& alike : streams) {
            const auto size = static_cast<std::size_t>(alike.count) + 1;
            std::vector<std::vector<double>> rows(size, std::vector<double>(size, 0.0));
            rows[0][0] = 1;
            for (std::size_t v = 1; v < size; ++v)
                for (std::size_t u = 0; u <= v; ++u)
                    rows[v][u] = rows[v - 1][u] * (1 - share) + (u > 0 ? rows[v - 1][u - 1] * share : 0);
            ways.push_back(std::move(rows));
        }
    }

    /// The chance for one state on k members from those on k - 1.
    double sum_over(std::size_t state, const std::vector<double>& on_fewer) const {
        double sum = 0;
        for (std::size_t part = 0; part <= state; ++part) {
            if (!fits[part]) continue;
            double chance = 1;
            for (std::size_t c = 0; c < streams.size() && chance > 0; ++c) {
                const int v = counts[state][c], u = counts[part][c];
                chance *= u > v ? 0 : ways[c][static_cast<std::size_t>(v)][static_cast<std::size_t>(u)];
            }
            if (chance > 0) sum += chance * on_fewer[state - part];
        }
        return sum;
    }

    double fit_on(int members) {
        std::vector<double> on(states);
        for (std::size_t s = 0; s < states; ++s) on[s] = fits[s] ? 1 : 0;
        for (int k = 2; k <= members; ++k) {
            set_share(1.0 / k);
            std::vector<double> more(states);
            // Of the last one only the whole is asked.
            for (std::size_t s = k == members ? states - 1 : 0; s < states; ++s) more[s] = sum_over(s, on);
            on = std::move(more);
        }
        return on[states - 1];
    }
};

double counting_steps(std::span<const AlikeStreams> streams, int members) {
    double states = 1;
    for (const auto& each : streams) states *= each.count + 1.0;
    return states * states * members / 2;
}

/// Wilson's score interval of a share of draws, 95 %.
void set_interval(FitChance& chance, double share, double n) {
    constexpr double z = 1.959964;
    const double middle = (share + z * z / (2 * n)) / (1 + z * z / n);
    const double half = z * std::sqrt(share * (1 - share) / n + z * z / (4 * n * n)) / (1 + z * z / n);
    chance.fits = {share};
    chance.least = {std::max(0.0, middle - half)};
    chance.most = {std::min(1.0, middle + half)};
}

/// Puts alike streams on members: many by how many fall on each, a few one by one.
bool put(const AlikeStreams& alike, std::int64_t each, std::vector<std::int64_t>& loads, std::mt19937_64& random) {
    constexpr int few = 32;
    const auto members = loads.size();
    const auto add = [&](std::size_t member, std::int64_t count) {
        const auto rate = alike.wire.count();
        if (rate > 0 && count > (each - loads[member]) / rate) return false;
        loads[member] += rate * count;
        return true;
    };
    int left = alike.count;
    if (left <= few) {
        while (left-- > 0)
            if (!add(random() % members, 1)) return false;
        return true;
    }
    for (std::size_t m = 0; m < members && left > 0; ++m) {
        const double share = 1.0 / static_cast<double>(members - m);
        const int here = m + 1 == members ? left : std::binomial_distribution<int>(left, share)(random);
        if (!add(m, here)) return false;
        left -= here;
    }
    return true;
}

bool draw(std::span<const AlikeStreams> streams, std::int64_t each, std::vector<std::int64_t>& loads,
          std::mt19937_64& random) {
    std::fill(loads.begin(), loads.end(), 0);
    return std::all_of(streams.begin(), streams.end(),
                       [&](const AlikeStreams& alike) { return put(alike, each, loads, random); });
}

/// Very many rates are drawn less often: every work is bounded.
int draws_for(std::span<const AlikeStreams> streams) {
    constexpr std::size_t most_puts = 20'000'000, least_draws = 200;
    return static_cast<int>(std::clamp(most_puts / std::max<std::size_t>(streams.size(), 1), least_draws,
                                       static_cast<std::size_t>(chance_draws)));
}

/// What needs no counting: all fit on one member, or one stream fits on none, or all together are too much.
std::optional<FitChance> plain(std::span<const AlikeStreams> streams, int members, base::BitRate each) {
    const auto total = total_of(streams);
    if (total <= each.count()) return FitChance{};
    if (members < 1 || total / members > each.count()) return FitChance{{0}, {0}, {0}, 0};
    for (const auto& alike : streams)
        if (alike.count > 0 && alike.wire > each) return FitChance{{0}, {0}, {0}, 0};
    return std::nullopt;
}

}  // namespace fit_chance_detail

FitChance drawn_fit_chance(std::span<const AlikeStreams> streams, int members, base::BitRate each,
                           const std::stop_token& stop) {
    std::mt19937_64 random(0x57AE);  // the same design gives the same answer
    std::vector<std::int64_t> loads(static_cast<std::size_t>(std::max(members, 1)));
    int fit = 0, draws = 0;
    const int wanted = fit_chance_detail::draws_for(streams);
    while (draws < wanted && !(draws % 256 == 255 && stop.stop_requested())) {
        fit += fit_chance_detail::draw(streams, each.count(), loads, random) ? 1 : 0;
        ++draws;
    }
    FitChance chance;
    chance.draws = draws;
    fit_chance_detail::set_interval(chance, static_cast<double>(fit) / draws, draws);
    return chance;
}

FitChance fit_chance(std::span<const AlikeStreams> streams, int members, base::BitRate each,
                     const std::stop_token& stop) {
    if (const auto known = fit_chance_detail::plain(streams, members, each)) return *known;
    if (fit_chance_detail::counting_steps(streams, members) > most_counting_steps)
        return drawn_fit_chance(streams, members, each, stop);
    const Probability fits{fit_chance_detail::Counting(streams, each).fit_on(members)};
    return {fits, fits, fits, 0};
}

}  // namespace streamwright::analysis
