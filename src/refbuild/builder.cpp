// SPDX-License-Identifier: MIT
#include "builder.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/exchange/csv.hpp"
#include "clampbook/reference/content.hpp"
#include "clampbook/units/reading.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <optional>
#include <sstream>
#include <system_error>
#include <vector>

namespace clampbook::refbuild {
namespace {

namespace fs = std::filesystem;

// 'Clbr': an SQLite file of ours, and which sort. The reader compares it.
constexpr int k_application_id = 0x436c6272;

std::string slurp(const fs::path& path) {
    std::ifstream in{path, std::ios::binary};
    std::ostringstream out;
    out << in.rdbuf();
    if (!in || out.str().empty()) {
        throw error(ErrorKind::invalid_data, "{}: the file is missing or empty", path.string());
    }
    return out.str();
}

std::vector<fs::path> files(const fs::path& folder, std::string_view extension) {
    std::vector<fs::path> found;
    if (!fs::is_directory(folder)) {
        throw error(ErrorKind::invalid_data, "{}: no such folder", folder.string());
    }
    for (const auto& entry : fs::directory_iterator{folder}) {
        if (entry.is_regular_file() && entry.path().extension() == extension) {
            found.push_back(entry.path());
        }
    }
    std::ranges::sort(found);
    if (found.empty()) {
        throw error(ErrorKind::invalid_data, "{}: no {} files there", folder.string(), extension);
    }
    return found;
}

// The longest table name that the file's stem is, or begins with before an underscore.
std::string table_for(const fs::path& file, const std::vector<std::string>& tables) {
    const std::string stem = file.stem().string();
    std::string best;
    for (const std::string& table : tables) {
        if ((stem == table || stem.starts_with(table + "_")) && table.size() > best.size()) {
            best = table;
        }
    }
    if (best.empty()) {
        throw error(ErrorKind::invalid_data, "{}: no table of the schema has this name", file.string());
    }
    return best;
}

std::string suffix_of(Dimension dimension) {
    switch (dimension) {
    case Dimension::number:
        return "value";
    case Dimension::length:
        return "mm";
    case Dimension::area:
        return "mm2";
    case Dimension::force:
        return "N";
    case Dimension::torque:
        return "Nm";
    case Dimension::stress:
        return "MPa";
    case Dimension::expansion:
        return "per_K";
    case Dimension::volume:
    case Dimension::angle:
    case Dimension::temperature:
        break;
    }
    throw error(ErrorKind::invalid_data, "{} is no kind of quantity that curated data hold", dimension_name(dimension));
}

// A column of the file: plain text, or a printed quantity that fills two columns of the table.
struct Column {
    std::string name;
    const UnitInfo* unit = nullptr;
    bool bare = false; // a bare number: "(1)"
};

Column column_of(const std::string& header, const std::string& where) {
    const std::size_t open = header.find('(');
    if (open == std::string::npos) {
        return {header, nullptr, false};
    }
    if (!header.ends_with(')')) {
        throw error(ErrorKind::invalid_data, "{}: '{}': the unit's bracket is not closed", where, header);
    }
    const std::string unit = header.substr(open + 1, header.size() - open - 2);
    if (unit == "1") {
        return {header.substr(0, open), &canonical_unit(Dimension::number), true};
    }
    try {
        return {header.substr(0, open), &unit_named(unit), false};
    } catch (const Error& fault) {
        throw error(ErrorKind::invalid_data, "{}: '{}': {}", where, header, fault.what());
    }
}

struct Value {
    std::string print;
    double canonical;
};

// The cell holds the number alone, as printed; the whole of it must be read.
Value quantity_of(const std::string& cell, const Column& column) {
    const auto number = read_decimal(cell);
    if (!number || number->length != cell.size()) {
        throw error(ErrorKind::invalid_data, "'{}' is not a number", cell);
    }
    return {column.bare ? cell : with_unit(cell, *column.unit), column.unit->to_canonical(number->value)};
}

std::size_t load(SQLite::Database& db, const fs::path& file, const std::string& table) {
    std::ifstream in{file, std::ios::binary};
    if (!in) {
        throw error(ErrorKind::invalid_data, "{}: cannot be opened", file.string());
    }
    const std::string name = file.string();
    std::vector<Column> columns;
    std::optional<SQLite::Statement> insert;
    std::size_t rows = 0;
    const auto on_header = [&](const exchange::CsvHeader& header) {
        std::string names;
        std::string marks;
        for (const std::string& cell : header.columns) {
            columns.push_back(column_of(cell, name + ":1"));
            const Column& c = columns.back();
            names += (names.empty() ? "" : ", ") +
                     (c.unit == nullptr ? c.name : c.name + "_print, " + c.name + "_" + suffix_of(c.unit->dimension));
            marks += (marks.empty() ? "?" : ", ?") + std::string{c.unit == nullptr ? "" : ", ?"};
        }
        try {
            insert.emplace(db, "INSERT INTO " + table + " (" + names + ") VALUES (" + marks + ")");
        } catch (const SQLite::Exception& fault) {
            throw error(ErrorKind::invalid_data, "{}:1: {}", name, fault.what());
        }
    };
    const auto on_row = [&](const exchange::CsvRow& row) {
        int index = 1;
        for (std::size_t i = 0; i < columns.size(); ++i) {
            const Column& column = columns[i];
            const std::string& cell = row.cells[i];
            if (trim(cell) != cell) {
                throw error(ErrorKind::invalid_data, "{}:{}: {}: '{}' has white space at an end", name, row.line, column.name,
                            cell);
            }
            if (cell.empty()) {
                index += column.unit == nullptr ? 1 : 2; // stays NULL
                continue;
            }
            if (column.unit == nullptr) {
                insert->bind(index++, cell);
                continue;
            }
            try {
                const Value value = quantity_of(cell, column);
                insert->bind(index++, value.print);
                insert->bind(index++, value.canonical);
            } catch (const Error& fault) {
                throw error(ErrorKind::invalid_data, "{}:{}: {}: {}", name, row.line, column.name, fault.what());
            }
        }
        try {
            insert->exec();
            insert->reset();
            insert->clearBindings();
        } catch (const SQLite::Exception& fault) {
            throw error(ErrorKind::invalid_data, "{}:{}: {}", name, row.line, fault.what());
        }
        ++rows;
    };
    exchange::read_csv(in, name, on_header, on_row);
    return rows;
}

void check_foreign_keys(SQLite::Database& db) {
    SQLite::Statement query{db, "PRAGMA foreign_key_check"};
    if (query.executeStep()) {
        throw error(ErrorKind::invalid_data, "table {}: a row points to a row of {} that does not exist",
                    query.getColumn(0).getString(), query.getColumn(2).getString());
    }
}

void run_checks(SQLite::Database& db, const fs::path& folder) {
    for (const fs::path& file : files(folder, ".sql")) {
        const std::string sql = slurp(file);
        if (!sql.starts_with("-- ")) {
            throw error(ErrorKind::invalid_data, "{}: a check begins with a comment that is its message", file.string());
        }
        const std::string message = sql.substr(3, sql.find('\n') - 3);
        SQLite::Statement query{db, sql};
        std::vector<std::string> found;
        while (query.executeStep()) {
            std::vector<std::string> cells;
            for (int i = 0; i < query.getColumnCount(); ++i) {
                cells.push_back(query.getColumn(i).getString());
            }
            found.push_back(join(cells, " | "));
        }
        if (!found.empty()) {
            const std::size_t shown = std::min<std::size_t>(found.size(), 20);
            throw error(ErrorKind::invalid_data, "{}: {}\n  {}{}", file.filename().string(), message,
                        join(std::vector<std::string>(found.begin(), found.begin() + static_cast<std::ptrdiff_t>(shown)), "\n  "),
                        found.size() > shown ? fmt::format("\n  and {} more", found.size() - shown) : std::string{});
        }
    }
}

void require_reviewed(const std::string& hash, const fs::path& file) {
    std::ifstream in{file};
    std::string reviewed;
    in >> reviewed;
    if (reviewed != hash) {
        throw error(ErrorKind::invalid_data,
                    "{}: the content is not the reviewed one\n  reviewed: {}\n  built:    {}\n"
                    "Read the difference of the data; if it is meant, write the built hash into the file and a 'Data' line into "
                    "CHANGELOG.md.",
                    file.string(), reviewed.empty() ? "none" : reviewed, hash);
    }
}

} // namespace

namespace {

Summary build_draft(const Inputs& inputs, const fs::path& draft) {
    Summary summary;
    {
        SQLite::Database db{draft.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE};
        db.exec("PRAGMA page_size = 4096; PRAGMA journal_mode = OFF; PRAGMA foreign_keys = ON");
        db.exec(fmt::format("PRAGMA application_id = {}; PRAGMA user_version = 1", k_application_id));
        SQLite::Transaction transaction{db};
        for (const fs::path& file : files(inputs.schema, ".sql")) {
            try {
                db.exec(slurp(file));
            } catch (const SQLite::Exception& fault) {
                throw error(ErrorKind::invalid_data, "{}: {}", file.string(), fault.what());
            }
        }
        const std::vector<std::string> tables = reference::tables_of(db);
        for (const fs::path& file : files(inputs.data, ".csv")) {
            summary.rows += load(db, file, table_for(file, tables));
        }
        for (const std::string& table : tables) {
            if (db.execAndGet("SELECT count(*) FROM " + table).getInt() == 0) {
                throw error(ErrorKind::invalid_data, "table {}: no row; a table without data is a table too many", table);
            }
        }
        check_foreign_keys(db);
        run_checks(db, inputs.schema / "checks");
        summary.tables = tables.size();
        summary.content_hash = reference::content_hash(db);
        require_reviewed(summary.content_hash, inputs.hash_file);
        SQLite::Statement insert{db,
                                 "INSERT INTO metadata (key, value) VALUES ('content.sha256', ?), ('built.by', 'refbuild 1')"};
        insert.bind(1, summary.content_hash);
        insert.exec();
        transaction.commit();
        db.exec("VACUUM");
        if (db.execAndGet("PRAGMA integrity_check").getString() != "ok") {
            throw error(ErrorKind::internal, "the built database is not whole");
        }
    }
    return summary;
}

} // namespace

Summary build(const Inputs& inputs) {
    const fs::path draft = inputs.output.string() + ".draft";
    fs::remove(draft);
    try {
        Summary summary = build_draft(inputs, draft);
        fs::rename(draft, inputs.output);
        return summary;
    } catch (...) {
        std::error_code none;
        fs::remove(draft, none); // a refused build leaves nothing behind
        throw;
    }
}

} // namespace clampbook::refbuild
