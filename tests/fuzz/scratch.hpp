// SPDX-License-Identifier: MIT
#pragma once

// Books for the targets that need some, in a folder that goes away with the process: in memory where the machine has /dev/shm, so
// that nothing waits for a disk.

#include "clampbook/book/book.hpp"
#include "clampbook/reference/reference.hpp"

#include <string>

namespace fuzz {

inline const clampbook::book::Stamp k_stamp{"Ann", "2026-11-25T10:15:00Z"};

[[nodiscard]] const clampbook::reference::Reference& curated();

/// A path in the folder.
[[nodiscard]] std::string scratch(const std::string& name);

/// The bytes of a small book with four joints, and values that were checked, superseded and withdrawn.
[[nodiscard]] const std::string& small_book();

void write_bytes(const std::string& path, std::string_view bytes);
[[nodiscard]] std::string bytes_of(const std::string& path);

} // namespace fuzz
