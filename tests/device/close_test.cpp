// A window manager asks a window to close by a client message (ICCCM 4.2.8.1, WM_DELETE_WINDOW); whether it closes is the program's to say.
#include "device/glass.hpp"

#include <X11/Xlib.h>

#include <algorithm>
#include <string>

namespace {

::Window by_name(Display* display, ::Window in, const std::string& name) {
    char* here = nullptr;
    const bool found = XFetchName(display, in, &here) != 0 && here != nullptr && name == here;
    if (here != nullptr) XFree(here);
    if (found) return in;
    ::Window root = 0, parent = 0, *children = nullptr, match = 0;
    unsigned count = 0;
    if (XQueryTree(display, in, &root, &parent, &children, &count) == 0) return 0;
    for (unsigned i = 0; i < count && match == 0; ++i) match = by_name(display, children[i], name);
    if (children != nullptr) XFree(children);
    return match;
}

void ask_to_close(const std::string& name) {
    Display* const display = XOpenDisplay(nullptr);
    REQUIRE(display != nullptr);
    const ::Window window = by_name(display, DefaultRootWindow(display), name);
    REQUIRE(window != 0);
    XEvent event{};
    event.xclient.type = ClientMessage;
    event.xclient.window = window;
    event.xclient.message_type = XInternAtom(display, "WM_PROTOCOLS", False);
    event.xclient.format = 32;
    event.xclient.data.l[0] = static_cast<long>(XInternAtom(display, "WM_DELETE_WINDOW", False));
    XSendEvent(display, window, False, NoEventMask, &event);
    XSync(display, False);
    XCloseDisplay(display);
}

}  // namespace

TEST_CASE("asked to close, a window says so once, each time it is asked, and stays until the program lets it go") {
    device::Window window = device_test::open({.title = "close me", .width_px = 300, .height_px = 200});
    for (int asked = 0; asked < 2; ++asked) {
        (void)window.poll();
        ask_to_close("close me");
        window.wait(1);
        const device::Events events = window.poll();
        CHECK(std::count_if(events.begin(), events.end(),
                            [](const device::Event& event) { return std::holds_alternative<device::Closed>(event); }) == 1);
        CHECK_FALSE(window.hidden());
        window.present();
    }
}
