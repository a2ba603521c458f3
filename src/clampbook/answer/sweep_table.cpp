// SPDX-License-Identifier: MIT
#include "clampbook/answer/sweep_parts.hpp"

#include "clampbook/base/text.hpp"
#include "clampbook/model/thread.hpp"

#include <algorithm>

namespace clampbook::answer {
namespace {

constexpr std::size_t k_reasons_told = 8;

void add_once(std::vector<std::string>& list, const std::string& text) {
    if (std::ranges::find(list, text) == list.end()) {
        list.push_back(text);
    }
}

// Each code once. What holds for some rows only is said to, and these bear its code.
void add_cautions(TableAnswer& table, const std::vector<SweepAnswer>& answers) {
    std::vector<std::string> codes;
    for (const SweepAnswer& one : answers) {
        for (const Caution& caution : one.document.cautions) {
            add_once(codes, caution.code);
        }
    }
    table.columns.push_back({"cautions", "!", "", false});
    for (std::size_t r = 0; r < answers.size(); ++r) {
        table.rows[r].push_back({});
    }
    for (const std::string& code : codes) {
        std::vector<std::size_t> rows;
        std::vector<std::string> texts;
        for (std::size_t r = 0; r < answers.size(); ++r) {
            for (const Caution& caution : answers[r].document.cautions) {
                if (caution.code == code) {
                    rows.push_back(r);
                    add_once(texts, caution.text);
                }
            }
        }
        const bool everywhere = rows.size() == answers.size();
        if (!everywhere) {
            for (const std::size_t r : rows) {
                std::string& marks = table.rows[r].back().text;
                marks += (marks.empty() ? "" : " ") + code;
            }
        }
        const std::string lead = everywhere ? "In every row" : "In each row marked '" + code + "'";
        table.cautions.push_back({code, texts.size() > 1 ? lead + ", with its own figures, like the first: " + texts.front()
                                        : everywhere     ? texts.front()
                                                         : lead + ": " + texts.front()});
    }
}

TableCell cell_of(const TableColumn& column, const std::string& item_key, bool also, const Document& document) {
    const Item* item = item_of(document, item_key);
    if (item == nullptr) {
        return {};
    }
    if (!item->figure) {
        return {column.key == "thread" ? thread_for_print(item->text) : item->text, {}};
    }
    if (also) {
        return {item->figure->also, {}};
    }
    return {item->figure->print, column.number ? std::optional{item->figure->value} : std::nullopt};
}

} // namespace

void LeftOut::add(const Error& fault) {
    const auto found = std::ranges::find_if(reasons_, [&](const Reason& r) { return r.text == fault.what(); });
    if (found == reasons_.end()) {
        reasons_.push_back({fault.what(), 1});
    } else {
        ++found->count;
    }
    first_ = first_ ? first_ : std::current_exception();
}

std::vector<std::string> LeftOut::told() const {
    std::vector<std::string> notes;
    std::size_t untold = 0;
    for (std::size_t i = 0; i < reasons_.size(); ++i) {
        if (i >= k_reasons_told) {
            untold += reasons_[i].count;
            continue;
        }
        notes.push_back("Left out: " + reasons_[i].text +
                        (reasons_[i].count > 1 ? fmt::format(" ({} combinations).", reasons_[i].count) : "."));
    }
    if (untold > 0) {
        notes.push_back(fmt::format("Left out: {} more {}, for reasons of the same kind; asked for alone, each tells its own.",
                                    untold, untold == 1 ? "combination" : "combinations"));
    }
    return notes;
}

std::size_t combinations(const std::vector<SweepInput>& inputs) {
    std::size_t count = 1;
    for (const SweepInput& input : inputs) {
        count *= input.texts.size();
        if (count > k_combinations_max) {
            throw error(ErrorKind::usage,
                        "the ranges and lists make more than {} combinations; take greater steps or shorter lists",
                        k_combinations_max);
        }
    }
    return count;
}

std::vector<std::string> values_of(const std::string& text, RangeUnit unit) {
    return is_range(text) ? range_of(text, unit) : std::vector<std::string>{text};
}

std::vector<std::string> names_of(const std::string& text, const std::function<void(std::string_view)>& read) {
    return text.find(',') == std::string::npos ? std::vector<std::string>{text} : list_of(text, read);
}

const Item* item_of(const Document& document, std::string_view key) {
    for (const Section& section : document.sections) {
        const auto found = std::ranges::find(section.items, key, &Item::key);
        if (found != section.items.end()) {
            return &*found;
        }
    }
    return nullptr;
}

std::string words_of(const Document& document, std::string_view key) {
    const Item* item = item_of(document, key);
    return item == nullptr ? std::string{} : item->figure ? item->figure->print : item->text;
}

Sweep sweep_of(const char* schema, std::string heading, const std::vector<SweepInput>& inputs,
               const std::vector<SweepOutput>& outputs, const std::vector<SweepAnswer>& answers, const LeftOut& left_out) {
    Sweep sweep;
    sweep.heading = std::move(heading);
    TableAnswer& table = sweep.table;
    table.schema = schema;
    table.quantities = true;
    table.rows.resize(answers.size());
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const SweepInput& input = inputs[i];
        if (!input.varies() && i > 1) {
            continue; // thread and class stand in each row, for programs
        }
        if (input.varies()) {
            sweep.varied.push_back(table.columns.size());
        }
        table.columns.push_back(input.column);
        table.columns.back().hidden = !input.varies();
        for (std::size_t r = 0; r < answers.size(); ++r) {
            TableCell cell = cell_of(input.column, input.item, false, answers[r].document);
            if (i > 1) {
                cell.text = input.texts[answers[r].choice[i]]; // as it was counted out: 0.10
            }
            table.rows[r].push_back(std::move(cell));
        }
    }
    for (const SweepOutput& output : outputs) {
        if (std::ranges::find(table.columns, output.column.key, &TableColumn::key) != table.columns.end()) {
            continue; // it is an input here
        }
        table.columns.push_back(output.column);
        for (std::size_t r = 0; r < answers.size(); ++r) {
            table.rows[r].push_back(cell_of(output.column, output.item, output.also, answers[r].document));
        }
    }
    add_cautions(table, answers);
    table.columns.push_back({"label", "label", "", false, true});
    for (std::size_t r = 0; r < answers.size(); ++r) {
        table.rows[r].push_back({words_of(answers[r].document, "label"), {}});
        for (const std::string& note : answers[r].document.notes) {
            add_once(table.notes, note);
        }
    }
    sweep.left_out = left_out.told();
    table.notes.insert(table.notes.end(), sweep.left_out.begin(), sweep.left_out.end());
    return sweep;
}

void entitle(Sweep& sweep, const std::vector<std::string>& same) {
    sweep.holds_for = join(same, ", ");
    sweep.table.title = sweep.heading + " (derived, no maker's figure)" + (same.empty() ? "" : ": ") + sweep.holds_for;
}

} // namespace clampbook::answer
