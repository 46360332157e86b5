// Lettering for tests without a window: the widths of B612 as its file states them (Debian fonts-b612), read by stb_truetype.
#pragma once

#include "picture/lettering.hpp"
#include "screen/typography.hpp"

#include <string>

namespace support {

/// Measures in the sizes of a typography.
picture::Lettering lettering(const screen::Typography& type);

}  // namespace support
