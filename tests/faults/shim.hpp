// SPDX-License-Identifier: MIT
#pragma once

// What stands between the database and this machine: a layer over SQLite's own file system and its allocator that lets the
// nth call of a kind fail, and that can write down, in order, what would have changed on a disk. It is the default of every
// program that it is linked into. Syncing is only written down: no test waits for a disk.

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace fault_tests {

enum class Kind {
    read,       ///< SQLITE_IOERR_READ
    write,      ///< SQLITE_IOERR_WRITE, of a cut to length too
    full,       ///< the same calls, SQLITE_FULL after half of the bytes were written
    sync,       ///< SQLITE_IOERR_FSYNC
    open,       ///< SQLITE_CANTOPEN
    map,        ///< SQLITE_IOERR_SHMMAP: the index of the log that processes share
    remove,     ///< SQLITE_IOERR_DELETE
    allocation, ///< no memory
};

struct Fault {
    Kind kind = Kind::read;
    std::string_view name;
};

inline constexpr std::array k_faults{
    Fault{Kind::read, "read"}, Fault{Kind::write, "write"}, Fault{Kind::full, "full"},     Fault{Kind::sync, "sync"},
    Fault{Kind::open, "open"}, Fault{Kind::map, "map"},     Fault{Kind::remove, "remove"}, Fault{Kind::allocation, "allocation"},
};

/// From here on the nth call of the kind fails, counted from 1; where it lasts, each later one too.
void let_fail(Kind kind, std::int64_t nth, bool lasts);
/// Ends that. Gives how many calls failed.
std::int64_t let_pass();

/// One change to the disk, in the order in which it was asked for.
struct Change {
    enum class What { create, write, cut, sync, sync_folder, remove, rename };
    What what = What::sync;
    std::string path;
    std::string to;          ///< of a renaming
    std::int64_t offset = 0; ///< of a write; of a cut the length that is left
    std::string bytes;       ///< of a write
};

/// Writes down what changes from here on; the changes since then.
void watch();
std::vector<Change> watched();

} // namespace fault_tests
