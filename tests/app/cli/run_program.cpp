#include "tests/app/cli/run_program.h"

#include "tests/support/temp_folder.h"

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <sys/wait.h>

namespace streamwright::test {

namespace run_program_detail {

std::string quoted(const std::string& word) {
    std::string text = "'";
    for (const char c : word) text += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return text + "'";
}

std::string slurp(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace run_program_detail

Ran run_program(const std::vector<std::string>& arguments) {
    using namespace run_program_detail;
    const TempFolder folder;
    std::string line = quoted(STREAMWRIGHT_PROGRAM);
    for (const auto& argument : arguments) line += " " + quoted(argument);
    // No display: the command line must do without.
    line = "env -u DISPLAY -u WAYLAND_DISPLAY -u QT_QPA_PLATFORM " + line + " >" + quoted((folder / "out").string()) +
           " 2>" + quoted((folder / "err").string()) + " </dev/null";
    const int status = std::system(line.c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, slurp(folder / "out"), slurp(folder / "err")};
}

std::string demo(const std::string& name) { return std::string(STREAMWRIGHT_SOURCE_DIR) + "/demo/" + name; }

}  // namespace streamwright::test
