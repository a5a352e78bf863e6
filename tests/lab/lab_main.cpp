// lab_predict [--worst] FILE|- : what the analysis says of a laboratory network, in the laboratory's own form.
#include "core/base/error.h"
#include "tests/lab/lab_predict.h"

#include <fstream>
#include <iostream>

using namespace streamwright;

int main(int argc, char** argv) try {
    const bool worst = argc == 3 && std::string(argv[1]) == "--worst";
    if (argc != (worst ? 3 : 2)) throw std::invalid_argument("name one lab input: a file, or - for standard input");
    const std::string name = argv[argc - 1];
    std::ifstream file(name);
    if (!file && name != "-") throw std::invalid_argument("cannot read " + name);
    const auto input = lab::json::parse(name == "-" ? std::cin : file), asked = input.value("input", input);
    std::cout << (worst ? lab::predict_worst(asked) : lab::predict(asked)).dump(1) << '\n';
    return std::cout.flush() ? 0 : 1;
} catch (const std::exception& trouble) {
    std::cerr << "lab_predict: " << base::printable(trouble.what()) << '\n';
    return 2;
}
