#include "own_screens.hpp"

#include "device/environment.hpp"
#include "device/files.hpp"

#include <spdlog/spdlog.h>

#include <algorithm>

namespace graftside {
namespace {

intake::MeasuredScreens measured(const std::string& path) {
    if (path.empty() || !device::exists(path)) return {};
    const auto text = device::read_file(path);
    if (!text) {
        spdlog::warn("the measured screens are passed over: {}", device::text(text.error()));
        return {};
    }
    const auto screens = intake::read_screens(*text, path);
    if (screens) return *screens;
    for (const measure::Problem& problem : screens.error())
        spdlog::warn("the measured screens are passed over: {}", measure::text(problem));
    return {};
}

}  // namespace

std::string screens_path(const Options& options) {
    if (!options.screens.empty()) return options.screens;
    const auto config = device::config_folder();
    return config ? *config + "/screens.toml" : "";
}

intake::ScreenId id_of(const device::Screen& screen) {
    return {.name = screen.name,
            .width_px = screen.report.width_px,
            .height_px = screen.report.height_px,
            .reported_width_mm = screen.report.width_mm,
            .reported_height_mm = screen.report.height_mm};
}

std::optional<device::GlassSize> measured_size(const std::string& path, const device::Screen& screen) {
    const auto all = measured(path);
    const auto found = std::ranges::find(all, id_of(screen), &intake::MeasuredScreen::screen);
    if (found == all.end()) return std::nullopt;
    return device::GlassSize{.width_mm = found->glass.width.mm(), .height_mm = found->glass.height.mm()};
}

std::optional<std::string> keep_size(const std::string& path, const device::Screen& screen, const device::GlassSize& size) {
    const auto slash = path.find_last_of('/');
    if (slash != std::string::npos && slash > 0) {
        const auto folder = device::make_folder(path.substr(0, slash));
        if (!folder) return device::text(folder.error());
    }
    const intake::Glass glass{.width = measure::from_mm(size.width_mm), .height = measure::from_mm(size.height_mm)};
    const auto all = intake::with(measured(path), {.screen = id_of(screen), .glass = glass});
    const auto written = device::write_file(path, intake::screens_text(all));
    return written ? std::nullopt : std::optional(device::text(written.error()));
}

}  // namespace graftside
