// How long our window takes to its first frame, how long a frame of 300 shapes takes and how much memory it needs.
// bare_window.cpp measures the same of a window of GLFW and Dear ImGui. `run` runs both under one virtual display; each prints a
// name and a number a line.
#include "device/renderer.hpp"
#include "stopwatch.hpp"

#include <cstdio>
#include <string>

namespace {

constexpr double px_per_mm = 4;
constexpr int frames = 50;

/// 300 shapes of all kinds, about as much as a full view has: 480 by 270 mm.
picture::Shapes view() {
    using namespace picture;
    Shapes out;
    for (int i = 0; i < 60; ++i) {
        const double x = 12 + 45.0 * (i % 10), y = 15 + 42.0 * static_cast<double>(i / 10);
        const double dash = i % 2 == 0 ? 2 : 0, gap = i % 2 == 0 ? 1 : 0;
        out.push_back(Panel{.box = {x - 8, y - 10, 40, 36}, .radius = 3, .fill = Ink::Card, .edge = Ink::Line, .edge_width = 0.4});
        out.push_back(Ring{.centre = {x + 22, y + 12}, .radius = 8, .width = 0.6, .ink = Ink::Accent, .dash = dash, .gap = gap});
        out.push_back(Disc{.centre = {x + 22, y + 12}, .radius = 3, .ink = Ink::Steel});
        out.push_back(Line{.a = {x, y + 22}, .b = {x + 28, y + 20}, .width = 0.5, .ink = Ink::Mark});
        out.push_back(Text{.at = {x - 4, y}, .text = "host 7.50 mm", .type = Type::Text});
    }
    return out;
}

device::Palette palette() {
    device::Palette out{};
    for (std::size_t i = 0; i < out.size(); ++i) out[i] = {static_cast<std::uint8_t>(12 * i), static_cast<std::uint8_t>(13 * i), 64};
    return out;
}

device::Sizes sizes() {
    device::Sizes out{.px_per_mm = px_per_mm};
    out.cap_mm = {40, 9, 6.2, 6.2, 4.2, 4.2, 5.5};
    out.bold = {true, true, true, false, true, false, false};
    return out;
}

int complain(const device::Failure& failure) {
    std::fprintf(stderr, "%s\n", device::text(failure).c_str());
    return 3;
}

void run(device::Window& window, device::Renderer& renderer) {
    const picture::Shapes shapes = view();
    const auto frame = [&] {
        renderer.draw(window, shapes, palette());
        window.present();
    };
    frame();
    (void)window.pixels();  // waits until the frame is really drawn
    std::printf("window_first_frame %.1f\nwindow_resident_mb %.1f\n", bench::ms_since_start(), bench::resident_mb());
    const double start = bench::ms_since_start();
    for (int i = 0; i < frames; ++i) frame();
    (void)window.pixels();
    std::printf("window_frame %.2f\n", (bench::ms_since_start() - start) / frames);
}

}  // namespace

int main() {
    auto opened = device::Window::open({.title = "bench", .width_px = 1920, .height_px = 1080, .wait_for_refresh = false});
    if (!opened) return complain(opened.error());
    device::Window window = *std::move(opened);
    window.measure_by(px_per_mm);
    auto fonts = device::Fonts::load(FONTS_DIR, sizes());
    if (!fonts) return complain(fonts.error());
    auto made = device::Renderer::make(window, *fonts);
    if (!made) return complain(made.error());
    device::Renderer renderer = *std::move(made);
    run(window, renderer);
}
