// SPDX-License-Identifier: MIT
// Published copies: written whole, recognised by their first bytes, held against their digest.

#include "clampbook/book/publication.hpp"

#include "clampbook/base/digest.hpp"
#include "clampbook/base/file.hpp"
#include "clampbook/book/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <system_error>

namespace clampbook::book {
namespace {

namespace fs = std::filesystem;

/// 'Clbp' in the file's header.
constexpr int k_published_id = 0x436c6270;
constexpr std::size_t k_digest_line = 65; // 64 digits and a line feed

// What is looked at each time a file is opened. Places in the header: the SQLite file format, "The Database Header".
struct Ends {
    bool published = false;
    std::uint64_t size = 0;     // of the file
    std::uint64_t database = 0; // what the database in it takes
    std::string last_line;      // without its line feed; empty where it is none of ours
};

Ends ends_of(std::ifstream& file) {
    constexpr std::size_t k_header = 100;
    constexpr std::string_view k_magic{"SQLite format 3\0", 16};
    Ends ends;
    std::array<char, k_header> header{};
    if (!file.read(header.data(), header.size()) || !std::string_view{header.data(), header.size()}.starts_with(k_magic)) {
        return ends; // what it is, or why it cannot be read, the database tells better
    }
    const auto number = [&](std::size_t at, std::size_t bytes) {
        std::uint64_t n = 0;
        for (std::size_t i = at; i < at + bytes; ++i) {
            n = n << 8U | static_cast<unsigned char>(header.at(i));
        }
        return n;
    };
    if (number(68, 4) != k_published_id) {
        return ends;
    }
    ends.published = true;
    const std::uint64_t page = number(16, 2);
    ends.database = (page == 1 ? 65536 : page) * number(28, 4);
    file.seekg(0, std::ios::end);
    ends.size = static_cast<std::uint64_t>(file.tellg());
    std::string line(k_digest_line, '\0');
    file.seekg(-static_cast<std::streamoff>(line.size()), std::ios::end);
    if (file.read(line.data(), static_cast<std::streamsize>(line.size())) && line.back() == '\n' &&
        line.find_first_not_of("0123456789abcdef") == line.size() - 1) {
        line.pop_back();
        ends.last_line = std::move(line);
    }
    return ends;
}

Ends ends_of(const std::string& path) {
    std::ifstream file{path, std::ios::binary};
    return ends_of(file);
}

// SHA-256 of a file's first bytes, in hexadecimal digits; of what there is, where they are fewer.
std::string digest_of(std::ifstream& file, std::uint64_t bytes) {
    file.clear();
    file.seekg(0);
    Sha256 hash;
    std::vector<char> part(std::size_t{1} << 20U);
    while (bytes > 0) {
        file.read(part.data(), static_cast<std::streamsize>(std::min<std::uint64_t>(bytes, part.size())));
        const auto got = static_cast<std::uint64_t>(file.gcount());
        if (got == 0) {
            break;
        }
        hash.feed({part.data(), got});
        bytes -= got;
    }
    return hex_of(hash.digest());
}

// Appends the digest of a draft, protects the file from writing, and gives the digest.
std::string seal(const std::string& draft) {
    std::ifstream written{draft, std::ios::binary};
    std::string digest = digest_of(written, fs::file_size(draft));
    const std::string line = digest + "\n";
    errno = 0;
    const int file = open(draft.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC);
    const bool done =
        file >= 0 && write(file, line.data(), line.size()) == static_cast<ssize_t>(line.size()) && fchmod(file, 0444) == 0;
    const int why = errno == 0 ? ENOSPC : errno; // a line that is written by half tells no reason
    if (file >= 0) {
        close(file);
    }
    if (!done) {
        throw fs::filesystem_error{"seal", std::error_code{why, std::generic_category()}};
    }
    return digest;
}

// Nobody else knows of a draft, and one that fails is thrown away: no journal is needed. Gives the draft's revision.
std::int64_t stamp_draft(const std::string& draft, int application_id,
                         const std::vector<std::pair<std::string_view, std::string>>& rows) {
    SQLite::Database db{draft, SQLite::OPEN_READWRITE};
    db.exec("PRAGMA journal_mode = OFF");
    SQLite::Transaction transaction{db};
    db.exec("DELETE FROM book_info WHERE key GLOB 'published.*'");
    for (const auto& [key, value] : rows) {
        SQLite::Statement insert{db, "INSERT INTO book_info (key, value) VALUES (?, ?)"};
        insert.bind(1, std::string{key});
        insert.bind(2, value);
        insert.exec();
    }
    db.exec(fmt::format("PRAGMA application_id = {}", application_id));
    transaction.commit();
    return db.execAndGet("SELECT value FROM book_info WHERE key = 'event.count'").getInt64();
}

} // namespace

std::optional<std::string> published_digest(const std::string& path) {
    const Ends ends = ends_of(path);
    if (!ends.published) {
        return std::nullopt;
    }
    if ((ends.size != ends.database + k_digest_line || ends.last_line.empty())) {
        throw error(ErrorKind::invalid_data,
                    "'{}' is a published copy that has not come over whole ({} bytes instead of {}, {} digest at its end); let "
                    "the file sync finish, or fetch it again",
                    path, ends.size, ends.database + k_digest_line, ends.last_line.empty() ? "no" : "a");
    }
    return ends.last_line;
}

void make_ordinary(const std::string& draft) { (void)stamp_draft(draft, k_application_id, {}); }

std::optional<Publication> Book::publication() const {
    if (!impl_->digest) {
        return std::nullopt;
    }
    return guarded(impl_->path, [&] {
        SQLite::Statement query{*impl_->db, "SELECT coalesce((SELECT value FROM book_info WHERE key = ?), '')"};
        const auto kept = [&](const char* key) {
            query.reset();
            query.bind(1, key);
            query.executeStep();
            return text_at(query, 0);
        };
        Publication out;
        out.at = kept("published.at");
        out.by = kept("published.by");
        out.from = kept("published.from");
        kept("event.count");
        out.revision = id_at(query, 0);
        out.digest = *impl_->digest;
        return std::optional{out};
    });
}

std::optional<std::string> Book::publication_fault() const {
    if (!impl_->digest) {
        return std::nullopt;
    }
    // The file may have been replaced since it was opened: a newer copy is held against its own digest.
    std::ifstream file{impl_->path, std::ios::binary};
    const Ends ends = ends_of(file);
    const std::string found = digest_of(file, ends.database);
    if (ends.published && found == ends.last_line) {
        return std::nullopt;
    }
    return fmt::format(
        "the published copy is not what was published: its digest is {}, and its last line says {}; fetch it again", found,
        ends.last_line);
}

Publication Book::publish(const std::string& path, const Stamp& stamp) const {
    if (impl_->digest) {
        throw error(ErrorKind::conflict, "'{}' is a published copy itself; copy that file as it is, or publish the book",
                    impl_->path);
    }
    std::error_code problem;
    const std::string place =
        fs::is_symlink(fs::symlink_status(path, problem)) ? fs::weakly_canonical(path, problem).string() : path;
    const fs::file_status status = fs::status(place, problem);
    if (fs::exists(status) && !(fs::is_regular_file(status) && ends_of(place).published)) {
        throw error(ErrorKind::conflict, "'{}' exists already and is no published copy; only an older one is replaced", path);
    }
    // Of its own program alone, so that two who publish at once do not write into one file.
    const std::string draft = fmt::format("{}.{}.draft", place, getpid());
    Publication copy{stamp.at, stamp.person, impl_->path, 0, {}};
    try {
        fs::remove(draft);
        guarded(path, [&] {
            impl_->copy_to(draft);
            copy.revision = stamp_draft(draft, k_published_id,
                                        {{"published.at", copy.at}, {"published.by", copy.by}, {"published.from", copy.from}});
        });
        copy.digest = seal(draft);
        put_in_place(draft, place);
    } catch (const fs::filesystem_error& fault) {
        fs::remove(draft, problem);
        throw error(ErrorKind::internal, "'{}' cannot be written: {}", path, fault.code().message());
    } catch (...) {
        fs::remove(draft, problem);
        throw;
    }
    return copy; // what is known of it: nothing may fail once it is in its place
}

} // namespace clampbook::book
