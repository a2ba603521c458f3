// SPDX-License-Identifier: MIT
#include "writing.hpp"

#include "../unit/book/shop.hpp"

#include <functional>

namespace fault_tests {
namespace {

constexpr const char* k_rows =
    "machine_maker,machine_model,assembly,joint,role,thread,property_class,tightening,label,source_title,page,entered_by\n"
    "Maker,X,box,fill plug,fill,M22x1.5,8.8,60 N·m,maker,manual two,p. 4,Bob\n"
    "Maker,Y,axle,hub screws,wheel,M12,10.9,110 N·m,maker,manual two,p. 5,Bob\n"
    "Maker,X,box,cover screws,cover,M8,8.8,24 N·m,shop,,,Bob\n";

// What stands for the files that SQLite keeps beside a book.
bool is_companion(const std::string& name) {
    return name.ends_with("-wal") || name.ends_with("-shm") || name.ends_with("-journal");
}

} // namespace

const std::vector<WritingCommand>& writing_commands() {
    static const std::vector<WritingCommand> all{
        {"book new", {"book", "new", "{}/new.db"}},
        {"demo", {"demo", "{}/new.db"}},
        {"source add", {"source", "add", "--title", "bulletin", "--number", "7", "--note", "kept in the office"}},
        {"machine add", {"machine", "add", "--maker", "Maker", "--model", "Z", "--code", "Z9"}},
        {"assembly add", {"assembly", "add", "pump", "--machine", "X"}},
        {"joint add",
         {"joint", "add", "level plug", "--machine", "X", "--assembly", "box", "--role", "level", "--thread", "M18x1.5"}},
        {"enter", {"enter", "26 N·m", "--joint", "cover screws", "--label", "maker", "--source", "1", "--page", "p. 9"}},
        {"check", {"check", "1", "24 N·m", "--by", "Cid"}},
        {"supersede", {"supersede", "1", "23 N·m", "--reason", "bulletin 7", "--page", "p. 2"}},
        {"withdraw", {"withdraw", "1", "--reason", "misread"}},
        {"import", {"import", "{}/rows.csv"}},
        {"import (an export)", {"import", "{}/export.json"}},
        {"merge", {"merge", "{}/other.db", "--apply"}},
        {"book backup", {"book", "backup", "{}/copy.db"}},
        {"book publish", {"book", "publish", "{}/published.db"}},
    };
    return all;
}

Shop::Shop() {
    const auto must = [&](const Words& words) {
        INFO(stage_.err.str());
        REQUIRE(stage_.run(words) == 0);
    };
    data_tests::write_file(path("rows.csv"), k_rows);
    stage_.furnish();
    must({"source", "add", "--title", "manual"});
    must({"joint", "add", "drain", "plug", "--machine", "X", "--assembly", "box", "--role", "drain", "--thread", "M18x1.5"});
    must({"enter", "24 N·m", "--joint", "cover screws", "--label", "maker", "--source", "1", "--page", "p. 3"});
    must({"enter", "30–36 N·m", "--joint", "drain plug", "--label", "shop"});
    must({"check", "2", "30–36 N·m", "--by", "Cid"});
    // The other shop has the rows, and one joint that we have too.
    stage_.variables["CLAMPBOOK_BOOK"] = path("other.db");
    must({"book", "new"});
    must({"import", path("rows.csv"), "--by", "Dee"});
    must({"check", "1", "60 N·m", "--by", "Eve"});
    must({"export", "--json"});
    data_tests::write_file(path("export.json"), stage_.out.str());
    stage_.variables["CLAMPBOOK_BOOK"] = path("book.db");
    at_first_ = files();
    std::erase_if(at_first_, [](const auto& file) {
        REQUIRE((!file.first.ends_with("-wal") || file.second.empty())); // whoever writes last leaves nothing in the log
        return is_companion(file.first);
    });
}

void Shop::put_back() { put(at_first_); }

void Shop::put(const Files& files) const {
    for (const auto& entry : fs::directory_iterator{path(".")}) {
        fs::remove(entry.path());
    }
    for (const auto& [name, bytes] : files) {
        std::ofstream{path(name), std::ios::binary} << bytes;
    }
}

int Shop::run(const Words& words) {
    Words filled = words;
    for (std::string& word : filled) {
        if (word.starts_with("{}/")) {
            word = path(word.substr(3));
        }
    }
    return stage_.run(filled);
}

Files Shop::files() const {
    Files out;
    for (const auto& entry : fs::directory_iterator{path(".")}) {
        std::ifstream in{entry.path(), std::ios::binary};
        std::ostringstream bytes;
        bytes << in.rdbuf();
        out[entry.path().filename().string()] = bytes.str();
    }
    return out;
}

std::string Shop::state() const {
    std::string out;
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator{path(".")}) {
        names.push_back(entry.path().filename().string());
    }
    std::sort(names.begin(), names.end());
    for (const std::string& name : names) {
        if (name.ends_with(".db")) {
            out += "== " + name + "\n" + content_of(path(name));
        } else if (!is_companion(name) && !at_first_.contains(name)) {
            out += "== " + name + " is left over\n";
        }
    }
    return out;
}

std::string Shop::faults() {
    std::string out;
    const Files here = files();
    for (const auto& [name, bytes] : here) {
        if (!name.ends_with(".db")) {
            continue;
        }
        const auto log = here.find(name + "-wal");
        const std::size_t key = std::hash<std::string>{}(bytes + (log == here.end() ? std::string{} : log->second));
        if (!looked_at_.contains(key)) {
            std::string said_now;
            for (const Words& words : {Words{"book", "verify", "--book", path(name)}, Words{"audit", "--book", path(name)}}) {
                said_now += run(words) == 0 ? "" : name + ": " + said();
            }
            looked_at_[key] = said_now;
        }
        out += looked_at_[key];
    }
    return out;
}

std::string content_of(const std::string& path) {
    try {
        return unit_tests::content_of(path);
    } catch (const SQLite::Exception& fault) {
        return std::string{"not to be read: "} + fault.what() + "\n";
    }
}

} // namespace fault_tests
