// SPDX-License-Identifier: MIT
#pragma once

// What the subcommands that ask about a screw or a plug have in common: its words, the face under its head, and the way from
// the options to the answer.

#include "clampbook/answer/calculate.hpp"
#include "command.hpp"

#include <memory>
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

} // namespace clampbook::cli
