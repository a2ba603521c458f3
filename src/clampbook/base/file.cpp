// SPDX-License-Identifier: MIT
#include "clampbook/base/file.hpp"

#include "clampbook/base/error.hpp"

#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <system_error>

namespace clampbook {
namespace {

namespace fs = std::filesystem;

Error cannot_be_written(const std::string& path, const std::string& why) {
    return error(ErrorKind::internal, "'{}' cannot be written: {}", path, why);
}

// Gives what the disk said, or nothing.
std::string write_to(const std::string& path, const std::string& content) {
    errno = 0;
    std::ofstream out{path, std::ios::binary | std::ios::trunc};
    out << content << std::flush;
    return out ? std::string{} : std::string{errno == 0 ? "it stopped taking data" : std::strerror(errno)};
}

} // namespace

void write_whole_file(const std::string& path, const std::string& content) {
    std::error_code problem;
    const fs::file_status status = fs::status(path, problem);
    if (status.type() == fs::file_type::directory) {
        throw cannot_be_written(path, "it is a folder");
    }
    if (fs::exists(status) && !fs::is_regular_file(status)) {
        if (const std::string why = write_to(path, content); !why.empty()) {
            throw cannot_be_written(path, why);
        }
        return;
    }
    const fs::path place =
        fs::is_symlink(fs::symlink_status(path, problem)) ? fs::weakly_canonical(path, problem) : fs::path{path};
    const std::string draft = fmt::format("{}.{}.draft", place.string(), getpid());
    const std::string why = write_to(draft, content);
    if (why.empty()) {
        fs::rename(draft, place, problem);
    }
    if (!why.empty() || problem) {
        std::error_code none;
        fs::remove(draft, none);
        throw cannot_be_written(path, why.empty() ? problem.message() : why);
    }
}

} // namespace clampbook
