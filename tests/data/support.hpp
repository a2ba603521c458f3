// SPDX-License-Identifier: MIT
#pragma once

// Files and folders of the data tests: a folder that goes away with its test, whole files in and out, rows of a CSV
// file by column name. A file that is not there is a failure, never an empty text.

#include "clampbook/exchange/csv.hpp"

#include <filesystem>
#include <fstream>
#include <map>
#include <random>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace data_tests {

namespace fs = std::filesystem;

inline const fs::path k_source = CLAMPBOOK_SOURCE_DIR;
inline const fs::path k_schema = k_source / "schema/reference";
inline const fs::path k_data = k_source / "data";
inline const fs::path k_hash_file = k_data / "reference.sha256";
inline const fs::path k_built = fs::path{CLAMPBOOK_BINARY_DIR} / "src/reference.db";

class TemporaryFolder {
public:
    TemporaryFolder() {
        std::random_device device;
        do {
            path_ = fs::temp_directory_path() / ("clampbook-data-" + std::to_string(device()));
        } while (!fs::create_directory(path_));
    }
    ~TemporaryFolder() {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    [[nodiscard]] fs::path operator/(const fs::path& name) const { return path_ / name; }

private:
    fs::path path_;
};

inline std::string read_file(const fs::path& path) {
    std::ifstream in{path, std::ios::binary};
    std::ostringstream out;
    out << in.rdbuf();
    if (!in || out.str().empty()) {
        throw std::runtime_error(path.string() + " is missing or empty");
    }
    return out.str();
}

inline void write_file(const fs::path& path, const std::string& bytes) {
    std::ofstream out{path, std::ios::binary | std::ios::trunc};
    out << bytes;
    out.close();
    if (!out) {
        throw std::runtime_error(path.string() + " cannot be written");
    }
}

inline std::vector<fs::path> files_in(const fs::path& folder, const std::string& extension) {
    std::vector<fs::path> found;
    for (const auto& entry : fs::directory_iterator{folder}) {
        if (entry.is_regular_file() && entry.path().extension() == extension) {
            found.push_back(entry.path());
        }
    }
    if (found.empty()) {
        throw std::runtime_error(folder.string() + " holds no " + extension + " file");
    }
    return found;
}

inline void copy_files(const fs::path& from, const fs::path& to, const std::string& extension) {
    fs::create_directories(to);
    for (const fs::path& file : files_in(from, extension)) {
        fs::copy_file(file, to / file.filename());
    }
}

using Row = std::map<std::string, std::string>;

inline std::vector<Row> rows_of(const fs::path& path) {
    std::istringstream in{read_file(path)};
    const auto table = clampbook::exchange::read_csv(in, path.filename().string());
    std::vector<Row> rows;
    for (const auto& row : table.rows) {
        Row& named = rows.emplace_back();
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            named[table.header.columns[i]] = row.cells[i];
        }
    }
    if (rows.empty()) {
        throw std::runtime_error(path.string() + " holds no row");
    }
    return rows;
}

} // namespace data_tests
