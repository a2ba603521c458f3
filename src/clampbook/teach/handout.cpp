// SPDX-License-Identifier: MIT
// Lessons as pages to hand out.

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/teach/lesson.hpp"

namespace clampbook::teach {
namespace {

using answer::BlockKind;
using answer::PageBlock;
using answer::Pages;

// "derived: (VDI 2230-1)", "standard: ISO 898-1:2013, Table 3 (published, keyed from a reproduction)".
std::string source_words(const answer::Figure& figure) {
    std::string out{figure.label ? label_name(*figure.label) : ""};
    if (!figure.basis.empty()) {
        out += (out.empty() ? "" : ": ") + figure.basis;
    }
    if (figure.citation) {
        out += (out.empty() ? "" : figure.basis.empty() ? ": " : "; ") + figure.citation->line();
    }
    return out;
}

void add_steps(Pages& pages, const Lesson& lesson) {
    std::size_t number = 0;
    for (const LessonStep& step : lesson.steps) {
        PageBlock& block = pages.add(BlockKind::step, step.title);
        block.mark = std::to_string(++number);
        // Numbers put into the formula, or what they are taken for.
        const bool is_number = !step.worked.empty() && step.worked.front() >= '0' && step.worked.front() <= '9';
        const bool joined = !step.formula.empty() && !step.worked.empty();
        block.formula = step.formula + (!joined ? "" : is_number ? " = " : ", with ") + step.worked;
        if (step.figure) {
            block.result = step.figure->print + (step.figure->also.empty() ? "" : " = " + step.figure->also);
            block.source = source_words(*step.figure);
        }
    }
}

void add_lesson(Pages& pages, const Lesson& lesson) {
    pages.add(BlockKind::title, lesson.title);
    if (!lesson.inputs.empty()) {
        pages.add(BlockKind::small, "Computed here for " + join(lesson.inputs, " ") + "; a derived figure is no maker's figure.");
    }
    pages.add(BlockKind::heading, "To grasp");
    for (const std::string& sentence : lesson.grasp) {
        pages.add(BlockKind::item, sentence).mark = "•";
    }
    pages.add(BlockKind::heading, lesson.name == "order" ? "Step by step" : "The computation");
    add_steps(pages, lesson);
    pages.add(BlockKind::chart, {}).chart = lesson.chart;
    for (const Caution& caution : lesson.cautions) {
        pages.add(BlockKind::caution, caution.text);
    }
    pages.add(BlockKind::heading, "Try this");
    for (const LessonCommand& command : lesson.commands) {
        pages.add(BlockKind::command, command.command).formula = command.why;
    }
    pages.add(BlockKind::heading, "Questions");
    std::size_t number = 0;
    for (const LessonQuestion& question : lesson.questions) {
        pages.add(BlockKind::item, question.question).mark = std::to_string(++number);
        pages.add(BlockKind::room, {}).lines = 2;
    }
    for (const std::string& note : lesson.notes) {
        pages.add(BlockKind::small, note);
    }
}

void add_answers(Pages& pages, const std::vector<Lesson>& lessons) {
    pages.add(BlockKind::new_page, {});
    pages.add(BlockKind::title, "Answers");
    for (const Lesson& lesson : lessons) {
        if (lessons.size() > 1) {
            pages.add(BlockKind::heading, lesson.title);
        }
        std::size_t number = 0;
        for (const LessonQuestion& question : lesson.questions) {
            PageBlock& block = pages.add(BlockKind::item, question.answer);
            block.mark = std::to_string(++number);
        }
    }
}

} // namespace

Pages handout(const std::vector<Lesson>& lessons, bool answers, const std::string& date) {
    if (lessons.empty()) {
        throw error(ErrorKind::internal, "a handout without a lesson was asked for");
    }
    const bool booklet = lessons.size() > 1;
    Pages pages;
    pages.title = booklet ? "Torque and preload: a booklet of lessons" : lessons.front().title;
    pages.date = date;
    pages.foot = pages.title + "; " + date + ". Derived figures are generic: the maker's instructions come first.";
    if (booklet) {
        pages.add(BlockKind::contents, pages.title);
        for (const Caution& caution : {answer::caution_generic(), answer::caution_maker_first()}) {
            pages.add(BlockKind::caution, caution.text);
        }
    }
    bool first = !booklet;
    for (const Lesson& lesson : lessons) {
        if (!first) {
            pages.add(BlockKind::new_page, {});
        }
        first = false;
        add_lesson(pages, lesson);
    }
    if (answers) {
        add_answers(pages, lessons);
    }
    return pages;
}

} // namespace clampbook::teach
