// SPDX-License-Identifier: MIT
// clampbook joint: the joints of an assembly, with thread, class, ring and housing in the words of the standards.

#include "clampbook/answer/find.hpp"
#include "clampbook/answer/records.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/intake/intake.hpp"
#include "clampbook/present/present.hpp"
#include "clampbook/units/reading.hpp"
#include "command.hpp"
#include "table.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

struct JointOptions {
    std::string machine;
    std::string assembly;
    std::vector<std::string> name;
    std::string role = "other";
    std::string engagement;
    Joint joint;
};

int add(const JointOptions& options, Context& context) {
    const book::Stamp stamp = context.stamp();
    book::Book book = context.book(book::Access::write);
    const Machine machine = answer::machine_named(book, options.machine);
    const Assembly assembly = answer::assembly_named(book, machine, options.assembly);
    Joint joint = options.joint;
    joint.assembly = assembly.id;
    joint.name = join(options.name, " ");
    joint.role = read_role(options.role);
    if (!options.engagement.empty()) {
        joint.engagement_mm = read_quantity(options.engagement, Dimension::length).canonical();
    }
    joint = intake::in_standard_words(context.reference(), joint);
    const RecordId id = book.add_joint(joint, stamp);
    context.world.out << "joint #" << id << " is in the book: " << machine.title() << ", " << assembly.name << ", " << joint.name
                      << (joint.thread.empty() ? "" : ", " + thread_for_print(joint.thread))
                      << (joint.safety_critical ? ", safety-critical" : "") << "\n";
    return 0;
}

} // namespace

Action setup_joint(CLI::App& app, Context& context) {
    app.require_subcommand(1);
    auto options = std::make_shared<JointOptions>();
    Joint& joint = options->joint;
    CLI::App* add_app = app.add_subcommand("add", "put a joint on record");
    add_app->add_option("name", options->name, "its name, like: drain plug")->type_name("")->required();
    add_app->add_option("--machine", options->machine, "its machine: model, model and variant, code, or #number")
        ->type_name("NAME")
        ->required()
        ->group("Where");
    add_app->add_option("--assembly", options->assembly, "its assembly")->type_name("NAME")->required()->group("Where");
    add_app
        ->add_option("--role", options->role,
                     "drain fill level vent cover pump filter sensor flange bearing wheel brake steering mount other")
        ->type_name("ROLE")
        ->capture_default_str()
        ->group("What");
    add_app->add_option("--count", joint.count, "how many screws")
        ->type_name("N")
        ->capture_default_str()
        ->check(CLI::Range(1, 999))
        ->group("What");
    add_app->add_option("--thread", joint.thread, "M18x1.5, 3/8-16 UNC, G1/2, ...")->type_name("THREAD")->group("What");
    add_app->add_option("--class", joint.property_class, "property class of the screw, or class of the nut")
        ->type_name("CLASS")
        ->group("What");
    add_app->add_option("--form", joint.form, "hexagon, socket or flange; for plugs 'clampbook list plug-forms'")
        ->type_name("FORM")
        ->group("What");
    add_app->add_option("--ring", joint.ring, "aluminium, copper, steel, bonded, o-ring, none; with a size: copper 18x24")
        ->type_name("RING")
        ->group("What");
    add_app->add_option("--housing", joint.housing, "material of the tapped part: EN AC-46000, cast aluminium, steel")
        ->type_name("MATERIAL")
        ->group("What");
    add_app->add_option("--engagement", options->engagement, "length of thread engaged: 14 mm")
        ->type_name("LENGTH")
        ->group("What");
    add_app
        ->add_flag("--safety-critical", joint.safety_critical, "brakes, steering, wheels, restraints, lifting, pressure vessels")
        ->group("What");
    add_app->add_option("--note", joint.note, "a remark that find shows")->type_name("TEXT")->group("What");
    add_book(*add_app, context);
    add_person(*add_app, context);
    add_reference(*add_app, context);
    CLI::App* list_app = app.add_subcommand("list", "the joints of the book or of a machine");
    list_app->add_option("--machine", options->machine, "of this machine alone")->type_name("NAME")->group("What");
    add_book(*list_app, context);
    add_json(*list_app, context);
    add_csv(*list_app, context);
    CLI::App* show_app = app.add_subcommand("show", "a joint with all its values");
    show_app->add_option("joint", options->name, "its number, or words that fit it alone")->type_name("")->required();
    add_book(*show_app, context);
    add_json(*show_app, context);
    add_reference(*show_app, context);
    return [=, &context] {
        if (add_app->parsed()) {
            return add(*options, context);
        }
        const book::Book book = context.book(book::Access::read);
        if (list_app->parsed()) {
            return write_table(answer::joints(book, options->machine.empty()
                                                        ? std::nullopt
                                                        : std::optional{answer::machine_named(book, options->machine)}),
                               context);
        }
        const reference::Reference reference = context.reference();
        const answer::FoundJoint found =
            answer::joint(book, reference, answer::joint_named(book, reference, join(options->name, " ")).joint.id);
        context.world.out << (context.json ? present::json(found, "joint") : present::text(found));
        return 0;
    };
}

} // namespace clampbook::cli
