// One lambda an alternative for std::visit; a missing one does not compile.
#pragma once

namespace measure {

template <class... F>
struct overloaded : F... {
    using F::operator()...;
};
template <class... F>
overloaded(F...) -> overloaded<F...>;  // Clang 14 needs the guide

}  // namespace measure
