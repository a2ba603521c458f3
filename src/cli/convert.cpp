// SPDX-License-Identifier: MIT
// clampbook convert: a quantity in another unit, one or a stream of them.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <istream>
#include <ostream>

namespace clampbook::cli {
namespace {

struct ConvertOptions {
    std::vector<std::string> words;
    std::string to;
    std::string scale;
    bool batch = false;
};

int batch(const ConvertOptions& options, Context& context) {
    std::string line;
    std::size_t number = 0;
    std::size_t faults = 0;
    while (std::getline(context.world.in, line)) {
        ++number;
        const std::string_view text = trim(std::string_view{line}.substr(0, line.find('#')));
        if (text.empty()) {
            continue;
        }
        try {
            const answer::Document document = answer::convert({std::string{text}, options.to, options.scale});
            context.world.out << (context.json ? present::json(document, true) : present::conversion_text(document));
        } catch (const Error& fault) {
            ++faults;
            context.world.err << "clampbook: line " << number << ": " << fault.what() << "\n";
        }
        if (!context.world.out) {
            break; // nobody reads any more; the outermost frame says so
        }
    }
    if (faults > 0) {
        throw error(ErrorKind::invalid_data, "{} of the lines could not be converted", faults);
    }
    return 0;
}

} // namespace

Action setup_convert(CLI::App& app, Context& context) {
    auto options = std::make_shared<ConvertOptions>();
    app.add_option("quantity", options->words, "number and unit: 24 lbf·ft, 32Nm, 3/8 in, 25 °C")->type_name("");
    app.add_option("--to", options->to, "unit wanted; without it the usual other ones are shown")
        ->type_name("UNIT")
        ->group("What");
    app.add_option("--scale", options->scale, "round to a tool's scale: 0.5, or 0.5 N·m")->type_name("STEP")->group("What");
    app.add_flag("--batch", options->batch, "read a quantity a line from standard input; # begins a comment")->group("What");
    add_json(app, context);
    return [options, &context] {
        if (options->batch) {
            if (!options->words.empty()) {
                throw error(ErrorKind::usage, "--batch reads standard input; '{}' has no place beside it",
                            options->words.front());
            }
            return batch(*options, context);
        }
        if (options->words.empty()) {
            throw error(ErrorKind::usage, "a quantity is wanted, like: clampbook convert \"24 lbf·ft\" --to N·m");
        }
        const answer::Document document = answer::convert({join(options->words, " "), options->to, options->scale});
        context.world.out << (context.json ? present::json(document) : present::conversion_text(document));
        return 0;
    };
}

} // namespace clampbook::cli
