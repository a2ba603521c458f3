// SPDX-License-Identifier: MIT
#include "clampbook/engine/require.hpp"

namespace clampbook::engine {

void refuse_not_positive(const char* what) { throw error(ErrorKind::out_of_validity, "{} must be more than zero", what); }

} // namespace clampbook::engine
