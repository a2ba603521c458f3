// SPDX-License-Identifier: MIT
#include "manual/manual.hpp"

#include "clampbook/base/text.hpp"
#include "press/usage.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <iostream>

namespace clampbook::manual {
namespace {

// Text for groff: no character of it is taken for a request, and what is typed can be copied out of the page.
std::string plain(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        switch (c) {
        case ',': // a long list without blanks may be broken behind its commas
            out += i + 1 < text.size() && text[i + 1] != ' ' ? ",\\:" : ",";
            break;
        case '\\':
            out += "\\e";
            break;
        case '-':
            out += "\\-";
            break;
        case '\'':
            out += "\\(aq";
            break;
        case '"':
            out += "\\(dq";
            break;
        case '`':
            out += "\\(ga";
            break;
        case '^':
            out += "\\(ha";
            break;
        case '~':
            out += "\\(ti";
            break;
        default:
            out += c;
        }
    }
    return out.starts_with('.') ? "\\&" + out : out;
}

std::string upper(std::string text) {
    std::ranges::transform(text, text.begin(),
                           [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
    return text;
}

class Page {
public:
    Page(const std::string& name, const std::string& summary, const Issue& issue)
        : out_(".\\\" Made of the texts of the program's own --help; changes belong there.\n.TH " + upper(plain(name)) + " 1 " +
               issue.date + " \"clampbook " + issue.version + "\" \"clampbook\"\n.ad l\n.nh\n") {
        section("Name");
        line(plain(name) + " \\- " + plain(summary));
    }
    void section(const std::string& title) {
        line(".SH " + upper(plain(title)));
        begun_ = true;
    }
    void part(const std::string& title) { line(".SS " + plain(title)); }
    void paragraph(const std::string& text) { line(begun_ ? plain(text) : ".PP\n" + plain(text)); }
    void line(const std::string& groff) {
        out_ += groff + "\n";
        begun_ = false;
    }
    void lines(const std::vector<std::string>& groff) { line(join(groff, "\n.br\n")); }
    /// Something that is typed or met, and what it is.
    void entry(const std::string& groff, const std::string& text) { line(".TP\n" + groff + "\n" + plain(text)); }
    [[nodiscard]] std::string made() && { return std::move(out_); }

private:
    std::string out_;
    bool begun_ = false; // a section, in which nothing stands yet
};

std::string bold(std::string_view text) { return "\\fB" + plain(text) + "\\fR"; }
std::string italic(std::string_view text) { return text.empty() ? std::string{} : "\\fI" + plain(text) + "\\fR"; }

// The library tells limits behind the type's name: `N:INT in [1 - 999]`.
struct Type {
    std::string name;
    std::string limits;
};
Type type_of(const CLI::Option& option) {
    const std::string all = option.get_type_name();
    const std::size_t colon = all.find(':');
    return colon == std::string::npos ? Type{all, {}} : Type{all.substr(0, colon), all.substr(colon + 1)};
}

std::string description_of(const CLI::Option& option) {
    std::vector<std::string> more;
    if (option.get_required()) {
        more.emplace_back("required");
    }
    if (const std::string limits = type_of(option).limits; !limits.empty()) {
        more.push_back(limits);
    }
    if (!option.get_default_str().empty()) {
        more.push_back("else " + option.get_default_str());
    }
    return option.get_description() + (more.empty() ? "" : " (" + join(more, "; ") + ")");
}

std::string argument_word(const CLI::Option& positional) {
    return italic(positional.get_single_name()) + (positional.get_items_expected_max() > 1 ? " ..." : "");
}

void synopsis(std::vector<std::string>& lines, const CLI::App& app, const std::string& name) {
    const auto subs = app.get_subcommands([](const CLI::App*) { return true; });
    if (!subs.empty()) {
        for (const CLI::App* sub : subs) {
            synopsis(lines, *sub, name + " " + sub->get_name());
        }
        return;
    }
    std::string words = bold(name);
    bool has_options = false;
    for (const CLI::Option* option : app.get_options()) {
        if (option->get_positional()) {
            words += option->get_required() ? " " + argument_word(*option) : " [" + argument_word(*option) + "]";
        } else {
            has_options = true;
        }
    }
    lines.push_back(has_options ? words + " [" + italic("options") + "]" : words);
}

void arguments(Page& page, const CLI::App& app) {
    for (const CLI::Option* option : app.get_options()) {
        if (option->get_positional()) {
            page.entry(argument_word(*option), description_of(*option));
        }
    }
}

void option_entry(Page& page, const CLI::Option& option) {
    std::vector<std::string> names;
    for (const std::string& name : option.get_snames()) {
        names.push_back(bold("-" + name));
    }
    for (const std::string& name : option.get_lnames()) {
        names.push_back(bold("--" + name));
    }
    const std::string type = option.get_items_expected_max() > 0 ? type_of(option).name : "";
    page.entry(join(names, ", ") + (type.empty() ? "" : " " + italic(type)), description_of(option));
}

// By group, in the order in which they are first met; those of no group of their own, such as --help, at the end.
void options(Page& page, const CLI::App& app, bool titles) {
    std::vector<std::string> groups;
    for (const CLI::Option* option : app.get_options()) {
        if (std::ranges::find(groups, option->get_group()) == groups.end()) {
            groups.push_back(option->get_group());
        }
    }
    std::stable_partition(groups.begin(), groups.end(), [](const std::string& group) { return group != "Options"; });
    for (const std::string& group : groups) {
        bool first = true;
        for (const CLI::Option* option : app.get_options()) {
            if (option->get_group() != group || option->get_positional()) {
                continue;
            }
            if (first && titles) {
                page.part(group == "Options" ? "Help" : group);
            }
            first = false;
            option_entry(page, *option);
        }
    }
}

void footer(Page& page, const CLI::App& app) {
    const std::string text = app.get_footer();
    if (text.empty()) {
        return;
    }
    page.section("Notes");
    std::vector<std::string> lines;
    for (const std::string& one : split(text, '\n')) {
        lines.emplace_back(trim(one));
    }
    page.paragraph(join(lines, " "));
}

struct Pair {
    const char* word;
    const char* text;
};

void pairs(Page& page, const std::string& title, std::initializer_list<Pair> list) {
    page.section(title);
    for (const Pair& pair : list) {
        page.entry(bold(pair.word), pair.text);
    }
}

// A context that nobody asks anything of: commands are only set up.
struct Nowhere {
    cli::World world{std::cin, std::cout, std::cerr, [] { return std::string{}; },
                     [](const std::string&) { return std::nullopt; }};
    cli::Context context{world, {}, {}, {}, false, false};
};

} // namespace

std::string program_page(const Issue& issue) {
    Page page{"clampbook", "the tightening book of a workshop", issue};
    page.section("Synopsis");
    page.lines({bold("clampbook") + " " + italic("command") + " [" + italic("words") + "] [" + italic("options") + "]",
                bold("clampbook") + " " + bold("--help"), bold("clampbook") + " " + bold("--version")});
    page.section("Description");
    page.paragraph(std::string{"clampbook "} + cli::k_about + ".");
    page.paragraph(cli::k_shared_by_all);
    page.section("Commands");
    std::string group;
    for (const cli::Command& command : cli::commands()) {
        if (group != command.group) {
            group = command.group;
            page.part(group);
        }
        page.entry("\\fBclampbook\\-" + plain(command.name) + "\\fR(1)", command.summary);
    }
    page.section("Options that commands share");
    CLI::App app;
    Nowhere nowhere;
    add_book(app, nowhere.context);
    add_reference(app, nowhere.context);
    add_person(app, nowhere.context);
    add_json(app, nowhere.context);
    add_csv(app, nowhere.context);
    options(page, app, false);
    pairs(page, "Exit status",
          {{"0", "done"},
           {"1", "unexpected failure"},
           {"2", "the command line was not understood"},
           {"3", "nothing found"},
           {"4", "data, file or book not valid"},
           {"5", "outside the validity of the method"},
           {"6", "conflict: exists already, checked by the same person, implausible and not confirmed"},
           {"130", "interrupted"}});
    pairs(page, "Environment",
          {{"CLAMPBOOK_BOOK", "the book, where --book names none"},
           {"CLAMPBOOK_BY", "who tells the book something, where --by names nobody"},
           {"CLAMPBOOK_PRESS", "the program that sets PDF, SVG, pictures and spreadsheets, in place of clampbook-press"},
           {"XDG_DATA_HOME", "where clampbook/book.db is, where nothing names a book"},
           {"HOME", "where .local/share/clampbook/book.db is, without the former"}});
    page.section("Caution");
    page.paragraph(cli::k_maker_first);
    page.section("See also");
    page.line("\\fBclampbook\\-doctor\\fR(1), \\fBclampbook\\-press\\fR(1)");
    return std::move(page).made();
}

std::string command_page(const cli::Command& command, const Issue& issue) {
    Nowhere nowhere;
    CLI::App app{command.summary};
    (void)command.setup(app, nowhere.context);
    const std::string name = std::string{"clampbook "} + command.name;
    Page page{std::string{"clampbook-"} + command.name, command.summary, issue};
    page.section("Synopsis");
    std::vector<std::string> lines;
    synopsis(lines, app, name);
    page.lines(lines);
    const auto subs = app.get_subcommands([](const CLI::App*) { return true; });
    if (subs.empty()) {
        page.section("Description");
        page.paragraph(std::string{command.summary} + ".");
        arguments(page, app);
        page.section("Options");
        options(page, app, true);
    }
    for (const CLI::App* sub : subs) {
        page.section(name + " " + sub->get_name());
        page.paragraph(sub->get_description() + ".");
        arguments(page, *sub);
        options(page, *sub, false);
    }
    footer(page, app);
    page.section("See also");
    page.line("\\fBclampbook\\fR(1), which tells of exit codes and of the environment");
    return std::move(page).made();
}

std::string press_page(const Issue& issue) {
    Page page{"clampbook-press", press::k_summary, issue};
    page.section("Synopsis");
    std::vector<std::string> lines;
    for (const press::Use& use : press::k_uses) {
        lines.push_back(bold("clampbook-press") + " " + plain(use.synopsis));
    }
    page.lines(lines);
    page.section("Description");
    page.paragraph(std::string{"clampbook-press "} + press::k_summary + ". clampbook starts it where one of these is asked for.");
    for (const press::Use& use : press::k_uses) {
        page.entry(plain(use.synopsis), use.text);
    }
    page.section("See also");
    page.line("\\fBclampbook\\fR(1), \\fBclampbook\\-sheet\\fR(1), \\fBclampbook\\-teach\\fR(1)");
    return std::move(page).made();
}

} // namespace clampbook::manual
