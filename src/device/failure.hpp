// What the machine could not do, as one value with one clear message. Handled once, by the caller.
#pragma once

#include "measure/result.hpp"

#include <string>

namespace device {

struct Failure {
    enum class What { NoDisplay, NoOpenGl, NoSound, NoFont, NoFile, CannotRead, CannotWrite, TooLarge };
    What what{};
    std::string detail{};  // the path, or what the system said
    bool operator==(const Failure&) const = default;
};

template <class T>
using Result = measure::Result<T, Failure>;

/// One sentence for people.
std::string text(const Failure& failure);

}  // namespace device
