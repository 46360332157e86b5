// A window on the glass: OpenGL 3.3 core, full screen or of a given size, with its input queue. It knows pixels and
// millimetres, nothing of what is shown. How the loop of the program uses it:
//
//     auto opened = device::Window::open({.title = "graftside", .full_screen = true, .told = screen_mm});
//     if (!opened) return fail(device::text(opened.error()));           // one sentence; exit code 3
//     device::Window window = *std::move(opened);
//     const double px_per_mm = window.px_per_mm().value_or(…);          // none: unknown, ask for a calibration
//     window.measure_by(px_per_mm);
//     auto fonts = device::Fonts::load(device::share_folder() + "/fonts", {.cap_mm = …, .bold = …, .px_per_mm = px_per_mm});
//     auto made = device::Renderer::make(window, *fonts);               // both may fail, as above
//     device::Renderer renderer = *std::move(made);
//     while (open) {
//         window.wait(seconds_to_the_next_change);                      // 0: do not wait
//         for (const device::Event& event : window.poll()) …            // each press with its own place, time and age;
//                                                                       // Exposed: draw again; Resized: fonts and renderer anew
//         if (!changed) continue;                                       // frames are drawn when something changes
//         renderer.draw(window, frame.shapes, palette);
//         window.present();                                             // window.pixels() before this, if a picture is wanted
//     }
#pragma once

#include "device/events.hpp"
#include "device/failure.hpp"
#include "device/pixels.hpp"
#include "device/screens.hpp"

#include <memory>
#include <optional>
#include <string>

namespace device {

struct WindowWish {
    std::string title{};
    bool full_screen = false;
    std::optional<std::size_t> screen = 0;  // which of screens(), when full screen; none: hidden until it is seated
    int width_px = 1280, height_px = 800;   // when not full screen
    std::optional<GlassSize> told{};        // the screen's millimetres as a person told them
    bool pointer_shown = true;              // false on a touch screen
    bool wait_for_refresh = true;           // on for one window only
    bool takes_keyboard = true;             // when it comes to be shown
};

class Window {
public:
    static Result<Window> open(const WindowWish& wish);
    Window(Window&&) noexcept;
    Window& operator=(Window&&) noexcept;
    ~Window();

    int width_px() const;
    int height_px() const;
    /// From what was told, else from the monitor's own report, if that is plausible. measure_by does not change it.
    std::optional<double> px_per_mm() const;
    /// Another size than was told, or none any more.
    void tell(const std::optional<GlassSize>& told);
    /// By what presses are turned into millimetres. Until it is known, one pixel counts as one.
    void measure_by(double px_per_mm);

    /// Fills a screen, or waits hidden for one. Only for windows that were opened full screen.
    void seat(std::optional<std::size_t> screen);
    bool hidden() const;

    /// Waits until something comes for any window, at most so long.
    void wait(double seconds);
    /// All that came since the last poll, in order.
    Events poll();

    /// OpenGL commands go to this window from now on.
    void make_current();
    void present();
    /// What was drawn since the last present().
    Pixels pixels();

private:
    struct Core;
    explicit Window(std::unique_ptr<Core> core);
    std::unique_ptr<Core> core_;
};

}  // namespace device
