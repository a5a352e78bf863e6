// lab_predict FILE|- : what the analysis says of a laboratory network, in the laboratory's own form.
#include "core/base/error.h"
#include "tests/lab/lab_predict.h"

#include <fstream>
#include <iostream>
#include <stdexcept>

int main(int argc, char** argv) try {
    if (argc != 2) throw std::invalid_argument("name one lab input: a file, or - for standard input");
    const std::string name = argv[1];
    std::ifstream file(name);
    if (!file && name != "-") throw std::invalid_argument("cannot read " + name);
    const auto input = nlohmann::json::parse(name == "-" ? std::cin : file);
    std::cout << streamwright::lab::predict(input.value("input", input)).dump(1) << '\n';
    return std::cout.flush() ? 0 : 1;
} catch (const std::exception& trouble) {
    std::cerr << "lab_predict: " << streamwright::base::printable(trouble.what()) << '\n';
    return 2;
}
