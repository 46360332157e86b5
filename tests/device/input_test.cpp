// Presses sent by xdotool through the X test extension, which the server hands out as it does those of a touch screen.
#include "device/clocks.hpp"
#include "device/glass.hpp"

#include <unistd.h>

#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

using namespace device_test;
using namespace device;

namespace {

constexpr double dots = 4;  // a millimetre

Window slow_window() {
    Window window = open({.title = "slow input", .width_px = 800, .height_px = 600});
    window.measure_by(dots);
    for (int i = 0; i < 5; ++i) {
        window.present();
        window.wait(0.02);
        (void)window.poll();
    }
    return window;
}

void send(const std::string& words) { REQUIRE(std::system((std::string(XDOTOOL) + " " + words).c_str()) == 0); }

/// All events of a loop that draws so many frames a second, from before the first press until nothing has come for a while.
Events events_of(Window& window, double frames_a_second, const std::string& words) {
    REQUIRE(std::system((std::string(XDOTOOL) + " " + words + " &").c_str()) == 0);
    Events all;
    const std::int64_t start = monotonic_ms();
    std::int64_t last = start;
    while (monotonic_ms() - last < 700 && monotonic_ms() - start < 10'000) {
        ::usleep(static_cast<useconds_t>(1e6 / frames_a_second));
        const Events some = window.poll();
        if (!some.empty()) last = monotonic_ms();
        all.insert(all.end(), some.begin(), some.end());
        window.present();
    }
    return all;
}

template <class T>
std::vector<T> only(const Events& events) {
    std::vector<T> out;
    for (const Event& event : events)
        if (const T* const one = std::get_if<T>(&event)) out.push_back(*one);
    return out;
}

std::string press_at(int x, int y) { return " mousemove " + std::to_string(x) + " " + std::to_string(y) + " mousedown 1 mouseup 1"; }

}  // namespace

// look.md: once per press; the number of counted taps never depends on the frame rate.
TEST_CASE("twenty presses at once are twenty, each at its own place, however slow the frames") {
    for (const double frames_a_second : {5.0, 15.0, 30.0, 60.0, 144.0}) {
        CAPTURE(frames_a_second);
        Window window = slow_window();
        std::string words;
        for (int i = 0; i < 20; ++i) words += press_at(20 + 37 * i, 580 - 29 * i);
        const Events all = events_of(window, frames_a_second, words);
        const auto presses = only<Pressed>(all);
        REQUIRE(presses.size() == 20);
        CHECK(only<Released>(all).size() == 20);
        for (int i = 0; i < 20; ++i) {
            CAPTURE(i);
            const Pressed& press = presses[static_cast<std::size_t>(i)];
            CHECK(press.x_mm * dots == doctest::Approx(20 + 37 * i).epsilon(1e-9));
            CHECK(press.y_mm * dots == doctest::Approx(580 - 29 * i).epsilon(1e-9));
            if (i > 0) CHECK(press.time_ms >= presses[static_cast<std::size_t>(i) - 1].time_ms);
        }
    }
}

TEST_CASE("the time of a press is the server's, not that of the frame") {
    Window window = slow_window();
    const std::int64_t before = monotonic_ms();
    send("mousemove 100 100 mousedown 1 mouseup 1 sleep 0.12 mousedown 1 mouseup 1 sleep 0.4");
    ::usleep(300'000);  // a very slow frame
    const auto presses = only<Pressed>(window.poll());
    REQUIRE(presses.size() == 2);
    for (const Pressed& press : presses) {
        CHECK(press.time_exact);
        CHECK(press.time_ms >= before - 2);
        CHECK(press.age_ms >= 690);
        CHECK(std::llabs(press.time_ms + press.age_ms - monotonic_ms()) < 50);
    }
    CHECK(std::llabs(presses[1].time_ms - presses[0].time_ms - 120) <= 30);
}

TEST_CASE("waiting ends with a press and not before") {
    Window window = slow_window();
    const std::int64_t start = monotonic_ms();
    window.wait(0.2);
    CHECK(monotonic_ms() - start >= 195);
    REQUIRE(std::system((std::string(XDOTOOL) + " sleep 0.2 mousemove 50 60 mousedown 1 mouseup 1 &").c_str()) == 0);
    std::vector<Pressed> presses;
    const std::int64_t sent = monotonic_ms();
    while (presses.empty() && monotonic_ms() - sent < 3000) {
        window.wait(3);
        presses = only<Pressed>(window.poll());
    }
    CHECK(presses.size() == 1);
    CHECK(monotonic_ms() - sent < 1000);
}

TEST_CASE("only the main button presses, and a pointer held down tells where it goes") {
    Window window = slow_window();
    send("mousemove 100 100 click 3 click 2 click 4 mousedown 1 mousemove 200 220 mousemove 240 260 sleep 0.1");
    Events all = window.poll();
    CHECK(only<Pressed>(all).size() == 1);
    REQUIRE(only<Moved>(all).size() == 1);
    CHECK(only<Moved>(all).front() == Moved{60, 65});
    CHECK(window.poll().empty());  // held still
    send("mouseup 1 mousemove 10 10 sleep 0.1");
    all = window.poll();
    CHECK(only<Released>(all).size() == 1);
    CHECK(only<Moved>(all).empty());
}

TEST_CASE("a scan comes as characters, the group separator with them; commands come as keys") {
    Window window = slow_window();
    send("search --name '^slow input$' windowfocus sleep 0.2 key equal shift+a 1 ctrl+bracketright 7 Return ctrl+z F5 sleep 0.2");
    const Events all = window.poll();
    std::u32string typed;
    for (const Character& character : only<Character>(all)) typed += character.code;
    CHECK(typed ==
          U"=A1\x1d"
          U"7");
    bool enter = false, control_z = false, f5 = false;
    for (const Key& key : only<Key>(all)) {
        enter = enter || key.name == KeyName::Enter;
        control_z = control_z || (key.name == KeyName::Letter && key.letter == 'Z' && key.control);
        f5 = f5 || (key.name == KeyName::Function && key.function == 5);
    }
    CHECK(enter);
    CHECK(control_z);
    CHECK(f5);
}

TEST_CASE("two windows keep their presses apart") {
    Window first = slow_window();
    Window second = open({.title = "second", .width_px = 300, .height_px = 300});
    second.measure_by(dots);
    second.present();
    second.wait(0.1);
    (void)second.poll();  // it lies over the first one's upper left corner
    send("mousemove 100 100 mousedown 1 mouseup 1 mousemove 700 500 mousedown 1 mouseup 1 sleep 0.1");
    const auto of_second = only<Pressed>(second.poll());
    const auto of_first = only<Pressed>(first.poll());
    REQUIRE(of_second.size() == 1);
    REQUIRE(of_first.size() == 1);
    CHECK(of_second.front().x_mm == doctest::Approx(25));
    CHECK(of_first.front().x_mm == doctest::Approx(175));
    CHECK(of_first.front().time_exact);
    CHECK(of_second.front().time_exact);
}

TEST_CASE("what lay under another window asks to be drawn again") {
    Window first = slow_window();
    {
        Window second = open({.title = "second", .width_px = 300, .height_px = 300});
        second.present();
        second.wait(0.1);
        (void)first.poll();
    }
    // Other events may come first, on a busy machine much earlier.
    std::size_t exposed = 0;
    for (int tries = 0; tries < 50 && exposed == 0; ++tries) {
        first.wait(0.1);
        exposed = only<Exposed>(first.poll()).size();
    }
    CHECK(exposed == 1);
}

TEST_CASE("keys bear the time at which they were pressed, however late they are taken") {
    Window window = slow_window();
    send("search --name '^slow input$' windowfocus sleep 0.2 key --delay 100 a b c sleep 0.2");
    ::usleep(200'000);  // all of them are taken at once
    const auto characters = only<Character>(window.poll());
    REQUIRE(characters.size() == 3);
    for (std::size_t i = 1; i < characters.size(); ++i) {
        const auto gap = characters[i].time_ms - characters[i - 1].time_ms;
        CHECK(gap >= 60);
        CHECK(gap <= 400);
    }
    CHECK(monotonic_ms() - characters.back().time_ms >= 300);
}
