// SPDX-License-Identifier: MIT
#pragma once

// How a table of answers is made: inputs that take several values each, the answer to each combination of them, and the columns that are
// picked from it. Shared by the tables of derive, scatter and strip.

#include "clampbook/answer/range.hpp"
#include "clampbook/answer/sweep.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/model/thread.hpp"

#include <algorithm>
#include <cstddef>
#include <exception>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::answer {

/// An input: its column, the values that it takes, and where the answer has it.
struct SweepInput {
    TableColumn column;
    std::string item; ///< key in the document; empty for words that it does not have
    std::vector<std::string> texts;

    [[nodiscard]] bool varies() const { return texts.size() > 1; }
};

/// A figure or words of the answer.
struct SweepOutput {
    TableColumn column;
    std::string item;
    bool also = false; ///< the figure in its other unit
};

/// One answer, and which of its values each input had.
struct SweepAnswer {
    std::vector<std::size_t> choice;
    Document document;
};

/// What combinations were refused for, each reason once.
class LeftOut {
public:
    /// While the fault is being handled.
    void add(const Error& fault);
    [[noreturn]] void throw_first() const { std::rethrow_exception(first_); }
    [[nodiscard]] std::vector<std::string> told() const;

private:
    struct Reason {
        std::string text;
        std::size_t count;
    };
    std::vector<Reason> reasons_;
    std::exception_ptr first_;
};

/// The product of what the inputs hold. Throws usage for more than `k_combinations_max`.
[[nodiscard]] std::size_t combinations(const std::vector<SweepInput>& inputs);

/// The values of a range, or the one text that it is not.
[[nodiscard]] std::vector<std::string> values_of(const std::string& text, RangeUnit unit);
/// The names of a list with commas, or the one text that it is not.
[[nodiscard]] std::vector<std::string> names_of(const std::string& text, const std::function<void(std::string_view)>& read);

/// All inputs of a request, thread and property class first.
template <typename Request>
class SweepPlan {
public:
    using Place = std::string& (*)(Request&);

    SweepPlan(const reference::Reference& reference, const Request& request) {
        add({"thread", "thread", "", false}, "thread",
            names_of(request.thread, [](std::string_view one) { (void)read_thread(one); }),
            [](Request& r) -> std::string& { return r.thread; });
        add({"property_class", "class", "", false}, "property_class",
            names_of(request.property_class, [&](std::string_view one) { (void)reference.class_name(one); }),
            [](Request& r) -> std::string& { return r.property_class; });
    }
    void add(TableColumn column, std::string item, std::vector<std::string> texts, Place place) {
        inputs_.push_back({std::move(column), std::move(item), std::move(texts)});
        places_.push_back(place);
    }
    [[nodiscard]] const std::vector<SweepInput>& inputs() const { return inputs_; }
    [[nodiscard]] bool is_single() const { return combinations(inputs_) == 1; }
    [[nodiscard]] bool varies(std::string_view key) const {
        return std::ranges::any_of(inputs_, [&](const SweepInput& input) { return input.column.key == key && input.varies(); });
    }
    /// Asks for each combination, the last input running fastest. What the method does not allow, or is not kept, goes to `left_out`;
    /// throws its error where nothing else is left, and any other error at once.
    [[nodiscard]] std::vector<SweepAnswer> answers(const reference::Reference& reference, const Request& request,
                                                   LeftOut& left_out,
                                                   Document (*answer)(const reference::Reference&, const Request&)) const {
        std::vector<SweepAnswer> out;
        const std::size_t count = combinations(inputs_);
        for (std::size_t n = 0; n < count; ++n) {
            std::vector<std::size_t> choice(inputs_.size());
            Request one = request;
            std::size_t rest = n;
            for (std::size_t i = inputs_.size(); i-- > 0;) {
                choice[i] = rest % inputs_[i].texts.size();
                rest /= inputs_[i].texts.size();
                places_[i](one) = inputs_[i].texts[choice[i]];
            }
            try {
                out.push_back({std::move(choice), answer(reference, one)});
            } catch (const Error& fault) {
                if (fault.kind() != ErrorKind::out_of_validity && fault.kind() != ErrorKind::not_found) {
                    throw;
                }
                left_out.add(fault);
            }
        }
        if (out.empty()) {
            left_out.throw_first();
        }
        return out;
    }

private:
    std::vector<SweepInput> inputs_;
    std::vector<Place> places_;
};

/// An item of a document, or null; and how it reads, or nothing.
[[nodiscard]] const Item* item_of(const Document& document, std::string_view key);
[[nodiscard]] std::string words_of(const Document& document, std::string_view key);

/// The table without its title. An output that is an input too stands among the inputs.
[[nodiscard]] Sweep sweep_of(const char* schema, std::string heading, const std::vector<SweepInput>& inputs,
                             const std::vector<SweepOutput>& outputs, const std::vector<SweepAnswer>& answers,
                             const LeftOut& left_out);

/// Gives the table its title, which says what is the same all over it.
void entitle(Sweep& sweep, const std::vector<std::string>& same);

} // namespace clampbook::answer
