// Writes the demo designs as files: write_demos FOLDER. Run after a demo's edit list or the catalogue has changed.
#include "core/io/design_file.h"
#include "tests/support/demo_designs.h"

#include <exception>
#include <iostream>

namespace {

bool write_demo(const std::filesystem::path& path, const streamwright::model::Design& design) {
    const auto saved = streamwright::io::save_design(path, design);
    if (!saved) std::cerr << saved.error().english() << '\n';
    return saved.ok();
}

}  // namespace

int main(int argc, char** argv) try {
    using namespace streamwright::test;
    if (argc != 2) {
        std::cerr << "use: write_demos FOLDER\n";
        return 2;
    }
    const std::filesystem::path folder = argv[1];
    const bool written = write_demo(folder / "huddle-room.streamwright", huddle_room().design) &&
                         write_demo(folder / "ferrow-quay.streamwright", ferrow_quay().design) &&
                         write_demo(folder / "faulty.streamwright", faulty().design);
    return written ? 0 : 2;
} catch (const std::exception& trouble) {
    std::cerr << trouble.what() << '\n';
    return 2;
}
