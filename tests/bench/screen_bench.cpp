// A view from the state of the case to its frame of shapes, against one frame of Dear ImGui's demonstration window without a
// display: both are all that happens before anything is drawn.
#include "device/fonts.hpp"
#include "screen/frame.hpp"
#include "screen/models.hpp"
#include "screen/pages.hpp"

#include <benchmark/benchmark.h>
#include <imgui.h>

namespace {

/// A glass of 480 by 270 mm with the lettering of the program itself.
screen::Canvas window_canvas() {
    screen::Canvas canvas{};
    canvas.glass = {.width_mm = 480, .height_mm = 270, .hand = screen::Hand::Right};
    canvas.type = screen::table_typography(canvas.glass);
    device::Sizes sizes{.cap_mm = canvas.type.cap_mm, .px_per_mm = 4};
    for (int type = 0; type < picture::types; ++type)
        sizes.bold[static_cast<std::size_t>(type)] = screen::bold(static_cast<picture::Type>(type));
    canvas.lettering = device::Fonts::load(FONTS_DIR, sizes)->lettering();
    return canvas;
}

void view_and_frame(benchmark::State& state, const std::string& step) {
    models::Seen seen(step);
    seen.around.now = seen.at.now;
    const screen::Canvas canvas = window_canvas();
    for (auto _ : state) {
        const screen::View view = screen::view(seen.at.state, {}, seen.around, models::words());
        benchmark::DoNotOptimize(screen::draw(view, canvas));
    }
}
BENCHMARK_CAPTURE(view_and_frame, lower, "lower");
BENCHMARK_CAPTURE(view_and_frame, rest, "rest");
BENCHMARK_CAPTURE(view_and_frame, opening_count, "opening-count");

void yardstick_imgui_demo(benchmark::State& state) {
    ImGui::CreateContext();
    ImGui::GetIO().IniFilename = nullptr;
    ImGui::GetIO().DisplaySize = {1920, 1080};
    unsigned char* pixels = nullptr;
    int width = 0, height = 0;
    ImGui::GetIO().Fonts->GetTexDataAsRGBA32(&pixels, &width, &height);
    for (auto _ : state) {
        ImGui::NewFrame();
        ImGui::ShowDemoWindow();
        ImGui::Render();
        benchmark::DoNotOptimize(ImGui::GetDrawData());
    }
    ImGui::DestroyContext();
}
BENCHMARK(yardstick_imgui_demo);

}  // namespace
