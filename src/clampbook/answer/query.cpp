// SPDX-License-Identifier: MIT
#include "clampbook/answer/query.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace clampbook::answer {
namespace {

// A trade word cut into folded words, and the concepts that it names.
struct TradeWord {
    std::vector<std::string> words;
    std::set<std::string> concepts;
};

// Threads are taken out of the text first: "M18x1.5", "3/8-16 UNC", "m18 x 1,5", "1/2-14 NPT" run over one to three
// words. Gives the code where the curated database knows the thread, and how many words it took.
struct ThreadFound {
    std::string word;
    std::size_t took;
};

std::optional<ThreadFound> thread_at(const reference::Reference& reference, const std::vector<std::string>& typed,
                                     std::size_t at) {
    // "G 1/2", "NPT 1/2": the letters and the size apart.
    const bool pipe_letters = typed[at] == "g" || typed[at] == "r" || typed[at] == "npt";
    const bool pipe_apart = pipe_letters && at + 1 < typed.size() && typed[at + 1].find('/') != std::string::npos;
    if (!looks_like_thread(typed[at]) && !pipe_apart) {
        return std::nullopt;
    }
    for (std::size_t n = std::min<std::size_t>(3, typed.size() - at); n >= 1; --n) {
        std::string text = typed[at];
        for (std::size_t i = 1; i < n; ++i) {
            text += " " + typed[at + i];
        }
        try {
            const ThreadName name = read_thread(text);
            if (name.system == ThreadSystem::metric && !name.pitch) {
                return ThreadFound{book::thread_size_word(name.size), n}; // M18 finds every pitch
            }
            if (const auto row = reference.find_thread(name)) {
                return ThreadFound{book::thread_word(row->code), n};
            }
        } catch (const Error&) {
            // these words are no thread: fewer of them may be, or none
        }
    }
    return std::nullopt;
}

// Words that a search can do without: "tapón de vaciado" is typed "tapon vaciado" too.
constexpr std::array<std::string_view, 14> k_little_words{"de",  "du", "des", "del", "la",  "las", "les",
                                                          "los", "el", "of",  "the", "der", "die", "och"};

bool is_little(const std::string& word) { return std::ranges::find(k_little_words, word) != k_little_words.end(); }

// How the five languages make several of one: "drain plugs", "Ablassschrauben", "pluggar".
constexpr std::array<std::string_view, 10> k_plural_endings{"s", "es", "n", "en", "e", "x", "ar", "er", "or", "r"};

bool is_plural(const std::string& typed, const std::string& word) {
    return word.size() >= 3 && typed.starts_with(word) &&
           std::ranges::find(k_plural_endings, std::string_view{typed}.substr(word.size())) != k_plural_endings.end();
}

bool is_beginning(const std::string& typed, const std::string& word) {
    return typed.size() >= 3 ? word.starts_with(typed) : word == typed;
}

// The places of the typed words that make up a trade word, each a beginning of its part or, where `several` is asked for,
// a part in the plural; empty where one is missing.
std::vector<std::size_t> typed_of(const TradeWord& trade, const std::vector<std::string>& typed, const std::vector<bool>& used,
                                  bool several) {
    std::vector<std::size_t> taken;
    for (const std::string& part : trade.words) {
        for (std::size_t i = 0; i < typed.size(); ++i) {
            const bool fits = is_beginning(typed[i], part) || (several && is_plural(typed[i], part));
            if (fits && !used[i] && std::ranges::find(taken, i) == taken.end()) {
                taken.push_back(i);
                break;
            }
        }
    }
    return taken.size() == trade.words.size() ? taken : std::vector<std::size_t>{};
}

} // namespace

SearchPlan search_plan(const reference::Reference& reference, std::string_view words) {
    std::vector<std::string> typed;
    for (const std::string& part : split(fold(words), ' ')) {
        if (!part.empty()) {
            typed.push_back(part);
        }
    }
    SearchPlan plan;
    std::vector<std::string> rest;
    for (std::size_t i = 0; i < typed.size();) {
        if (const auto thread = thread_at(reference, typed, i)) {
            plan.literal.push_back({{}, {}, {}, thread->word});
            i += thread->took;
            continue;
        }
        for (std::string& word : folded_words(typed[i])) {
            rest.push_back(std::move(word));
        }
        ++i;
    }
    if (!std::ranges::all_of(rest, is_little)) {
        std::erase_if(rest, is_little);
    }
    if (rest.empty() && plan.literal.empty()) {
        throw error(ErrorKind::usage, "'{}' holds no word to look for", words);
    }
    std::vector<book::SearchGroup> wide = plan.literal;
    for (const std::string& word : rest) {
        plan.literal.push_back({{word}, {}, {}, {}});
    }

    // The longest trade words first; each typed word belongs to one of them at most.
    std::map<std::vector<std::string>, TradeWord> trade;
    std::map<std::string, std::vector<std::vector<std::string>>> of_concept;
    std::map<std::string, std::string> role_of;
    for (const reference::Word& word : reference.words()) {
        const std::vector<std::string> phrase = folded_words(word.text);
        std::vector<std::string> parts = phrase;
        std::erase_if(parts, is_little);
        TradeWord& entry = trade[parts];
        entry.words = parts;
        entry.concepts.insert(word.concept_code);
        of_concept[word.concept_code].push_back(phrase);
        role_of[word.concept_code] = word.role;
    }
    std::vector<std::pair<const TradeWord*, bool>> by_length; // each as it stands before its plural
    for (const bool several : {false, true}) {
        for (const auto& [parts, entry] : trade) {
            by_length.emplace_back(&entry, several);
        }
    }
    std::ranges::stable_sort(by_length, std::greater{}, [](const auto& w) { return w.first->words.size(); });
    std::vector<bool> used(rest.size(), false);
    bool wider = false;
    for (const auto& [entry, several] : by_length) {
        const std::vector<std::size_t> taken = typed_of(*entry, rest, used, several);
        if (taken.empty()) {
            continue;
        }
        book::SearchGroup group;
        for (const std::size_t i : taken) {
            used[i] = true;
            group.words.push_back(rest[i]);
        }
        for (const std::string& concept_code : entry->concepts) {
            for (const auto& phrase : of_concept[concept_code]) {
                group.phrases.push_back(phrase);
            }
            if (!role_of[concept_code].empty()) {
                group.roles.push_back(read_role(role_of[concept_code]));
            }
        }
        wider = true;
        wide.push_back(std::move(group));
    }
    for (std::size_t i = 0; i < rest.size(); ++i) {
        if (!used[i]) {
            wide.push_back({{rest[i]}, {}, {}, {}});
        }
    }
    if (wider) {
        plan.wide = std::move(wide);
    }
    return plan;
}

} // namespace clampbook::answer
