// A window to draw into, with plain colours, for the tests that read pixels back.
#pragma once

#include "device/renderer.hpp"

#include <doctest/doctest.h>

#include <string>
#include <utility>

namespace device_test {

inline device::Window open(const device::WindowWish& wish) {
    auto opened = device::Window::open(wish);
    INFO((opened ? std::string() : device::text(opened.error())));
    REQUIRE(static_cast<bool>(opened));
    return *std::move(opened);
}

inline device::Fonts fonts(double px_per_mm, double cap_mm = 5) {
    device::Sizes sizes{.px_per_mm = px_per_mm};
    sizes.cap_mm.fill(cap_mm);
    sizes.cap_mm[static_cast<std::size_t>(picture::Type::Numeral)] = 30;
    sizes.bold[static_cast<std::size_t>(picture::Type::Strong)] = true;
    auto loaded = device::Fonts::load(FONTS_DIR, sizes);
    REQUIRE(static_cast<bool>(loaded));
    return *std::move(loaded);
}

/// Ground is black; every ink has a colour of its own; Text is white.
inline device::Palette colours() {
    device::Palette out{};
    for (std::size_t i = 1; i < out.size(); ++i)
        out[i] = {static_cast<std::uint8_t>(10 + 12 * i), static_cast<std::uint8_t>(251 - 11 * i), static_cast<std::uint8_t>(7 * i)};
    out[static_cast<std::size_t>(picture::Ink::Text)] = {255, 255, 255};
    return out;
}

class Glass {
public:
    explicit Glass(double px_per_mm, double cap_mm = 5)
        : px_per_mm_(px_per_mm),
          window_(open({.title = "drawing", .width_px = 800, .height_px = 600})),
          renderer_(make(px_per_mm, cap_mm)) {}

    device::Pixels draw(const picture::Shapes& shapes) {
        renderer_.draw(window_, shapes, colours());
        device::Pixels out = window_.pixels();
        window_.present();
        return out;
    }
    double px_per_mm() const { return px_per_mm_; }

private:
    device::Renderer make(double px_per_mm, double cap_mm) {
        window_.measure_by(px_per_mm);
        auto made = device::Renderer::make(window_, fonts(px_per_mm, cap_mm));
        REQUIRE(static_cast<bool>(made));
        return *std::move(made);
    }
    double px_per_mm_;
    device::Window window_;
    device::Renderer renderer_;
};

}  // namespace device_test
