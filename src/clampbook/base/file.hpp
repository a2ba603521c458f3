// SPDX-License-Identifier: MIT
#pragma once

// Files that are written whole: a reader meets the old one or the new one, never half of one.

#include <string>

namespace clampbook {

/// Writes `content` beside its place and then puts it there, in place of a file that is there; a link is followed. What is no
/// ordinary file (a device, a pipe) is written to as it is. Throws internal with what the disk says; nothing is left behind then.
void write_whole_file(const std::string& path, const std::string& content);

/// Puts a file that was written beside its place there, in place of a file that is there. What it holds is on the disk before
/// its name is, and both are when this returns. Throws internal with what the disk says; the draft is removed then.
void put_in_place(const std::string& draft, const std::string& place);

} // namespace clampbook
