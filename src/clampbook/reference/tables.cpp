// SPDX-License-Identifier: MIT
// The curated tables as tables, for `list`. What a table's columns are is asked of the database, so that a new column
// shows without a change here.

#include "clampbook/base/text.hpp"
#include "clampbook/reference/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>
#include <array>

namespace clampbook::reference {
namespace {

struct TopicRow {
    const char* name;
    const char* table;
    const char* title;
    const char* order;
};

// In the order in which somebody would look through them.
constexpr std::array k_topics{
    TopicRow{"threads", "thread", "Screw threads",
             "system, major_diameter_mm, coalesce(pitch_mm, 25.4 / threads_per_inch_value) DESC"},
    TopicRow{"tolerances", "thread_tolerance", "Thread tolerances of grade 6", "tolerance, over_mm, pitch_mm"},
    TopicRow{"pipe-tolerances", "pipe_tolerance", "Tolerances of parallel pipe threads", "threads_per_inch_value DESC"},
    TopicRow{"classes", "property_class", "Property classes and grades", "authority, tensile_strength_MPa, code"},
    TopicRow{"loads", "bolt_load", "Proof and minimum tensile loads of screws",
             "authority, stress_area_mm2, thread, proof_load_N"},
    TopicRow{"nuts", "nut_load", "Proof loads of nuts", nullptr},
    TopicRow{"breaking-torques", "breaking_torque", "Minimum breaking torques of screws", nullptr},
    TopicRow{"shear-ratios", "screw_shear", "Shear strength of a screw's thread over its tensile strength", nullptr},
    TopicRow{"plug-forms", "plug_form", "Forms of plugs", nullptr},
    TopicRow{"plugs", "plug", "Plugs by thread", nullptr},
    TopicRow{"ring-materials", "ring_material", "Materials of sealing rings", nullptr},
    TopicRow{"rings", "ring", "Flat sealing rings", nullptr},
    TopicRow{"ring-threads", "ring_thread", "Which flat ring goes with which thread", nullptr},
    TopicRow{"housings", "housing", "Housing materials", nullptr},
    TopicRow{"heads", "head", "Heads, flanges and nuts", nullptr},
    TopicRow{"washers", "washer", "Plain washers", nullptr},
    TopicRow{"holes", "clearance_hole", "Clearance holes", "medium_mm"},
    TopicRow{"friction-classes", "friction_class", "Friction classes", nullptr},
    TopicRow{"nut-factors", "nut_factor", "Nut factors by condition", nullptr},
    TopicRow{"scatter", "tightening_scatter", "Scatter of preload by way of tightening", nullptr},
    TopicRow{"preload-choices", "preload_choice", "Preload where none is prescribed", nullptr},
    TopicRow{"tools", "tool_accuracy", "Accuracy of torque tools", nullptr},
    TopicRow{"port-torques", "port_torque", "Torques of port plugs with O-ring", nullptr},
    TopicRow{"embedding", "embedding", "Embedding of surfaces", nullptr},
    TopicRow{"concepts", "concept", "Trade concepts", nullptr},
    TopicRow{"words", "word", "Trade words in five languages", nullptr},
    TopicRow{"aliases", "alias", "Everyday spellings that are read", nullptr},
    TopicRow{"differences", "known_difference", "Printed figures that are kept although they differ from their rule", nullptr},
    TopicRow{"sources", "source", "Sources of the curated figures", "authority, code"},
};

struct Suffix {
    const char* end;
    const char* unit;
};
constexpr std::array k_suffixes{Suffix{"_mm2", "mm²"}, Suffix{"_mm", "mm"},     Suffix{"_Nm", "N·m"}, Suffix{"_N", "N"},
                                Suffix{"_MPa", "MPa"}, Suffix{"_per_K", "1/K"}, Suffix{"_value", ""}};

const TopicRow& topic_named(std::string_view typed) {
    std::vector<std::string> names;
    for (const TopicRow& topic : k_topics) {
        if (fold(typed) == topic.name || fold(typed) == topic.table) {
            return topic;
        }
        names.emplace_back(topic.name);
    }
    throw error(ErrorKind::not_found, "'{}' is no table{}; the tables are {}", typed, did_you_mean(typed, names),
                join(names, ", "));
}

// For a column X_print, the name of the column with the number, and its unit.
std::optional<std::pair<std::string, std::string>> number_column(const std::string& print, const std::vector<std::string>& all) {
    const std::string stem = print.substr(0, print.size() - std::string_view{"_print"}.size());
    for (const Suffix& suffix : k_suffixes) {
        if (std::ranges::find(all, stem + suffix.end) != all.end()) {
            return std::pair{stem + suffix.end, std::string{suffix.unit}};
        }
    }
    return std::nullopt;
}

} // namespace

std::vector<Topic> Reference::topics() const {
    return guarded(impl_->name, [&] {
        std::vector<Topic> out;
        for (const TopicRow& topic : k_topics) {
            const int rows = impl_->db->execAndGet(std::string{"SELECT count(*) FROM "} + topic.table).getInt();
            out.push_back({topic.name, topic.title, static_cast<std::size_t>(rows)});
        }
        return out;
    });
}

Table Reference::table(std::string_view typed) const {
    const TopicRow& topic = topic_named(typed);
    return guarded(impl_->name, [&] {
        Table table{topic.name, topic.title, {}, {}};
        std::vector<std::string> all;
        Query info{impl_->statements, std::string{"PRAGMA table_info("} + topic.table + ")"};
        while (info.executeStep()) {
            all.push_back(info.getColumn(1).getString());
        }
        std::string select;
        for (const std::string& name : all) {
            if (name.ends_with("_print")) {
                const auto number = number_column(name, all);
                if (!number) {
                    throw error(ErrorKind::internal, "{}: column {} has no number beside it", topic.table, name);
                }
                table.columns.push_back({name.substr(0, name.size() - 6), number->second, true});
                select += (select.empty() ? "" : ", ") + name + ", " + number->first;
            } else if (std::ranges::none_of(k_suffixes, [&](const Suffix& s) {
                           return name.ends_with(s.end) &&
                                  std::ranges::find(all, name.substr(0, name.size() - std::string_view{s.end}.size()) +
                                                             "_print") != all.end();
                       })) {
                table.columns.push_back({name, "", false});
                select += (select.empty() ? "" : ", ") + name;
            }
        }
        Query query{impl_->statements, "SELECT " + select + " FROM " + topic.table +
                                           (topic.order == nullptr ? "" : std::string{" ORDER BY "} + topic.order)};
        while (query.executeStep()) {
            std::vector<TableCell> row;
            int at = 0;
            for (const TableColumn& column : table.columns) {
                TableCell cell{text_at(query, at), {}};
                ++at;
                if (column.is_quantity) {
                    cell.value = number_at(query, at);
                    ++at;
                }
                row.push_back(std::move(cell));
            }
            table.rows.push_back(std::move(row));
        }
        return table;
    });
}

} // namespace clampbook::reference
