// SPDX-License-Identifier: MIT
// The body of the formatting library, compiled here once. Its shared form would be one more file to load at every start,
// and its header-only form is compiled again in each of our files, which made up more than half of a build.

#include <fmt/format-inl.h>

FMT_BEGIN_NAMESPACE
namespace detail {

// The header promises these two to be found elsewhere.
template FMT_API auto thousands_sep_impl<char>(locale_ref loc) -> thousands_sep_result<char>;
template FMT_API auto decimal_point_impl<char>(locale_ref loc) -> char;

} // namespace detail
FMT_END_NAMESPACE
