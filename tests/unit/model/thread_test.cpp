// SPDX-License-Identifier: MIT
// Names of threads in every spelling that the trade uses, and those that are none.

#include "clampbook/model/thread.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

namespace {

using namespace clampbook;
using Catch::Contains;

struct Case {
    const char* text;
    ThreadSystem system;
    const char* size;
    double pitch; // 0: not written
    double per_inch;
    const char* series;
};

std::string refused(std::string_view text) {
    return unit_tests::refusal(ErrorKind::usage, [&] { return read_thread(text); });
}

} // namespace

TEST_CASE("threads are read as people write them") {
    using enum ThreadSystem;
    const Case cases[] = {
        {"M18x1.5", metric, "M18", 1.5, 0, ""},
        {"M18×1,5", metric, "M18", 1.5, 0, ""},
        {"m18 x 1.5", metric, "M18", 1.5, 0, ""},
        {"M 18 X 1.5", metric, "M18", 1.5, 0, ""},
        {"M18*1.5", metric, "M18", 1.5, 0, ""},
        {"  M18\u00a0×\u00a01.5 ", metric, "M18", 1.5, 0, ""},
        {"M10", metric, "M10", 0, 0, ""},
        {"M 10", metric, "M10", 0, 0, ""},
        {"M1.6", metric, "M1.6", 0, 0, ""},
        {"M1,6", metric, "M1.6", 0, 0, ""},
        {"M3.5x0.35", metric, "M3.5", 0.35, 0, ""},
        {"M3.50", metric, "M3.5", 0, 0, ""},
        {"M8x1.250", metric, "M8", 1.25, 0, ""},
        {"3/8-16 UNC", unified, "3/8", 0, 16, "UNC"},
        {"3/8-16UNC", unified, "3/8", 0, 16, "UNC"},
        {"3/8 - 16 unc", unified, "3/8", 0, 16, "UNC"},
        {"3/8-16", unified, "3/8", 0, 16, ""},
        {"3/8 UNC", unified, "3/8", 0, 0, "UNC"},
        {"1/2 UNF", unified, "1/2", 0, 0, "UNF"},
        {"#10-32", unified, "#10", 0, 32, ""},
        {"# 10-32 UNF", unified, "#10", 0, 32, "UNF"},
        {"10-32", unified, "#10", 0, 32, ""},
        {"8-32 UNC", unified, "#8", 0, 32, "UNC"},
        {"1-8 UNC", unified, "1", 0, 8, "UNC"},
        {"1 1/8-7 UNC", unified, "1-1/8", 0, 7, "UNC"},
        {"1-1/8-7 UNC", unified, "1-1/8", 0, 7, "UNC"},
        {"1-1/8-8 UN", unified, "1-1/8", 0, 8, "UN"},
        {"G1/2", pipe_parallel, "1/2", 0, 0, ""},
        {"g 1/2", pipe_parallel, "1/2", 0, 0, ""},
        {"G 1 1/4", pipe_parallel, "1-1/4", 0, 0, ""},
        {"G1", pipe_parallel, "1", 0, 0, ""},
        {"G1/2-14", pipe_parallel, "1/2", 0, 14, ""},
        {"R1/2", pipe_taper, "1/2", 0, 0, ""},
        {"R 1/2", pipe_taper, "1/2", 0, 0, ""},
        {"1/2-14 NPT", npt, "1/2", 0, 14, ""},
        {"1/2 NPT", npt, "1/2", 0, 0, ""},
        {"NPT 1/2", npt, "1/2", 0, 0, ""},
        {"npt1/2-14", npt, "1/2", 0, 14, ""},
        {"1/8-27npt", npt, "1/8", 0, 27, ""},
        {"1-11.5 NPT", npt, "1", 0, 11.5, ""},
    };
    for (const Case& c : cases) {
        INFO(c.text);
        const ThreadName name = read_thread(c.text);
        CHECK(name.system == c.system);
        CHECK(name.size == c.size);
        CHECK(name.pitch == (c.pitch > 0 ? std::optional{c.pitch * millimetre} : std::nullopt));
        CHECK(name.threads_per_inch == (c.per_inch > 0 ? std::optional{c.per_inch} : std::nullopt));
        CHECK(name.series == c.series);
    }
    CHECK(read_thread("  M18×1,5 ").text == "M18×1,5");
    CHECK(read_thread(" 3/8-16 unc").text == "3/8-16 unc");
}

TEST_CASE("what is no thread's name is refused with examples") {
    CHECK(refused("") == "'' does not read as a thread: nothing was written; threads are written like "
                         "M18x1.5, M10, 3/8-16 UNC, #10-32, G1/2, R1/2 or 1/2-14 NPT");
    CHECK_THAT(refused("   "), Contains("nothing was written"));
    CHECK_THAT(refused("M18x"), Contains("'M18x'") && Contains("no pitch follows the x"));
    CHECK_THAT(refused("M18x0"), Contains("a pitch is 0.01 to 99 mm"));
    CHECK_THAT(refused("M18x100"), Contains("a pitch is 0.01 to 99 mm"));
    CHECK_THAT(refused("M10000"), Contains("a diameter is 0.1 to 9999 mm"));
    CHECK_THAT(refused("M0"), Contains("a diameter is 0.1 to 9999 mm"));
    CHECK_THAT(refused("1-0 UN"), Contains("there are 1 to 200 threads per inch"));
    CHECK_THAT(refused("1/2-201"), Contains("there are 1 to 200 threads per inch"));
    CHECK_THAT(refused("M18x-1"), Contains("no pitch follows the x"));
    CHECK_THAT(refused("M "), Contains("does not read as a thread"));
    CHECK_THAT(refused("M18-1.5"), Contains("'-1.5' is not understood"));
    CHECK_THAT(refused("M18x1.5.2"), Contains("'.2' is not understood"));
    CHECK_THAT(refused("M123456789"), Contains("no diameter follows the M"));
    CHECK_THAT(refused("M18 fine"), Contains("'fine' is not understood"));
    CHECK_THAT(refused("3/8"), Contains("the threads per inch or the series (UNC, UNF) are missing"));
    CHECK_THAT(refused("3/8-UNC"), Contains("the number of threads per inch should follow the hyphen"));
    CHECK_THAT(refused("3/8-16 UNX"), Contains("is not understood"));
    CHECK_THAT(refused("3/8-16 UNC 2A"), Contains("'2a' is not understood"));
    CHECK_THAT(refused("1/2-14 NPTF"), Contains("'f' is not understood"));
    CHECK_THAT(refused("G"), Contains("does not read as a thread"));
    CHECK_THAT(refused("G-1"), Contains("does not read as a thread"));
    CHECK_THAT(refused("#-32"), Contains("does not read as a thread"));
    CHECK_THAT(refused("NPT"), Contains("does not read as a thread"));
    CHECK_THAT(refused("drain plug"), Contains("'drain plug' does not read as a thread; threads are written like"));
    CHECK_THAT(refused("gearbox"), Contains("does not read as a thread"));
    CHECK_THAT(refused("\xFF"), Contains("does not read as a thread"));
}

TEST_CASE("a search tells a thread from a word") {
    for (const char* thread : {"M10", "m18x1.5", "3/8-16 UNC", "#10-32", "G1/2", "g1", "R1/2", "1/2-14 NPT"}) {
        INFO(thread);
        CHECK(looks_like_thread(thread));
    }
    for (const char* word : {"", "M", "drain", "magnet", "gear", "ring", "8.8", "2023", "#plug", "G12 model"}) {
        INFO(word);
        CHECK_FALSE(looks_like_thread(word));
    }
}

TEST_CASE("a code is printed with a multiplication sign, metric ones alone") {
    CHECK(thread_for_print("M18x1.5") == "M18×1.5");
    CHECK(thread_for_print("M10") == "M10");
    CHECK(thread_for_print("3/8-16 UNC") == "3/8-16 UNC");
    CHECK(thread_for_print("G1/2") == "G1/2");
    CHECK(thread_for_print("").empty());
    for (const char* code : {"M18x1.5", "M10", "3/8-16 UNC", "G1-1/4", "R1/2", "1/2-14 NPT", "#10-32 UNF"}) {
        INFO(code);
        const ThreadName once = read_thread(code);
        const ThreadName again = read_thread(thread_for_print(code));
        CHECK(once.size == again.size);
        CHECK(once.pitch == again.pitch);
        CHECK(once.threads_per_inch == again.threads_per_inch);
    }
}

TEST_CASE("pipe threads are those that seal") {
    CHECK(is_pipe(ThreadSystem::pipe_parallel));
    CHECK(is_pipe(ThreadSystem::pipe_taper));
    CHECK(is_pipe(ThreadSystem::npt));
    CHECK_FALSE(is_pipe(ThreadSystem::metric));
    CHECK_FALSE(is_pipe(ThreadSystem::unified));
}
