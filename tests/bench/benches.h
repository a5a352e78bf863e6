// The benchmarks of this program: each prints its rows. Nothing here fails by the clock.
#pragma once

#include <ostream>

namespace streamwright::bench {

void bench_check(std::ostream& out, int rounds);
void bench_deliver(std::ostream& out, int endpoints);
/// Rounds: edits of each kind.
void bench_edits(std::ostream& out, int endpoints, int rounds);

}  // namespace streamwright::bench
