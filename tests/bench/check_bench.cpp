// How the work grows with the design: the full check with all rules and the worst case of each arc, the slowest kind of
// edit, and the deferred findings, from 100 to 10,000 endpoints.
#include "core/analysis/analyser.h"
#include "tests/bench/benches.h"
#include "tests/bench/timing.h"
#include "tests/support/campus.h"

#include <algorithm>
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

/// The exponent of the power of the size that fits the times best: the slope of the least squares of their logarithms.
double growth(const std::vector<int>& sizes, const std::vector<Milliseconds>& times) {
    double x = 0, y = 0, xx = 0, xy = 0;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        const double size = std::log(sizes[i]), time = std::log(times[i].count());
        x += size, y += time, xx += size * size, xy += size * time;
    }
    const auto n = static_cast<double>(sizes.size());
    return (n * xy - x * y) / (n * xx - x * x);
}

void print_row(std::ostream& out, const char* name, const std::vector<int>& sizes,
               const std::vector<Milliseconds>& times) {
    out << "  " << std::left << std::setw(24) << name << std::right << std::fixed << std::setprecision(2);
    for (const auto& time : times) out << std::setw(10) << time.count();
    out << std::setw(10) << growth(sizes, times) << '\n';
}

}  // namespace check_bench

void bench_growth(std::ostream& out, const std::vector<int>& sizes, const std::vector<EditFigures>& edits, int rounds) {
    using namespace check_bench;
    std::vector<Milliseconds> checks, slowest, deferred;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        checks.push_back(full_check(sizes[i], sizes[i] > 1000 ? rounds : rounds * 4));
        slowest.push_back(edits[i].slowest_p99);
        deferred.push_back(edits[i].deferred);
    }
    out << "Growth, milliseconds\n  " << std::left << std::setw(24) << "endpoints" << std::right;
    for (const int size : sizes) out << std::setw(10) << size;
    out << std::setw(10) << "exponent" << '\n';
    print_row(out, "full check, median", sizes, checks);
    print_row(out, "slowest edit, p99", sizes, slowest);
    print_row(out, "deferred, once", sizes, deferred);
    out << "  goals: full check at most 60 at 1,000 and 1,000 at 10,000, exponent at most 1.2\n\n";
}

}  // namespace streamwright::bench
