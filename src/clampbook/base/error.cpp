// SPDX-License-Identifier: MIT
#include "clampbook/base/error.hpp"

#include "clampbook/base/text.hpp"

namespace clampbook {

Error::Error(ErrorKind kind, const std::string& message) : std::runtime_error(printable(message)), kind_(kind) {}

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
