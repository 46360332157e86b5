#include "stage.hpp"

#include "device/environment.hpp"
#include "measure/expect.hpp"

#include <spdlog/spdlog.h>

#include <algorithm>
#include <tuple>

namespace graftside {
namespace {

constexpr double px_per_mm_unknown = 96.0 / 25.4;  // the desktop's convention where no screen tells

Stop stop(const device::Failure& failure) { return graftside::stop(Exit::Machine, device::text(failure)); }

const std::optional<intake::Glass>& glass_of(const intake::UnitFile& unit, screen::Reader reader) {
    switch (reader) {
        case screen::Reader::Table:
            return unit.table;
        case screen::Reader::Desk:
            return unit.desk;
        case screen::Reader::Far:
            return unit.far;
    }
    measure::expect(false);
    return unit.table;
}

/// The lit glass as a person told it: on the command line, the last of which serves all that follow, else in the unit's file.
std::optional<device::GlassSize> told(const Options& options, const Stock& stock, const Stage::Wish& wish) {
    if (!options.screens_mm.empty()) {
        const auto& [width, height] = options.screens_mm[std::min(wish.place, options.screens_mm.size() - 1)];
        return device::GlassSize{.width_mm = width, .height_mm = height};
    }
    const auto& glass = glass_of(stock.unit, wish.reader);
    return glass ? std::optional(device::GlassSize{.width_mm = glass->width.mm(), .height_mm = glass->height.mm()}) : std::nullopt;
}

/// The Far view is white on black in every theme.
screen::Theme theme(const Options& options, const Stock& stock, screen::Reader reader) {
    const bool light = options.theme.empty() ? stock.unit.theme == intake::Theme::Light : options.theme == "light";
    return light && reader != screen::Reader::Far ? screen::Theme::Light : screen::Theme::Dark;
}

}  // namespace

std::string name(screen::Reader reader) {
    switch (reader) {
        case screen::Reader::Table:
            return "table";
        case screen::Reader::Desk:
            return "desk";
        case screen::Reader::Far:
            return "far";
    }
    measure::expect(false);
    return "";
}

Try<Stage> Stage::make(const Options& options, const Stock& stock, const Wish& wish) {
    const bool first = wish.place == 0;
    device::WindowWish window{.title = first ? "graftside" : "graftside " + name(wish.reader),
                              .full_screen = options.windows_px.empty(),
                              .screen = wish.seat.screen,
                              .told = told(options, stock, wish),
                              .wait_for_refresh = first,  // two waits in one turn would halve the rate of both
                              .takes_keyboard = wish.reader != screen::Reader::Far};
    if (!options.windows_px.empty())
        std::tie(window.width_px, window.height_px) = options.windows_px[std::min(wish.place, options.windows_px.size() - 1)];
    auto opened = device::Window::open(window);
    if (!opened) return stop(opened.error());
    Stage stage(*std::move(opened), theme(options, stock, wish.reader), stock, wish);
    if (const auto failure = stage.fit()) return *failure;
    return stage;
}

Stage::Stage(device::Window window, screen::Theme theme, const Stock& stock, const Wish& wish)
    : window_(std::move(window)),
      reader_(wish.reader),
      seat_(wish.seat),
      hand_(stock.unit.hand == intake::Hand::Left ? screen::Hand::Left : screen::Hand::Right) {
    const screen::Palette colours = screen::palette(theme);
    for (std::size_t i = 0; i < colours.size(); ++i) palette_[i] = {.r = colours[i].r, .g = colours[i].g, .b = colours[i].b};
}

std::optional<Stop> Stage::fit() {
    const double px_per_mm = window_.px_per_mm().value_or(px_per_mm_unknown);
    window_.measure_by(px_per_mm);
    canvas_.glass = {.width_mm = window_.width_px() / px_per_mm, .height_mm = window_.height_px() / px_per_mm, .hand = hand_};
    canvas_.type = screen::typography(reader_, canvas_.glass);
    device::Sizes sizes{.cap_mm = canvas_.type.cap_mm, .px_per_mm = px_per_mm};
    for (int type = 0; type < picture::types; ++type)
        sizes.bold[static_cast<std::size_t>(type)] = screen::bold(static_cast<picture::Type>(type));
    const auto fonts = device::Fonts::load(device::share_folder() + "/fonts", sizes);
    if (!fonts) return stop(fonts.error());
    canvas_.lettering = fonts->lettering();
    renderer_.reset();
    auto renderer = device::Renderer::make(window_, *fonts);
    if (!renderer) return stop(renderer.error());
    renderer_.emplace(*std::move(renderer));
    shown_ = {};
    return std::nullopt;
}

std::optional<Stop> Stage::move_to(const device::Seat& seat) {
    const bool moves = seat.screen != seat_.screen;
    seat_ = seat;
    window_.seat(seat.screen);
    return moves && seat.screen ? fit() : std::nullopt;
}

bool Stage::show(const screen::View& view, const screen::Finger& finger) {
    canvas_.finger = finger;
    screen::Frame frame = screen::draw(view, canvas_);
    const bool changed = frame.shapes != shown_.shapes;
    tell_short_of(frame);
    shown_ = std::move(frame);
    if (changed) renderer_->draw(window_, shown_.shapes, palette_);
    return changed;
}

/// What this display is too small for, said once each; it is left out, never shrunk.
void Stage::tell_short_of(const screen::Frame& frame) {
    for (const std::string& text : frame.short_of) {
        if (told_.insert(text).second) spdlog::warn("the {} screen is too small for: {}", name(reader_), text);
    }
}

}  // namespace graftside
