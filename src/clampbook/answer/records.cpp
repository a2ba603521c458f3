// SPDX-License-Identifier: MIT
#include "clampbook/answer/records.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <algorithm>
#include <iterator>

namespace clampbook::answer {
namespace {

TableCell cell(std::string text) { return {std::move(text), {}}; }
TableCell count_cell(std::size_t n) { return {std::to_string(n), static_cast<double>(n)}; }
TableCell id_cell(RecordId id) { return {std::to_string(id), static_cast<double>(id)}; }

std::string title_of(std::string key) {
    std::ranges::replace(key, '_', ' ');
    return key;
}

std::string values_as_written(const book::Book& book, RecordId joint) {
    std::vector<std::string> texts;
    for (const Value& value : book.values(joint)) {
        if (value.standing == Standing::current) {
            texts.push_back(value.tightening.as_written + " (" + std::string{label_name(value.label)} +
                            (value.is_checked() ? ", checked)" : ", unchecked)"));
        }
    }
    return join(texts, "; ");
}

// "32 N·m; label maker; page 4-12": the text of a value and a name stand for themselves; numbers of records, and who told it and when,
// which have a column, are left out.
std::string told(const book::Event& event) {
    std::vector<std::string> parts;
    for (const auto& [name, text] : event.facts) {
        const bool said_beside = (name.ends_with("_by") && text == event.person) ||
                                 (name.ends_with("_on") && text == event.at.substr(0, 10)) || text == event.at;
        if (name == "assembly" || said_beside) {
            continue;
        }
        const bool itself = name == "as_written" || name == "name";
        parts.push_back(itself ? text : title_of(name) + " " + text);
    }
    return join(parts, "; ");
}

void add_joint_rows(TableAnswer& table, const book::Book& book, const std::vector<book::Place>& places) {
    for (const book::Place& place : places) {
        const Joint& j = place.joint;
        table.rows.push_back({id_cell(j.id),
                              cell(place.machine.title()),
                              cell(place.assembly.name),
                              cell(j.name),
                              cell(std::string{role_name(j.role)}),
                              {std::to_string(j.count), static_cast<double>(j.count)},
                              cell(thread_for_print(j.thread)),
                              cell(j.property_class),
                              cell(j.safety_critical ? "yes" : "no"),
                              cell(values_as_written(book, j.id))});
    }
}

std::vector<TableColumn> joint_columns() {
    return {{"id", "#", "", true},
            {"machine", "machine", "", false},
            {"assembly", "assembly", "", false},
            {"joint", "joint", "", false},
            {"role", "role", "", false},
            {"count", "count", "", true},
            {"thread", "thread", "", false},
            {"property_class", "class", "", false},
            {"safety_critical", "safety-critical", "", false},
            {"values", "current values", "", false}};
}

std::vector<book::Place> places_of(const book::Book& book, const std::optional<Machine>& machine) {
    std::vector<book::Place> places = book.places();
    if (machine) {
        std::erase_if(places, [&](const book::Place& place) { return place.machine.id != machine->id; });
    }
    return places;
}

} // namespace

TableAnswer list_topics(const reference::Reference& reference) {
    TableAnswer table{"list",   "Curated tables; 'clampbook list NAME' shows one",
                      "tables", {{"name", "name", "", false}, {"title", "what", "", false}, {"rows", "rows", "", true}},
                      {},       {}};
    for (const reference::Topic& topic : reference.topics()) {
        table.rows.push_back({cell(topic.name), cell(topic.title), count_cell(topic.rows)});
    }
    table.notes.push_back("dataset " + reference.metadata("dataset.version") + " of " + reference.metadata("dataset.date") +
                          ", content " + reference.metadata("content.sha256").substr(0, 12));
    return table;
}

TableAnswer list_table(const reference::Reference& reference, std::string_view topic) {
    reference::Table source = reference.table(topic);
    TableAnswer table{"list", source.title, "rows", {}, {}, {}};
    table.quantities = true;
    for (const reference::TableColumn& column : source.columns) {
        const bool is_note = column.key == "note"; // too long for the eye
        table.columns.push_back({column.key, title_of(column.key), column.unit, column.is_quantity, is_note});
    }
    for (auto& row : source.rows) {
        std::vector<TableCell> cells;
        for (reference::TableCell& c : row) {
            cells.push_back({std::move(c.text), c.value});
        }
        table.rows.push_back(std::move(cells));
    }
    table.notes.push_back(fmt::format("{} rows; 'clampbook list sources' tells what each source is", table.rows.size()));
    return table;
}

Document book_info(const book::Book& book) {
    const book::Info info = book.info();
    Document document;
    document.schema = "book-info";
    document.heading = "Book " + info.path;
    document.section({});
    const auto number = [&](const char* key, const char* title, std::size_t n) { document.add(key, title, count_figure(n)); };
    document.add("path", "file", info.path);
    document.add("created_on", "made on", info.created_on);
    number("layout", "layout", static_cast<std::size_t>(info.layout));
    number("machines", "machines", info.machines);
    number("assemblies", "assemblies", info.assemblies);
    number("joints", "joints", info.joints);
    number("joints_without_value", "joints without a current value", info.joints_without_value);
    number("values", "values", info.values);
    number("checked_values", "of them checked", info.checked_values);
    number("sources", "sources", info.sources);
    number("people", "people", info.people);
    number("events", "events", info.events);
    document.add("last_event_at", "last event", info.last_event_at);
    document.add("head", "hash of the last event", info.head);
    if (const auto copy = book.publication()) {
        document.section("Published copy");
        document.add("published.at", "published", copy->at);
        document.add("published.by", "by", copy->by);
        document.add("published.from", "from the book", copy->from);
        number("published.revision", "revision", static_cast<std::size_t>(copy->revision));
        document.add("published.digest", "digest", copy->digest);
        const auto fault = book.publication_fault();
        document.add("published.whole", "is what was published", fault ? "no" : "yes");
        if (fault) {
            document.notes.push_back(*fault);
        }
    }
    return document;
}

TableAnswer sources(const book::Book& book) {
    TableAnswer table{"source-list",
                      "Sources of the book",
                      "sources",
                      {{"id", "#", "", true},
                       {"kind", "kind", "", false},
                       {"title", "title", "", false},
                       {"number", "number", "", false},
                       {"edition", "edition", "", false},
                       {"date", "date", "", false},
                       {"kept", "kept", "", false}},
                      {},
                      {}};
    for (const Source& s : book.sources()) {
        table.rows.push_back(
            {id_cell(s.id), cell(s.kind), cell(s.title), cell(s.number), cell(s.edition), cell(s.date), cell(s.kept)});
    }
    return table;
}

Document source(const Source& s) {
    Document document;
    document.schema = "source";
    document.heading = "Source " + std::to_string(s.id) + ": " + s.title;
    document.section({});
    document.add("id", "#", count_figure(static_cast<std::uint64_t>(s.id)));
    for (const auto& [key, title, text] : {std::tuple{"kind", "kind", s.kind},
                                           {"title", "title", s.title},
                                           {"number", "number", s.number},
                                           {"edition", "edition", s.edition},
                                           {"date", "date", s.date},
                                           {"kept", "kept", s.kept},
                                           {"note", "note", s.note}}) {
        document.add(key, title, text);
    }
    return document;
}

TableAnswer machines(const book::Book& book) {
    TableAnswer table{"machine-list",
                      "Machines of the book",
                      "machines",
                      {{"id", "#", "", true},
                       {"maker", "maker", "", false},
                       {"model", "model", "", false},
                       {"variant", "variant", "", false},
                       {"years", "years", "", false},
                       {"code", "code", "", false},
                       {"assemblies", "assemblies", "", true},
                       {"note", "note", "", false}},
                      {},
                      {}};
    for (const Machine& m : book.machines()) {
        table.rows.push_back({id_cell(m.id), cell(m.maker), cell(m.model), cell(m.variant), cell(m.years), cell(m.code),
                              count_cell(book.assemblies(m.id).size()), cell(m.note)});
    }
    return table;
}

TableAnswer assemblies(const book::Book& book, const Machine& machine) {
    TableAnswer table{
        "assembly-list",
        "Assemblies of " + machine.title(),
        "assemblies",
        {{"id", "#", "", true}, {"assembly", "assembly", "", false}, {"joints", "joints", "", true}, {"note", "note", "", false}},
        {},
        {}};
    const auto places = places_of(book, machine);
    for (const Assembly& a : book.assemblies(machine.id)) {
        const auto n = std::ranges::count_if(places, [&](const book::Place& place) { return place.assembly.id == a.id; });
        table.rows.push_back({id_cell(a.id), cell(a.name), count_cell(static_cast<std::size_t>(n)), cell(a.note)});
    }
    return table;
}

TableAnswer machine(const book::Book& book, const Machine& m) {
    TableAnswer table{"machine", m.title() + ", " + m.maker, "joints", joint_columns(), {}, {}};
    add_joint_rows(table, book, places_of(book, m));
    return table;
}

TableAnswer joints(const book::Book& book, const std::optional<Machine>& m) {
    TableAnswer table{"joint-list", m ? "Joints of " + m->title() : "Joints of the book", "joints", joint_columns(), {}, {}};
    add_joint_rows(table, book, places_of(book, m));
    return table;
}

TableAnswer history(const book::Book& book, const book::Place& place) {
    TableAnswer table{
        "history",
        fmt::format("History of #{} {}, {}, {}", place.joint.id, place.machine.title(), place.assembly.name, place.joint.name),
        "events",
        {{"seq", "event", "", true},
         {"at", "when (UTC)", "", false},
         {"person", "who", "", false},
         {"kind", "what", "", false},
         {"value", "value", "", true},
         {"told", "told", "", false},
         {"detail", "", "", false, true}},
        {},
        {}};
    for (const book::Event& e : book.history(place.joint.id)) {
        table.rows.push_back({id_cell(e.seq), cell(e.at), cell(e.person), cell(e.kind),
                              e.value == 0 ? cell("") : id_cell(e.value), cell(told(e)), cell(e.detail)});
    }
    return table;
}

TableAnswer conflicts(const book::Book& book) {
    TableAnswer table{"conflicts",
                      "Joints whose current values disagree",
                      "values",
                      {{"joint", "#", "", true},
                       {"where", "joint", "", false},
                       {"value", "value", "", true},
                       {"as_written", "as written", "", false},
                       {"newton_metres", "N·m", "N·m", true},
                       {"off", "off %", "", true},
                       {"label", "label", "", false},
                       {"check", "check", "", false},
                       {"source", "source", "", false},
                       {"page", "page", "", false}},
                      {},
                      {}};
    for (const book::Place& place : book.places()) {
        std::vector<Value> current = book.values(place.joint.id);
        std::erase_if(current, [](const Value& v) { return v.standing != Standing::current; });
        const bool disagree =
            std::ranges::any_of(current, [&](const Value& v) { return !agree(current.front().tightening, v.tightening); });
        if (!disagree) {
            continue;
        }
        std::optional<double> lowest;
        for (const Value& v : current) {
            if (const auto torque = final_torque(v.tightening)) {
                lowest = std::min(lowest.value_or(*torque), *torque);
            }
        }
        for (const Value& v : current) {
            const auto torque = final_torque(v.tightening);
            const double off = torque ? (*torque / *lowest - 1) * 100 : 0;
            table.rows.push_back(
                {id_cell(place.joint.id), cell(place.machine.title() + ", " + place.assembly.name + ", " + place.joint.name),
                 id_cell(v.id), cell(v.tightening.as_written),
                 torque ? TableCell{print_significant(*torque, 3), *torque} : cell(""),
                 torque ? TableCell{"+" + print_fixed(off, 1), off} : cell(""), cell(std::string{label_name(v.label)}),
                 cell(v.is_checked() ? "checked" : "unchecked"), cell(v.source ? v.source->line() : ""), cell(v.page)});
        }
    }
    if (!table.rows.empty()) {
        table.notes.emplace_back(
            "Settle which one holds: 'clampbook supersede' or 'clampbook withdraw' ends the other, with the reason.");
    }
    return table;
}

std::string published_line(const book::Publication& copy) {
    return fmt::format("a copy of '{}' that {} published at {}, revision {}; digest {}", copy.from, copy.by, copy.at,
                       copy.revision, copy.digest);
}

TableAnswer audit(const book::Book& book) {
    TableAnswer table{"audit", "What was changed behind the program's back", "faults", {{"fault", "fault", "", false}}, {}, {}};
    for (std::string& fault : book.audit()) {
        table.rows.push_back({cell(std::move(fault))});
    }
    const book::Info info = book.info();
    table.notes.push_back(fmt::format("{} {}, {} {}; last hash {}", info.events, info.events == 1 ? "event" : "events",
                                      info.values, info.values == 1 ? "value" : "values", info.head));
    if (const auto copy = book.publication()) {
        table.notes.push_back(published_line(*copy));
    }
    return table;
}

Machine machine_named(const book::Book& book, std::string_view text) {
    const std::string wanted = fold(text);
    std::vector<Machine> found;
    std::vector<std::string> names;
    const std::vector<Machine> machines = book.machines();
    for (const Machine& m : machines) {
        if (wanted == fold(m.model) || wanted == fold(m.title()) || wanted == fold(m.model + " " + m.variant) ||
            wanted == fold(m.maker + " " + m.model) || wanted == fold(m.maker + " " + m.model + " " + m.variant) ||
            (!m.code.empty() && wanted == fold(m.code)) || wanted == "#" + std::to_string(m.id)) {
            found.push_back(m);
        }
        names.push_back(m.model);
        names.push_back(m.title());
    }
    if (found.empty()) { // the number alone, as lists show it, where no machine is called so
        std::ranges::copy_if(machines, std::back_inserter(found),
                             [&](const Machine& m) { return wanted == std::to_string(m.id); });
    }
    if (found.empty()) {
        throw error(ErrorKind::not_found, "no machine '{}' is in the book{}; add it with 'clampbook machine add'", text,
                    did_you_mean(text, names));
    }
    if (found.size() > 1) {
        std::vector<std::string> lines;
        for (const Machine& m : found) {
            lines.push_back("#" + std::to_string(m.id) + " " + m.title() + ", " + m.maker);
        }
        throw error(ErrorKind::conflict, "'{}' fits {} machines; name one as {}", text, found.size(), join(lines, " or "));
    }
    return found.front();
}

Assembly assembly_named(const book::Book& book, const Machine& m, std::string_view text) {
    if (auto found = book.find_assembly(m.id, text)) {
        return *found;
    }
    std::vector<std::string> names;
    for (const Assembly& a : book.assemblies(m.id)) {
        names.push_back(a.name);
    }
    throw error(ErrorKind::not_found, "{} has no assembly '{}'{}; add it with 'clampbook assembly add'", m.title(), text,
                did_you_mean(text, names));
}

} // namespace clampbook::answer
