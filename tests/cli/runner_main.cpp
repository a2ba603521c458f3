// SPDX-License-Identifier: MIT
// Runs one *.test file of the command line: runner PROGRAM_FOLDER SOURCE_FOLDER FILE.test

#include "runner.hpp"

#include <exception>
#include <iostream>

int main(int argc, char** argv) {
    if (argc != 4) {
        std::cerr << "usage: runner PROGRAM_FOLDER SOURCE_FOLDER FILE.test\n";
        return 2;
    }
    try {
        return clampbook::cli_test::run_file(argv[3], {argv[1], argv[2]}, std::cout) ? 0 : 1;
    } catch (const std::exception& fault) {
        std::cout << fault.what() << '\n';
        return 1;
    }
}
