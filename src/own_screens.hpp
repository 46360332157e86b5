// The screens of this station that were measured against a bank card: which file keeps them, and what it says of a screen. A file
// that cannot be read is told on standard error and passed over: the program starts all the same.
#pragma once

#include "device/screens.hpp"
#include "intake/screens.hpp"
#include "stock.hpp"

namespace graftside {

/// `--screens`, else screens.toml in the configuration folder.
std::string screens_path(const Options& options);
intake::ScreenId id_of(const device::Screen& screen);
/// The size that was measured of it; none: it was not.
std::optional<device::GlassSize> measured_size(const std::string& path, const device::Screen& screen);
/// Keeps it beside the others; what went wrong, if it could not be.
std::optional<std::string> keep_size(const std::string& path, const device::Screen& screen, const device::GlassSize& size);

}  // namespace graftside
