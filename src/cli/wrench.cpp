// SPDX-License-Identifier: MIT
// clampbook wrench: what to set a torque wrench to, whether it may, and how far off that is.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

struct WrenchOptions {
    std::vector<std::string> words;
    answer::WrenchRequest request;
};

} // namespace

Action setup_wrench(CLI::App& app, Context& context) {
    auto options = std::make_shared<WrenchOptions>();
    answer::WrenchRequest& r = options->request;
    app.add_option("torque", options->words, "wanted at the fastener: 32 N·m")->type_name("")->required();
    add_text(app, "--adapter", r.adapter, "LENGTH", "Adapter", "from the drive to the fastener: 50 mm");
    add_text(app, "--length", r.length, "LENGTH", "Adapter", "of the wrench, from the middle of the grip to the drive: 300 mm");
    add_text(app, "--turned", r.turned, "ANGLE", "Adapter",
             "away from the wrench's axis: 0° in line, 90° across, 180° pointing back (0°)");
    add_text(app, "--unit", r.unit, "UNIT", "Tool", "of the tool's scale (the torque's own)");
    add_text(app, "--scale", r.scale, "STEP", "Tool", "step of the tool's scale: 0.5, 1 lbf·ft");
    add_text(app, "--maximum", r.maximum, "TORQUE", "Tool", "largest torque of the tool: 200 N·m");
    add_text(app, "--tool", r.tool, "TYPE", "Tool", "type and class by ISO 6789: II A ('clampbook list tools')");
    add_json(app, context);
    add_reference(app, context);
    return [options, &context] {
        const reference::Reference reference = context.reference();
        options->request.torque = join(options->words, " ");
        show(context, answer::wrench(reference, options->request));
        return 0;
    };
}

} // namespace clampbook::cli
