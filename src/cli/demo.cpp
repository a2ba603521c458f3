// SPDX-License-Identifier: MIT
// clampbook demo: an invented municipal winter-service yard to try things on.

#include "clampbook/intake/intake.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {

Action setup_demo(CLI::App& app, Context& context) {
    auto path = std::make_shared<std::string>();
    app.add_option("file", *path, "the new book, a name that does not exist yet")->type_name("FILE")->required();
    add_reference(app, context);
    return [path, &context] {
        intake::write_demo(*path, context.reference());
        context.world.out << "the demo book was written: " << *path
                          << "\nEverything in it is invented: yard, machines, documents, people and figures.\n"
                             "try: clampbook find --book "
                          << *path << " drain plug front axle\n";
        return 0;
    };
}

} // namespace clampbook::cli
