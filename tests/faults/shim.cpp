// SPDX-License-Identifier: MIT
#include "shim.hpp"

#include <sqlite3.h>
#include <unistd.h>

#include <fcntl.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <utility>

namespace fault_tests {
namespace {

struct Plan {
    Kind kind = Kind::read;
    std::int64_t nth = 0; // 0: nothing fails
    bool lasts = false;
    std::int64_t calls = 0;
    std::int64_t failed = 0;
};

Plan plan;                    // NOLINT(cppcoreguidelines-avoid-non-const-global-variables)
bool watching = false;        // NOLINT(cppcoreguidelines-avoid-non-const-global-variables)
std::vector<Change> changes;  // NOLINT(cppcoreguidelines-avoid-non-const-global-variables)
sqlite3_mem_methods memory{}; // NOLINT(cppcoreguidelines-avoid-non-const-global-variables)
sqlite3_vfs* below = nullptr; // NOLINT(cppcoreguidelines-avoid-non-const-global-variables)

bool fails(Kind kind) {
    if (plan.nth == 0 || plan.kind != kind) {
        return false;
    }
    ++plan.calls;
    const bool now = plan.lasts ? plan.calls >= plan.nth : plan.calls == plan.nth;
    plan.failed += now ? 1 : 0;
    return now;
}

void note(Change change) {
    if (watching) {
        changes.push_back(std::move(change));
    }
}

// A file of ours; SQLite makes room for the one below right behind it.
struct ShimFile {
    sqlite3_file base;
    std::string* path;    // nullptr: a file without a name, gone with the process
    bool folder_unsynced; // a new journal or log: its first sync is one of the folder too

    [[nodiscard]] sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};
static_assert(sizeof(ShimFile) % alignof(void*) == 0 && sizeof(ShimFile) % alignof(sqlite3_int64) == 0);

ShimFile* ours(sqlite3_file* file) { return reinterpret_cast<ShimFile*>(file); }
sqlite3_file* real(sqlite3_file* file) { return ours(file)->real(); }

int close_file(sqlite3_file* file) {
    const int code = real(file)->pMethods->xClose(real(file));
    delete ours(file)->path;
    ours(file)->path = nullptr;
    return code;
}

int read_file(sqlite3_file* file, void* to, int amount, sqlite3_int64 offset) {
    return fails(Kind::read) ? SQLITE_IOERR_READ : real(file)->pMethods->xRead(real(file), to, amount, offset);
}

int write_file(sqlite3_file* file, const void* from, int amount, sqlite3_int64 offset) {
    if (fails(Kind::write)) {
        return SQLITE_IOERR_WRITE;
    }
    const bool full = fails(Kind::full);
    const int taken = full ? amount / 2 : amount;
    const int code = real(file)->pMethods->xWrite(real(file), from, taken, offset);
    if (code == SQLITE_OK && ours(file)->path != nullptr) {
        note({Change::What::write,
              *ours(file)->path,
              {},
              offset,
              std::string(static_cast<const char*>(from), static_cast<std::size_t>(taken))});
    }
    return full ? SQLITE_FULL : code;
}

int cut_file(sqlite3_file* file, sqlite3_int64 length) {
    if (fails(Kind::write)) {
        return SQLITE_IOERR_TRUNCATE;
    }
    const int code = real(file)->pMethods->xTruncate(real(file), length);
    if (code == SQLITE_OK && ours(file)->path != nullptr) {
        note({Change::What::cut, *ours(file)->path, {}, length, {}});
    }
    return code;
}

int sync_file(sqlite3_file* file, int /*flags*/) {
    if (fails(Kind::sync)) {
        return SQLITE_IOERR_FSYNC;
    }
    if (ours(file)->path != nullptr) {
        note({Change::What::sync, *ours(file)->path, {}, 0, {}});
        if (ours(file)->folder_unsynced) {
            ours(file)->folder_unsynced = false;
            note({Change::What::sync_folder, *ours(file)->path, {}, 0, {}});
        }
    }
    return SQLITE_OK;
}

int size_of_file(sqlite3_file* file, sqlite3_int64* size) { return real(file)->pMethods->xFileSize(real(file), size); }
int lock_file(sqlite3_file* file, int level) { return real(file)->pMethods->xLock(real(file), level); }
int unlock_file(sqlite3_file* file, int level) { return real(file)->pMethods->xUnlock(real(file), level); }
int is_reserved(sqlite3_file* file, int* out) { return real(file)->pMethods->xCheckReservedLock(real(file), out); }
int control_file(sqlite3_file* file, int what, void* argument) {
    return real(file)->pMethods->xFileControl(real(file), what, argument);
}
int sector_size(sqlite3_file* file) { return real(file)->pMethods->xSectorSize(real(file)); }
// What the layer below promises of power loss is not promised here.
int traits_of(sqlite3_file* /*file*/) { return 0; }

int map_shared(sqlite3_file* file, int page, int size, int extend, void volatile** out) {
    return fails(Kind::map) ? SQLITE_IOERR_SHMMAP : real(file)->pMethods->xShmMap(real(file), page, size, extend, out);
}
int lock_shared(sqlite3_file* file, int offset, int n, int flags) {
    return real(file)->pMethods->xShmLock(real(file), offset, n, flags);
}
void barrier_shared(sqlite3_file* file) { real(file)->pMethods->xShmBarrier(real(file)); }
int unmap_shared(sqlite3_file* file, int remove) { return real(file)->pMethods->xShmUnmap(real(file), remove); }

constexpr sqlite3_io_methods k_methods{
    2,           close_file,     read_file,    write_file,   cut_file,    sync_file, size_of_file,
    lock_file,   unlock_file,    is_reserved,  control_file, sector_size, traits_of, map_shared,
    lock_shared, barrier_shared, unmap_shared, nullptr,      nullptr};

int open_file(sqlite3_vfs* /*vfs*/, const char* name, sqlite3_file* file, int flags, int* got) {
    file->pMethods = nullptr;
    if (fails(Kind::open)) {
        return SQLITE_CANTOPEN;
    }
    const bool is_new = name != nullptr && (flags & SQLITE_OPEN_CREATE) != 0 && access(name, F_OK) != 0;
    const int code = below->xOpen(below, name, real(file), flags, got);
    if (code != SQLITE_OK) {
        if (real(file)->pMethods != nullptr) {
            (void)real(file)->pMethods->xClose(real(file));
        }
        return code;
    }
    constexpr int k_temporary = SQLITE_OPEN_DELETEONCLOSE;
    ours(file)->path = name != nullptr && (flags & k_temporary) == 0 ? new std::string{name} : nullptr;
    ours(file)->folder_unsynced = is_new && (flags & (SQLITE_OPEN_MAIN_JOURNAL | SQLITE_OPEN_WAL)) != 0;
    file->pMethods = &k_methods;
    if (is_new && ours(file)->path != nullptr) {
        note({Change::What::create, name, {}, 0, {}});
    }
    return SQLITE_OK;
}

int remove_file(sqlite3_vfs* /*vfs*/, const char* name, int sync_folder) {
    if (fails(Kind::remove)) {
        return SQLITE_IOERR_DELETE;
    }
    const int code = below->xDelete(below, name, 0);
    if (code == SQLITE_OK) {
        note({Change::What::remove, name, {}, 0, {}});
        if (sync_folder != 0) {
            note({Change::What::sync_folder, name, {}, 0, {}});
        }
    }
    return code;
}

int is_there(sqlite3_vfs* /*vfs*/, const char* name, int flags, int* out) { return below->xAccess(below, name, flags, out); }
int full_name(sqlite3_vfs* /*vfs*/, const char* name, int room, char* out) {
    return below->xFullPathname(below, name, room, out);
}
// Chance begins at the same place in every process, so that what failed once fails again.
int random_bytes(sqlite3_vfs* /*vfs*/, int amount, char* out) {
    for (int i = 0; i < amount; ++i) {
        out[i] = static_cast<char>(37 * i + 11);
    }
    return amount;
}
// Nobody waits here: what would wait for another program only counts its tries.
int sleep(sqlite3_vfs* /*vfs*/, int microseconds) { return microseconds; }
int time_now(sqlite3_vfs* /*vfs*/, double* out) { return below->xCurrentTime(below, out); }
int last_error(sqlite3_vfs* /*vfs*/, int room, char* out) { return below->xGetLastError(below, room, out); }
int time_now_64(sqlite3_vfs* /*vfs*/, sqlite3_int64* out) { return below->xCurrentTimeInt64(below, out); }

void* allocate(int amount) { return fails(Kind::allocation) ? nullptr : memory.xMalloc(amount); }
void* allocate_again(void* old, int amount) { return fails(Kind::allocation) ? nullptr : memory.xRealloc(old, amount); }

// Before anything else asks SQLite for something.
const bool installed = [] {
    const auto need = [](bool held) {
        if (!held) {
            std::abort();
        }
    };
    need(sqlite3_config(SQLITE_CONFIG_GETMALLOC, &memory) == SQLITE_OK);
    sqlite3_mem_methods with_faults = memory;
    with_faults.xMalloc = allocate;
    with_faults.xRealloc = allocate_again;
    need(sqlite3_config(SQLITE_CONFIG_MALLOC, &with_faults) == SQLITE_OK);
    need(sqlite3_initialize() == SQLITE_OK);
    below = sqlite3_vfs_find(nullptr);
    static sqlite3_vfs shim = *below;
    shim.zName = "shim";
    shim.szOsFile = below->szOsFile + static_cast<int>(sizeof(ShimFile));
    shim.xOpen = open_file;
    shim.xDelete = remove_file;
    shim.xAccess = is_there;
    shim.xFullPathname = full_name;
    shim.xRandomness = random_bytes;
    shim.xSleep = sleep;
    shim.xCurrentTime = time_now;
    shim.xGetLastError = last_error;
    shim.xCurrentTimeInt64 = time_now_64;
    shim.xDlOpen = nullptr; // nothing is loaded
    shim.xDlError = nullptr;
    shim.xDlSym = nullptr;
    shim.xDlClose = nullptr;
    shim.pAppData = nullptr;
    need(sqlite3_vfs_register(&shim, 1) == SQLITE_OK);
    return true;
}();

} // namespace

// What base/file.cpp asks of the machine itself, past SQLite: the C library's calls of these names come here.
extern "C" int rename(const char* from, const char* to) {
    const int code = renameat(AT_FDCWD, from, AT_FDCWD, to);
    if (code == 0) {
        note({Change::What::rename, from, to, 0, {}});
    }
    return code;
}

// What was written past SQLite is seen here first: it counts as one writing of the whole file.
extern "C" int fsync(int file) {
    if (!watching) {
        return 0;
    }
    const std::string link = "/proc/self/fd/" + std::to_string(file);
    const std::string path = std::filesystem::read_symlink(link);
    if (std::filesystem::is_directory(path)) {
        note({Change::What::sync_folder, path, {}, 0, {}});
        return 0;
    }
    std::ifstream in{path, std::ios::binary};
    std::ostringstream bytes;
    bytes << in.rdbuf();
    note({Change::What::write, path, {}, 0, bytes.str()});
    note({Change::What::sync, path, {}, 0, {}});
    return 0;
}

void let_fail(Kind kind, std::int64_t nth, bool lasts) { plan = {kind, nth, lasts, 0, 0}; }

std::int64_t let_pass() { return std::exchange(plan, {}).failed; }

void watch() {
    changes.clear();
    watching = true;
}

std::vector<Change> watched() {
    watching = false;
    return std::exchange(changes, {});
}

} // namespace fault_tests
