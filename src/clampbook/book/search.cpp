// SPDX-License-Identifier: MIT
// Finding joints by words. Words are folded by ourselves before they are stored and before they are asked for, so that
// both sides agree whatever the database's own idea of letters is.

#include "clampbook/base/text.hpp"
#include "clampbook/book/impl.hpp"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <array>

namespace clampbook::book {
namespace {

std::string words_of(std::string_view text) { return join(folded_words(text), " "); }

// Words are letters and digits alone, so quoting them is safe.
std::string quoted(const std::string& word) { return '"' + word + '"'; }

std::string phrase(const std::vector<std::string>& words) { return quoted(join(words, " ")) + " *"; }

std::string group_query(const SearchGroup& group) {
    std::vector<std::string> ways;
    if (!group.thread.empty()) {
        ways.push_back("thread : " + quoted(group.thread));
    }
    if (!group.words.empty()) {
        std::vector<std::string> all;
        for (const std::string& word : group.words) {
            // A single letter is a model's name, not the beginning of every word that starts with it.
            all.push_back(quoted(word) + (word.size() > 1 ? " *" : ""));
        }
        ways.push_back("(" + join(all, " AND ") + ")");
    }
    for (const auto& words : group.phrases) {
        ways.push_back(phrase(words));
    }
    for (const Role role : group.roles) {
        ways.push_back("role : " + quoted(std::string{role_name(role)}));
    }
    return "(" + join(ways, " OR ") + ")";
}

// What is searched of a joint, and its number.
constexpr const char* k_joint_text =
    "SELECT m.maker || ' ' || m.model || ' ' || m.variant || ' ' || m.code, a.name, j.name, j.role, j.thread, "
    "j.note || ' ' || a.note, j.id FROM joint j JOIN assembly a ON a.id = j.assembly JOIN machine m ON m.id = a.machine ";

// Its words, in the order of the columns that keep them.
std::array<std::string, 6> joint_words(const SQLite::Statement& query) {
    const std::string role = text_at(query, 3);
    const std::string thread = text_at(query, 4);
    const std::string size = thread.starts_with('M') ? thread.substr(0, thread.find('x')) : std::string{};
    return {words_of(text_at(query, 0)),
            words_of(text_at(query, 1)),
            words_of(text_at(query, 2)),
            words_of(role + " " + std::string{role_words(read_role(role))}),
            thread_word(thread) + (size.empty() ? "" : " " + thread_size_word(size)),
            words_of(text_at(query, 5))};
}

} // namespace

std::string thread_word(std::string_view thread_code) {
    const bool coarse = thread_code.starts_with('M') && thread_code.find('x') == std::string_view::npos;
    return thread_size_word(thread_code) + (coarse ? "coarse" : "");
}

std::string thread_size_word(std::string_view size) {
    std::string out;
    for (const char c : fold(size)) {
        if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
            out += c;
        } else if (c == '.') {
            out += 'p';
        } else if (c == '/') {
            out += 'q';
        } else if (c == '#') {
            out += "no";
        } else if (c == '-') {
            out += 'z';
        }
    }
    return out;
}

void Book::Impl::index_joint(RecordId joint) {
    SQLite::Statement query{*db, k_joint_text + std::string{"WHERE j.id = ?"}};
    query.bind(1, joint);
    if (!query.executeStep()) {
        throw error(ErrorKind::internal, "joint {} is not there to be indexed", joint);
    }
    SQLite::Statement insert{
        *db, "INSERT INTO joint_words (rowid, machine, assembly, joint, role, thread, note) VALUES (?, ?, ?, ?, ?, ?, ?)"};
    insert.bind(1, joint);
    int at = 2;
    for (const std::string& words : joint_words(query)) {
        insert.bind(at++, words);
    }
    insert.exec();
}

std::vector<std::string> faults_of_words(SQLite::Database& db) {
    std::vector<std::string> faults;
    SQLite::Statement joints{db, k_joint_text + std::string{"ORDER BY j.id"}};
    SQLite::Statement kept{db, "SELECT machine, assembly, joint, role, thread, note FROM joint_words WHERE rowid = ?"};
    while (joints.executeStep()) {
        const RecordId joint = id_at(joints, 6);
        kept.bind(1, joint);
        const bool is_there = kept.executeStep();
        int at = 0;
        for (const std::string& words : joint_words(joints)) {
            if (!is_there || text_at(kept, at++) != words) {
                faults.push_back(fmt::format("joint {}: cannot be found by its words", joint));
                break;
            }
        }
        kept.reset();
    }
    SQLite::Statement strangers{db, "SELECT rowid FROM joint_words WHERE rowid NOT IN (SELECT id FROM joint) ORDER BY rowid"};
    while (strangers.executeStep()) {
        faults.push_back(fmt::format("joint {}: has search words, and is not in the book", id_at(strangers, 0)));
    }
    // Asking the index to look itself over counts as writing, which is done to a copy.
    SQLite::Database copy{":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE};
    SQLite::Backup{copy, db}.executeStep();
    try {
        copy.exec("INSERT INTO joint_words (joint_words) VALUES ('integrity-check')");
    } catch (const SQLite::Exception& fault) {
        if (fault.getErrorCode() != SQLITE_CORRUPT) {
            throw;
        }
        faults.emplace_back("the index of the search words is not what the words say");
    }
    return faults;
}

SearchResult Book::search(const std::vector<SearchGroup>& groups, std::size_t at_most) const {
    if (groups.empty()) {
        return {};
    }
    return guarded(impl_->path, [&] {
        std::vector<std::string> parts;
        for (const SearchGroup& group : groups) {
            parts.push_back(group_query(group));
        }
        const std::string match = join(parts, " AND ");
        SearchResult result;
        SQLite::Statement count{*impl_->db, "SELECT count(*) FROM joint_words WHERE joint_words MATCH ?"};
        count.bind(1, match);
        count.executeStep();
        result.total = static_cast<std::size_t>(id_at(count, 0));
        // A word in the joint's own name weighs more than the same word in a machine's.
        SQLite::Statement query{*impl_->db, "SELECT rowid FROM joint_words WHERE joint_words MATCH ? "
                                            "ORDER BY bm25(joint_words, 2.0, 4.0, 6.0, 3.0, 4.0, 1.0), rowid LIMIT ?"};
        query.bind(1, match);
        query.bind(2, static_cast<std::int64_t>(at_most));
        while (query.executeStep()) {
            auto found = place(id_at(query, 0));
            if (!found) {
                throw error(ErrorKind::invalid_data, "the search words tell of joint {}, which the book doesn't have; {}",
                            id_at(query, 0), "'clampbook book verify' looks it over");
            }
            result.places.push_back(std::move(*found));
        }
        return result;
    });
}

} // namespace clampbook::book
