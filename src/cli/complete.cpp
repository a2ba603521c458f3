// SPDX-License-Identifier: MIT
// clampbook complete: what may stand where somebody is typing. The shells' scripts in src/completion ask it at each Tab, so that they
// hold no commands, options or names of their own.

#include "complete.hpp"
#include "clampbook/answer/candidates.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/teach/exercises.hpp"
#include "clampbook/teach/lesson.hpp"
#include "clampbook/units/reading.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <array>
#include <map>
#include <ostream>
#include <set>

namespace clampbook::cli {
namespace {

using answer::Candidate;
using Candidates = std::vector<Candidate>;

// What stands for names of files, which the shell knows itself.
constexpr const char* k_files = "<file>";

struct FromTable {
    const char* place;
    const char* topic;
    const char* column;
    const char* what;
};
constexpr std::array k_tables{
    FromTable{"THREAD", "threads", "code", "series"},
    FromTable{"thread", "threads", "code", "series"},
    FromTable{"CLASS", "classes", "class", "authority"},
    FromTable{"MATERIAL", "housings", "code", "name"},
    FromTable{"RING", "ring-materials", "code", "name"},
    FromTable{"FORM", "plug-forms", "code", "name"},
    FromTable{"--condition", "nut-factors", "code", "condition"},
    FromTable{"--method", "scatter", "code", "method"},
};

struct Fixed {
    const char* place;
    const char* words; // with blanks between them
};
constexpr std::array k_fixed{
    Fixed{"HEAD", "hexagon socket flange"},
    Fixed{"HOLE", "fine medium coarse"},
    Fixed{"RULE", "plastic elastic"},
    Fixed{"SHAPE", "rectangular triangular"},
    Fixed{"PAPER", "a4 letter"},
    Fixed{"checked", "checked"},
    Fixed{"RZ", "10 40 160"},
    Fixed{"--level", "1 2 3"},
    Fixed{"WORD", "manual bulletin plate measurement"},
    Fixed{"FILE", k_files},
};

// The line as it was typed, as far as it is understood.
struct Typed {
    std::map<std::string, std::string> values; // of the options
    std::set<std::string> options;
    std::vector<std::string> words;    // that are no options
    const CLI::Option* open = nullptr; // the option whose value is being typed
    const CLI::App* app = nullptr;
    std::size_t app_at = 0; // the word that names it, where it is a command of another

    [[nodiscard]] std::string value(const char* option) const {
        const auto found = values.find(option);
        return found == values.end() ? std::string{} : found->second;
    }
};

Candidates labels() {
    Candidates out;
    for (const Label label : {Label::maker, Label::standard, Label::shop, Label::derived, Label::practice, Label::demo}) {
        out.push_back({std::string{label_name(label)}, std::string{label_meaning(label)}});
    }
    return out;
}

Candidates lessons() {
    Candidates out;
    for (const teach::LessonEntry& entry : teach::lesson_entries()) {
        out.push_back({entry.name, entry.title});
    }
    out.push_back({"all", "all lessons, as a booklet"});
    out.push_back({"exercises", "a worksheet from a seed"});
    return out;
}

using Maker = Candidates (*)(Context& context, const Typed& typed);
struct Made {
    const char* place;
    Maker make;
};

// A thread, and behind it a class.
Candidates screw(Context& context, const Typed& typed) {
    const reference::Reference reference = context.reference();
    return typed.words.empty() ? answer::curated_names(reference, "threads", "code", "series")
                               : answer::curated_names(reference, "classes", "class", "authority");
}
Candidates joint_words(Context& context, const Typed& typed) {
    return answer::search_words(context.book(book::Access::read), typed.words);
}
Candidates first_alone(Candidates list, const Typed& typed) { return typed.words.empty() ? std::move(list) : Candidates{}; }

// By the standard's types and classes; the table also has tools that --tool does not take.
Candidates tools(Context& context, const Typed& /*typed*/) {
    Candidates out = answer::curated_names(context.reference(), "tools", "code", "tool");
    std::erase_if(out, [](const Candidate& one) { return !one.word.starts_with("type "); });
    return out;
}

constexpr std::array k_made{
    Made{"TYPE", tools},
    Made{"screw", screw},
    Made{"plug", screw},
    Made{"words", joint_words},
    Made{"joint", joint_words},
    Made{"--joint", [](Context& c, const Typed&) { return answer::joint_names(c.book(book::Access::read)); }},
    Made{"--machine", [](Context& c, const Typed&) { return answer::machine_names(c.book(book::Access::read)); }},
    Made{"machine", [](Context& c, const Typed& t) { return first_alone(answer::machine_names(c.book(book::Access::read)), t); }},
    Made{"--assembly",
         [](Context& c, const Typed& t) { return answer::assembly_names(c.book(book::Access::read), t.value("--machine")); }},
    Made{"SOURCE", [](Context& c, const Typed&) { return answer::source_names(c.book(book::Access::read)); }},
    Made{"source", [](Context& c, const Typed& t) { return first_alone(answer::source_names(c.book(book::Access::read)), t); }},
    Made{"value", [](Context& c, const Typed&) { return answer::value_numbers(c.book(book::Access::read)); }},
    Made{"LABEL", [](Context&, const Typed&) { return labels(); }},
    Made{"ROLE",
         [](Context&, const Typed&) {
             Candidates out;
             for (const Role role : all_roles()) {
                 out.push_back({std::string{role_name(role)}, {}});
             }
             return out;
         }},
    Made{"UNIT",
         [](Context&, const Typed&) {
             Candidates out;
             for (const UnitInfo& unit : all_units()) {
                 out.push_back({std::string{unit.symbol}, std::string{dimension_name(unit.dimension)}});
             }
             return out;
         }},
    Made{"table",
         [](Context& c, const Typed&) {
             Candidates out;
             for (const reference::Topic& topic : c.reference().topics()) {
                 out.push_back({topic.name, topic.title});
             }
             return out;
         }},
    Made{"lesson", [](Context&, const Typed&) { return lessons(); }},
    Made{"--topics",
         [](Context&, const Typed&) {
             Candidates out;
             for (const std::string& topic : teach::exercise_topics()) {
                 out.push_back({topic, {}});
             }
             return out;
         }},
};

} // namespace

// By the option's own name, else by what its value is called in the help; a positional by its name, or by what it is called.
std::string completion_place(const CLI::Option& option) {
    std::vector<std::string> names{option.get_positional() ? option.get_single_name() : "--" + option.get_lnames().front()};
    const std::string type = option.get_type_name();
    names.push_back(type.substr(0, type.find(':')));
    for (const std::string& name : names) {
        const auto is = [&](const auto& one) { return name == one.place; };
        if (std::ranges::any_of(k_tables, is) || std::ranges::any_of(k_fixed, is) || std::ranges::any_of(k_made, is)) {
            return name;
        }
    }
    return {};
}

namespace {

Candidates values_for(const CLI::Option& option, Context& context, const Typed& typed) {
    const std::string place = completion_place(option);
    const auto is = [&](const auto& one) { return place == one.place; };
    if (const auto* const table = std::ranges::find_if(k_tables, is); table != k_tables.end()) {
        return first_alone(answer::curated_names(context.reference(), table->topic, table->column, table->what),
                           option.get_positional() ? typed : Typed{});
    }
    if (const auto* const fixed = std::ranges::find_if(k_fixed, is); fixed != k_fixed.end()) {
        Candidates out;
        for (const std::string& word : split(fixed->words, ' ')) {
            out.push_back({word, {}});
        }
        return out;
    }
    const auto* const made = std::ranges::find_if(k_made, is);
    return made == k_made.end() ? Candidates{} : made->make(context, typed);
}

bool takes_value(const CLI::Option& option) { return option.get_items_expected_max() > 0; }

std::vector<const CLI::App*> subcommands(const CLI::App& app) {
    return app.get_subcommands([](const CLI::App*) { return true; });
}

Typed understood(const CLI::App& app, const std::vector<std::string>& words) {
    Typed typed;
    typed.app = &app;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string& word = words[i];
        if (word == "=") { // a shell that parts --option=value gives three words
            continue;
        }
        if (typed.open != nullptr) {
            typed.values["--" + typed.open->get_lnames().front()] = word;
            typed.open = nullptr;
            continue;
        }
        if (word.starts_with("--")) {
            const std::string name = word.substr(0, word.find('='));
            const CLI::Option* option = typed.app->get_option_no_throw(name);
            typed.options.insert(name);
            if (option != nullptr && takes_value(*option) && name == word) {
                typed.open = option;
            } else if (name != word) {
                typed.values[name] = word.substr(name.size() + 1);
            }
            continue;
        }
        const auto subs = subcommands(*typed.app);
        const auto sub = std::ranges::find_if(subs, [&](const CLI::App* one) { return one->get_name() == word; });
        if (typed.words.empty() && sub != subs.end()) {
            typed.app = *sub;
            typed.app_at = i;
        } else {
            typed.words.push_back(word);
        }
    }
    return typed;
}

Candidates options_of(const Typed& typed) {
    Candidates out;
    for (const CLI::Option* option : typed.app->get_options()) {
        for (const std::string& name : option->get_lnames()) {
            if (!typed.options.contains("--" + name)) {
                out.push_back({"--" + name, option->get_description()});
            }
        }
    }
    return out;
}

Candidates here(const Typed& typed, const std::string& current, Context& context) {
    if (typed.open != nullptr) {
        return values_for(*typed.open, context, typed);
    }
    if (current.starts_with("-")) {
        return options_of(typed);
    }
    Candidates out;
    for (const CLI::App* sub : subcommands(*typed.app)) {
        out.push_back({sub->get_name(), sub->get_description()});
    }
    std::size_t at = 0;
    for (const CLI::Option* option : typed.app->get_options()) {
        const bool many = option->get_items_expected_max() > 1;
        if (out.empty() && option->get_positional() && (at++ == typed.words.size() || many)) {
            return values_for(*option, context, typed);
        }
    }
    return out.empty() && at == 0 ? options_of(typed) : out;
}

bool begins(const std::string& word, const std::string& typed) { return fold(word).starts_with(fold(typed)); }

// Of a list with commas, the last is being typed.
void show(std::ostream& out, const Candidates& list, const std::string& lead, const std::string& current) {
    const std::size_t comma = current.rfind(',');
    const bool whole =
        comma == std::string::npos || std::ranges::any_of(list, [&](const Candidate& one) { return begins(one.word, current); });
    const std::string front = whole ? std::string{} : current.substr(0, comma + 1);
    for (const Candidate& one : list) {
        if (one.word == k_files || begins(one.word, current.substr(front.size()))) {
            out << (one.word == k_files ? "" : lead + front) << one.word << "\t" << one.what << "\n";
        }
    }
}

void complete(World& world, std::vector<std::string> words) {
    std::string current = words.empty() ? std::string{} : words.back();
    words.resize(words.empty() ? 0 : words.size() - 1);
    std::string lead;
    if (current == "=") {
        current.clear();
    }
    if (const std::size_t equals = current.find('='); current.starts_with("--") && equals != std::string::npos) {
        lead = current.substr(0, equals + 1);
        words.push_back(current.substr(0, equals));
        current.erase(0, equals + 1);
    }
    Context context{world, {}, {}, {}, false, false};
    CLI::App top;
    add_book(top, context);
    add_reference(top, context);
    add_person(top, context);
    add_json(top, context);
    bool version = false;
    top.add_flag("--version", version, "the version of program, figures and layouts");
    for (const Command& command : commands()) {
        top.add_subcommand(command.name, command.summary);
    }
    Typed typed = understood(top, words);
    CLI::App app;
    if (typed.app != &top) { // only now is the command itself set up
        const std::string name = typed.app->get_name();
        const auto command = std::ranges::find_if(commands(), [&](const Command& one) { return name == one.name; });
        (void)command->setup(app, context);
        words.erase(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(typed.app_at) + 1);
        const auto in_front = typed.values;
        typed = understood(app, words);
        typed.values.insert(in_front.begin(), in_front.end());
    }
    context.book_path = typed.value("--book");
    context.reference_path = typed.value("--reference");
    Candidates list;
    try {
        list = here(typed, current, context);
    } catch (const Error&) {
        // Where there is no book, or none that can be read, nothing is offered; the command itself will say why.
    }
    show(world.out, list, lead, current);
}

} // namespace

Action setup_complete(CLI::App& app, Context& context) {
    auto words = std::make_shared<std::vector<std::string>>();
    app.add_option("word", *words, "behind --, the words of a line behind 'clampbook'; the last is being typed and may be empty")
        ->type_name("");
    app.footer(
        "Each line is a word that may stand there, a tab, and what it is; the word <file> stands for any file. The completion "
        "of bash, zsh and fish asks this.");
    return [words, &context] {
        complete(context.world, *words);
        return 0;
    };
}

} // namespace clampbook::cli
