// SPDX-License-Identifier: MIT
// clampbook teach: lessons on torque and preload, on the screen or as pages to hand out.

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"
#include "clampbook/teach/lesson.hpp"
#include "command.hpp"
#include "table.hpp"

#include <CLI/CLI.hpp>

#include <memory>
#include <ostream>

namespace clampbook::cli {
namespace {

struct TeachOptions {
    std::string what;
    teach::LessonRequest request;
    bool answers = false;
    bool ascii = false;
    std::size_t width = present::Layout{}.width;
};

int list_lessons(const Context& context) {
    answer::TableAnswer table;
    table.schema = "teach-list";
    table.title = "Lessons; 'clampbook teach NAME' gives one, 'clampbook teach all' all of them";
    table.rows_key = "lessons";
    table.columns = {{"name", "name", "", false, false},
                     {"title", "what it shows", "", false, false},
                     {"options", "options", "", false, true}};
    for (const teach::LessonEntry& entry : teach::lesson_entries()) {
        table.rows.push_back({{entry.name, std::nullopt},
                              {entry.title, std::nullopt},
                              {join(std::vector<std::string>(entry.options.begin(), entry.options.end()), " "), std::nullopt}});
    }
    return write_table(table, context);
}

std::vector<teach::Lesson> chosen_lessons(const reference::Reference& reference, const TeachOptions& options) {
    std::vector<teach::Lesson> out;
    if (options.what != "all") {
        out.push_back(teach::lesson(reference, options.what, options.request));
        return out;
    }
    for (const teach::LessonOption& option : teach::lesson_options()) {
        if (!(options.request.*option.text).empty()) {
            throw error(ErrorKind::usage, "'teach all' takes every lesson as it is; {} belongs to a lesson of its own",
                        option.name);
        }
    }
    for (const teach::LessonEntry& entry : teach::lesson_entries()) {
        out.push_back(teach::lesson(reference, entry.name, {}));
    }
    return out;
}

} // namespace

Action setup_teach(CLI::App& app, Context& context) {
    auto options = std::make_shared<TeachOptions>();
    app.add_option("lesson", options->what, "preload, shares, nut-factor, ...; all; without it, the lessons are named")
        ->type_name("");
    for (const teach::LessonOption& option : teach::lesson_options()) {
        add_text(app, option.name, options->request.*option.text, option.type, "Inputs, of the lessons that take them",
                 option.help);
    }
    app.add_flag("--answers", options->answers, "with the answers to the questions")->group("Form");
    app.add_flag("--ascii", options->ascii, "nothing beyond ASCII")->group("Form");
    app.add_option("--width", options->width, "columns of the terminal, 60 to 200 (80)")
        ->type_name("NUMBER")
        ->check(CLI::Range(present::k_width_min, present::k_width_max))
        ->group("Form");
    add_json(app, context);
    add_csv(app, context);
    add_reference(app, context);
    return [options, &context] {
        if (context.json && context.csv) {
            throw error(ErrorKind::usage, "--json and --csv exclude each other: an answer has one form");
        }
        if (options->what.empty()) {
            return list_lessons(context);
        }
        const std::vector<teach::Lesson> lessons = chosen_lessons(context.reference(), *options);
        const bool one = options->what != "all";
        if (context.csv && !one) {
            throw error(ErrorKind::usage, "--csv gives the data of one lesson's chart; name the lesson in place of 'all'");
        }
        const answer::Pages pages = teach::handout(lessons, options->answers, context.world.clock().substr(0, 10));
        context.world.out << (context.csv     ? present::csv(teach::chart_table(lessons.front().chart))
                              : !context.json ? present::text(pages, {options->width, options->ascii})
                              : one           ? present::json(lessons.front())
                                              : present::json(lessons));
        return 0;
    };
}

} // namespace clampbook::cli
