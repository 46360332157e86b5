// The X server blanks the screens after a second without a touch, as this test asks it to, and says itself whether it has.
#include "device/awake.hpp"
#include "device/glass.hpp"

#include <unistd.h>

#include <X11/Xlib.h>
#include <X11/extensions/scrnsaver.h>

namespace {

class Server {
public:
    Server() : display_(XOpenDisplay(nullptr)) {
        REQUIRE(display_ != nullptr);
        XGetScreenSaver(display_, &timeout_, &interval_, &blanking_, &exposures_);
        XSetScreenSaver(display_, 1, 0, PreferBlanking, AllowExposures);
        touched();
    }
    ~Server() {
        XSetScreenSaver(display_, timeout_, interval_, blanking_, exposures_);
        touched();
        XCloseDisplay(display_);
    }
    Server(const Server&) = delete;
    Server& operator=(const Server&) = delete;
    void touched() {
        XForceScreenSaver(display_, ScreenSaverReset);
        XSync(display_, False);
    }
    bool blanked_after_a_while() {
        ::usleep(2'500'000);
        XScreenSaverInfo info{};
        REQUIRE(XScreenSaverQueryInfo(display_, DefaultRootWindow(display_), &info) != 0);
        return info.state == ScreenSaverOn;
    }

private:
    Display* display_;
    int timeout_ = 0, interval_ = 0, blanking_ = 0, exposures_ = 0;
};

}  // namespace

TEST_CASE("no blanking while a case goes on, and the usual one before and after") {
    const device::Window window = device_test::open({.title = "awake", .width_px = 300, .height_px = 200});
    Server server;
    device::Awake awake;
    CHECK(server.blanked_after_a_while());
    awake.keep(true);
    server.touched();
    CHECK_FALSE(server.blanked_after_a_while());
    awake.keep(false);
    CHECK(server.blanked_after_a_while());
}
