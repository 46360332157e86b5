#include "stage.hpp"

#include "device/environment.hpp"
#include "measure/expect.hpp"
#include "own_screens.hpp"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <algorithm>
#include <cstdlib>
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

/// The lit glass as told on the command line, the last of which serves all that follow.
std::optional<device::GlassSize> by_line(const Options& options, const Stage::Wish& wish) {
    if (options.screens_mm.empty()) return std::nullopt;
    const auto& [width, height] = options.screens_mm[std::min(wish.place, options.screens_mm.size() - 1)];
    return device::GlassSize{.width_mm = width, .height_mm = height};
}

std::optional<device::GlassSize> by_unit(const Stock& stock, const Stage::Wish& wish) {
    const auto& glass = glass_of(stock.unit, wish.reader);
    return glass ? std::optional(device::GlassSize{.width_mm = glass->width.mm(), .height_mm = glass->height.mm()}) : std::nullopt;
}

/// The Far view is white on black in every theme.
screen::Theme theme(const Options& options, const Stock& stock, screen::Reader reader) {
    const bool light = options.theme.empty() ? stock.unit.theme == intake::Theme::Light : options.theme == "light";
    return light && reader != screen::Reader::Far ? screen::Theme::Light : screen::Theme::Dark;
}

device::Palette painted(screen::Theme theme, screen::Light light) {
    const screen::Palette colours = screen::palette(theme, light);
    device::Palette made{};
    for (std::size_t i = 0; i < colours.size(); ++i) made[i] = {.r = colours[i].r, .g = colours[i].g, .b = colours[i].b};
    return made;
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
                              .pointer_shown = !options.kiosk || wish.reader == screen::Reader::Desk,
                              .wait_for_refresh = first,  // two waits in one turn would halve the rate of both
                              .takes_keyboard = wish.reader != screen::Reader::Far};
    if (!options.windows_px.empty())
        std::tie(window.width_px, window.height_px) = options.windows_px[std::min(wish.place, options.windows_px.size() - 1)];
    auto opened = device::Window::open(window);
    if (!opened) return stop(opened.error());
    Stage stage(*std::move(opened), theme(options, stock, wish.reader), stock, wish);
    stage.line_ = by_line(options, wish);
    stage.unit_ = by_unit(stock, wish);
    stage.screens_ = screens_path(options);
    stage.window_.tell(stage.told());
    if (const auto failure = stage.fit()) return *failure;
    return stage;
}

Stage::Stage(device::Window window, screen::Theme theme, const Stock& stock, const Wish& wish)
    : window_(std::move(window)),
      reader_(wish.reader),
      seat_(wish.seat),
      words_(stock.words),
      theme_(theme),
      palette_(painted(theme, screen::Light::Full)),
      hand_(stock.unit.hand == intake::Hand::Left ? screen::Hand::Left : screen::Hand::Right) {}

void Stage::light(screen::Light light) {
    if (std::exchange(light_, light) == light) return;
    palette_ = painted(theme_, light);
    forget();
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
    if (seat.screen) window_.tell(told());
    return moves && seat.screen ? fit() : std::nullopt;
}

std::optional<device::Screen> Stage::glass() const {
    const auto all = device::screens();
    if (!all || all->empty()) return std::nullopt;
    const std::size_t at = seat_.screen.value_or(0);
    return (*all)[at < all->size() ? at : 0];
}

std::optional<device::GlassSize> Stage::told() const {
    const auto here = glass();
    if (line_ || !here) return line_ ? line_ : unit_;
    const auto measured = measured_size(screens_, *here);
    return measured ? measured : unit_;
}

void Stage::begin_measuring() {
    const auto here = glass();
    if (!here) return;
    const double scale = window_.px_per_mm().value_or(px_per_mm_unknown);
    measuring_ = screen::measuring(here->name, here->report.width_px, here->report.height_px, scale);
    measuring_->told_otherwise = line_.has_value();
    measuring_->left_out.assign(told_.begin(), told_.end());
}

Try<std::string> Stage::work_measuring(const screen::Show& show) {
    if (!measuring_) return std::string();
    if (show.page == "measure-step") measuring_ = screen::stepped(*measuring_, std::atoi(show.argument.c_str()));
    if (show.page == "measure-use") return use_measured();
    if (show.page == "measure-leave") leave_measuring();
    return std::string();
}

/// Kept for the next start, and used from now on.
Try<std::string> Stage::use_measured() {
    const screen::Glass size = screen::glass_of(*measuring_);
    const device::GlassSize lit{.width_mm = size.width_mm, .height_mm = size.height_mm};
    const auto here = glass();
    leave_measuring();
    if (!here) return std::string();
    const auto failure =
        screens_.empty() ? std::optional<std::string>("there is no configuration folder") : keep_size(screens_, *here, lit);
    window_.tell(line_ ? line_ : std::optional(lit));
    if (auto stopped = fit()) return *std::move(stopped);
    if (failure) spdlog::warn("the measured size is not kept: {}", *failure);
    return failure ? words_("measure.not_kept")
                   : words_("measure.kept", {fmt::format("{:.0f}", lit.width_mm), fmt::format("{:.0f}", lit.height_mm)});
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
    for (const auto* texts : {&frame.short_of, &frame.gave_way}) {
        for (const std::string& text : *texts) {
            if (told_.insert(text).second) spdlog::warn("the {} screen is too small for: {}", name(reader_), text);
        }
    }
}

}  // namespace graftside
