// SPDX-License-Identifier: MIT
#include "scratch.hpp"
#include "targets.hpp"

#include "clampbook/intake/import.hpp"

#include <sqlite3.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <unistd.h>

namespace fuzz {
namespace {

namespace fs = std::filesystem;
using namespace clampbook;

class Folder {
public:
    Folder()
        : path_((fs::is_directory("/dev/shm") ? fs::path{"/dev/shm"} : fs::temp_directory_path()) /
                ("clampbook-fuzz-" + std::to_string(getpid()))) {
        fs::remove_all(path_);
        fs::create_directory(path_);
    }
    ~Folder() {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] const fs::path& path() const { return path_; }

private:
    fs::path path_;
};

constexpr const char* k_rows =
    R"(machine_maker,machine_model,machine_variant,assembly,joint,role,count,thread,property_class,form,ring,housing,engagement_mm,safety_critical,tightening,label,source_kind,source_title,source_number,source_edition,source_date,page,entered_by,entered_on,note
(invented),Carrier X,6 t,drop box,drain plug,drain,1,M18x1.5,,collar hexagon,copper,EN-GJL-250,16,no,34 N·m,maker,manual,Workshop manual (invented),WM-7,2,2024-03-01,4-12,Ann,2026-04-13,renew ring
(invented),Carrier X,6 t,drop box,cover screws,cover,8,M10,8.8,hexagon,none,EN-GJL-250,20,no,"20 N·m, 45 N·m",shop,,,,,,,Ann,2026-04-13,
(invented),Carrier X,6 t,axle,wheel nuts,wheel,6,M22x1.5,10.9,,none,,,yes,,,,,,,,,,,
(invented),Carrier Y,,axle,head bolts,flange,10,M12,10.9,hexagon,none,EN-GJL-250,24,no,60 N·m + 90°,demo,,,,,,,Ann,2026-04-14,
)";

void compact(const std::string& from, const std::string& to) {
    sqlite3* db = nullptr;
    const std::string sql = "PRAGMA journal_mode = DELETE; PRAGMA page_size = 512; VACUUM INTO '" + to + "'";
    require(sqlite3_open(from.c_str(), &db) == SQLITE_OK && sqlite3_exec(db, sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK,
            std::string{"the small book can be made small: "} + sqlite3_errmsg(db));
    sqlite3_close(db);
}

std::string make_small_book() {
    const std::string path = scratch("large.db");
    {
        auto made = book::Book::create(path, k_stamp);
        std::istringstream in{k_rows};
        const auto report = intake::import_rows(made, curated(), in, "rows", {}, k_stamp);
        require(report.kept && report.values == 3, "the rows of the small book are taken");
        intake::check(made, 1, "34 N·m", {"Bob", "2026-11-25T10:16:00Z"});
        intake::Successor successor;
        successor.entry.tightening = "36 N·m";
        successor.reason = "new edition";
        (void)intake::supersede(made, curated(), 1, successor, k_stamp);
        intake::withdraw(made, 2, "misread", k_stamp);
    }
    const std::string small = scratch("small.db");
    compact(path, small);
    return bytes_of(small);
}

} // namespace

const reference::Reference& curated() {
    static const reference::Reference reference;
    return reference;
}

std::string scratch(const std::string& name) {
    static const Folder folder;
    return (folder.path() / name).string();
}

const std::string& small_book() {
    static const std::string bytes = make_small_book();
    return bytes;
}

void write_bytes(const std::string& path, std::string_view bytes) {
    std::ofstream out{path, std::ios::binary | std::ios::trunc};
    out.write(bytes.data(), static_cast<std::streamsize>(bytes.size())).flush();
    require(out.good(), "the scratch folder takes a file");
}

std::string bytes_of(const std::string& path) {
    std::ifstream in{path, std::ios::binary};
    std::ostringstream out;
    out << in.rdbuf();
    require(in.good(), "a file is read: " + path);
    return out.str();
}

} // namespace fuzz
