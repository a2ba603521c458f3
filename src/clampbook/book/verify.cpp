// SPDX-License-Identifier: MIT
// Is the file whole, and does everything in it point to something? What was changed on purpose is for audit.cpp to find.

#include "clampbook/book/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>
#include <iterator>

namespace clampbook::book {

std::optional<std::string> fault_of_steps(const Value& value) {
    try {
        if (read_tightening(value.tightening.as_written).steps != value.tightening.steps) {
            return fmt::format("value {}: its steps are not what '{}' says", value.id, value.tightening.as_written);
        }
    } catch (const Error& fault) {
        return fmt::format("value {}: {}", value.id, fault.what());
    }
    return std::nullopt;
}

std::vector<std::string> Book::verify() const {
    return guarded(impl_->path, [&] {
        impl_->index_joints(); // what was written just now has words too
        std::vector<std::string> faults = missing_parts(*impl_->db);
        if (auto fault = publication_fault()) {
            return std::vector{std::move(*fault)}; // whatever else there is, is no fault of the book
        }
        Query whole{impl_->statements, "PRAGMA integrity_check(20)"};
        while (whole.executeStep()) {
            std::string line = whole.getColumn(0).getString();
            std::ranges::replace(line, '\n', ' ');
            if (line != "ok") {
                faults.push_back("the database file: " + line);
            }
        }
        Query links{impl_->statements, "PRAGMA foreign_key_check"};
        while (links.executeStep()) {
            faults.push_back(
                fmt::format("{} {}: points to a missing {}", text_at(links, 0), text_at(links, 1), text_at(links, 2)));
        }
        std::ranges::move(faults_of_words(*impl_->db, impl_->statements), std::back_inserter(faults));
        Query joints{impl_->statements, "SELECT DISTINCT joint FROM value ORDER BY joint"};
        while (joints.executeStep()) {
            for (const Value& value : impl_->values_of("v.joint", id_at(joints, 0), Reading::as_it_stands)) {
                if (auto fault = fault_of_steps(value)) {
                    faults.push_back(std::move(*fault));
                }
            }
        }
        return faults;
    });
}

} // namespace clampbook::book
