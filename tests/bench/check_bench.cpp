// The full check with all rules and the worst case of each arc, and how its time grows with the design.
#include "core/analysis/analyser.h"
#include "tests/bench/benches.h"
#include "tests/bench/timing.h"
#include "tests/support/campus.h"

#include <cmath>
#include <iomanip>

namespace streamwright::bench {

namespace check_bench {

Milliseconds full_check(int endpoints, int rounds) {
    const auto design = test::campus(endpoints, 1);
    std::vector<Milliseconds> times;
    for (int round = 0; round < rounds; ++round)
        times.push_back(timed([&] { static_cast<void>(analysis::analyse(design)); }));
    return quantile(times, 0.5);
}

}  // namespace check_bench

void bench_check(std::ostream& out, int rounds) {
    const auto small = check_bench::full_check(1000, rounds * 4);
    const auto large = check_bench::full_check(10000, rounds);
    out << std::fixed << std::setprecision(1) << "Full check, all rules, worst case of each arc, median\n"
        << "  1,000 endpoints    " << small.count() << " ms (goal: at most 60 ms)\n"
        << "  10,000 endpoints   " << large.count() << " ms (goal: at most 1,000 ms)\n"
        << std::setprecision(2) << "  growth exponent    " << std::log10(large.count() / small.count())
        << " (goal: at most 1.2)\n\n";
}

}  // namespace streamwright::bench
