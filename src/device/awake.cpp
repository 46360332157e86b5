#include "device/awake.hpp"

#include "device/x11_peek.hpp"

#include <utility>

namespace device {

void Awake::keep(bool awake) {
    if (std::exchange(kept_, awake) != awake && x11::here()) x11::keep_awake(awake);
}

}  // namespace device
