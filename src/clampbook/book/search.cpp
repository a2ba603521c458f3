// SPDX-License-Identifier: MIT
// Finding joints by words. Words are folded by ourselves before they are stored and before they are asked for, so that
// both sides agree whatever the database's own idea of letters is.

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

// A word as the index is asked for it, whatever it holds: words are letters and digits, but a file may come from anybody.
std::string in_quotes(std::string_view word) {
    std::string out = "\"";
    for (const char c : word) {
        out += c == '"' ? "\"\"" : std::string{c};
    }
    return out + '"';
}

// The words of the book that begin with a word, itself first; the beginning itself with a star where they are many. For a
// beginning the database gathers every place of every such word before it looks for the others; whole words it can skip through.
class Vocabulary {
public:
    explicit Vocabulary(Statements& statements)
        : longer_(statements, "SELECT word FROM vocabulary WHERE word > ? ORDER BY word") {}

    // Each as the last word of a phrase that begins with `before`.
    [[nodiscard]] std::string any_of(const std::string& before, const std::string& word) {
        constexpr std::size_t k_many = 12;
        std::vector<std::string> ways{in_quotes(before + word)};
        longer_.reset();
        longer_.bind(1, word);
        while (longer_.executeStep()) {
            const std::string longer = text_at(longer_, 0);
            if (!longer.starts_with(word)) {
                break;
            }
            if (ways.size() == k_many) {
                return in_quotes(before + word) + " *";
            }
            ways.push_back(in_quotes(before + longer));
        }
        return ways.size() == 1 ? ways.front() : "(" + join(ways, " OR ") + ")";
    }

private:
    Query longer_;
};

std::string phrase(Vocabulary& vocabulary, std::vector<std::string> words) {
    const std::string last = words.back();
    words.pop_back();
    return vocabulary.any_of(words.empty() ? "" : join(words, " ") + " ", last);
}

// Does whatever holds the phrase hold the words too, each as a beginning? Asked for all the same, a phrase of common words that no
// joint has would have all their places read.
bool is_within(const std::vector<std::string>& words, const std::vector<std::string>& phrase) {
    return !words.empty() && std::ranges::all_of(words, [&](const std::string& word) {
        return std::ranges::any_of(
            phrase, [&](const std::string& part) { return word.size() > 1 ? part.starts_with(word) : part == word; });
    });
}

std::string group_query(Vocabulary& vocabulary, const SearchGroup& group) {
    std::vector<std::string> ways;
    if (!group.thread.empty()) {
        ways.push_back("thread : " + in_quotes(group.thread));
    }
    if (!group.words.empty()) {
        std::vector<std::string> all;
        for (const std::string& word : group.words) {
            // A single letter is a model's name, not the beginning of every word that starts with it.
            all.push_back(word.size() > 1 ? vocabulary.any_of("", word) : in_quotes(word));
        }
        ways.push_back("(" + join(all, " AND ") + ")");
    }
    for (const auto& words : group.phrases) {
        if (!is_within(group.words, words)) {
            ways.push_back(phrase(vocabulary, words));
        }
    }
    for (const Role role : group.roles) {
        ways.push_back("role : " + in_quotes(role_name(role)));
    }
    return "(" + join(ways, " OR ") + ")";
}

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
    std::array<std::string, 6> last_;
    std::set<std::string> words_;
};

// What a word is worth by where it stands: machine, assembly, joint, role, thread, note. In the joint's own name it is worth more
// than in a machine's.
constexpr std::array<double, 6> k_weights{2.0, 4.0, 6.0, 3.0, 4.0, 1.0};

// The weight of a row: each part of the question counts once, where it is worth most. How rare a word is does not matter, as every
// word that was typed is in every row that is found; so the rest of the index need not be read.
void weigh(const Fts5ExtensionApi* api, Fts5Context* row, sqlite3_context* out, int /*count*/, sqlite3_value** /*values*/) {
    double weight = 0;
    for (int phrase = 0; phrase < api->xPhraseCount(row); ++phrase) {
        Fts5PhraseIter at{};
        int column = -1;
        double most = 0;
        for (api->xPhraseFirstColumn(row, phrase, &at, &column); column >= 0; api->xPhraseNextColumn(row, &at, &column)) {
            const auto i = static_cast<std::size_t>(column);
            most = i < k_weights.size() ? std::max(most, k_weights[i]) : most; // NOLINT: bounded on this line
        }
        weight += most;
    }
    sqlite3_result_double(out, weight);
}

// Makes `weigh` known to the connection.
void add_weighing(SQLite::Database& db) {
    fts5_api* api = nullptr;
    sqlite3_stmt* ask = nullptr;
    if (sqlite3_prepare_v2(db.getHandle(), "SELECT fts5(?)", -1, &ask, nullptr) == SQLITE_OK) {
        sqlite3_bind_pointer(ask, 1, static_cast<void*>(&api), "fts5_api_ptr", nullptr);
        (void)sqlite3_step(ask); // without it there is no pointer, which is told below
    }
    (void)sqlite3_finalize(ask);
    if (api == nullptr || api->xCreateFunction(api, "weigh", nullptr, weigh, nullptr) != SQLITE_OK) {
        throw error(ErrorKind::internal, "the database library lacks its full-text search");
    }
}

struct Hit {
    double weight = 0;
    RecordId joint = 0;
};
bool before(const Hit& a, const Hit& b) { return std::pair{-a.weight, a.joint} < std::pair{-b.weight, b.joint}; }

// The best of all rows that fit, and how many there are.
std::vector<Hit> best(Query& query, std::size_t at_most, std::size_t& total) {
    std::vector<Hit> heap; // the worst of them on top
    for (total = 0; query.executeStep(); ++total) {
        const Hit hit{query.getColumn(1).getDouble(), id_at(query, 0)};
        if (heap.size() == at_most) {
            if (!before(hit, heap.front())) {
                continue;
            }
            std::ranges::pop_heap(heap, before);
            heap.pop_back();
        }
        heap.push_back(hit);
        std::ranges::push_heap(heap, before);
    }
    std::ranges::sort_heap(heap, before);
    return heap;
}

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

SearchResult Book::search(const std::vector<SearchGroup>& groups, std::size_t at_most) const {
    if (groups.empty()) {
        return {};
    }
    return guarded(impl_->path, [&] {
        impl_->index_joints(); // what was written just now is found too
        std::vector<std::string> parts;
        {
            Vocabulary vocabulary{impl_->statements};
            for (const SearchGroup& group : groups) {
                parts.push_back(group_query(vocabulary, group));
            }
        }
        const std::string match = join(parts, " AND ");
        SearchResult result;
        if (at_most == 0) {
            Query count{impl_->statements, "SELECT count(*) FROM joint_words WHERE joint_words MATCH ?"};
            count.bind(1, match);
            count.executeStep();
            result.total = static_cast<std::size_t>(id_at(count, 0));
            return result;
        }
        if (!impl_->can_weigh) {
            add_weighing(*impl_->db);
            impl_->can_weigh = true;
        }
        Query query{impl_->statements, "SELECT rowid, weigh(joint_words) FROM joint_words WHERE joint_words MATCH ?"};
        query.bind(1, match);
        std::vector<std::pair<std::pair<double, std::size_t>, Place>> found; // heavy first, then the shorter name
        for (const Hit& hit : best(query, at_most, result.total)) {
            auto there = place(hit.joint);
            if (!there) {
                throw error(
                    ErrorKind::invalid_data,
                    "the search words tell of joint {}, which the book doesn't have; 'clampbook book verify' looks it over",
                    hit.joint);
            }
            const std::size_t words = folded_words(there->joint.name).size();
            found.emplace_back(std::pair{-hit.weight, words}, std::move(*there));
        }
        std::ranges::stable_sort(found, {}, [](const auto& one) { return one.first; });
        for (auto& [rank, there] : found) {
            result.places.push_back(std::move(there));
        }
        return result;
    });
}

} // namespace clampbook::book
