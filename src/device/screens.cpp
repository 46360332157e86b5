#include "device/screens.hpp"

#include "device/session.hpp"

#include <GLFW/glfw3.h>

#include <algorithm>

namespace device {
namespace {

constexpr double least_px_per_mm = 2, most_px_per_mm = 16;
constexpr double most_apart = 0.10;

std::optional<double> plausible(double across, double down) {
    const auto [low, high] = std::minmax(across, down);
    if (!(low >= least_px_per_mm && high <= most_px_per_mm) || high > low * (1 + most_apart)) return std::nullopt;
    return (across + down) / 2;
}

Screen screen(GLFWmonitor* monitor) {
    Screen out{.name = ::glfwGetMonitorName(monitor)};
    ::glfwGetMonitorPos(monitor, &out.x_px, &out.y_px);
    ::glfwGetMonitorPhysicalSize(monitor, &out.report.width_mm, &out.report.height_mm);
    if (const GLFWvidmode* const mode = ::glfwGetVideoMode(monitor)) {
        out.report.width_px = mode->width;
        out.report.height_px = mode->height;
    }
    out.px_per_mm = px_per_mm(out.report);
    return out;
}

}  // namespace

std::optional<double> px_per_mm(const Report& report) {
    return px_per_mm(report, {static_cast<double>(report.width_mm), static_cast<double>(report.height_mm)});
}

std::optional<double> px_per_mm(const Report& report, const GlassSize& told) {
    if (!(told.width_mm > 0 && told.height_mm > 0)) return std::nullopt;
    return plausible(report.width_px / told.width_mm, report.height_px / told.height_mm);
}

Result<std::vector<Screen>> screens() {
    const auto session = Session::join();
    if (!session) return session.error();
    int count = 0;
    GLFWmonitor** const monitors = ::glfwGetMonitors(&count);
    std::vector<Screen> out;
    for (int i = 0; i < count; ++i) out.push_back(screen(monitors[i]));
    return out;
}

}  // namespace device
