// SPDX-License-Identifier: MIT
// Finding joints by words: the question that the index of words.cpp is asked, and which of the answers are best.

#include "clampbook/base/text.hpp"
#include "clampbook/book/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <algorithm>
#include <array>

namespace clampbook::book {
namespace {

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

} // namespace

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
