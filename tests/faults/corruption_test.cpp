// SPDX-License-Identifier: MIT
// A bit of each page of a book is turned over: the program says that the book is not valid, or answers; no signal ends it; and
// where an answer differs from that of the sound book, `book verify` or `audit` says why.
// CLAMPBOOK_FAULTS=all: twenty times as many bits.

#include "in_child.hpp"
#include "writing.hpp"

#include <catch2/catch.hpp>

#include <csignal>
#include <cstdlib>
#include <iostream>
#include <random>
#include <set>

namespace {

using namespace fault_tests;

constexpr std::size_t k_page = 4096;

struct Answer {
    int code = 0;
    std::string text;
};

// Every question that reads the book.
std::vector<Words> questions(bool demo) {
    std::vector<Words> all{
        {"find", "plug"},
        {"find", "m18x1.5"},
        {"find", "cover", "screws", "--json"},
        {"history", "1"},
        {"export", "--json"},
        {"export", "--csv"},
        {"sheet"},
        {"book", "info", "--json"},
        {"machine", "list"},
        {"joint", "list"},
        {"source", "list"},
        {"conflicts"},
        {"joint", "show", "2"},
    };
    if (demo) {
        all.push_back({"find", "drain", "plug", "front", "axle"});
        all.push_back({"history", "16"});
        all.push_back({"source", "show", "demo-wm-03"});
    }
    return all;
}

Answer ask(Shop& shop, const Words& question) {
    const int code = shop.run(question);
    return {code, code == 0 ? shop.answered() : std::string{}};
}

std::string words(const Words& all) {
    std::string out;
    for (const std::string& word : all) {
        out += (out.empty() ? "" : " ") + word;
    }
    return out;
}

// What is wrong with the way in which a damaged book is met; one of four words where nothing is.
std::string met(Shop& shop, const std::vector<Words>& asked, const std::vector<Answer>& sound) {
    const std::string bytes = data_tests::read_file(shop.path("book.db"));
    bool refused = false;
    std::string other;
    for (std::size_t i = 0; i < asked.size(); ++i) {
        const Answer now = ask(shop, asked[i]);
        if (now.code != 0 && now.code != 3 && now.code != 4) {
            return "'" + words(asked[i]) + "' exits with " + std::to_string(now.code) + ": " + shop.said();
        }
        refused = refused || now.code == 4;
        if (now.code != 4 && (now.code != sound[i].code || now.text != sound[i].text) && other.empty()) {
            other = words(asked[i]);
        }
    }
    bool noticed = false;
    for (const Words& look : {Words{"book", "verify"}, Words{"audit"}}) {
        const int code = shop.run(look);
        if (code != 0 && code != 4) {
            return "'" + words(look) + "' exits with " + std::to_string(code) + ": " + shop.said();
        }
        noticed = noticed || code == 4;
    }
    if (data_tests::read_file(shop.path("book.db")) != bytes) {
        return "reading changed the file";
    }
    if (!other.empty() && !noticed) {
        return "'" + other + "' answers otherwise, and neither verify nor audit notices";
    }
    const int code = shop.run({"enter", "27 N·m", "--joint", "1", "--label", "shop", "--confirm", "counted"});
    if (code != 0 && code != 3 && code != 4 && code != 6) {
        return "'enter' exits with " + std::to_string(code) + ": " + shop.said();
    }
    // Answers that differ while another question was refused count as told.
    return refused          ? "refused"
           : !other.empty() ? "answered otherwise, noticed"
           : noticed        ? "answered alike, noticed"
                            : "answered alike";
}

void turn_bits(Shop& shop, const Files& book, bool demo, int a_page) {
    const std::vector<Words> asked = questions(demo);
    shop.put(book);
    std::vector<Answer> sound;
    for (const Words& question : asked) {
        sound.push_back(ask(shop, question));
        INFO(words(question) << ": " << shop.said());
        REQUIRE(sound.back().code == 0);
    }
    std::mt19937_64 random{4};
    std::map<std::string, int> tally;
    const std::string& whole = book.at("book.db");
    REQUIRE(whole.size() % k_page == 0);
    for (std::size_t page = 0; page < whole.size() / k_page; ++page) {
        // The beginning of a page says where everything is in it; page 1 begins with the header of the file.
        for (int i = 0; i < a_page; ++i) {
            const std::size_t at = page * k_page + random() % (i % 4 == 3 ? std::size_t{100} : k_page);
            const auto bit = static_cast<unsigned>(random() % 8);
            Files bent = book;
            bent["book.db"][at] = static_cast<char>(static_cast<unsigned char>(whole[at]) ^ (1U << bit));
            shop.put(bent);
            const std::string how = in_child([&] { return met(shop, asked, sound); });
            ++tally[how];
            if (how != "refused" && !how.starts_with("answered ")) {
                UNSCOPED_INFO("bit " << bit << " of byte " << at << ", page " << page + 1 << ": " << how);
                CHECK(how == "refused, noticed or answered alike");
            }
        }
    }
    for (const auto& [how, times] : tally) {
        std::cout << (demo ? "demo" : "shop") << " | " << whole.size() / k_page << " pages | " << how.substr(0, 200) << " | "
                  << times << std::endl;
    }
    CHECK(tally["refused"] > 0);
    CHECK(tally["answered otherwise, noticed"] > 0);
}

#ifdef __SANITIZE_ADDRESS__
constexpr int k_of_demo = 1; // it takes long enough
#else
constexpr int k_of_demo = 2;
#endif

int times(int shortened) {
    const char* asked = std::getenv("CLAMPBOOK_FAULTS");
    return asked != nullptr && std::string_view{asked} == "all" ? 20 * shortened : shortened;
}

} // namespace

TEST_CASE("whoever is ended by a signal, or throws, is told of") {
    CHECK(in_child([] { return std::string{std::raise(SIGKILL) == 0 ? "went on" : ""}; }) == "signal 9");
    CHECK(in_child([]() -> std::string { throw std::runtime_error{"lightning"}; }) == "thrown: lightning");
    CHECK(in_child(
              [] {
                  for (;;) {
                      pause();
                  }
                  return std::string{};
              },
              1) == "signal 14");
    CHECK(in_child([] { return std::string(100'000, 'x'); }) == std::string(100'000, 'x'));
}

TEST_CASE("a bit turned in any page of a small book is met") {
    Shop shop;
    turn_bits(shop, {{"book.db", shop.at_first().at("book.db")}}, false, times(8));
}

TEST_CASE("a bit turned in any page of the demo book is met") {
    Shop shop;
    shop.put({});
    REQUIRE(shop.run({"demo", "{}/book.db"}) == 0);
    turn_bits(shop, {{"book.db", shop.files().at("book.db")}}, true, times(k_of_demo));
}
