// SPDX-License-Identifier: MIT
#include "clampbook/intake/import.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/exchange/export.hpp"

namespace clampbook::intake {
namespace {

constexpr std::size_t k_look_up_every = 64; // rows between two looks at the clock and the keyboard

// Thrown out of the transaction so that nothing of it is kept, though nothing went wrong there.
struct NothingKept : Error {
    NothingKept() : Error(ErrorKind::interrupted, "nothing was kept") {}
};

// One run: a transaction, what was found, and when it gives up.
class Run {
public:
    Run(book::Book& book, const ImportOptions& options) : book_(book), options_(options) {}

    ImportReport in_one_go(const std::function<void()>& body) {
        try {
            // A part, where somebody has more to tell in the same go: what is not kept of it leaves nothing there.
            book_.in_part([&] {
                const book::Info before = book_.info();
                run_through(body);
                count(before);
                if (options_.dry_run || report_.faults.total > 0) {
                    throw NothingKept{};
                }
            });
            report_.kept = true;
        } catch (const NothingKept&) {
            report_.kept = false;
        }
        return std::move(report_);
    }

    // Runs the taking of one part; what does not fit is kept for the end.
    void part(const std::function<void()>& take) {
        if (report_.read % k_look_up_every == 0) {
            if (options_.interrupted && options_.interrupted()) {
                throw error(ErrorKind::interrupted, "stopped; the book is as it was before");
            }
            if (options_.progress) {
                options_.progress(report_.read);
            }
        }
        ++report_.read;
        try {
            take();
        } catch (const Error& fault) {
            note(fault);
        }
    }
    void tell(const std::string& where, const JointTaken& taken) {
        report_.here_already += taken.here_already;
        for (const std::string& line : taken.confirmed) {
            report_.confirmed.add(fmt::format("{}: {}", where, line));
        }
        for (const std::string& line : taken.left_out) {
            report_.left_out.add(fmt::format("{}: {}", where, line));
        }
    }
    void note(const Error& fault) {
        if (fault.kind() == ErrorKind::internal || fault.kind() == ErrorKind::interrupted) {
            throw Error{fault}; // no fault of the row
        }
        report_.conflicts_alone = report_.conflicts_alone && fault.kind() == ErrorKind::conflict;
        report_.faults.add(fault.what());
    }

    [[nodiscard]] ImportReport& report() { return report_; }

private:
    // A file that breaks off is one more fault, not the only one that is told.
    void run_through(const std::function<void()>& body) {
        try {
            body();
        } catch (const Error& fault) {
            if (report_.faults.total == 0) {
                throw;
            }
            note(fault);
        }
    }
    void count(const book::Info& before) {
        const book::Info after = book_.info();
        report_.machines = after.machines - before.machines;
        report_.assemblies = after.assemblies - before.assemblies;
        report_.joints = after.joints - before.joints;
        report_.sources = after.sources - before.sources;
        report_.values = after.values - before.values;
        report_.checks = after.checked_values - before.checked_values;
    }

    ImportReport report_;
    book::Book& book_;
    const ImportOptions& options_;
};

// Never silently: a value that stands only because of --confirm-all is told with what speaks against it.
void tell_confirmed(const book::Book& book, const Judge& judge, RecordId id, const std::string& where, ImportReport& report) {
    const Value value = book.value(id).value();
    if (!value.confirmed.empty()) {
        const auto against = implausible(judge, book.place(value.joint).value().joint, value.tightening);
        report.confirmed.add(where + against.value_or(value.tightening.as_written));
    }
}

// "where: what" for a part that has no line of its own.
template <typename F>
void telling_where(const std::string& where, F&& body) {
    try {
        std::forward<F>(body)();
    } catch (const Error& fault) {
        if (fault.kind() == ErrorKind::internal) {
            throw; // the disk's, not the part's
        }
        throw error(fault.kind() == ErrorKind::conflict ? ErrorKind::conflict : ErrorKind::invalid_data, "{}: {}", where,
                    fault.what());
    }
}

} // namespace

void Told::add(std::string line) {
    if (lines.size() < k_lines_told) {
        lines.push_back(std::move(line));
    }
    ++total;
}

ImportReport import_rows(book::Book& book, const reference::Reference& reference, std::istream& in, const std::string& name,
                         const ImportOptions& options, const book::Stamp& stamp) {
    Run run{book, options};
    const Judge judge{reference};
    return run.in_one_go([&] {
        Rows rows{book, judge, name, stamp, options.rules};
        const auto take = [&](const exchange::JointRow& row) {
            run.part([&] {
                const RowTaken taken = rows.take(row);
                run.report().here_already += taken.what == Taken::here_already ? 1U : 0U;
                run.report().superseded += taken.what == Taken::superseding ? 1U : 0U;
                if (!options.rules.confirm_all.empty() && row.confirmed.empty() && taken.value != 0) {
                    tell_confirmed(book, judge, taken.value, fmt::format("{}:{}: ", name, row.line), run.report());
                }
            });
        };
        exchange::read_joint_rows(in, name, take, [&](const Error& fault) { run.note(fault); });
    });
}

ImportReport import_export(book::Book& book, const reference::Reference& reference, std::istream& in, const std::string& name,
                           const ImportOptions& options, const book::Stamp& stamp) {
    Run run{book, options};
    const Judge judge{reference};
    return run.in_one_go([&] {
        exchange::ExportHandlers handlers;
        handlers.source = [&](const Source& source, const std::string& where) {
            telling_where(where, [&] { take_source(book, source, stamp); });
        };
        handlers.machine = [&](const MachineRecord& record, const std::string& where) {
            telling_where(where, [&] { take_machine(book, record, stamp); });
        };
        handlers.joint = [&](const JointRecord& record, const std::string& where) {
            run.part([&] {
                telling_where(where, [&] {
                    book.in_part([&] { run.tell(where, take_joint(book, judge, record, options.rules, stamp)); });
                });
            });
        };
        handlers.fault = [&](const Error& fault) { run.note(fault); };
        exchange::read_export(in, name, handlers);
    });
}

ImportReport merge(book::Book& book, const reference::Reference& reference, const book::Book& other, const std::string& name,
                   const ImportOptions& options, const book::Stamp& stamp) {
    Run run{book, options};
    const Judge judge{reference};
    return run.in_one_go([&] {
        const auto or_left_out = [&](const std::string& where, const std::function<void()>& take) {
            try {
                book.in_part(take);
            } catch (const Error& fault) {
                if (fault.kind() == ErrorKind::internal) {
                    throw;
                }
                run.report().left_out.add(where + ": " + fault.what());
            }
        };
        for (const Source& source : other.sources()) {
            or_left_out(name + ": source '" + source.title + "'", [&] { take_source(book, source, stamp); });
        }
        for (const MachineRecord& machine : other.machine_records()) {
            take_machine(book, machine, stamp);
        }
        other.each_joint([&](const JointRecord& record) {
            const std::string where =
                fmt::format("{}: {}, {}, {}", name, record.machine.title(), record.assembly.name, record.joint.name);
            run.part(
                [&] { or_left_out(where, [&] { run.tell(where, take_joint(book, judge, record, options.rules, stamp)); }); });
        });
    });
}

} // namespace clampbook::intake
