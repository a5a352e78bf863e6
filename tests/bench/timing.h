// Times as a sorted list and what a reader wants of it: median, 95th and 99th of a hundred, the worst.
#pragma once

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

namespace streamwright::bench {

using Milliseconds = std::chrono::duration<double, std::milli>;

template <class Work>
Milliseconds timed(Work&& work) {
    const auto begin = std::chrono::steady_clock::now();
    std::forward<Work>(work)();
    return std::chrono::steady_clock::now() - begin;
}

/// The smallest time that at least `share` of all do not exceed (nearest rank). Zero without times.
inline Milliseconds quantile(std::vector<Milliseconds> times, double share) {
    if (times.empty()) return Milliseconds(0);
    std::sort(times.begin(), times.end());
    const auto rank = static_cast<std::size_t>(std::ceil(share * static_cast<double>(times.size())));
    return times[std::clamp<std::size_t>(rank, 1, times.size()) - 1];
}

}  // namespace streamwright::bench
