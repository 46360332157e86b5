// The input queue of one window: GLFW's callbacks come in, events go out in order. Presses take their place and time from
// the X server where it is there, else from the newest cursor callback and the clock.
#pragma once

#include "device/events.hpp"
#include "device/x11_peek.hpp"

#include <deque>

struct GLFWwindow;

namespace device {

class Input {
public:
    /// Hangs itself on the window's callbacks; must stay where it is as long as the window lives.
    Input(GLFWwindow* window, double px_per_mm);
    Input(const Input&) = delete;
    Input& operator=(const Input&) = delete;

    void measure_by(double px_per_mm) { px_per_mm_ = px_per_mm; }
    /// A press, release or key that GLFW is about to report, if it is this window's.
    void expect(const x11::Seen& seen);
    void end_of_batch();
    void screens_changed() { events_.push_back(ScreensChanged{}); }
    Events drain();

private:
    struct When {
        double x_px = 0, y_px = 0;
        std::int64_t time_ms = 0;
        bool exact = false;
    };
    When when(bool down);
    std::int64_t from_server(std::uint32_t server_ms) const;
    std::int64_t key_time(int code);
    void button(bool down);
    static Input& of(GLFWwindow* window);
    static void on_button(GLFWwindow* window, int button, int action, int mods);
    static void on_cursor(GLFWwindow* window, double x, double y);
    static void on_key(GLFWwindow* window, int key, int scancode, int action, int mods);
    static void on_character(GLFWwindow* window, unsigned code);
    static void on_size(GLFWwindow* window, int width, int height);
    static void on_refresh(GLFWwindow* window);
    static void on_close(GLFWwindow* window);

    unsigned long number_ = 0;  // X11's, 0 elsewhere
    double px_per_mm_ = 1;
    double scale_ = 1;  // pixels a unit of the cursor's coordinates
    std::int64_t joined_ms_ = 0;
    std::uint32_t joined_server_ms_ = 0;
    std::deque<x11::Seen> expected_{}, expected_keys_{};
    std::int64_t key_ms_ = 0;  // of the key that is being reported: its character follows
    double x_px_ = 0, y_px_ = 0;
    bool down_ = false, moved_ = false, exposed_ = false, repeating_ = false;
    Events events_{};
};

}  // namespace device
