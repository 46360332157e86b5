#include "app.hpp"

#include "commands.hpp"
#include "desk.hpp"
#include "device/awake.hpp"
#include "device/clocks.hpp"
#include "device/files.hpp"
#include "measure/expect.hpp"
#include "measure/overloaded.hpp"
#include "pedal.hpp"
#include "session.hpp"
#include "stage.hpp"
#include "touching.hpp"
#include "voice.hpp"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <algorithm>

namespace graftside {
namespace {

constexpr double lively_s = 1.0 / 60.0;

std::vector<std::string> screen_names() {
    std::vector<std::string> names{};
    const auto all = device::screens();
    for (const device::Screen& screen : all ? *all : std::vector<device::Screen>{}) names.push_back(screen.name);
    return names;
}

/// One window a view, the most important first: it is seen whatever happens to the screens.
Try<std::vector<Stage>> stages(const Options& options, const Stock& stock) {
    std::vector<Stage::Wish> wishes{};
    for (const auto reader : {screen::Reader::Table, screen::Reader::Desk, screen::Reader::Far}) {
        const auto found = std::find(options.views.begin(), options.views.end(), reader);
        if (found == options.views.end()) continue;
        const auto place = static_cast<std::size_t>(found - options.views.begin());
        const int screen = place < options.monitors.size() ? options.monitors[place] : static_cast<int>(place);
        wishes.push_back({.reader = reader, .place = place, .seat = {.wished = screen}});
    }
    std::vector<device::Seat> seats{};
    for (const Stage::Wish& wish : wishes) seats.push_back(wish.seat);
    seats = device::seated(std::move(seats), screen_names());
    std::vector<Stage> made{};
    for (std::size_t i = 0; i < wishes.size(); ++i) {
        wishes[i].seat = seats[i];
        auto stage = Stage::make(options, stock, wishes[i]);
        if (!stage) return stage.error();
        made.push_back(*std::move(stage));
    }
    return made;
}

class Loop {
public:
    Loop(const Options& options, Session session, std::vector<Stage> stages)
        : options_(options),
          session_(std::move(session)),
          stages_(std::move(stages)),
          desk_(session_),
          pedal_(session_.stock().unit.foot_switch),
          voice_(options, session_.stock()) {
        if (!voice_.trouble().empty()) {
            spdlog::warn("{}", voice_.trouble());
            session_.no_sound();
        }
        tell_lost();
        tell_unknown();
    }

    Exit run() {
        while (!session_.wants_to_quit() && !closed_) {
            if (const auto failure = seat()) return tell(*failure);
            const measure::Instant now = device::now();
            for (Stage& stage : stages_) {
                if (const auto failure = draw(stage, now)) return tell(*failure);
            }
            stages_.front().window().wait(pause());
            for (Stage& stage : stages_) {
                for (const device::Event& event : stage.window().poll()) take(stage, event);
                tick(stage, device::monotonic_ms());
            }
            if (failed_) return tell(*failed_);
            session_.tick(device::now());
            awake_.keep(session_.under_way());
            if (!voice_.say(session_.to_say(), session_.loudness())) session_.notice(session_.stock().words("banner.not_said"));
        }
        return Exit::Fine;
    }

private:
    /// All views are made of the same state at the same moment.
    screen::View view(const Stage& stage, const measure::Instant& now) const {
        const screen::Words& words = session_.stock().words;
        if (stage.measuring()) return screen::told(screen::measure_page(*stage.measuring(), words), session_.around(now), words);
        switch (stage.reader()) {
            case screen::Reader::Table:
                return table_view(session_, desk_, now);
            case screen::Reader::Desk:
                return desk_.view(now);
            case screen::Reader::Far:
                return session_.far(now);
        }
        measure::expect(false);
        return session_.view(now);
    }

    /// Whether keys that come to a window are the Desk's.
    bool keyed(const Stage& stage) const {
        if (stage.measuring()) return false;
        return stage.reader() == screen::Reader::Desk || (stage.reader() == screen::Reader::Table && session_.alone());
    }
    /// What a key holds or has just pressed: apart from the finger on the same glass.
    screen::Touch& key_touch(Stage& stage) { return stage.reader() == screen::Reader::Desk ? stage.touch() : keys_; }

    std::optional<Stop> draw(Stage& stage, const measure::Instant& now) {
        if (stage.window().hidden()) return std::nullopt;
        if (auto failure = stage.fit_if_resized()) return failure;
        stage.light(session_.dimmed() ? screen::Light::Dimmed : screen::Light::Full);
        const std::int64_t ms = device::monotonic_ms();
        const bool settled = !stage.touch().lively(ms);
        if (stage.picture_owed && settled) stage.forget();
        if (!stage.show(view(stage, now), stage.touch().finger(ms))) return std::nullopt;
        stage.picture_owed = !options_.pictures.empty() && !settled;
        if (!options_.pictures.empty() && settled) keep_picture(stage);
        stage.window().present();
        return std::nullopt;
    }

    /// For journeys: what stands on the glass, how many presses came before it, and where its targets are, in millimetres. The first
    /// view's files bear no name.
    void keep_picture(Stage& stage) {
        const std::string first = &stage == &stages_.front() ? "" : name(stage.reader()) + "-";
        const std::string frame = fmt::format("{}frame-{:05}", first, ++stage.pictures);
        std::string targets{};
        for (const screen::Touchable& one : stage.shown().touchables) {
            const std::string press = !one.target.why_not.empty() ? "dead" : (one.target.press == screen::Press::Hold ? "hold" : "tap");
            targets += fmt::format("{} {:.1f} {:.1f} {}\n", one.target.id, one.box.centre().x, one.box.centre().y, press);
        }
        const auto picture = device::save_png(fmt::format("{}/{}.png", options_.pictures, frame), stage.window().pixels());
        const auto listed = device::write_file(fmt::format("{}/{}targets.txt", options_.pictures, first),
                                               fmt::format("{} {}\n{}", frame, presses_, targets));
        if (!picture || !listed) spdlog::warn("a picture was not written: {}", device::text(picture ? listed.error() : picture.error()));
    }

    /// How long nothing need be done: clocks on the glass change with the wall clock's second.
    double pause() const {
        const std::int64_t ms = device::monotonic_ms();
        const auto lively = [ms](const Stage& stage) { return stage.touch().lively(ms); };
        if (desk_.listening() || std::any_of(stages_.begin(), stages_.end(), lively)) return lively_s;
        return static_cast<double>(1000 - device::now().utc_ms % 1000) / 1000.0 + 0.005;
    }

    void take(Stage& stage, const device::Event& event) {
        const bool at_desk = keyed(stage);
        const auto met = [&] { return meet(stage.touch(), stage.shown(), event); };
        std::visit(measure::overloaded{
                       [&](const device::Pressed& press) {
                           ++presses_;
                           act(stage, met(), measure::earlier(device::now(), press.age_ms));
                       },
                       [&](const device::Released&) { act(stage, met(), device::now()); },
                       [&](const device::Moved&) { met(); },
                       [&](const device::Character& character) {
                           if (at_desk) desk_.character(character, key_touch(stage));
                       },
                       [&](const device::Key& key) { take_key(stage, key); },
                       [&](const device::KeyUp&) {
                           if (at_desk) desk_.key_up(key_touch(stage), device::monotonic_ms());
                       },
                       [&](const device::Resized&) { stage.resized = true; },
                       [&](const device::Exposed&) { stage.forget(); },
                       [&](const device::ScreensChanged&) { screens_changed_ = true; },
                       [&](const device::Closed&) { closed_ = closed_ || (&stage == &stages_.front() && !kept_open()); },
                   },
                   event);
    }

    /// On a station of its own, nothing from outside closes a case that stands open.
    bool kept_open() const { return options_.kiosk && session_.under_way(); }

    /// The pedal's key is the pedal's in every window, and nothing else's.
    void take_key(Stage& stage, const device::Key& key) {
        if (pedal_.is(key)) {
            session_.pedal(pedal_.press(key), measure::earlier(device::now(), device::monotonic_ms() - key.time_ms));
        } else if (stage.measuring()) {
            if (key.name == device::KeyName::Escape) stage.leave_measuring();
        } else if (keyed(stage)) {
            desk_.key(key, key_touch(stage));
        }
    }

    void tick(Stage& stage, std::int64_t ms) {
        if (keyed(stage)) desk_.tick(key_touch(stage), ms);
        if (keyed(stage) && desk_.asks_to_measure()) stage.begin_measuring();
        if (stage.reader() != screen::Reader::Desk || stage.measuring()) act(stage, stage.touch().tick(ms), device::now());
    }

    void act(Stage& stage, const screen::Outcome& outcome, const measure::Instant& at) {
        if (const screen::Show* asked = asks_to_measure(stage, outcome)) return work_measuring(stage, *asked);
        if (stage.measuring()) return;
        if (stage.reader() == screen::Reader::Desk) return desk_.take(outcome, at);
        carry_out(session_, desk_, outcome, at);
    }

    /// What a counted target asks of the measuring of its screen; none: it asks nothing.
    static const screen::Show* asks_to_measure(const Stage& stage, const screen::Outcome& outcome) {
        const auto* counted = std::get_if<screen::Counted>(&outcome);
        const auto* show = counted == nullptr ? nullptr : std::get_if<screen::Show>(&counted->target.act);
        return show != nullptr && (stage.measuring() || show->page == "measure") ? show : nullptr;
    }

    void work_measuring(Stage& stage, const screen::Show& asked) {
        if (asked.page == "measure") return stage.begin_measuring();
        const auto done = stage.work_measuring(asked);
        if (!done) {
            failed_ = done.error();
        } else if (!done->empty()) {
            session_.notice(*done);
            tell_unknown();
        }
    }

    /// After a screen came or went: every window to its own, the Table view to any that is left.
    std::optional<Stop> seat() {
        if (!std::exchange(screens_changed_, false) || !options_.windows_px.empty()) return std::nullopt;
        std::vector<device::Seat> seats{};
        for (const Stage& stage : stages_) seats.push_back(stage.seat());
        seats = device::seated(std::move(seats), screen_names());
        for (std::size_t i = stages_.size(); i-- > 0;) {  // the first last, so that it lies on top
            if (auto failure = stages_[i].move_to(seats[i])) return failure;
        }
        tell_lost();
        return std::nullopt;
    }

    /// Which views have no screen of their own; in windows of a given size there is none to miss.
    void tell_lost() {
        if (!options_.windows_px.empty()) return;
        std::vector<device::Seat> seats{};
        for (const Stage& stage : stages_) seats.push_back(stage.seat());
        std::vector<std::string> views{};
        for (const std::size_t i : device::without_own(seats, screen_names())) views.push_back(name(stages_[i].reader()));
        session_.screens_lost(views);
    }

    void tell_unknown() {
        session_.size_unknown(std::any_of(stages_.begin(), stages_.end(), [](const Stage& stage) { return !stage.size_known(); }));
    }

    Options options_;
    Session session_;
    std::vector<Stage> stages_;
    Desk desk_;
    Pedal pedal_;
    Voice voice_;
    screen::Touch keys_{};
    int presses_ = 0;  // told with each kept picture
    device::Awake awake_{};
    std::optional<Stop> failed_{};
    bool closed_ = false, screens_changed_ = false;
};

}  // namespace

Exit run_window(const Options& options, const std::string& case_path) {
    auto stock = load_stock(options);
    if (!stock) return tell(stock.error());
    auto session = Session::start(options, *stock, case_path, device::now());
    if (!session) return tell(session.error());
    auto made = stages(options, *stock);
    if (!made) return tell(made.error());
    Loop loop(options, *std::move(session), *std::move(made));
    return loop.run();
}

}  // namespace graftside
