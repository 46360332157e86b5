#include "device/x11_peek.hpp"

#include <X11/Xatom.h>
#include <X11/Xlib.h>
#include <X11/extensions/scrnsaver.h>
#include <poll.h>

#include <algorithm>
#include <cmath>

// Of GLFW's native access only these two are needed; its header would ask for Xrandr's headers too.
extern "C" {
Display* glfwGetX11Display(void);
Window glfwGetX11Window(GLFWwindow*);
}

namespace device::x11 {
namespace {

/// Called by Xlib for each waiting event; answers "not this one" each time, so that nothing is taken out.
Bool note(Display*, XEvent* event, XPointer to) {
    const bool press = event->type == ButtonPress;
    if ((press || event->type == ButtonRelease) && event->xbutton.button == Button1) {
        const XButtonEvent& button = event->xbutton;
        reinterpret_cast<std::vector<Seen>*>(to)->push_back({.window = button.window,
                                                             .down = press,
                                                             .x_px = static_cast<double>(button.x),
                                                             .y_px = static_cast<double>(button.y),
                                                             .server_ms = static_cast<std::uint32_t>(button.time)});
    }
    if (event->type == KeyPress) {
        const XKeyEvent& key = event->xkey;
        reinterpret_cast<std::vector<Seen>*>(to)->push_back(
            {.window = key.window, .down = true, .server_ms = static_cast<std::uint32_t>(key.time), .key = key.keycode});
    }
    return False;
}

Bool is_property_of(Display*, XEvent* event, XPointer window) {
    return event->type == PropertyNotify && event->xproperty.window == *reinterpret_cast<::Window*>(window) ? True : False;
}

}  // namespace

bool here() { return glfwGetX11Display() != nullptr; }

unsigned long number(GLFWwindow* window) { return glfwGetX11Window(window); }

std::uint32_t server_ms(GLFWwindow* window) {
    Display* const display = glfwGetX11Display();
    ::Window id = glfwGetX11Window(window);
    // Appending nothing to a property changes nothing, and the server says when it happened.
    const Atom property = XInternAtom(display, "_GRAFTSIDE_TIME", False);
    const unsigned char nothing = 0;
    XChangeProperty(display, id, property, XA_STRING, 8, PropModeAppend, &nothing, 0);
    XEvent event{};
    do {
        XIfEvent(display, &event, is_property_of, reinterpret_cast<XPointer>(&id));
    } while (event.xproperty.atom != property);
    return static_cast<std::uint32_t>(event.xproperty.time);
}

std::vector<Seen> waiting() {
    std::vector<Seen> seen;
    XEvent none{};
    XCheckIfEvent(glfwGetX11Display(), &none, note, reinterpret_cast<XPointer>(&seen));
    return seen;
}

void keep_awake(bool awake) {
    Display* const display = glfwGetX11Display();
    int event = 0, error = 0, major = 0, minor = 0;
    if (XScreenSaverQueryExtension(display, &event, &error) == 0 || XScreenSaverQueryVersion(display, &major, &minor) == 0) return;
    if (major > 1 || (major == 1 && minor >= 1)) XScreenSaverSuspend(display, awake ? True : False);
    XFlush(display);
}

void wait(double seconds) {
    Display* const display = glfwGetX11Display();
    if (XPending(display) > 0) return;
    pollfd socket{.fd = ConnectionNumber(display), .events = POLLIN, .revents = 0};
    ::poll(&socket, 1, static_cast<int>(std::ceil(std::clamp(seconds, 0.0, 3600.0) * 1000)));
}

}  // namespace device::x11
