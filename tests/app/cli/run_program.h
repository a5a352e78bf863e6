// Runs the built program with arguments and collects what it says.
#pragma once

#include <string>
#include <vector>

namespace streamwright::test {

struct Ran {
    int exit_code = -1;
    std::string out, err;
};

Ran run_program(const std::vector<std::string>& arguments);

/// The path of a demo design.
std::string demo(const std::string& name);

}  // namespace streamwright::test
