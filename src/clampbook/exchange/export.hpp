// SPDX-License-Identifier: MIT
#pragma once

// A whole book as JSON, `clampbook/export/v1`: sources, machines with their assemblies, and every joint with all its values,
// those that no longer hold among them, each with who entered, checked and ended it. Records name each other by their own
// names, never by a book's numbers, so that a book made from the file gives the same file again, byte for byte. Written and read
// joint by joint: a book of any size passes through.

#include "clampbook/base/error.hpp"
#include "clampbook/model/joint.hpp"

#include <array>
#include <cstddef>
#include <functional>
#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::exchange {

/// The first key of the file, and its lists in their order.
inline constexpr std::string_view k_export_schema = "clampbook/export/v1";
inline constexpr std::array<const char*, 3> k_export_lists{"sources", "machines", "joints"};

/// The parts of the file, in the order in which they must be given: sources, machines, joints.
class ExportWriter {
public:
    explicit ExportWriter(std::ostream& out);
    void source(const Source& source);
    void machine(const MachineRecord& record);
    void joint(const JointRecord& record);
    void finish();

private:
    void open(int list);
    void part(int list, const std::string& json);
    std::ostream& out_;
    int list_ = -1; // the list that is open
    bool first_ = true;
};

/// What becomes of each part as it is read. `where` names file and part, for messages: "book.json: joint 3 (drain plug)".
struct ExportHandlers {
    std::function<void(const Source&, const std::string& where)> source;
    std::function<void(const MachineRecord&, const std::string& where)> machine;
    std::function<void(const JointRecord&, const std::string& where)> joint;
    std::function<void(const Error&)> fault; ///< of one part; reading goes on behind it
};

/// Throws invalid_data with file, line and column where the file is no JSON, and where it is no export of this version. A part
/// with a key that is unknown, missing or of the wrong kind, or with a figure, label or date that does not read, goes to
/// `handlers.fault`.
void read_export(std::istream& in, const std::string& name, const ExportHandlers& handlers);

} // namespace clampbook::exchange
