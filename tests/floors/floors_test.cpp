// SPDX-License-Identifier: MIT
// Holds every #include of src/ against the table of floors: who may include whom, which third party stands where, and
// that third-party headers stay out of headers. Then plants breaches of each kind in a copy and looks whether they are
// noticed.

#include <catch2/catch.hpp>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace {

namespace fs = std::filesystem;
using Words = std::set<std::string>;

Words words(const std::string& text) {
    std::istringstream in{text};
    Words out;
    for (std::string word; in >> word;) {
        out.insert(word);
    }
    return out;
}

struct Floor {
    Words may_include; ///< floors, besides itself
    Words third_party; ///< names of `k_third_parties`, in its .cpp files
};

// DEVELOPERS.md shows the same table with what each floor is for. The press reads the public JSON and none of present's headers.
const std::map<std::string, Floor>& floors() {
    static const std::map<std::string, Floor> table{
        {"base", {{}, words("fmt nettle")}},
        {"units", {words("base"), {}}},
        {"model", {words("base units"), {}}},
        {"engine", {words("base units model"), {}}},
        {"reference", {words("base units model"), words("SQLiteCpp sqlite3")}},
        {"book", {words("base units model"), words("SQLiteCpp sqlite3")}},
        {"exchange", {words("base units model"), words("libcsv nlohmann-json")}},
        {"intake", {words("base units model engine reference book exchange"), {}}},
        {"answer", {words("base units model engine reference book exchange"), {}}},
        {"teach", {words("base units model engine reference answer"), {}}},
        {"present", {words("base units model answer teach"), words("nlohmann-json fmt")}},
        {"cli", {words("base units model engine reference book exchange intake answer teach present"), words("CLI11")}},
        {"manual", {words("base reference cli press"), words("CLI11")}},
        {"press", {words("base units"), words("nlohmann-json Cairo Pango libxlsxwriter")}},
        {"refbuild", {words("base units model exchange reference"), words("SQLiteCpp sqlite3")}},
    };
    return table;
}

// What an include begins with, and whose it is.
struct ThirdParty {
    std::string_view prefix;
    std::string_view name;
};
constexpr ThirdParty k_third_parties[]{
    {"SQLiteCpp/", "SQLiteCpp"},
    {"sqlite3.h", "sqlite3"},
    {"nettle/", "nettle"},
    {"csv.h", "libcsv"},
    {"CLI/", "CLI11"},
    {"fmt/", "fmt"},
    {"nlohmann/", "nlohmann-json"},
    {"cairo", "Cairo"},
    {"pango/", "Pango"},
    {"xlsxwriter", "libxlsxwriter"},
};

// ISO/IEC 14882:2020 clauses 16.4.2.3 and D.11.
const Words& cpp_headers() {
    static const Words all = words(
        "algorithm any array atomic barrier bit bitset cassert cctype cerrno cfenv cfloat charconv chrono cinttypes climits "
        "clocale cmath codecvt compare complex concepts condition_variable coroutine csetjmp csignal cstdarg cstddef cstdint "
        "cstdio cstdlib cstring ctime cuchar cwchar cwctype deque exception execution filesystem format forward_list fstream "
        "functional future initializer_list iomanip ios iosfwd iostream istream iterator latch limits list locale map memory "
        "memory_resource mutex new numbers numeric optional ostream queue random ranges ratio regex scoped_allocator semaphore "
        "set shared_mutex source_location span sstream stack stdexcept stop_token streambuf string string_view strstream "
        "syncstream system_error thread tuple type_traits typeindex typeinfo unordered_map unordered_set utility valarray "
        "variant vector version");
    return all;
}

// IEEE Std 1003.1-2017, chapter 13; the headers of the C library among them.
const Words& posix_headers() {
    static const Words all = words(
        "aio.h arpa/inet.h assert.h complex.h cpio.h ctype.h dirent.h dlfcn.h errno.h fcntl.h fenv.h float.h fmtmsg.h fnmatch.h "
        "ftw.h glob.h grp.h iconv.h inttypes.h iso646.h langinfo.h libgen.h limits.h locale.h math.h monetary.h mqueue.h ndbm.h "
        "net/if.h netdb.h netinet/in.h netinet/tcp.h nl_types.h poll.h pthread.h pwd.h regex.h sched.h search.h semaphore.h "
        "setjmp.h signal.h spawn.h stdarg.h stdbool.h stddef.h stdint.h stdio.h stdlib.h string.h strings.h stropts.h sys/ipc.h "
        "sys/mman.h sys/msg.h sys/resource.h sys/select.h sys/sem.h sys/shm.h sys/socket.h sys/stat.h sys/statvfs.h sys/time.h "
        "sys/times.h sys/types.h sys/uio.h sys/un.h sys/utsname.h sys/wait.h syslog.h tar.h termios.h tgmath.h time.h trace.h "
        "ulimit.h unistd.h utime.h utmpx.h wchar.h wctype.h wordexp.h");
    return all;
}

// The engine is pure: nothing that reads, writes, asks the clock, the locale or the machine.
const Words& kept_from_engine() {
    static const Words all = words("chrono clocale codecvt cstdio ctime filesystem format fstream future iomanip iostream "
                                   "istream locale mutex ostream sstream streambuf syncstream thread");
    return all;
}

// <random> may draw from a seed that is given, but not fetch one from the machine.
bool asks_the_machine_for_chance(const std::string& text) {
    return text.find("random_device") != std::string::npos || text.find("default_random_engine") != std::string::npos;
}

// The floor of a path under src/, or nothing.
std::string floor_of(const fs::path& relative) {
    auto part = relative.begin();
    const bool library = part != relative.end() && *part == "clampbook";
    if (library) {
        ++part;
    }
    const std::string name = part == relative.end() ? std::string{} : part->string();
    const bool program = name == "cli" || name == "manual" || name == "press" || name == "refbuild";
    return floors().contains(name) && program != library ? name : std::string{};
}

struct Scan {
    std::size_t files = 0;
    std::size_t includes = 0;
    std::vector<std::string> breaches; ///< `file: what`
};

std::string judge_angled(const std::string& floor, const fs::path& file, const std::string& header) {
    if (cpp_headers().contains(header) || posix_headers().contains(header)) {
        const bool kept = kept_from_engine().contains(header) || posix_headers().contains(header);
        return floor == "engine" && kept ? "the engine may not include <" + header + ">" : "";
    }
    const auto* found = std::find_if(std::begin(k_third_parties), std::end(k_third_parties),
                                     [&](const ThirdParty& party) { return header.starts_with(party.prefix); });
    if (found == std::end(k_third_parties)) {
        return "unknown header <" + header + ">";
    }
    const std::string name{found->name};
    if (!floors().at(floor).third_party.contains(name)) {
        return floor + " may not use " + name;
    }
    const bool open = (floor == "base" && file.filename() == "error.hpp" && name == "fmt") ||
                      (floor == "present" && file.filename() == "impl.hpp" && name == "nlohmann-json") || // not installed
                      (floor == "press" && file.filename() == "reader.hpp" && name == "nlohmann-json");
    return file.extension() == ".cpp" || open ? "" : name + " in a header";
}

std::string judge_quoted(const std::string& floor, const fs::path& root, const fs::path& file, const std::string& header) {
    const fs::path beside = (file.parent_path() / header).lexically_normal();
    const fs::path wanted = fs::exists(root / beside) ? beside : fs::path{header}.lexically_normal();
    const std::string other = floor_of(wanted);
    if (!fs::exists(root / wanted) || other.empty()) {
        return "unknown header \"" + header + "\"";
    }
    return other == floor || floors().at(floor).may_include.contains(other) ? "" : floor + " may not include " + other;
}

Scan scan(const fs::path& root) {
    static const std::regex include{R"re(^\s*#\s*include\s*(.*)$)re"};
    static const std::regex named{R"re(^(?:<([^>]+)>|"([^"]+)").*$)re"};
    static const Words other_code = words(".c .cc .cxx .h .hh .hxx .inc .ipp .inl .tpp");
    Scan out;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator{root}) {
        const fs::path file = fs::relative(entry.path(), root);
        const std::string extension = file.extension().string();
        const bool ours = extension == ".hpp" || extension == ".cpp";
        const std::string floor = floor_of(file);
        const auto breach = [&](const std::string& what) {
            if (!what.empty()) {
                out.breaches.push_back(file.generic_string() + ": " + what);
            }
        };
        if (!entry.is_regular_file() || (!ours && !other_code.contains(extension))) {
            continue;
        }
        if (floor.empty() || !ours) {
            breach(ours ? "belongs to no floor" : "is neither .hpp nor .cpp");
            continue;
        }
        ++out.files;
        std::ifstream in{entry.path()};
        REQUIRE(in);
        for (std::string line; std::getline(in, line);) {
            std::smatch match;
            if (!std::regex_match(line, match, include)) {
                continue;
            }
            ++out.includes;
            const std::string what = match[1].str();
            if (!std::regex_match(what, match, named)) {
                breach("an include that names no header: " + what);
            } else {
                breach(match[1].matched ? judge_angled(floor, file, match[1].str())
                                        : judge_quoted(floor, root, file, match[2].str()));
            }
        }
    }
    std::sort(out.breaches.begin(), out.breaches.end());
    return out;
}

// A copy of src/ in which breaches can be planted.
class Copy {
public:
    Copy() {
        std::string name = (fs::temp_directory_path() / "clampbook-floors-XXXXXX").string();
        REQUIRE(mkdtemp(name.data()) != nullptr);
        root_ = name;
        fs::copy(fs::path{CLAMPBOOK_SOURCE_DIR} / "src", root_, fs::copy_options::recursive);
        before_ = scan(root_).breaches;
    }
    ~Copy() { fs::remove_all(root_); }
    Copy(const Copy&) = delete;
    Copy& operator=(const Copy&) = delete;

    // What the scan finds more once `line` stands in `file`; the file is taken away again.
    [[nodiscard]] std::vector<std::string> plant(const std::string& file, const std::string& line) const {
        const fs::path path = root_ / file;
        REQUIRE_FALSE(fs::exists(path));
        fs::create_directories(path.parent_path());
        std::ofstream{path} << "// planted\n" << line << "\nint planted();\n";
        const std::vector<std::string> after = scan(root_).breaches;
        fs::remove(path);
        std::vector<std::string> more;
        std::set_difference(after.begin(), after.end(), before_.begin(), before_.end(), std::back_inserter(more));
        return more;
    }

private:
    fs::path root_;
    std::vector<std::string> before_;
};

} // namespace

TEST_CASE("no source includes what its floor may not") {
    const Scan found = scan(fs::path{CLAMPBOOK_SOURCE_DIR} / "src");
    std::string breaches;
    for (const std::string& breach : found.breaches) {
        breaches += breach + "\n";
    }
    CHECK(breaches == "");
    CHECK(found.files > 30);
    CHECK(found.includes > 120);
}

TEST_CASE("the floors stand on one another without a circle") {
    // Takes away, again and again, the floors that stand on nothing that is left.
    std::map<std::string, Floor> left = floors();
    for (bool moved = true; moved;) {
        moved =
            std::erase_if(left, [&](const auto& entry) {
                return std::ranges::none_of(entry.second.may_include, [&](const auto& below) { return left.contains(below); });
            }) > 0;
    }
    CHECK(left.empty());
}

TEST_CASE("a breach is noticed") {
    using Breaches = std::vector<std::string>;
    const Copy copy;
    // Right ones first: none of these is a breach.
    CHECK(copy.plant("clampbook/model/planted.cpp", "#include \"clampbook/model/thread.hpp\"") == Breaches{});
    CHECK(copy.plant("clampbook/book/planted.cpp", "#include <sqlite3.h>") == Breaches{});
    CHECK(copy.plant("clampbook/book/planted.hpp", "#include <sys/stat.h>") == Breaches{});
    CHECK(copy.plant("cli/planted.cpp", "#include \"clampbook/engine/strength.hpp\"") == Breaches{});
    CHECK(copy.plant("refbuild/planted.cpp", "#include \"builder.hpp\"") == Breaches{});
    CHECK(copy.plant("clampbook/engine/planted.cpp", "// #include <fstream>") == Breaches{});

    const std::string unit = "clampbook/units/planted.cpp";
    CHECK(copy.plant(unit, "#include \"clampbook/model/thread.hpp\"") == Breaches{unit + ": units may not include model"});
    CHECK(copy.plant(unit, "  #  include  \"../model/thread.hpp\"") == Breaches{unit + ": units may not include model"});
    const std::string engine = "clampbook/engine/planted.hpp";
    CHECK(copy.plant(engine, "#include \"clampbook/reference/reference.hpp\"") ==
          Breaches{engine + ": engine may not include reference"});
    CHECK(copy.plant(engine, "#include <fstream>") == Breaches{engine + ": the engine may not include <fstream>"});
    CHECK(copy.plant(engine, "#include <time.h>") == Breaches{engine + ": the engine may not include <time.h>"});
    CHECK(copy.plant(engine, "#include <sqlite3.h>") == Breaches{engine + ": engine may not use sqlite3"});

    const std::string reference = "clampbook/reference/planted.hpp";
    CHECK(copy.plant(reference, "#include <SQLiteCpp/SQLiteCpp.h>") == Breaches{reference + ": SQLiteCpp in a header"});
    CHECK(copy.plant(reference, "#include <csv.h>") == Breaches{reference + ": reference may not use libcsv"});
    CHECK(copy.plant(reference, "#include <unheard/of.hpp>") == Breaches{reference + ": unknown header <unheard/of.hpp>"});
    CHECK(copy.plant(reference, "#include \"unheard.hpp\"") == Breaches{reference + ": unknown header \"unheard.hpp\""});
    CHECK(copy.plant(reference, "#include \"fmt/core.h\"") == Breaches{reference + ": unknown header \"fmt/core.h\""});
    CHECK(copy.plant(reference, "#include PLANTED") == Breaches{reference + ": an include that names no header: PLANTED"});
    CHECK(copy.plant("clampbook/base/planted.hpp", "#include <fmt/core.h>") ==
          Breaches{"clampbook/base/planted.hpp: fmt in a header"});

    CHECK(copy.plant("clampbook/present/planted.cpp", "#include \"clampbook/reference/reference.hpp\"") ==
          Breaches{"clampbook/present/planted.cpp: present may not include reference"});
    CHECK(copy.plant("press/planted.cpp", "#include \"clampbook/model/thread.hpp\"") ==
          Breaches{"press/planted.cpp: press may not include model"});
    CHECK(copy.plant("refbuild/planted.cpp", "#include \"clampbook/book/book.hpp\"") ==
          Breaches{"refbuild/planted.cpp: refbuild may not include book"});
    CHECK(copy.plant("clampbook/attic/planted.cpp", "") == Breaches{"clampbook/attic/planted.cpp: belongs to no floor"});
    CHECK(copy.plant("engine/planted.cpp", "") == Breaches{"engine/planted.cpp: belongs to no floor"});
    CHECK(copy.plant("clampbook/base/planted.h", "") == Breaches{"clampbook/base/planted.h: is neither .hpp nor .cpp"});
}

TEST_CASE("the engine draws from the seed that it is given") {
    std::size_t files = 0;
    for (const auto& entry : fs::directory_iterator{fs::path{CLAMPBOOK_SOURCE_DIR} / "src/clampbook/engine"}) {
        std::ifstream in{entry.path()};
        std::ostringstream text;
        text << in.rdbuf();
        INFO(entry.path());
        CHECK_FALSE(asks_the_machine_for_chance(text.str()));
        ++files;
    }
    CHECK(files > 10);
    CHECK(asks_the_machine_for_chance("std::random_device chance;"));
}

TEST_CASE("nothing lies at the top that does not belong there") {
    // Hidden files aside; `build` is what the presets make.
    const std::set<std::string> allowed{"CMakeLists.txt", "CMakePresets.json",
                                        "README.md",      "DEVELOPERS.md",
                                        "CHANGELOG.md",   "LICENSE",
                                        "build",          "src",
                                        "schema",         "tests",
                                        "data",           "examples"};
    for (const auto& entry : fs::directory_iterator{fs::path{CLAMPBOOK_SOURCE_DIR}}) {
        const std::string name = entry.path().filename().string();
        INFO(name);
        CHECK((name.starts_with(".") || allowed.contains(name)) == true);
    }
}
