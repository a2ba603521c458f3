// SPDX-License-Identifier: MIT
// What a joint is found by: its words and the index over them, each word of the book once, and whether all of it is what the joints say.
// Words are folded by ourselves before they are stored and before they are asked for (search.cpp), so that both sides agree whatever the
// database's own idea of letters is.

#include "clampbook/base/text.hpp"
#include "clampbook/book/impl.hpp"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <set>

namespace clampbook::book {
namespace {

std::string words_of(std::string_view text) { return join(folded_words(text), " "); }

// What is searched of a joint, and its number.
constexpr const char* k_joint_text =
    "SELECT m.maker || ' ' || m.model || ' ' || m.variant || ' ' || m.code, a.name, j.name, j.role, j.thread, "
    "j.note || ' ' || a.note, j.id FROM joint j JOIN assembly a ON a.id = j.assembly JOIN machine m ON m.id = a.machine ";

// The words of one text after the other; those of one machine and one assembly stand together.
class Words {
public:
    const std::string& of(std::string text) {
        if (text != text_) {
            words_ = words_of(text);
            text_ = std::move(text);
        }
        return words_;
    }

private:
    std::string text_;
    std::string words_;
};

struct LastWords {
    Words machine;
    Words assembly;
};

// Its words, in the order of the columns that keep them.
std::array<std::string, 6> joint_words(const SQLite::Statement& query, LastWords& last) {
    const std::string role = text_at(query, 3);
    const Role known = reading_of("joint", id_at(query, 6), [&] { return read_role(role); });
    const std::string thread = text_at(query, 4);
    const std::string size = thread.starts_with('M') ? thread.substr(0, thread.find('x')) : std::string{};
    return {last.machine.of(text_at(query, 0)),
            last.assembly.of(text_at(query, 1)),
            words_of(text_at(query, 2)),
            words_of(role + " " + std::string{role_words(known)}),
            thread_word(thread) + (size.empty() ? "" : " " + thread_size_word(size)),
            words_of(text_at(query, 5))};
}

// The words of a text that words_of made.
std::vector<std::string> single(const std::string& words) {
    return words.empty() ? std::vector<std::string>{} : split(words, ' ');
}

// The words of joints on their way into the vocabulary: each once, and many in one go.
class NewWords {
public:
    explicit NewWords(Statements& statements) : insert_(statements, "INSERT OR IGNORE INTO vocabulary (word) VALUES (?)") {}

    void add(const std::array<std::string, 6>& columns) {
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (columns.at(i) != last_.at(i)) {
                std::ranges::move(single(columns.at(i)), std::inserter(words_, words_.end()));
            }
        }
        last_ = columns;
        if (words_.size() >= k_many) {
            enter();
        }
    }
    void enter() {
        for (const std::string& word : words_) {
            insert_.bindNoCopy(1, word);
            insert_.exec();
            insert_.reset();
        }
        words_.clear();
    }

private:
    static constexpr std::size_t k_many = 10'000; // what a shop has; beyond it the memory stays bounded
    Query insert_;
    std::array<std::string, 6> last_; // neighbours share most words: without it an import takes 2 % more
    std::set<std::string> words_;
};

// Words of the vocabulary that no joint has: they would be looked for in vain, and many of them would keep the others from being looked
// for one by one.
std::vector<std::string> strays(Statements& statements) {
    std::vector<std::string> faults;
    Query words{statements, "SELECT word FROM vocabulary ORDER BY word"};
    Query having{statements, "SELECT 1 FROM joint_words WHERE joint_words MATCH ? LIMIT 1"};
    while (words.executeStep()) {
        const std::string word = text_at(words, 0);
        having.bind(1, in_quotes(word));
        if (!having.executeStep()) {
            faults.push_back(fmt::format("the word '{}' is among the search words, and no joint has it", word));
        }
        having.reset();
    }
    return faults;
}

} // namespace

std::string in_quotes(std::string_view word) {
    std::string out = "\"";
    for (const char c : word) {
        out += c == '"' ? "\"\"" : std::string{c};
    }
    return out + '"';
}

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

void Book::Impl::index_joints() {
    if (first_unindexed == 0) {
        return;
    }
    Query query{statements, k_joint_text + std::string{"WHERE j.id >= ? ORDER BY j.id"}};
    query.bind(1, first_unindexed);
    Query insert{statements,
                 "INSERT INTO joint_words (rowid, machine, assembly, joint, role, thread, note) VALUES (?, ?, ?, ?, ?, ?, ?)"};
    NewWords vocabulary{statements};
    LastWords last;
    while (query.executeStep()) {
        insert.bind(1, id_at(query, 6));
        const auto words = joint_words(query, last);
        for (std::size_t i = 0; i < words.size(); ++i) {
            insert.bindNoCopy(static_cast<int>(i) + 2, words.at(i));
        }
        vocabulary.add(words);
        insert.exec();
        insert.reset();
    }
    vocabulary.enter();
    first_unindexed = 0;
}

std::vector<std::string> faults_of_words(SQLite::Database& db, Statements& statements) {
    std::vector<std::string> faults;
    Query joints{statements, k_joint_text + std::string{"ORDER BY j.id"}};
    Query kept{statements, "SELECT machine, assembly, joint, role, thread, note FROM joint_words WHERE rowid = ?"};
    Query listed{statements, "SELECT 1 FROM vocabulary WHERE word = ?"};
    const auto is_listed = [&](const std::string& word) {
        listed.reset();
        listed.bind(1, word);
        return listed.executeStep();
    };
    LastWords last;
    while (joints.executeStep()) {
        const RecordId joint = id_at(joints, 6);
        kept.bind(1, joint);
        const bool is_there = kept.executeStep();
        int at = 0;
        for (const std::string& words : joint_words(joints, last)) {
            if (!is_there || text_at(kept, at++) != words) {
                faults.push_back(fmt::format("joint {}: cannot be found by its words", joint));
                break;
            }
            const auto each = single(words);
            if (const auto missing = std::ranges::find_if_not(each, is_listed); missing != each.end()) {
                faults.push_back(fmt::format("joint {}: cannot be found by the beginning of '{}'", joint, *missing));
                break;
            }
        }
        kept.reset();
    }
    listed.reset();
    Query strangers{statements, "SELECT rowid FROM joint_words WHERE rowid NOT IN (SELECT id FROM joint) ORDER BY rowid"};
    while (strangers.executeStep()) {
        faults.push_back(fmt::format("joint {}: has search words, and is not in the book", id_at(strangers, 0)));
    }
    // Asking the index to look itself over counts as writing, which is done to a copy that nobody else sees: a file without a name,
    // since a book may be larger than the memory. Whoever is writing already asks in place.
    SQLite::Database copy{"", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE};
    const bool is_writing = sqlite3_txn_state(db.getHandle(), "main") == SQLITE_TXN_WRITE;
    if (!is_writing) {
        if (const int code = SQLite::Backup{copy, db}.executeStep(); code != SQLITE_DONE) {
            throw SQLite::Exception(sqlite3_errstr(code), code);
        }
    }
    try {
        (is_writing ? db : copy).exec("INSERT INTO joint_words (joint_words) VALUES ('integrity-check')");
    } catch (const SQLite::Exception& fault) {
        if (fault.getErrorCode() != SQLITE_CORRUPT) {
            throw;
        }
        faults.emplace_back("the index of the search words is not what the words say");
    }
    if (faults.empty()) { // otherwise they only follow from what was told
        faults = strays(statements);
    }
    return faults;
}

} // namespace clampbook::book
