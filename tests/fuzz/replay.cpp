// SPDX-License-Identifier: MIT
// Runs the kept files of targets, without a fuzzer: `fuzz_replay FOLDER TARGET...` takes every file of FOLDER/corpus/TARGET and
// FOLDER/findings/TARGET. A file that breaks what its target asserts ends the program with the file's name.

#include "targets.hpp"

#include <algorithm>
#include <array>
#include <exception>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <vector>

namespace {

namespace fs = std::filesystem;

struct Target {
    std::string_view name;
    void (*run)(std::string_view);
};

constexpr std::array<Target, 7> k_targets{{{"quantity", fuzz::quantity},
                                           {"thread", fuzz::thread},
                                           {"tightening", fuzz::tightening},
                                           {"rows", fuzz::rows},
                                           {"story", fuzz::story},
                                           {"press", fuzz::press},
                                           {"book", fuzz::book}}};

std::vector<fs::path> files_of(const fs::path& folder) {
    std::vector<fs::path> files;
    if (fs::is_directory(folder)) {
        for (const auto& entry : fs::directory_iterator{folder}) {
            files.push_back(entry.path());
        }
    }
    std::ranges::sort(files);
    return files;
}

// How many files were run.
std::size_t replay(const Target& target, const fs::path& folder) {
    const std::vector<fs::path> files = files_of(folder / target.name);
    for (const fs::path& file : files) {
        fuzz::running() = file.string();
        std::ifstream in{file, std::ios::binary};
        const std::string bytes{std::istreambuf_iterator<char>{in}, {}};
        fuzz::require(in.good() || in.eof(), "a kept file can be read");
        target.run(bytes);
    }
    return files.size();
}

} // namespace

int main(int argc, char** argv) try {
    const std::vector<std::string> words{argv + 1, argv + argc};
    for (std::size_t i = 1; i < words.size(); ++i) {
        const auto target = std::ranges::find(k_targets, words[i], &Target::name);
        fuzz::require(target != k_targets.end(), "there is no target " + words[i]);
        fuzz::taken() = 0;
        const std::size_t corpus = replay(*target, fs::path{words[0]} / "corpus");
        const std::size_t findings = replay(*target, fs::path{words[0]} / "findings");
        fuzz::require(fuzz::taken() > 0, "a corpus holds a file that is taken: " + words[i]);
        fuzz::require(corpus > 0, "a corpus holds a file: " + words[i]);
        std::cout << words[i] << ": " << corpus << " files of the corpus and " << findings << " findings run, " << fuzz::taken()
                  << " of them taken\n";
    }
    return words.size() > 1 ? 0 : 2;
} catch (const std::exception& fault) {
    std::cerr << fuzz::running() << ": " << fault.what() << "\n";
    return 1;
}
