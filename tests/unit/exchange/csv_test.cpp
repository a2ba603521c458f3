// SPDX-License-Identifier: MIT
// CSV files as people and spreadsheets write them, the line of each row, and what is no such file.

#include "clampbook/base/cells.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/exchange/csv.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <random>
#include <sstream>
#include <streambuf>

namespace {

using namespace clampbook;
using namespace clampbook::exchange;
using Cells = std::vector<std::string>;
using Catch::Contains;

CsvTable table_of(const std::string& text) {
    std::istringstream in{text};
    return read_csv(in, "shop.csv");
}

std::string refused(const std::string& text) {
    return unit_tests::refusal(ErrorKind::invalid_data, [&] { return table_of(text); });
}

// Every row with the line that it began on.
std::string shape(const CsvTable& table) {
    std::string out;
    for (const CsvRow& row : table.rows) {
        out += std::to_string(row.line) + ":" + join(row.cells, "|") + " ";
    }
    return out;
}

} // namespace

TEST_CASE("plain rows are read with their lines") {
    const CsvTable table = table_of("a,b,c\n1,2,3\n4,,6\n");
    CHECK(table.header.columns == Cells{"a", "b", "c"});
    CHECK(table.header.separator == ',');
    CHECK(shape(table) == "2:1|2|3 3:4||6 ");
    CHECK(shape(table_of("a,b\n1,2")) == "2:1|2 "); // no line end at the end of the file
    CHECK(table_of("a,b\n").rows.empty());
    CHECK(shape(table_of("a\nÖlablaßschraube\n")) == "2:Ölablaßschraube ");
}

TEST_CASE("line ends and byte order mark make no difference") {
    const std::string lf = "a,b\n1,2\n3,4\n";
    std::string crlf = lf;
    for (std::size_t at = crlf.find('\n'); at != std::string::npos; at = crlf.find('\n', at + 2)) {
        crlf.insert(at, "\r");
    }
    const std::string bom = "\xEF\xBB\xBF";
    for (const std::string& text : {lf, crlf, bom + lf, bom + crlf}) {
        const CsvTable table = table_of(text);
        CHECK(table.header.columns == Cells{"a", "b"});
        CHECK(shape(table) == "2:1|2 3:3|4 ");
    }
    CHECK(table_of(bom + "\"a\",b\n1,2\n").header.columns == Cells{"a", "b"});
    CHECK(shape(table_of("a\n" + bom + "x\n")) == "2:" + bom + "x "); // only at the front of the file is it a mark
}

TEST_CASE("a semicolon in the header line makes it the separator") {
    const CsvTable table = table_of("a;b;c\n1,5;2,5;x\n");
    CHECK(table.header.separator == ';');
    CHECK(shape(table) == "2:1,5|2,5|x ");
    CHECK(table_of("\xEF\xBB\xBF"
                   "a;b\r\n1;2\r\n")
              .header.columns == Cells{"a", "b"});
    CHECK(shape(table_of("a,b\n1;2,3\n")) == "2:1;2|3 ");
    CHECK(table_of("a\n15\n").header.separator == ',');
}

TEST_CASE("quoted cells hold separators, quotes and line ends") {
    CHECK(shape(table_of("a,b\n\"1,5\",\"6\"\" pipe\"\n")) == "2:1,5|6\" pipe ");
    CHECK(shape(table_of("a,b\n\"one\ntwo\nthree\",x\n4,5\n")) == "2:one\ntwo\nthree|x 5:4|5 ");
    CHECK(shape(table_of("a,b\r\n\"one\r\ntwo\",x\r\n4,5\r\n")) == "2:one\r\ntwo|x 4:4|5 ");
    CHECK(shape(table_of("a,b\n\"\",\n1,2\n")) == "3:1|2 ");
    CHECK(shape(table_of("\"a\",\"b\"\n\" x \",y\n")) == "2: x |y ");
    CHECK(table_of("a,\"b\nc\"\n1,2\n").header.columns == Cells{"a", "b\nc"});
    CHECK(shape(table_of("a,\"b\nc\"\n1,2\n")) == "3:1|2 ");
}

TEST_CASE("rows that are wholly empty are passed over, and the lines still count") {
    CHECK(shape(table_of("a,b\n1,2\n\n3,4\n")) == "2:1|2 4:3|4 ");
    CHECK(shape(table_of("a,b\n\n\n\n1,2\n")) == "5:1|2 ");
    CHECK(shape(table_of("a,b\r\n\r\n1,2\r\n")) == "3:1|2 ");
    CHECK(shape(table_of("a,b\n,\n  ,\t\n1,2\n")) == "4:1|2 ");
    CHECK(shape(table_of("a,b\n1,2\n\n\n")) == "2:1|2 ");
    CHECK_THAT(refused("a,b\n\n\n1\n"), Contains("shop.csv:4: 1 cells, where the header has 2"));
}

TEST_CASE("blank lines before the header are passed over") {
    CHECK(table_of("\na;b\n1;2\n").header.columns == Cells{"a", "b"});
    CHECK(shape(table_of("\na;b\n1;2\n")) == "3:1|2 ");
    CHECK(shape(table_of("\n\na,b\n1,2\n")) == "4:1|2 ");
}

TEST_CASE("a header's names are looked up without white space at their ends") {
    const CsvTable table = table_of(" a ,\"b \",tightening\n1,2,3\n");
    CHECK(table.header.columns == Cells{"a", "b", "tightening"});
    CHECK(table.header.at("b", "shop.csv") == 1);
    CHECK(unit_tests::refusal(ErrorKind::invalid_data, [&] { return table.header.at("tightning", "shop.csv"); }) ==
          "shop.csv: the column 'tightning' is missing (did you mean 'tightening'?)");
    CHECK(unit_tests::refusal(ErrorKind::invalid_data, [&] { return table.header.at("machine", "shop.csv"); }) ==
          "shop.csv: the column 'machine' is missing");
}

TEST_CASE("what is no such file is refused with file and line") {
    CHECK(refused("") == "shop.csv: the file holds no header line");
    CHECK(refused("\xEF\xBB\xBF") == "shop.csv: the file holds no header line");
    CHECK(refused("\n\n") == "shop.csv: the file holds no header line");
    CHECK(refused("a,b,a\n") == "shop.csv:1: the column 'a' stands twice");
    CHECK(refused("a, a\n") == "shop.csv:1: the column 'a' stands twice");
    CHECK(refused("a,,c\n") == "shop.csv:1: a column has no name");
    CHECK(refused("a,b,\n1,2,3\n") == "shop.csv:1: a column has no name");
    CHECK(refused("a,b\n1,2\n1,2,3\n") == "shop.csv:3: 3 cells, where the header has 2");
    CHECK(refused("a,b\n1\n") == "shop.csv:2: 1 cells, where the header has 2");
    CHECK(refused("a,b\n\"1\n2\",3\n4\n") == "shop.csv:4: 1 cells, where the header has 2");
    CHECK(refused("a,b\n1,2\n\"3,4\n5,6\n") == "shop.csv:3: a quote is open at the end of the file");
    CHECK(refused("a,\"b\n") == "shop.csv:1: a quote is open at the end of the file");
    CHECK_THAT(refused("a,b\n1,x\"y\n"), Contains("shop.csv:2: "));
    CHECK_THAT(refused("a,b\n1,\"x\"y\n"), Contains("shop.csv:2: "));
    CHECK(refused("a,b\n1,2\nGr\xF6\xDF"
                  "e,3\n") == "shop.csv:3: the line is not UTF-8 text; save the file as UTF-8");
    CHECK(refused("a,\xFF\n") == "shop.csv:1: the line is not UTF-8 text; save the file as UTF-8");
    CHECK_THAT(refused(std::string("\xFF\xFE") + std::string("a\0,\0b\0\n\0", 8)),
               Contains("shop.csv:1: the line is not UTF-8 text; save the file as UTF-8"));
}

TEST_CASE("a fault of the receiver comes back as it was thrown") {
    std::istringstream in{"a,b\n1,2\n3,4\n"};
    int seen = 0;
    const auto read = [&] {
        read_csv(
            in, "shop.csv", [](const CsvHeader&) {},
            [&](const CsvRow& row) {
                ++seen;
                throw error(ErrorKind::conflict, "enough at line {}", row.line);
            });
        return 0;
    };
    CHECK(unit_tests::refusal(ErrorKind::conflict, read) == "enough at line 2");
    CHECK(seen == 1);
}

TEST_CASE("a file that stops being readable is refused") {
    class Broken : public std::streambuf {
        int_type underflow() override {
            if (given_) {
                throw std::runtime_error("the disk is gone");
            }
            given_ = true;
            setg(text_, text_, text_ + 8);
            return traits_type::to_int_type(text_[0]);
        }
        char text_[9] = "a,b\n1,2\n";
        bool given_ = false;
    } buffer;
    std::istream in{&buffer};
    CHECK(unit_tests::refusal(ErrorKind::invalid_data, [&] { return read_csv(in, "shop.csv"); }) ==
          "shop.csv: the file could not be read to its end");
}

TEST_CASE("a hundred thousand rows run through", "[long]") {
    constexpr std::size_t k_rows = 100000;
    std::string text = "number,text,quoted\n";
    for (std::size_t i = 0; i < k_rows; ++i) {
        text += std::to_string(i) + ",Größe,\"a, \"\"b\"\"\"\n";
    }
    std::istringstream in{text};
    std::size_t rows = 0;
    std::size_t headers = 0;
    std::size_t wrong = 0;
    read_csv(
        in, "long.csv", [&](const CsvHeader& header) { headers += header.columns.size(); },
        [&](const CsvRow& row) {
            const Cells wanted{std::to_string(rows), "Größe", "a, \"b\""};
            wrong += row.cells == wanted && row.line == rows + 2 ? 0U : 1U;
            ++rows;
        });
    CHECK(headers == 3);
    CHECK(rows == k_rows);
    CHECK(wrong == 0);
}

TEST_CASE("what csv_cell writes is read back") {
    const Cells pieces{"a", ",", ";", "\"", "\n", "\r\n", " ", "é", "\t", "1,5", "'"};
    std::mt19937 random{15};
    for (int i = 0; i < 3000; ++i) {
        Cells cells(3);
        for (std::string& cell : cells) {
            for (std::size_t n = random() % 5; n > 0; --n) {
                cell += pieces[random() % pieces.size()];
            }
        }
        cells[0] += "x"; // no row that is wholly empty
        std::string text = "a,b,c\n";
        for (std::size_t c = 0; c < 3; ++c) {
            text += (c == 0 ? "" : ",") + csv_cell(cells[c]);
        }
        INFO(text);
        const CsvTable table = table_of(text + "\n");
        REQUIRE(table.rows.size() == 1);
        REQUIRE(table.rows[0].cells == cells);
    }
}

TEST_CASE("a row with a wrong number of cells may be told and passed over") {
    std::istringstream in{"a,b\n1,2\n3\n4,5,6\n7,8\n"};
    std::vector<std::string> rows;
    std::vector<std::string> faults;
    read_csv(
        in, "shop.csv", [](const CsvHeader&) {}, [&](const CsvRow& row) { rows.push_back(join(row.cells, "|")); },
        [&](const Error& fault) { faults.emplace_back(fault.what()); });
    CHECK(rows == std::vector<std::string>{"1|2", "7|8"});
    CHECK(faults ==
          std::vector<std::string>{"shop.csv:3: 1 cells, where the header has 2", "shop.csv:4: 3 cells, where the header has 2"});
}
