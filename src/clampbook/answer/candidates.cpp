// SPDX-License-Identifier: MIT
#include "clampbook/answer/candidates.hpp"

#include "clampbook/answer/records.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace clampbook::answer {
namespace {

std::size_t column_at(const reference::Table& table, std::string_view key) {
    const auto found = std::ranges::find(table.columns, key, &reference::TableColumn::key);
    if (found == table.columns.end()) {
        throw error(ErrorKind::internal, "the table '{}' has no column '{}'", table.topic, key);
    }
    return static_cast<std::size_t>(found - table.columns.begin());
}

void sort_for_people(std::vector<Candidate>& list) {
    std::ranges::stable_sort(list, [](const Candidate& a, const Candidate& b) { return comes_before(a.word, b.word); });
    const auto same = [](const Candidate& a, const Candidate& b) { return a.word == b.word; };
    list.erase(std::unique(list.begin(), list.end(), same), list.end()); // NOLINT: the fuzzers' clang has no ranges::unique
}

} // namespace

std::vector<Candidate> curated_names(const reference::Reference& reference, std::string_view topic, std::string_view column,
                                     std::string_view what) {
    const reference::Table table = reference.table(topic);
    const std::size_t word = column_at(table, column);
    std::vector<Candidate> out;
    std::set<std::string> met;
    for (const auto& row : table.rows) {
        if (met.insert(row[word].text).second) {
            out.push_back({row[word].text, what.empty() ? std::string{} : row[column_at(table, what)].text});
        }
    }
    return out; // in the order of the table, which somebody chose
}

std::vector<Candidate> machine_names(const book::Book& book) {
    std::vector<Candidate> out;
    for (const Machine& machine : book.machines()) {
        out.push_back({machine.title(), machine.maker});
    }
    sort_for_people(out);
    return out;
}

std::vector<Candidate> assembly_names(const book::Book& book, const std::string& machine) {
    std::vector<Machine> machines = book.machines();
    try {
        machines = {machine_named(book, machine)};
    } catch (const Error&) {
        // No machine is named yet, or not well: then of all of them.
    }
    std::vector<Candidate> out;
    for (const Machine& one : machines) {
        for (const Assembly& assembly : book.assemblies(one.id)) {
            out.push_back({assembly.name, one.title()});
        }
    }
    sort_for_people(out);
    return out;
}

std::vector<Candidate> joint_names(const book::Book& book) {
    const std::vector<book::Place> places = book.places();
    const auto with_assembly = [](const book::Place& place) { return place.assembly.name + " " + place.joint.name; };
    std::map<std::string, int> alone;
    std::map<std::string, int> longer;
    for (const book::Place& place : places) {
        ++alone[place.joint.name];
        ++longer[with_assembly(place)];
    }
    std::vector<Candidate> out;
    for (const book::Place& place : places) {
        const std::string where = place.machine.title() + ", " + place.assembly.name;
        out.push_back({alone[place.joint.name] == 1        ? place.joint.name
                       : longer[with_assembly(place)] == 1 ? with_assembly(place)
                                                           : place.machine.title() + " " + with_assembly(place),
                       where});
    }
    sort_for_people(out);
    return out;
}

std::vector<Candidate> source_names(const book::Book& book) {
    std::vector<Candidate> out;
    for (const Source& source : book.sources()) {
        out.push_back(source.number.empty() ? Candidate{source.title, source.kind} : Candidate{source.number, source.title});
    }
    sort_for_people(out);
    return out;
}

std::vector<Candidate> value_numbers(const book::Book& book) {
    std::vector<Candidate> out;
    book.each_joint([&](const JointRecord& record) {
        for (const Value& value : record.values) {
            if (value.standing == Standing::current) {
                out.push_back(
                    {std::to_string(value.id), record.machine.title() + ", " + record.assembly.name + ", " + record.joint.name});
            }
        }
    });
    sort_for_people(out);
    return out;
}

std::vector<Candidate> search_words(const book::Book& book, const std::vector<std::string>& before) {
    std::set<std::string> wanted;
    for (const std::string& word : before) {
        for (const std::string& folded : folded_words(word)) {
            wanted.insert(folded);
        }
    }
    std::vector<Candidate> out;
    for (const book::Place& place : book.places()) {
        const std::string all = place.joint.name + " " + place.assembly.name + " " + place.machine.title();
        const std::vector<std::string> have = folded_words(all);
        const bool fits = std::ranges::all_of(wanted, [&](const std::string& word) {
            return std::ranges::any_of(have, [&](const std::string& one) { return one.starts_with(word); });
        });
        if (!fits) {
            continue;
        }
        for (std::string word : split(before.empty() ? place.joint.name : all, ' ')) {
            word.erase(word.find_last_not_of(",;") + 1);
            const std::vector<std::string> folded = folded_words(word);
            if (!folded.empty() && !wanted.contains(folded.front())) {
                out.push_back({word, {}});
            }
        }
    }
    sort_for_people(out);
    return out;
}

} // namespace clampbook::answer
