// SPDX-License-Identifier: MIT
#include "clampbook/answer/doctor.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/book/book.hpp"
#include "clampbook/reference/reference.hpp"

#include <algorithm>
#include <filesystem>
#include <system_error>

namespace clampbook::answer {
namespace {

constexpr std::size_t k_shown_faults = 5; // of each kind; 'book verify' and 'audit' tell the others

const char* yes_no(bool is) { return is ? "yes" : "no"; }

class Examination {
public:
    explicit Examination(const DoctorFacts& facts) : facts_(facts) {
        document_.schema = "doctor";
        document_.heading = "What clampbook works with here";
    }

    Diagnosis made() && {
        document_.section({});
        document_.add("program.version", "clampbook", facts_.version);
        document_.add("person.name", "who tells", facts_.person.what);
        document_.add("person.chosen_by", "named by", facts_.person.by);
        examine_person();
        examine_book();
        examine_reference();
        examine_press();
        if (document_.cautions.empty()) {
            document_.notes.emplace_back("nothing is wrong, and nothing is missing");
        }
        return {std::move(document_), faults_};
    }

private:
    void remark(std::string code, std::string sentence) { document_.cautions.push_back({std::move(code), std::move(sentence)}); }
    void fault(std::string code, std::string sentence) {
        ++faults_;
        remark(std::move(code), std::move(sentence));
    }

    void examine_person() {
        if (!facts_.person.problem.empty()) {
            remark("person", facts_.person.problem + "; set it to your name");
        } else if (facts_.person.what.empty()) {
            remark("person", "nobody is named, so the book cannot be told anything: put your name into CLAMPBOOK_BY, or give "
                             "--by NAME each time");
        }
    }

    void examine_book() {
        document_.section("Book");
        document_.add("book.path", "file", facts_.book.what);
        document_.add("book.chosen_by", "named by", facts_.book.by);
        std::error_code problem;
        const auto type = std::filesystem::status(facts_.book.what, problem).type();
        if (facts_.book.what.empty() || type == std::filesystem::file_type::not_found) {
            document_.add("book.state", "state", "missing");
            remark("book-missing",
                   facts_.book.what.empty()
                       ? facts_.book.problem
                       : fmt::format("there is no book at '{}' yet: make one with 'clampbook book new' (or 'clampbook "
                                     "demo', to try things on), or name yours with --book or in CLAMPBOOK_BOOK",
                                     facts_.book.what));
            if (!facts_.book.what.empty() && !facts_.book_writable) {
                remark("book-place",
                       "nor can one be made there: the folder may not be written; name another place with --book or "
                       "in CLAMPBOOK_BOOK");
            }
            return;
        }
        document_.add("book.writable", "may be written", yes_no(facts_.book_writable));
        if (!facts_.book_writable) {
            remark("book-read-only",
                   fmt::format("'{}' can be read and not written: ask whoever keeps it for the right to write the "
                               "file and its folder, if you are to tell it anything",
                               facts_.book.what));
        }
        open_book();
    }

    void open_book() {
        try {
            const book::Book book{facts_.book.what, book::Access::read};
            const book::Info info = book.info();
            document_.add("book.layout", "layout", count_figure(static_cast<std::uint64_t>(info.layout)));
            document_.add("book.values", "values", count_figure(info.values));
            document_.add("book.events", "events", count_figure(info.events));
            document_.add("book.head", "hash of the last event", info.head);
            const std::size_t before = faults_;
            tell(book.verify(), "book-not-whole", "clampbook book verify");
            tell(book.audit(), "book-changed", "clampbook audit");
            document_.add("book.state", "state", faults_ == before ? "sound" : "not sound");
        } catch (const Error& problem) {
            document_.add("book.state", "state", "not valid");
            fault("book-not-valid", std::string{problem.what()});
        }
    }

    void tell(const std::vector<std::string>& found, const char* code, const char* command) {
        for (std::size_t i = 0; i < std::min(found.size(), k_shown_faults); ++i) {
            fault(code, found[i]);
        }
        if (found.size() > k_shown_faults) {
            faults_ += found.size() - k_shown_faults;
            remark(code, fmt::format("and {} more, which '{}' tells", found.size() - k_shown_faults, command));
        }
        if (!found.empty()) {
            remark(code, "the book is not what it was told: put the last good backup in its place, or find out who changed it");
        }
    }

    void examine_reference() {
        document_.section("Curated figures");
        document_.add("reference.file", "file", facts_.reference.empty() ? "built in" : facts_.reference);
        try {
            const reference::Reference built_in;
            const std::string built_in_hash = built_in.metadata("content.sha256");
            const reference::Reference reference =
                facts_.reference.empty() ? reference::Reference{} : reference::Reference{facts_.reference};
            const std::string hash = reference.metadata("content.sha256");
            const std::string computed = reference.content_hash();
            document_.add("reference.dataset", "dataset",
                          reference.metadata("dataset.version") + " of " + reference.metadata("dataset.date"));
            document_.add("reference.layout", "layout",
                          reference.metadata("layout.major") + "." + reference.metadata("layout.minor"));
            document_.add("reference.content", "content", hash);
            document_.add("reference.state", "state", computed == hash ? "sound" : "not sound");
            if (computed != hash) {
                document_.add("reference.computed", "computed anew", computed);
                fault("reference-changed", "a figure was changed after it was built" + what_to_do());
            } else if (computed != built_in_hash) {
                remark("reference-other",
                       "these are other figures than the built-in ones: leave --reference away if you did not mean "
                       "them");
            }
        } catch (const Error& problem) {
            document_.add("reference.state", "state", "not valid");
            fault("reference-not-valid", problem.what() + what_to_do());
        }
    }

    [[nodiscard]] std::string what_to_do() const {
        return facts_.reference.empty()
                   ? ": install the program anew"
                   : ": leave --reference away, which takes the built-in figures, or get '" + facts_.reference + "' anew";
    }

    void examine_press() {
        const PressFacts& press = facts_.press;
        document_.section("Press, for PDF, SVG, pictures and spreadsheets");
        document_.add("press.program", "program", press.program.what);
        document_.add("press.chosen_by", "found by", press.program.by);
        document_.add("press.version", "version", press.version);
        if (!press.program.problem.empty()) {
            document_.add("press.state", "state", press.program.what.empty() ? "missing" : "not valid");
            remark("press", press.program.problem);
            return;
        }
        bool sound = true;
        if (press.version != facts_.version) {
            sound = false;
            remark("press-version", fmt::format("the press is of version {} and the program of {}: install both from one release",
                                                press.version, facts_.version));
        }
        std::vector<std::string> set_in;
        bool missing = false;
        for (const auto& [wanted, found] : press.fonts) {
            set_in.push_back(wanted == found ? wanted
                                             : fmt::format("{} in place of {}", found.empty() ? "nothing" : found, wanted));
            missing = missing || wanted != found;
        }
        document_.add("press.fonts", "sets in", join(set_in, ", "));
        if (missing) {
            sound = false;
            remark("fonts",
                   "the press has to set its pages in other fonts than it was made for: install the packages fonts-dejavu-core "
                   "and fonts-dejavu-extra");
        }
        document_.add("press.state", "state", sound ? "sound" : "not sound");
    }

    const DoctorFacts& facts_;
    Document document_;
    std::size_t faults_ = 0;
};

} // namespace

Diagnosis doctor(const DoctorFacts& facts) { return Examination{facts}.made(); }

} // namespace clampbook::answer
