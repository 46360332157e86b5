// A window with all that is made for its size: lettering, renderer, what stands on the glass. One for each view that is shown.
#pragma once

#include "device/renderer.hpp"
#include "device/seats.hpp"
#include "screen/measuring.hpp"
#include "screen/theme.hpp"
#include "screen/touch.hpp"
#include "stock.hpp"

#include <set>

namespace graftside {

class Stage {
public:
    /// What a window is opened for: its reader, and which of several it is, from 0.
    struct Wish {
        screen::Reader reader{};
        std::size_t place = 0;
        device::Seat seat{};
    };
    static Try<Stage> make(const Options& options, const Stock& stock, const Wish& wish);

    device::Window& window() { return window_; }
    screen::Reader reader() const { return reader_; }
    const device::Seat& seat() const { return seat_; }
    bool size_known() const { return window_.px_per_mm().has_value(); }
    const screen::Canvas& canvas() const { return canvas_; }
    screen::Touch& touch() { return touch_; }
    const screen::Touch& touch() const { return touch_; }

    /// Lettering and layout for the size the window has now.
    std::optional<Stop> fit();
    std::optional<Stop> fit_if_resized() { return std::exchange(resized, false) ? fit() : std::nullopt; }
    /// To another screen, or hidden until there is one.
    std::optional<Stop> move_to(const device::Seat& seat);

    /// Draws what differs from what stands on the glass; targets are those of the newest frame in any case.
    bool show(const screen::View& view, const screen::Finger& finger);
    const screen::Frame& shown() const { return shown_; }
    /// What stood on the glass is gone: the next frame is drawn in any case.
    void forget() { shown_.shapes.clear(); }

    /// How much light comes off it: the next frame is drawn so.
    void light(screen::Light light);

    /// Measuring this screen against a bank card: begins; and what a target of its page does. What was kept, or why not, is for people.
    void begin_measuring();
    const std::optional<screen::Measuring>& measuring() const { return measuring_; }
    Try<std::string> work_measuring(const screen::Show& show);
    void leave_measuring() { measuring_.reset(); }

    bool resized = false;
    bool picture_owed = false;  // the frame last drawn is not one that stays
    int pictures = 0;

private:
    Stage(device::Window window, screen::Theme theme, const Stock& stock, const Wish& wish);
    void tell_short_of(const screen::Frame& frame);
    /// The screen it fills, or the first; none: there is none.
    std::optional<device::Screen> glass() const;
    /// How large that is, as a person told or measured it.
    std::optional<device::GlassSize> told() const;
    Try<std::string> use_measured();

    device::Window window_;
    screen::Reader reader_;
    device::Seat seat_{};
    screen::Words words_;
    std::optional<device::GlassSize> line_{}, unit_{};  // as told on the command line, and in the unit's file
    std::string screens_{};                             // the file of measured ones
    std::optional<screen::Measuring> measuring_{};
    std::set<std::string> told_{};
    std::optional<device::Renderer> renderer_{};
    screen::Theme theme_;
    screen::Light light_ = screen::Light::Full;
    device::Palette palette_{};
    screen::Hand hand_;
    screen::Canvas canvas_{};
    screen::Frame shown_{};
    screen::Touch touch_{};
};

/// "table", "desk", "far": as the command line and the unit's file name the views.
std::string name(screen::Reader reader);

}  // namespace graftside
