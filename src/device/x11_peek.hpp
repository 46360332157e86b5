// Presses and keys as the X server saw them. GLFW's callbacks tell neither the time of a press nor, in a slow frame, its place for
// sure; the events wait in Xlib's queue before GLFW takes them, and are read there without being taken out.
// On another window system nothing is seen, and what the callbacks say is used.
#pragma once

#include <cstdint>
#include <vector>

struct GLFWwindow;

namespace device::x11 {

struct Seen {
    unsigned long window = 0;
    bool down = false;
    double x_px = 0, y_px = 0;
    std::uint32_t server_ms = 0;  // wraps after 49.7 days
    unsigned key = 0;             // the code of a key that went down; 0: a button
};

/// Whether windows are X11's.
bool here();
/// X11's number of a window.
unsigned long number(GLFWwindow* window);
/// The server's time now.
std::uint32_t server_ms(GLFWwindow* window);
/// Every press and release of the main button, and every key that went down, that waits in the queue, in order.
std::vector<Seen> waiting();
/// The screensaver and the screens' standby rest, or run again.
void keep_awake(bool awake);
/// Waits until an event is in the queue, at most so long.
void wait(double seconds);

}  // namespace device::x11
