// SPDX-License-Identifier: MIT
// Nothing but a place where the test library's header is compiled for all tests: tests/CMakeLists.txt.
