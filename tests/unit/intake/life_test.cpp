// SPDX-License-Identifier: MIT
// A value's life through the intake: who may check, what a successor keeps, and that a refusal changes nothing. The commands stand in
// tests/cli/life.test, what the audit finds there too.

#include "../../data/support.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/intake/intake.hpp"
#include "curated.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

namespace {

using namespace clampbook;
using unit_tests::curated;
using unit_tests::refusal;

const book::Stamp k_ann{"Ann", "2026-11-25T10:00:00Z"};
const book::Stamp k_bob{"Bob", "2026-11-25T11:00:00Z"};

struct Shop {
    data_tests::TemporaryFolder folder;
    book::Book book = book::Book::create((folder / "book.db").string(), k_ann);
    RecordId value = 0;

    Shop() {
        const RecordId machine = book.add_machine({0, "Maker", "X", "", "", "", ""}, k_ann);
        Joint joint;
        joint.name = "screw";
        joint.thread = "M10";
        joint.property_class = "8.8";
        joint.assembly = book.add_assembly({0, machine, "box", ""}, k_ann);
        intake::Entry entry;
        entry.joint = book.add_joint(joint, k_ann);
        entry.tightening = "46 N·m";
        entry.label = Label::maker;
        Source source{0, "manual", "Manual", "M-1", "", "", "", "", ""};
        source.id = book.add_source(source, k_ann);
        entry.source = source;
        entry.page = "3";
        value = intake::enter(book, curated(), entry, k_ann);
    }
    [[nodiscard]] intake::Successor successor(const std::string& tightening) const {
        intake::Successor s;
        s.entry.tightening = tightening;
        s.reason = "bulletin";
        return s;
    }
};

} // namespace

TEST_CASE("a second person checks, once, and the same figure") {
    Shop shop;
    const auto check = [&](const char* figure, const book::Stamp& stamp) {
        return refusal(ErrorKind::conflict, [&] {
            intake::check(shop.book, shop.value, figure, stamp);
            return 0;
        });
    };
    CHECK(check("46 N·m", {" ann", "2026-11-25T11:00:00Z"}).starts_with("value #1 was entered by Ann"));
    CHECK(check("46 ± 2 N·m", k_bob).starts_with("'46 ± 2 N·m' is not what the book has")); // agrees, and says something else
    CHECK(check("47 N·m", k_bob).starts_with("'47 N·m' is not what the book has"));
    CHECK_FALSE(shop.book.value(shop.value)->is_checked());
    CHECK(check("33.9 lbf·ft", k_bob) == "accepted");
    CHECK(shop.book.value(shop.value)->checked_by == "Bob");
    CHECK(check("46 N·m", {"Cid", "2026-11-25T11:00:00Z"}).starts_with("value #1 was checked by Bob"));
    CHECK(shop.book.audit().empty());
}

TEST_CASE("a successor keeps what isn't said anew, and a refused one leaves the old value alone") {
    Shop shop;
    intake::Successor wrong = shop.successor("460 N·m");
    CHECK(refusal(ErrorKind::conflict, [&] { return intake::supersede(shop.book, curated(), shop.value, wrong, k_bob); }) !=
          "accepted");
    CHECK(shop.book.value(shop.value)->standing == Standing::current);
    CHECK(shop.book.info().values == 1);
    const RecordId next = intake::supersede(shop.book, curated(), shop.value, shop.successor("48 N·m"), k_bob);
    const Value successor = *shop.book.value(next);
    CHECK(successor.label == Label::maker);
    CHECK(successor.source->number == "M-1");
    CHECK(successor.page == "3");
    CHECK(successor.entered_by == "Bob");
    CHECK(successor.standing == Standing::current);
    const Value old = *shop.book.value(shop.value);
    CHECK(old.standing == Standing::superseded);
    CHECK(old.superseded_by == next);
    CHECK(old.end_reason == "bulletin");
    CHECK(refusal(ErrorKind::conflict, [&] {
              intake::check(shop.book, shop.value, "46 N·m", k_bob);
              return 0;
          }).starts_with("value #1 ('46 N·m') is superseded already by #2: bulletin"));
    intake::Successor shop_figure = shop.successor("50 N·m");
    shop_figure.keeps_label = false; // its own label, as typed
    CHECK(shop.book.value(intake::supersede(shop.book, curated(), next, shop_figure, k_bob))->label == Label::shop);
    CHECK(shop.book.audit().empty());
}

TEST_CASE("without a reason nothing ends") {
    Shop shop;
    intake::Successor silent = shop.successor("48 N·m");
    silent.reason = " ";
    CHECK(refusal(ErrorKind::usage, [&] { return intake::supersede(shop.book, curated(), shop.value, silent, k_bob); }) ==
          "a reason is missing; say with --reason why the value no longer holds");
    CHECK(refusal(ErrorKind::usage, [&] {
              intake::withdraw(shop.book, shop.value, "", k_bob);
              return 0;
          }) != "accepted");
    CHECK(shop.book.value(shop.value)->standing == Standing::current);
    intake::withdraw(shop.book, shop.value, " misread ", k_bob);
    CHECK(shop.book.value(shop.value)->standing == Standing::withdrawn);
    CHECK(shop.book.value(shop.value)->end_reason == "misread");
    CHECK(refusal(ErrorKind::not_found, [&] {
              intake::withdraw(shop.book, 99, "x", k_bob);
              return 0;
          }) == "there is no value #99 in the book");
    CHECK_FALSE(shop.book.value(99));
}
