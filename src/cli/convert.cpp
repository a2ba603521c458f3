// SPDX-License-Identifier: MIT
// clampbook convert: a quantity in another unit, one or a stream of them.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <istream>
#include <optional>
#include <ostream>
#include <streambuf>

namespace clampbook::cli {
namespace {

struct ConvertOptions {
    std::vector<std::string> words;
    std::string to;
    std::string scale;
    bool batch = false;
};

// Lines of a stream, each as soon as it is there: what waits in the other direction is sent off before this one waits.
class Lines {
public:
    explicit Lines(World& world) : world_(world) {}

    template <typename F>
    void each(F&& body) {
        while (fill()) {
            std::size_t begin = 0;
            for (std::size_t end = held_.find('\n'); end != std::string::npos; end = held_.find('\n', begin)) {
                body(std::string_view{held_}.substr(begin, end - begin));
                begin = end + 1;
            }
            held_.erase(0, begin);
        }
        if (!held_.empty() && world_.out) {
            body(std::string_view{held_}); // the last line, without its end
        }
    }

private:
    bool fill() {
        std::streambuf& from = *world_.in.rdbuf();
        if (from.in_avail() <= 0) {
            world_.out.flush();
        }
        // Nobody reads any more, which the outermost frame says; or nobody writes; or there never was an input.
        if (!world_.out || world_.in.peek() == std::char_traits<char>::eof()) {
            return false;
        }
        const auto there = std::max<std::streamsize>(from.in_avail(), 1);
        const std::size_t size = held_.size();
        held_.resize(size + static_cast<std::size_t>(there));
        held_.resize(size + static_cast<std::size_t>(from.sgetn(held_.data() + size, there)));
        return true;
    }

    World& world_;
    std::string held_; // read, and not yet a whole line
};

int batch(const ConvertOptions& options, Context& context) {
    std::optional<answer::Converter> converter; // where each line becomes one line of text
    if (!options.to.empty() && options.scale.empty() && !context.json) {
        converter.emplace(options.to);
    }
    std::size_t number = 0;
    std::size_t faults = 0;
    std::string shown;
    Lines{context.world}.each([&](std::string_view line) {
        ++number;
        const std::string_view text = trim(line.substr(0, line.find('#')));
        if (text.empty()) {
            return;
        }
        shown.clear();
        try {
            if (converter) {
                present::append_conversion(shown, converter->of(text));
            } else {
                const answer::Document document = answer::convert({std::string{text}, options.to, options.scale});
                shown = context.json ? present::json(document, true) : present::conversion_text(document);
            }
            context.world.out.write(shown.data(), static_cast<std::streamsize>(shown.size()));
        } catch (const Error& fault) {
            ++faults;
            context.world.err << "clampbook: line " << number << ": " << fault.what() << "\n";
        }
    });
    if (context.world.in.bad()) {
        throw error(ErrorKind::internal, "standard input could not be read to its end; {} lines were", number);
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
