// SPDX-License-Identifier: MIT
// The table of subcommands, the options that they share, and the way to book and reference.

#include "question.hpp"

#include "clampbook/answer/doctor.hpp"
#include "clampbook/answer/range.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/model/thread.hpp"
#include "clampbook/present/present.hpp"

#include <CLI/CLI.hpp>

#include <ostream>
#include <span>

namespace clampbook::cli {

const std::vector<Command>& commands() {
    static const std::vector<Command> all{
        {"find", "At the machine", "the tightening of a joint, and whose figure it is", setup_find},
        {"convert", "At the machine", "a quantity in another unit", setup_convert},
        {"wrench", "At the machine", "what to set a torque wrench to", setup_wrench},
        {"thread", "Threads and screws", "geometry and limits of a thread", setup_thread},
        {"strength", "Threads and screws", "stress area, proof load, minimum tensile load", setup_strength},
        {"derive", "Threads and screws", "generic preload and torque, by nut factor or by friction", setup_derive},
        {"scatter", "Threads and screws", "how far the preload from one torque spreads", setup_scatter},
        {"strip", "Threads and screws", "when a thread strips, and how deep is deep enough", setup_strip},
        {"plug", "Threads and screws", "the torque window of a drain, fill or level plug", setup_plug},
        {"angle", "Threads and screws", "preload from a turn, and what becomes of it", setup_angle},
        {"list", "Threads and screws", "the curated tables and their sources", setup_list},
        {"book", "The shop's book", "make, look over, verify, back up or publish a book", setup_book},
        {"source", "The shop's book", "documents that figures are taken from", setup_source},
        {"machine", "The shop's book", "machines of the book", setup_machine},
        {"assembly", "The shop's book", "assemblies of a machine", setup_assembly},
        {"joint", "The shop's book", "joints of an assembly", setup_joint},
        {"enter", "The shop's book", "a tightening value with its source", setup_enter},
        {"import", "The shop's book", "rows of a spreadsheet, or an export, into the book", setup_import},
        {"export", "The shop's book", "the book as CSV or JSON", setup_export},
        {"merge", "The shop's book", "another shop's book into this one, after a preview", setup_merge},
        {"demo", "The shop's book", "an invented book to try things on", setup_demo},
        {"sheet", "The shop's book", "the spec sheet: text, HTML, PDF, SVG, spreadsheet", setup_sheet},
        {"check", "A value's life", "key a value again from its source, as the second person", setup_check},
        {"supersede", "A value's life", "put another value in the place of one", setup_supersede},
        {"withdraw", "A value's life", "end a value that no longer holds", setup_withdraw},
        {"history", "A value's life", "what was told of a joint, in order", setup_history},
        {"conflicts", "A value's life", "joints whose current values disagree", setup_conflicts},
        {"audit", "A value's life", "is the book still what it was told?", setup_audit},
        {"teach", "For the trainer", "lessons on torque and preload, with live figures and charts", setup_teach},
        {"doctor", "When something is amiss", "which book, figures and press are in use, are they sound, what to do",
         setup_doctor},
        {"complete", "For scripts", "what may stand where somebody is typing, for the shells", setup_complete},
    };
    return all;
}

void add_json(CLI::App& app, Context& context) { app.add_flag("--json", context.json, "answer as JSON")->group("Form"); }

void add_csv(CLI::App& app, Context& context) { app.add_flag("--csv", context.csv, "answer as CSV")->group("Form"); }

void add_book(CLI::App& app, Context& context) {
    app.add_option("--book", context.book_path, "the book (else CLAMPBOOK_BOOK, else your data folder)")
        ->type_name("FILE")
        ->group("Files");
}

void add_reference(CLI::App& app, Context& context) {
    app.add_option("--reference", context.reference_path, "another curated database than the built-in one")
        ->type_name("FILE")
        ->group("Files");
}

void add_person(CLI::App& app, Context& context) {
    app.add_option("--by", context.person, "who tells it (else CLAMPBOOK_BY)")->type_name("NAME")->group("Who");
}

void add_text(CLI::App& app, const char* name, std::string& text, const char* type, const char* group, const char* help) {
    app.add_option(name, text, help)->type_name(type)->group(group);
}

void add_screw(CLI::App& app, std::vector<std::string>& words) {
    app.add_option("screw", words, "thread and property class: M10 8.8, 3/8-16 UNC grade 5")->type_name("")->required();
}

void add_screws(CLI::App& app, std::vector<std::string>& words) {
    app.add_option("screw", words, "thread and property class, or lists: M10 8.8, 3/8-16 UNC grade 5, M8,M10 8.8,10.9")
        ->type_name("")
        ->required();
}

void add_face(CLI::App& app, answer::FaceChoice& face, const char* group) {
    add_text(app, "--head", face.head, "HEAD", group, "hexagon, socket or flange (hexagon)");
    add_text(app, "--hole", face.hole, "HOLE", group, "fine, medium or coarse, or a diameter (medium)");
    add_text(app, "--bearing", face.bearing, "LENGTH", group, "diameter of the bearing face, in place of a head's: 16.6 mm");
}

void show(Context& context, const answer::Document& document) {
    context.world.out << (context.json ? present::json(document) : present::text(document));
}

reference::Reference Context::reference() const {
    return reference_path.empty() ? reference::Reference{} : reference::Reference{reference_path};
}

answer::Chosen Context::chosen_book() const {
    if (!book_path.empty()) {
        return {book_path, "--book"};
    }
    if (const auto named = world.environment("CLAMPBOOK_BOOK")) {
        return {*named, "CLAMPBOOK_BOOK"};
    }
    if (const auto data = world.environment("XDG_DATA_HOME")) {
        return {*data + "/clampbook/book.db", "your data folder (XDG_DATA_HOME)"};
    }
    if (const auto home = world.environment("HOME")) {
        return {*home + "/.local/share/clampbook/book.db", "your data folder (HOME)"};
    }
    return {{}, {}, "there is no home folder to look for the book in; name it with --book FILE or in CLAMPBOOK_BOOK"};
}

std::string Context::path_of_book() const {
    const answer::Chosen chosen = chosen_book();
    if (chosen.what.empty()) {
        throw error(ErrorKind::usage, "{}", chosen.problem);
    }
    return chosen.what;
}

book::Book Context::book(book::Access access) const { return {path_of_book(), access}; }

answer::Chosen Context::chosen_person() const {
    const bool typed = !person.empty();
    const std::string name{trim(typed ? person : world.environment("CLAMPBOOK_BY").value_or(""))};
    if (name.empty()) {
        return {{}, {}};
    }
    if (!is_utf8(name) || has_control(name)) { // from the environment: what was typed has been looked at already
        return {{}, "CLAMPBOOK_BY", "the name in CLAMPBOOK_BY is not UTF-8 text, or holds a control character"};
    }
    return {name, typed ? "--by" : "CLAMPBOOK_BY"};
}

book::Stamp Context::stamp() const {
    const answer::Chosen chosen = chosen_person();
    if (!chosen.problem.empty()) {
        throw error(ErrorKind::usage, "{}", chosen.problem);
    }
    if (chosen.what.empty()) {
        throw error(ErrorKind::usage, "nobody is named; say who tells it with --by NAME or in CLAMPBOOK_BY");
    }
    return {chosen.what, world.clock()};
}

namespace {

// The split at which both sides read. Where none does, the last one whose thread reads tells the reader most.
template <typename ReadThread, typename ReadClass>
ScrewWords split_screw(const std::vector<std::string>& words, ReadThread&& reads_thread, ReadClass&& reads_class) {
    if (words.size() < 2) {
        throw error(ErrorKind::usage, "a thread and a property class are wanted, like 'M10 8.8' or '3/8-16 UNC grade 5'");
    }
    const auto part = [&](std::size_t from, std::size_t to) { return join(std::span{words}.subspan(from, to - from), " "); };
    std::optional<std::size_t> thread_reads;
    for (std::size_t at = words.size() - 1; at >= 1; --at) {
        try {
            reads_thread(part(0, at));
            thread_reads = thread_reads.value_or(at);
            reads_class(part(at, words.size()));
            return {part(0, at), part(at, words.size())};
        } catch (const Error&) {
            continue;
        }
    }
    const std::size_t at = thread_reads.value_or(1);
    return {part(0, at), part(at, words.size())};
}

} // namespace

ScrewWords screw_words(const reference::Reference& reference, const std::vector<std::string>& words) {
    return split_screw(
        words, [](const std::string& text) { (void)read_thread(text); },
        [&](const std::string& text) { (void)reference.class_name(text); });
}

ScrewWords screw_list_words(const reference::Reference& reference, const std::vector<std::string>& words) {
    std::vector<std::string> single; // a blank may stand behind a comma, quoted or not
    for (const std::string& word : words) {
        for (const std::string& one : split(word, ' ')) {
            if (!one.empty()) {
                single.push_back(one);
            }
        }
    }
    return split_screw(
        single, [](const std::string& text) { (void)answer::thread_list(text); },
        [&](const std::string& text) { (void)answer::class_list(reference, text); });
}

ScrewWords plug_words(const reference::Reference& reference, const std::vector<std::string>& words) {
    const std::string all = join(words, " ");
    try {
        (void)read_thread(all);
        return {all, {}};
    } catch (const Error&) {
        // There is a class behind the thread, or no thread at all: the error of either tells what is wrong.
        return words.size() < 2 ? ScrewWords{all, {}} : screw_words(reference, words);
    }
}

} // namespace clampbook::cli
