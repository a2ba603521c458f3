// SPDX-License-Identifier: MIT
// What becomes of a value after it was entered: a second person checks it, another takes its place, or it is withdrawn.

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/intake/intake.hpp"

namespace clampbook::intake {
namespace {

Value current_value(const book::Book& book, RecordId id) {
    auto value = book.value(id);
    if (!value) {
        throw error(ErrorKind::not_found, "there is no value #{} in the book", id);
    }
    if (value->standing != Standing::current) {
        throw error(ErrorKind::conflict, "value #{} ('{}') is {} already{}: {}", id, value->tightening.as_written,
                    standing_name(value->standing), value->superseded_by == 0 ? "" : fmt::format(" by #{}", value->superseded_by),
                    value->end_reason);
    }
    return *value;
}

std::string needed_reason(std::string_view reason) {
    if (trim(reason).empty()) {
        throw error(ErrorKind::usage, "a reason is missing; say with --reason why the value no longer holds");
    }
    return std::string{trim(reason)};
}

} // namespace

Value value_numbered(const book::Book& book, std::string_view text) {
    std::string_view digits = trim(text);
    if (digits.starts_with('#')) {
        digits.remove_prefix(1);
    }
    if (digits.empty() || digits.size() > 12 || digits.find_first_not_of("0123456789") != std::string_view::npos) {
        throw error(ErrorKind::usage, "'{}' is no number of a value; 'clampbook find' and 'clampbook history' show them, like #3",
                    text);
    }
    const RecordId id = std::stoll(std::string{digits});
    if (auto value = book.value(id)) {
        return *value;
    }
    throw error(ErrorKind::not_found, "there is no value #{} in the book", id);
}

void check(book::Book& book, RecordId id, const std::string& tightening, const book::Stamp& stamp) {
    const Tightening keyed = read_tightening(tightening);
    book.in_one_go([&] {
        const Value value = current_value(book, id);
        if (value.is_checked()) {
            throw error(ErrorKind::conflict, "value #{} was checked by {} on {} already", id, value.checked_by, value.checked_on);
        }
        if (fold(stamp.person) == fold(value.entered_by)) {
            throw error(ErrorKind::conflict, "value #{} was entered by {}: it takes a second person to check it", id,
                        value.entered_by);
        }
        if (!same_figure(keyed, value.tightening)) {
            throw error(
                ErrorKind::conflict,
                "'{}' is not what the book has: value #{} is '{}'. Look at {} again; where the book is wrong, supersede it",
                keyed.as_written, id, value.tightening.as_written,
                value.source ? value.source->line() + (value.page.empty() ? "" : ", " + value.page) : "its source");
        }
        book.check_value(id, {keyed.as_written, stamp.person, stamp.date()}, stamp);
    });
}

RecordId supersede(book::Book& book, const Judge& judge, RecordId id, const Successor& successor, const book::Stamp& stamp) {
    const std::string reason = needed_reason(successor.reason);
    RecordId next = 0;
    book.in_one_go([&] {
        const Value old = current_value(book, id);
        Entry entry = successor.entry;
        entry.joint = old.joint;
        if (successor.keeps_label) {
            entry.label = old.label;
        }
        if (!entry.source) {
            entry.source = old.source;
            entry.page = entry.page.empty() ? old.page : entry.page;
        }
        entry.replaces = {id};
        entry.reason = reason;
        next = enter(book, judge, entry, stamp);
    });
    return next;
}

void withdraw(book::Book& book, RecordId id, std::string_view reason, const book::Stamp& stamp) {
    const std::string why = needed_reason(reason);
    book.in_one_go([&] {
        (void)current_value(book, id);
        book.end_value(id, {0, why, stamp.person, stamp.date()}, stamp);
    });
}

} // namespace clampbook::intake
