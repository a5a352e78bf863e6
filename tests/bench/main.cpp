// Prints every measured row of the speeds the program owes: bench [--quick]. Build it in the release preset.
#include "core/base/keep_memory.h"
#include "tests/bench/benches.h"

#include <exception>
#include <iostream>
#include <string_view>
#include <vector>

int main(int argc, char** argv) try {
    using namespace streamwright::bench;
    streamwright::base::keep_freed_memory();  // as the program does
    const bool quick = argc > 1 && std::string_view(argv[1]) == "--quick";
    bench_deliver(std::cout, 1000);  // first, so that its memory is not that of the larger designs
    bench_worst(std::cout, {200, 1000});
    const std::vector<int> sizes{100, 300, 1000, 3000, 10000};
    std::vector<EditFigures> edits;
    for (const int size : sizes) {
        const bool told = size == 1000 || size == 10000;
        const int rounds = size <= 1000 ? (quick ? 10 : 200) : (quick ? 2 : 100);
        edits.push_back(bench_edits(told ? &std::cout : nullptr, size, rounds));
    }
    bench_failures(std::cout, {1000, 10000});
    bench_growth(std::cout, sizes, edits, quick ? 1 : 5);
    return 0;
} catch (const std::exception& trouble) {
    std::cerr << trouble.what() << '\n';
    return 2;
}
