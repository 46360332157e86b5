// What is said when the machine cannot show a window.
#include "device/window.hpp"

#include <doctest/doctest.h>

#include <cstdlib>
#include <string>

using namespace device;

namespace {

/// A variable of the environment for as long as it lives.
class Setting {
public:
    Setting(const char* name, const char* value) : name_(name) {
        if (const char* const old = std::getenv(name)) old_ = old;
        ::setenv(name, value, 1);
    }
    Setting(const Setting&) = delete;
    Setting& operator=(const Setting&) = delete;
    ~Setting() { ::setenv(name_, old_.c_str(), 1); }

private:
    const char* name_;
    std::string old_{};
};

}  // namespace

TEST_CASE("no display is a failure with one clear sentence") {
    const Setting none("DISPLAY", ":4077");
    const auto window = Window::open({.title = "nowhere"});
    REQUIRE_FALSE(static_cast<bool>(window));
    CHECK(window.error().what == Failure::What::NoDisplay);
    CHECK(text(window.error()).find("No display can be opened: ") == 0);
    CHECK(text(window.error()).find('\n') == std::string::npos);
    CHECK_FALSE(static_cast<bool>(screens()));
}

TEST_CASE("the virtual display is found, with its size") {
    const auto found = screens();
    REQUIRE(static_cast<bool>(found));
    REQUIRE(found->size() >= 1);
    CHECK(found->front().report.width_px == 1920);
    CHECK(found->front().report.height_px == 1080);
}

TEST_CASE("a told size gives the millimetres of the window") {
    const auto told = Window::open({.title = "told", .width_px = 400, .height_px = 300, .told = GlassSize{480, 270}});
    REQUIRE(static_cast<bool>(told));
    REQUIRE(told->px_per_mm().has_value());
    CHECK(*told->px_per_mm() == doctest::Approx(4));
    CHECK(told->width_px() == 400);
    auto nonsense = Window::open({.title = "nonsense", .told = GlassSize{270, 480}});
    REQUIRE(static_cast<bool>(nonsense));
    CHECK_FALSE(nonsense->px_per_mm().has_value());
    nonsense->measure_by(3.78);
    CHECK_FALSE(nonsense->px_per_mm().has_value());  // a size that was guessed stays unknown
}

TEST_CASE("a full screen is the whole screen") {
    const auto window = Window::open({.title = "full", .full_screen = true});
    REQUIRE(static_cast<bool>(window));
    CHECK(window->width_px() == 1920);
    CHECK(window->height_px() == 1080);
}

// Run by CTest with a Mesa setting that offers OpenGL 2.1 only; skipped otherwise, since Mesa reads it once.
TEST_CASE("without OpenGL 3.3 there is one clear sentence" * doctest::skip()) {
    const auto window = Window::open({.title = "old"});
    REQUIRE_FALSE(static_cast<bool>(window));
    CHECK(window.error().what == Failure::What::NoOpenGl);
    CHECK(text(window.error()).find("The display does not offer OpenGL 3.3: ") == 0);
}
