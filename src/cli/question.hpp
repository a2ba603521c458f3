// SPDX-License-Identifier: MIT
#pragma once

// What the subcommands that ask about a screw or a plug have in common: its words, the face under its head, and the way from
// the options to the answer.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/answer/sweep.hpp"
#include "command.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace clampbook::cli {

/// What was typed: the words behind the subcommand, and its options.
template <typename Request>
struct Question {
    std::vector<std::string> words;
    Request request;
};

/// Thread and property class, the words behind the subcommand.
void add_screw(CLI::App& app, std::vector<std::string>& words);

/// The same, or lists of both.
void add_screws(CLI::App& app, std::vector<std::string>& words);

/// --head, --hole and --bearing.
void add_face(CLI::App& app, answer::FaceChoice& face, const char* group);

/// Adds the options that every answer has, and gives what to run: the words become thread and class, and the answer is shown.
template <typename Request>
[[nodiscard]] Action asking(CLI::App& app, Context& context, std::shared_ptr<Question<Request>> question,
                            answer::Document (*answer)(const reference::Reference&, const Request&),
                            ScrewWords (*split)(const reference::Reference&, const std::vector<std::string>&) = screw_words) {
    add_json(app, context);
    add_reference(app, context);
    return [question = std::move(question), &context, answer, split] {
        const reference::Reference reference = context.reference();
        const ScrewWords words = split(reference, question->words);
        question->request.thread = words.thread;
        question->request.property_class = words.property_class;
        show(context, answer(reference, question->request));
        return 0;
    };
}

/// Throws usage where a form that only a table has was asked for.
void require_no_table_form(const Context& context, const std::string& pdf);
/// Shows the table, or writes its wall chart to the file `pdf`, and gives exit code 0.
int show_sweep(Context& context, const answer::Sweep& sweep, const std::string& pdf);

/// The same as `asking`, with --csv and --pdf, for answers that become a table where ranges or lists are asked for.
template <typename Request>
[[nodiscard]] Action asking_each(CLI::App& app, Context& context, std::shared_ptr<Question<Request>> question,
                                 answer::Document (*answer)(const reference::Reference&, const Request&),
                                 std::optional<answer::Sweep> (*sweep)(const reference::Reference&, const Request&)) {
    auto pdf = std::make_shared<std::string>();
    add_json(app, context);
    add_csv(app, context);
    add_text(app, "--pdf", *pdf, "FILE", "Form", "a table of ranges or lists as a chart for the wall");
    add_reference(app, context);
    return [question = std::move(question), pdf = std::move(pdf), &context, answer, sweep] {
        const reference::Reference reference = context.reference();
        const ScrewWords words = screw_list_words(reference, question->words);
        question->request.thread = words.thread;
        question->request.property_class = words.property_class;
        if (const auto table = sweep(reference, question->request)) {
            return show_sweep(context, *table, *pdf);
        }
        require_no_table_form(context, *pdf);
        show(context, answer(reference, question->request));
        return 0;
    };
}

} // namespace clampbook::cli
