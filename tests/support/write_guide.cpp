// Writes the chapters of the user guide that are made from the program itself: write_guide FOLDER. Run after a rule was
// added or its words have changed.
#include "core/deliver/rule_page.h"
#include "core/io/atomic_write.h"

#include <exception>
#include <iostream>

int main(int argc, char** argv) try {
    using namespace streamwright;
    if (argc != 2) {
        std::cerr << "use: write_guide FOLDER\n";
        return 2;
    }
    const auto path = std::filesystem::path(argv[1]) / "rules.md";
    const auto written = io::write_atomically(path, deliver::rules_guide());
    if (!written) std::cerr << written.error().english() << '\n';
    return written ? 0 : 2;
} catch (const std::exception& trouble) {
    std::cerr << trouble.what() << '\n';
    return 2;
}
