// SPDX-License-Identifier: MIT
// Tables that come of ranges and lists: each row against the single answer to the same question.

#include "clampbook/answer/sweep.hpp"
#include "curated.hpp"
#include "documents.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

namespace {

using namespace clampbook;
using answer::BlockKind;
using answer::DeriveRequest;
using answer::Document;
using answer::ScatterRequest;
using answer::StripRequest;
using answer::Sweep;
using unit_tests::curated;
using unit_tests::figure;
using unit_tests::item;
using unit_tests::refusal;
using Texts = std::vector<std::string>;

DeriveRequest derive_of(const char* thread, const char* property_class, const std::function<void(DeriveRequest&)>& change) {
    DeriveRequest r;
    r.thread = thread;
    r.property_class = property_class;
    change(r);
    return r;
}

std::size_t column(const Sweep& sweep, std::string_view key) {
    const auto& columns = sweep.table.columns;
    INFO(key);
    const auto found = std::ranges::find(columns, key, &answer::TableColumn::key);
    REQUIRE(found != columns.end());
    return static_cast<std::size_t>(found - columns.begin());
}

// The keys of the columns that hold figures, each with its key in the single answer.
using Keys = std::vector<std::pair<const char*, const char*>>;

void check_row(const Sweep& sweep, std::size_t row, const Document& single, const Keys& keys) {
    INFO("row " << row);
    REQUIRE(row < sweep.table.rows.size());
    const auto& cells = sweep.table.rows[row];
    CHECK(cells.size() == sweep.table.columns.size());
    for (const auto& [key, single_key] : keys) {
        INFO(key);
        const answer::TableCell& cell = cells[column(sweep, key)];
        if (item(single, single_key) == nullptr) {
            CHECK_FALSE(cell.number);
            CHECK(cell.text.empty());
            continue;
        }
        CHECK(cell.number == figure(single, single_key).value); // to the last bit: nothing is computed twice
        CHECK(sweep.table.columns[column(sweep, key)].unit == figure(single, single_key).unit);
        CHECK_FALSE(cell.text.empty());
    }
    CHECK(cells[column(sweep, "label")].text == "derived");
}

std::string all_of(const Texts& texts) {
    std::string out;
    for (const std::string& text : texts) {
        out += text + "\n";
    }
    return out;
}

std::string block_text(const answer::Pages& pages, BlockKind kind) {
    std::string out;
    for (const answer::PageBlock& block : pages.blocks) {
        out += block.kind == kind ? block.text + "\n" : "";
    }
    return out;
}

const answer::PageBlock& table_of(const answer::Pages& pages) {
    const auto found = std::ranges::find(pages.blocks, BlockKind::table, &answer::PageBlock::kind);
    REQUIRE(found != pages.blocks.end());
    return *found;
}

} // namespace

TEST_CASE("derive: each row is the single answer, by friction") {
    const auto request = derive_of("M8,M10x1,25", "8.8,10.9", [](DeriveRequest& r) {
        r.friction.coefficients = "0.08..0.20:0.04";
        r.friction.utilisation = "80..90:10%";
    });
    const auto sweep = answer::derive_sweep(curated(), request);
    REQUIRE(sweep);
    REQUIRE(sweep->table.rows.size() == 2 * 2 * 4 * 2);
    CHECK(sweep->table.schema == "derive-sweep");
    CHECK(sweep->table.rows_key == "rows");
    CHECK(sweep->table.quantities);
    std::size_t row = 0;
    for (const char* thread : {"M8", "M10x1.25"}) {
        for (const char* property_class : {"8.8", "10.9"}) {
            for (const char* mu : {"0.08", "0.12", "0.16", "0.20"}) {
                for (const char* used : {"80%", "90%"}) {
                    const Document single = answer::derive(curated(), derive_of(thread, property_class, [&](DeriveRequest& r) {
                                                               r.friction.coefficients = mu;
                                                               r.friction.utilisation = used;
                                                           }));
                    check_row(*sweep, row, single,
                              {{"friction", "friction.thread"},
                               {"friction", "friction.head"},
                               {"utilisation", "utilisation"},
                               {"torque", "torque"},
                               {"preload", "preload"},
                               {"nut_factor", "nut_factor"}});
                    const auto& cells = sweep->table.rows[row++];
                    CHECK(cells[column(*sweep, "friction")].text == mu); // 0.20 stays 0.20
                    CHECK(cells[column(*sweep, "property_class")].text == property_class);
                    CHECK(cells[column(*sweep, "torque_also")].text == figure(single, "torque").also);
                }
            }
        }
    }
    CHECK(sweep->table.rows.back()[0].text == "M10×1.25");
    CHECK(sweep->varied.size() == 4);
}

TEST_CASE("derive: each row is the single answer, by nut factor, condition, preload and torque") {
    const Keys keys{{"torque", "torque"}, {"preload", "preload"}, {"utilisation", "utilisation"}, {"nut_factor", "nut_factor"}};
    struct Case {
        const char* name;
        std::string DeriveRequest::*place;
        const char* many;
        Texts single;
    };
    for (const Case& one : {Case{"K", &DeriveRequest::nut_factor, "0.12..0.20:0.04", {"0.12", "0.16", "0.20"}},
                            Case{"condition", &DeriveRequest::condition, "lubricated, dry steel", {"lubricated", "dry steel"}},
                            Case{"share", &DeriveRequest::preload, "60..90:15%", {"60%", "75%", "90%"}},
                            Case{"force", &DeriveRequest::preload, "10..14:2kN", {"10 kN", "12 kN", "14 kN"}},
                            Case{"torque", &DeriveRequest::torque, "10..14:2lbf·ft", {"10 lbf·ft", "12 lbf·ft", "14 lbf·ft"}}}) {
        INFO(one.name);
        const auto sweep =
            answer::derive_sweep(curated(), derive_of("M8", "8.8", [&](DeriveRequest& r) { r.*one.place = one.many; }));
        REQUIRE(sweep);
        REQUIRE(sweep->table.rows.size() == one.single.size());
        for (std::size_t i = 0; i < one.single.size(); ++i) {
            const auto request = derive_of("M8", "8.8", [&](DeriveRequest& r) { r.*one.place = one.single[i]; });
            check_row(*sweep, i, answer::derive(curated(), request), keys);
        }
        CHECK(sweep->varied.size() == 1);
        CHECK_FALSE(sweep->table.columns[sweep->varied.front()].hidden);
        CHECK(sweep->table.columns[column(*sweep, "thread")].hidden); // the title tells it
        CHECK(sweep->table.title.find("M8, class 8.8") != std::string::npos);
        CHECK(sweep->table.title.find("derived, no maker's figure") != std::string::npos);
    }
}

TEST_CASE("scatter and strip: each row is the single answer") {
    ScatterRequest scatter;
    scatter.thread = "M10,M12";
    scatter.property_class = "8.8";
    scatter.torque = "30..40:10N·m";
    scatter.friction = "0.10..0.16";
    scatter.tool = "2..4:2%";
    scatter.needed = "15 kN";
    scatter.draws = "1000";
    const auto spread = answer::scatter_sweep(curated(), scatter);
    REQUIRE(spread);
    REQUIRE(spread->table.rows.size() == 8);
    std::size_t row = 0;
    for (const char* thread : {"M10", "M12"}) {
        for (const char* tool : {"2%", "4%"}) {
            for (const char* torque : {"30 N·m", "40 N·m"}) {
                ScatterRequest one = scatter;
                one.thread = thread;
                one.tool = tool;
                one.torque = torque;
                check_row(*spread, row++, answer::scatter(curated(), one),
                          {{"torque", "torque"},
                           {"tool", "tool"},
                           {"least", "preload.least"},
                           {"most", "preload.most"},
                           {"tightening_factor", "tightening_factor"},
                           {"p5", "percentiles.p5"},
                           {"p95", "percentiles.p95"},
                           {"chance_over_proof", "chance_over_proof"},
                           {"chance_under_needed", "chance_under_needed"}});
            }
        }
    }
    StripRequest strip;
    strip.thread = "M10";
    strip.property_class = "8.8";
    strip.housing = "46000,EN-GJL-250";
    strip.engagement = "8..16mm:4mm";
    strip.friction = "0.08..0.12:0.04";
    const auto stripped = answer::strip_sweep(curated(), strip);
    REQUIRE(stripped);
    REQUIRE(stripped->table.rows.size() == 12);
    row = 0;
    std::size_t without_torque = 0;
    for (const char* housing : {"46000", "EN-GJL-250"}) {
        for (const char* engagement : {"8 mm", "12 mm", "16 mm"}) {
            for (const char* mu : {"0.08", "0.12"}) {
                StripRequest one = strip;
                one.housing = housing;
                one.engagement = engagement;
                one.friction = mu;
                const Document single = answer::strip(curated(), one);
                check_row(*stripped, row, single,
                          {{"engagement", "engagement"},
                           {"friction", "friction.thread"},
                           {"strip_load", "strip_load"},
                           {"strip_torque", "strip_torque"},
                           {"needed_engagement", "needed_engagement"}});
                const auto& cells = stripped->table.rows[row++];
                CHECK(cells[column(*stripped, "housing")].text == housing);
                CHECK(cells[column(*stripped, "critical_member")].text == item(single, "critical_member")->text);
                without_torque += cells[column(*stripped, "strip_torque")].number ? 0U : 1U;
            }
        }
    }
    CHECK(without_torque > 0);
    CHECK(without_torque < 12);
}

TEST_CASE("a single answer is no table") {
    CHECK_FALSE(answer::derive_sweep(curated(), derive_of("M18x1,5", "8.8", [](DeriveRequest& r) {
                                         r.friction.coefficients = "0.12,0.14"; // thread and head apart
                                     })));
    CHECK_FALSE(answer::derive_sweep(curated(), derive_of("M10", "8.8", [](DeriveRequest& r) { r.nut_factor = "0,2"; })));
    ScatterRequest scatter;
    scatter.thread = "M10";
    scatter.property_class = "8.8";
    scatter.torque = "40 N·m";
    scatter.friction = "0.10..0.16";
    CHECK_FALSE(answer::scatter_sweep(curated(), scatter)); // a band
    scatter.friction = "0.10..0.16:0.02";
    CHECK(
        refusal(ErrorKind::usage, [&] { return answer::scatter_sweep(curated(), scatter); })
            .starts_with(
                "'0.10..0.16:0.02' has a step; --friction of scatter is the band that the friction lies in, like '0.10..0.16'"));
    StripRequest strip;
    strip.thread = "M10";
    strip.property_class = "8.8";
    strip.housing = "46000";
    strip.engagement = "12mm";
    CHECK_FALSE(answer::strip_sweep(curated(), strip));
}

TEST_CASE("what is left out is told once with its reason, and thrown where nothing is left") {
    const auto mixed = answer::derive_sweep(
        curated(), derive_of("M8,M42,M13,M10", "8.8", [](DeriveRequest& r) { r.nut_factor = "0.4..0.6:0.1"; }));
    REQUIRE(mixed);
    CHECK(mixed->table.rows.size() == 4); // M8 and M10 at 0.4 and 0.5
    const std::string notes = all_of(mixed->table.notes);
    CHECK(notes.find("Left out: class 8.8 is not made in M42: ISO 898-1:2013 gives it for M1.6 to M39 (3 combinations).\n") !=
          std::string::npos);
    CHECK(notes.find("Left out: a nut factor of 0.6 lies outside 0.05 to 0.50 (2 combinations).\n") != std::string::npos);
    CHECK(notes.find("M13") != std::string::npos);
    CHECK(mixed->left_out.size() == 3);
    // more reasons than are worth reading
    const auto many =
        answer::derive_sweep(curated(), derive_of("M8", "8.8", [](DeriveRequest& r) { r.torque = "10..200:5N·m"; }));
    REQUIRE(many);
    CHECK(many->left_out.size() == 9);
    CHECK(many->left_out.back() ==
          fmt::format("Left out: {} more combinations, for reasons of the same kind; asked for alone, each "
                      "tells its own.",
                      39 - many->table.rows.size() - 8));
    CHECK(refusal(ErrorKind::out_of_validity, [] {
              return answer::derive_sweep(curated(), derive_of("M42,M45", "8.8", [](DeriveRequest&) {}));
          }) == "class 8.8 is not made in M42: ISO 898-1:2013 gives it for M1.6 to M39");
    // what is not understood is told at once
    CHECK(refusal(ErrorKind::usage, [] {
              return answer::derive_sweep(curated(), derive_of("M8,M10", "8.8", [](DeriveRequest& r) { r.preload = "75"; }));
          }).find("has no unit") != std::string::npos);
    CHECK(refusal(ErrorKind::usage, [] {
              return answer::derive_sweep(
                  curated(), derive_of("M8,M10", "8.8", [](DeriveRequest& r) { r.friction.coefficients = "0.1..0.2:0.0001"; }));
          }) == "the ranges and lists make more than 2000 combinations; take greater steps or shorter lists");
}

TEST_CASE("cautions: each once, and rows that have one of their own are marked") {
    const auto sweep =
        answer::derive_sweep(curated(), derive_of("M8,M10", "8.8", [](DeriveRequest& r) { r.preload = "30..90:60%"; }));
    REQUIRE(sweep);
    Texts codes;
    for (const Caution& caution : sweep->table.cautions) {
        codes.push_back(caution.code);
    }
    CHECK(codes == Texts{"generic", "friction", "maker-first", "over-proof"});
    CHECK(
        sweep->table.cautions.back().text.starts_with("In each row marked 'over-proof', with its own figures, like the first: "));
    for (std::size_t r = 0; r < 4; ++r) {
        CHECK(sweep->table.rows[r][column(*sweep, "cautions")].text == (r % 2 == 1 ? "over-proof" : ""));
    }
    // where every row has it, none is marked
    const auto all = answer::derive_sweep(curated(), derive_of("M8,M10", "8.8", [](DeriveRequest& r) { r.preload = "90%"; }));
    REQUIRE(all);
    CHECK(all->table.cautions.front().code == "over-proof");
    CHECK(all->table.cautions.front().text.starts_with("In every row, with its own figures, like the first: "));
    CHECK(all->table.rows.front()[column(*all, "cautions")].text.empty());
    // one text for all that are marked
    const auto surface = answer::derive_sweep(curated(), derive_of("M10", "8.8,12.9", [](DeriveRequest& r) {
                                                  r.friction.coefficients = "0.12";
                                                  r.friction.utilisation = "20..90:70%";
                                                  r.friction.under = "cast aluminium";
                                              }));
    REQUIRE(surface);
    CHECK(
        surface->table.cautions.back().text.starts_with("In each row marked 'over-pressure': The surface under the head yields"));
}

TEST_CASE("wall chart: a matrix of two inputs, rows of more or fewer") {
    const auto two = answer::derive_sweep(curated(), derive_of("M8,M10,M42", "8.8", [](DeriveRequest& r) {
                                              r.nut_factor = "0.15..0.20:0.05";
                                              r.preload = "60%";
                                          }));
    REQUIRE(two);
    const answer::Pages matrix = answer::wall_chart(*two, "2026-11-25");
    CHECK(matrix.wall);
    CHECK(matrix.title == "Generic tightening");
    CHECK(matrix.date == "2026-11-25");
    CHECK(block_text(matrix, BlockKind::title) == "Generic tightening\n");
    CHECK(block_text(matrix, BlockKind::text) == "Derived, generic, no maker's figure. For class 8.8, 60% of the proof load.\n");
    const answer::PageBlock& table = table_of(matrix);
    REQUIRE(table.columns.size() == 3);
    CHECK(table.columns[0].title == "thread");
    CHECK(table.columns[1].title == "K 0.15");
    CHECK(table.columns[2].title == "K 0.20");
    CHECK(table.columns[2].number);
    REQUIRE(table.rows.size() == 2);
    const auto single = answer::derive(curated(), derive_of("M10", "8.8", [](DeriveRequest& r) {
                                           r.nut_factor = "0.20";
                                           r.preload = "60%";
                                       }));
    CHECK(table.rows[1] ==
          Texts{"M10", two->table.rows[2][column(*two, "torque")].text + "\n" + two->table.rows[2][column(*two, "preload")].text,
                figure(single, "torque").print + "\n" + figure(single, "preload").print});
    CHECK(block_text(matrix, BlockKind::small).find("In each field: torque, and under it preload.\nLeft out: class 8.8") !=
          std::string::npos);
    CHECK(block_text(matrix, BlockKind::caution).find("It is no maker's figure") != std::string::npos);

    // a field that was left out, one that is marked, and the way round where the torque is given
    const auto given =
        answer::derive_sweep(curated(), derive_of("M8,M10", "8.8", [](DeriveRequest& r) { r.torque = "20..60:20N·m"; }));
    REQUIRE(given);
    const answer::Pages back = answer::wall_chart(*given, "2026-11-25");
    REQUIRE(table_of(back).rows.size() == 2);
    CHECK(table_of(back).rows[0] == Texts{"M8", "12500 N\n59.0 %", "–", "–"});
    CHECK(table_of(back).rows[1] == Texts{"M10", "10000 N\n29.7 %", "20000 N\n59.3 %", "30000 N !\n89.0 %"});
    CHECK(block_text(back, BlockKind::small)
              .find("In each field: preload, and under it the share of the screw that is used. A ! behind it: see the caution "
                    "for marked fields.") != std::string::npos);

    const auto one = answer::derive_sweep(curated(), derive_of("M8,M10", "8.8", [](DeriveRequest& r) { r.nut_factor = "0.2"; }));
    REQUIRE(one);
    const answer::Pages rows = answer::wall_chart(*one, "2026-11-25");
    REQUIRE(table_of(rows).columns.size() == 4); // hidden and empty columns are left out
    CHECK(table_of(rows).columns[1].title == "torque");
    CHECK(table_of(rows).rows[1] == Texts{"M10", "50.6 N·m", "37.3 lbf·ft", "25300 N"});
}
