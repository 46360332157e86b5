#include "app.hpp"

#include "commands.hpp"
#include "device/clocks.hpp"
#include "device/environment.hpp"
#include "device/files.hpp"
#include "device/renderer.hpp"
#include "device/window.hpp"
#include "measure/overloaded.hpp"
#include "screen/theme.hpp"
#include "screen/touch.hpp"
#include "session.hpp"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <set>
#include <tuple>

namespace graftside {
namespace {

constexpr double px_per_mm_unknown = 96.0 / 25.4;  // the desktop's convention where no screen tells
constexpr double lively_s = 1.0 / 60.0;

Stop stop(const device::Failure& failure) { return graftside::stop(Exit::Machine, device::text(failure)); }

/// A window with all that is made for its size.
class Stage {
public:
    static Try<Stage> make(const Options& options, const Stock& stock) {
        device::WindowWish wish{.title = "graftside", .full_screen = !options.window_px, .screen = options.monitor};
        if (options.window_px) std::tie(wish.width_px, wish.height_px) = *options.window_px;
        if (options.screen_mm) wish.told = device::GlassSize{.width_mm = options.screen_mm->first, .height_mm = options.screen_mm->second};
        auto opened = device::Window::open(wish);
        if (!opened) return stop(opened.error());
        Stage stage(*std::move(opened), stock);
        if (const auto failure = stage.fit()) return *failure;
        return stage;
    }

    device::Window& window() { return window_; }
    bool size_known() const { return window_.px_per_mm().has_value(); }
    const screen::Canvas& canvas() const { return canvas_; }

    /// Lettering and layout for the size the window has now.
    std::optional<Stop> fit() {
        const double px_per_mm = window_.px_per_mm().value_or(px_per_mm_unknown);
        window_.measure_by(px_per_mm);
        canvas_.glass = {.width_mm = window_.width_px() / px_per_mm, .height_mm = window_.height_px() / px_per_mm, .hand = hand_};
        canvas_.type = screen::table_typography(canvas_.glass);
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

    /// Draws what differs from what stands on the glass; targets are those of the newest frame in any case.
    bool show(const screen::View& view, const screen::Finger& finger) {
        canvas_.finger = finger;
        screen::Frame frame = screen::draw(view, canvas_);
        const bool changed = frame.shapes != shown_.shapes;
        tell_short_of(frame);
        shown_ = std::move(frame);
        if (changed) renderer_->draw(window_, shown_.shapes, palette_);
        return changed;
    }
    const screen::Frame& shown() const { return shown_; }
    /// What stood on the glass is gone: the next frame is drawn in any case.
    void forget() { shown_.shapes.clear(); }

private:
    Stage(device::Window window, const Stock& stock)
        : window_(std::move(window)), hand_(stock.unit.hand == intake::Hand::Left ? screen::Hand::Left : screen::Hand::Right) {
        const screen::Palette colours = screen::palette(screen::Theme::Dark);
        for (std::size_t i = 0; i < colours.size(); ++i) palette_[i] = {.r = colours[i].r, .g = colours[i].g, .b = colours[i].b};
    }

    /// What this display is too small for, said once each; it is left out, never shrunk.
    void tell_short_of(const screen::Frame& frame) {
        for (const std::string& text : frame.short_of) {
            if (told_.insert(text).second) spdlog::warn("this screen is too small for: {}", text);
        }
    }

    device::Window window_;
    std::set<std::string> told_{};
    std::optional<device::Renderer> renderer_{};
    device::Palette palette_{};
    screen::Hand hand_;
    screen::Canvas canvas_{};
    screen::Frame shown_{};
};

class Loop {
public:
    Loop(const Options& options, Session session, Stage stage)
        : options_(options), session_(std::move(session)), stage_(std::move(stage)) {}

    Exit run() {
        while (!session_.wants_to_quit() && !closed_) {
            if (const auto failure = draw()) return tell(*failure);
            stage_.window().wait(settled_ ? to_next_second() : lively_s);
            for (const device::Event& event : stage_.window().poll()) take(event);
            act(touch_.tick(device::monotonic_ms()), device::now());
            session_.tick(device::now());
        }
        return Exit::Fine;
    }

private:
    std::optional<Stop> draw() {
        if (resized_) {
            resized_ = false;
            if (auto failure = stage_.fit()) return failure;
        }
        const std::int64_t ms = device::monotonic_ms();
        settled_ = !touch_.lively(ms);
        if (picture_owed_ && settled_) stage_.forget();
        if (!stage_.show(session_.view(device::now()), touch_.finger(ms))) return std::nullopt;
        picture_owed_ = !options_.pictures.empty() && !settled_;
        if (!options_.pictures.empty() && settled_) keep_picture();
        stage_.window().present();
        return std::nullopt;
    }

    /// For journeys: what stands on the glass, and where its targets are, in millimetres.
    void keep_picture() {
        const std::string path = fmt::format("{}/frame-{:05}", options_.pictures, ++pictures_);
        std::string targets{};
        for (const screen::Touchable& one : stage_.shown().touchables) {
            const std::string press = !one.target.why_not.empty() ? "dead" : (one.target.press == screen::Press::Hold ? "hold" : "tap");
            targets += fmt::format("{} {:.1f} {:.1f} {}\n", one.target.id, one.box.centre().x, one.box.centre().y, press);
        }
        const auto picture = device::save_png(path + ".png", stage_.window().pixels());
        const auto listed = device::write_file(options_.pictures + "/targets.txt", fmt::format("frame-{:05}\n{}", pictures_, targets));
        if (!picture || !listed) spdlog::warn("a picture was not written: {}", device::text(picture ? listed.error() : picture.error()));
    }

    /// Clocks on the glass change with the wall clock's second.
    static double to_next_second() { return static_cast<double>(1000 - device::now().utc_ms % 1000) / 1000.0 + 0.005; }

    void take(const device::Event& event) {
        std::visit(measure::overloaded{
                       [&](const device::Pressed& press) {
                           const auto outcome = touch_.press(stage_.shown().touchables, {press.x_mm, press.y_mm}, press.time_ms);
                           act(outcome, measure::earlier(device::now(), press.age_ms));
                       },
                       [&](const device::Released& released) { act(touch_.release(released.time_ms), device::now()); },
                       [&](const device::Moved& moved) {
                           touch_.move({moved.x_mm, moved.y_mm});
                       },
                       [&](const device::Character&) {},
                       [&](const device::Key&) {},
                       [&](const device::Resized&) { resized_ = true; },
                       [&](const device::Exposed&) { stage_.forget(); },
                       [&](const device::Closed&) { closed_ = true; },
                   },
                   event);
    }

    void act(const screen::Outcome& outcome, const measure::Instant& at) {
        if (const auto* counted = std::get_if<screen::Counted>(&outcome)) session_.touched(counted->target, at);
        if (const auto* bounced = std::get_if<screen::Bounced>(&outcome)) session_.bounced(bounced->target);
    }

    Options options_;
    Session session_;
    Stage stage_;
    screen::Touch touch_{};
    bool settled_ = true;  // the frame last drawn is one that stays
    bool resized_ = false, closed_ = false, picture_owed_ = false;
    int pictures_ = 0;
};

}  // namespace

Exit run_window(const Options& options, const std::string& case_path) {
    auto stock = load_stock(options);
    if (!stock) return tell(stock.error());
    auto session = Session::start(options, *stock, case_path, device::now());
    if (!session) return tell(session.error());
    auto stage = Stage::make(options, *stock);
    if (!stage) return tell(stage.error());
    if (!stage->size_known()) session->notice(stock->words("banner.size_unknown"));
    Loop loop(options, *std::move(session), *std::move(stage));
    return loop.run();
}

}  // namespace graftside
