// SPDX-License-Identifier: MIT
// clampbook teach: lessons on torque and preload, on the screen or as pages to hand out.

#include "clampbook/answer/parts.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/file.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"
#include "clampbook/teach/exercises.hpp"
#include "clampbook/teach/lesson.hpp"
#include "command.hpp"
#include "output.hpp"
#include "table.hpp"

#include <CLI/CLI.hpp>

#include <memory>
#include <ostream>

namespace clampbook::cli {
namespace {

struct TeachOptions {
    std::string what;
    teach::LessonRequest request;
    teach::ExercisesRequest exercises; ///< its seed is the lesson's too
    bool answers = false;
    bool ascii = false;
    std::string html;
    std::string pdf;
    std::string svg;
    std::string png;
    std::string paper = "a4";
    std::string width;
};

present::Layout layout_of(const TeachOptions& options) {
    present::Layout out;
    if (!options.width.empty()) {
        out.width = answer::read_count(options.width, "width in columns", present::k_width_min, present::k_width_max);
    }
    out.ascii = options.ascii;
    return out;
}

int list_lessons(const Context& context) {
    answer::TableAnswer table;
    table.schema = "teach-list";
    table.title = "Lessons; 'clampbook teach NAME' gives one, 'teach all' all of them, 'teach exercises' a worksheet";
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

// Which files were written.
std::vector<std::string> write_files(Context& context, const TeachOptions& options, const std::vector<teach::Lesson>& lessons,
                                     const answer::Pages& pages) {
    std::vector<std::string> written;
    if (!options.html.empty()) {
        std::vector<std::string> drawings;
        for (const teach::Lesson& lesson : lessons) {
            drawings.push_back(pressed(context, {"svg", "-"}, present::json(teach::handout({lesson}, false, pages.date))));
        }
        write_whole_file(options.html, present::html(pages, drawings));
        written.push_back(options.html);
    }
    const std::string json = present::json(pages);
    for (const auto& [form, file] : {std::pair{"pdf", options.pdf}, {"svg", options.svg}, {"png", options.png}}) {
        if (!file.empty()) {
            press(context, {form, file, "--paper", options.paper}, json);
            written.push_back(file);
        }
    }
    return written;
}

// A worksheet, on the screen or as files.
int give_exercises(Context& context, const TeachOptions& options) {
    for (const teach::LessonOption& option : teach::lesson_options()) {
        if (option.text != &teach::LessonRequest::seed && !(options.request.*option.text).empty()) {
            throw error(ErrorKind::usage, "{} belongs to a lesson; exercises take --count, --seed, --topics and --level",
                        option.name);
        }
    }
    if (context.csv || !(options.svg + options.png).empty()) {
        throw error(ErrorKind::usage, "exercises have no chart; they are text, --json, --pdf or --html");
    }
    teach::ExercisesRequest request = options.exercises;
    request.seed = options.request.seed;
    const teach::Exercises all = teach::exercises(context.reference(), request);
    const answer::Pages pages = teach::worksheet(all, options.answers, context.world.clock().substr(0, 10));
    std::vector<std::string> written;
    if (!options.html.empty()) {
        write_whole_file(options.html, present::html(pages, {}));
        written.push_back(options.html);
    }
    if (!options.pdf.empty()) {
        press(context, {"pdf", options.pdf, "--paper", options.paper}, present::json(pages));
        written.push_back(options.pdf);
    }
    if (!written.empty() && !context.json) {
        context.world.out << "the exercises were written: " << join(written, ", ") << "\n";
    } else {
        context.world.out << (context.json ? present::json(all) : present::text(pages, layout_of(options)));
    }
    return 0;
}

} // namespace

Action setup_teach(CLI::App& app, Context& context) {
    auto options = std::make_shared<TeachOptions>();
    app.add_option("lesson", options->what, "preload, shares, nut-factor, ...; all; exercises; without it, the lessons are named")
        ->type_name("");
    for (const teach::LessonOption& option : teach::lesson_options()) {
        add_text(app, option.name, options->request.*option.text, option.type, "Inputs, of the lessons that take them",
                 option.help);
    }
    const char* const of_exercises = "Inputs, of the exercises";
    add_text(app, "--count", options->exercises.count, "NUMBER", of_exercises, "how many, 1 to 60 (12)");
    add_text(app, "--topics", options->exercises.topics, "LIST", of_exercises,
             "conversion,proof-load,preload,torque,inverse,shares,adapter,strip,plug,slip (all)");
    add_text(app, "--level", options->exercises.level, "NUMBER", of_exercises,
             "1 one step, 2 two, 3 the other way round (rising)");
    app.add_flag("--answers", options->answers, "with the answers to the questions")->group("Form");
    app.add_flag("--ascii", options->ascii, "nothing beyond ASCII")->group("Form");
    add_text(app, "--width", options->width, "NUMBER", "Form", "columns of the terminal, 60 to 200 (80)");
    add_json(app, context);
    add_csv(app, context);
    add_text(app, "--html", options->html, "FILE", "Form", "one page for the browser");
    add_text(app, "--pdf", options->pdf, "FILE", "Form", "pages to print and hand out");
    add_text(app, "--svg", options->svg, "FILE", "Form", "the chart alone, as a drawing");
    add_text(app, "--png", options->png, "FILE", "Form", "the chart alone, as a picture");
    add_text(app, "--paper", options->paper, "PAPER", "Form", "of the PDF: a4 or letter (a4)");
    add_reference(app, context);
    return [options, &context] {
        if (context.json && context.csv) {
            throw error(ErrorKind::usage, "--json and --csv exclude each other: an answer has one form");
        }
        if (options->paper != "a4" && options->paper != "letter") {
            throw error(ErrorKind::usage, "--paper takes a4 or letter, not '{}'", options->paper);
        }
        if (options->what.empty()) {
            return list_lessons(context);
        }
        if (options->what == "exercises") {
            return give_exercises(context, *options);
        }
        const std::vector<teach::Lesson> lessons = chosen_lessons(context.reference(), *options);
        if (!(options->exercises.count + options->exercises.topics + options->exercises.level).empty()) {
            throw error(ErrorKind::usage, "--count, --topics and --level belong to 'teach exercises'");
        }
        const bool one = options->what != "all";
        if (context.csv && !one) {
            throw error(ErrorKind::usage, "--csv gives the data of one lesson's chart; name the lesson in place of 'all'");
        }
        if (!one && !(options->svg + options->png).empty()) {
            throw error(ErrorKind::usage, "--svg and --png draw one lesson's chart; name the lesson in place of 'all'");
        }
        const answer::Pages pages = teach::handout(lessons, options->answers, context.world.clock().substr(0, 10));
        const std::vector<std::string> written = write_files(context, *options, lessons, pages);
        if (!written.empty() && !context.json && !context.csv) {
            context.world.out << "the lesson was written: " << join(written, ", ") << "\n";
            return 0;
        }
        context.world.out << (context.csv     ? present::csv(teach::chart_table(lessons.front().chart))
                              : !context.json ? present::text(pages, layout_of(*options))
                              : one           ? present::json(lessons.front())
                                              : present::json(lessons));
        return 0;
    };
}

} // namespace clampbook::cli
