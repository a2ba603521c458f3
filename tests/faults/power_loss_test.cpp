// SPDX-License-Identifier: MIT
// The power goes while a command writes: at every moment at which something was waited for until it was on the disk, and at the end.
// What was waited for is there; of everything else nothing is there, all of it, or any part. A book is as before or as after, whole;
// and what was told as done is there.
//
// The disk that is assumed: what was written to a file is safe once the file was synced; so is the name of a file that was made, and
// the new name once the folder was. What is taken away is gone for sure once the folder was synced. Writing is cut at 512 bytes.
// CLAMPBOOK_FAULTS=all: fifty draws for each moment instead of three.

#include "shim.hpp"
#include "writing.hpp"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <iostream>
#include <random>
#include <set>

namespace {

using namespace fault_tests;
using What = Change::What;

enum class Unsynced { lost, kept, drawn };

bool every_one() {
    const char* asked = std::getenv("CLAMPBOOK_FAULTS");
    return asked != nullptr && std::string_view{asked} == "all";
}

std::string name_of(const std::string& path) { return fs::path{path}.filename().string(); }

// Is this change safe, given what was waited for behind it?
bool is_safe(const std::vector<Change>& changes, std::size_t at, std::size_t end) {
    const Change& change = changes[at];
    std::string path = change.path;
    for (std::size_t i = at + 1; i < end; ++i) {
        const Change& later = changes[i];
        if (later.what == What::rename && later.path == path && change.what != What::rename) {
            path = later.to;
        }
        const bool names_only = change.what == What::remove || change.what == What::rename;
        if (later.what == What::sync_folder || (later.what == What::sync && later.path == path && !names_only)) {
            if (later.what == What::sync_folder && (change.what == What::write || change.what == What::cut)) {
                continue;
            }
            return true;
        }
    }
    return false;
}

void write_at(std::string& file, std::int64_t offset, std::string_view bytes) {
    const auto from = static_cast<std::size_t>(offset);
    if (file.size() < from + bytes.size()) {
        file.resize(from + bytes.size());
    }
    file.replace(from, bytes.size(), bytes);
}

// What is on the disk where the power goes before the change `end`.
Files left_of(const Files& before, const std::vector<Change>& changes, std::size_t end, Unsynced unsynced, std::mt19937& draw) {
    Files files = before;
    for (std::size_t i = 0; i < end; ++i) {
        const Change& change = changes[i];
        const bool there =
            is_safe(changes, i, end) || unsynced == Unsynced::kept || (unsynced == Unsynced::drawn && draw() % 2 == 0);
        if (!there) {
            continue;
        }
        const std::string name = name_of(change.path);
        switch (change.what) {
        case What::create:
            files.try_emplace(name);
            break;
        case What::write:
            // Of a file that lost its name nothing is found again.
            if (const auto file = files.find(name); file != files.end()) {
                const bool torn =
                    unsynced == Unsynced::drawn && !is_safe(changes, i, end) && change.bytes.size() > 512 && draw() % 4 == 0;
                write_at(file->second, change.offset, std::string_view{change.bytes}.substr(0, torn ? 512 : change.bytes.size()));
            }
            break;
        case What::cut:
            if (const auto file = files.find(name); file != files.end()) {
                file->second.resize(static_cast<std::size_t>(change.offset));
            }
            break;
        case What::remove:
            files.erase(name);
            break;
        case What::rename:
            if (const auto file = files.extract(name); !file.empty()) {
                files[name_of(change.to)] = file.mapped();
            }
            break;
        case What::sync:
        case What::sync_folder:
            break;
        }
    }
    return files;
}

// Drafts that nobody came to take away; `killed_writer.sh` shows that they are no hindrance.
void without_drafts(Files& files) {
    std::erase_if(files, [](const auto& file) { return file.first.find(".draft") != std::string::npos; });
}

// A book whose making was cut short, told as what it is.
bool is_unfinished(Shop& shop) {
    return shop.run({"book", "verify", "--book", "{}/new.db"}) == 4 &&
           (shop.said().find("is an empty file") != std::string::npos ||
            shop.said().find("was never finished") != std::string::npos ||
            shop.said().find("is a database, but no book") != std::string::npos);
}

} // namespace

TEST_CASE("where the power goes, a book is as before or as after, and what was told as done is there") {
    Shop shop;
    const int draws = every_one() ? 50 : 3;
    std::mt19937 draw{20261127}; // NOLINT(cert-msc51-cpp): the same moments each time
    for (const WritingCommand& command : writing_commands()) {
        shop.put_back();
        const std::string before = shop.state();
        shop.put_back();
        watch();
        REQUIRE(shop.run(command) == 0);
        const std::vector<Change> changes = watched();
        const std::string after = shop.state();
        REQUIRE(after != before);
        std::set<std::size_t> moments{changes.size()};
        for (std::size_t i = 0; i < changes.size(); ++i) {
            if (changes[i].what == What::sync || changes[i].what == What::sync_folder) {
                moments.insert({i, i + 1});
            }
        }
        REQUIRE(moments.size() >= 3);
        std::size_t as_before = 0;
        std::size_t as_after = 0;
        std::size_t unfinished = 0;
        for (const std::size_t moment : moments) {
            for (int turn = 0; turn < draws + 2; ++turn) {
                const Unsynced unsynced = turn == 0 ? Unsynced::lost : turn == 1 ? Unsynced::kept : Unsynced::drawn;
                Files left = left_of(shop.at_first(), changes, moment, unsynced, draw);
                without_drafts(left);
                shop.put(left);
                INFO(command.name << ": the power goes at change " << moment << " of " << changes.size() << ", turn " << turn);
                if (left.contains("new.db") && moment < changes.size() && is_unfinished(shop)) {
                    ++unfinished;
                    continue;
                }
                const std::string now = shop.state();
                CHECK((now == before || now == after) == true);
                CHECK(shop.faults() == "");
                if (moment == changes.size()) {
                    CHECK((now == after) == true);
                }
                ++(now == after ? as_after : as_before);
            }
        }
        CHECK(as_after > 0);
        std::cout << command.name << " | " << moments.size() << " moments | " << as_before << " as before | " << as_after
                  << " as after" << (unfinished > 0 ? " | " + std::to_string(unfinished) + " told as unfinished" : "")
                  << std::endl;
    }
}
