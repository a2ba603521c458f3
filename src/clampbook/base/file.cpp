// SPDX-License-Identifier: MIT
#include "clampbook/base/file.hpp"

#include "clampbook/base/error.hpp"

#include <fcntl.h>
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

// Waits until a file, or the names in a folder, are on the disk. Gives what the disk said, or nothing.
std::string settle(const fs::path& path, int kind) {
    const int file = open(path.c_str(), O_RDONLY | O_CLOEXEC | kind);
    if (file < 0) {
        return std::strerror(errno);
    }
    std::string why = fsync(file) == 0 ? std::string{} : std::string{std::strerror(errno)};
    close(file);
    return why;
}

} // namespace

void put_in_place(const std::string& draft, const std::string& place) {
    std::string why = settle(draft, 0);
    if (why.empty()) {
        std::error_code problem;
        fs::rename(draft, place, problem);
        why = problem ? problem.message() : "";
    }
    if (!why.empty()) {
        std::error_code none;
        fs::remove(draft, none);
        throw cannot_be_written(place, why);
    }
    // The file is there. Not every file system can do this for a folder, and then nothing is left to be done.
    const fs::path folder = fs::path{place}.parent_path();
    (void)settle(folder.empty() ? "." : folder, O_DIRECTORY);
}

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
    if (const std::string why = write_to(draft, content); !why.empty()) {
        std::error_code none;
        fs::remove(draft, none);
        throw cannot_be_written(path, why);
    }
    put_in_place(draft, place.string());
}

} // namespace clampbook
