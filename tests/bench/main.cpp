// Prints every measured row of the speeds the program owes: bench [--quick]. Build it in the release preset.
#include "tests/bench/benches.h"

#include <exception>
#include <iostream>
#include <string_view>

int main(int argc, char** argv) try {
    using namespace streamwright::bench;
    const bool quick = argc > 1 && std::string_view(argv[1]) == "--quick";
    bench_deliver(std::cout, 1000);  // first, so that its memory is not that of the larger designs
    bench_edits(std::cout, 1000, quick ? 10 : 200);
    bench_edits(std::cout, 10000, quick ? 2 : 100);
    bench_check(std::cout, quick ? 1 : 5);
    return 0;
} catch (const std::exception& trouble) {
    std::cerr << trouble.what() << '\n';
    return 2;
}
