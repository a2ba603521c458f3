// SPDX-License-Identifier: MIT
#include "clampbook/base/error.hpp"

namespace clampbook {

int Error::exit_code() const noexcept {
    switch (kind_) {
    case ErrorKind::internal:
        return 1;
    case ErrorKind::usage:
        return 2;
    case ErrorKind::not_found:
        return 3;
    case ErrorKind::invalid_data:
        return 4;
    case ErrorKind::out_of_validity:
        return 5;
    case ErrorKind::conflict:
        return 6;
    case ErrorKind::interrupted:
        return 130;
    }
    return 1;
}

} // namespace clampbook
