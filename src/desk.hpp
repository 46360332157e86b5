// The Desk at work: keys, scans and clicks to what they do. A burst of keys is a scan wherever the Desk stands and never ends up in
// a field; a key alone is an action or a letter. Keys are matched with the actions as they are now, not as last drawn, so that what
// is typed faster than frames are drawn goes where it belongs. What is done here is recorded as the circulating nurse's. It has a
// state, refusals and a touch of its own: nothing here disturbs the Table view.
#pragma once

#include "device/events.hpp"
#include "intake/scan_keys.hpp"
#include "screen/desk.hpp"
#include "screen/drawer.hpp"
#include "screen/touch.hpp"
#include "session.hpp"

namespace graftside {

class Desk {
public:
    /// The session outlives it.
    explicit Desk(Session& session) : session_(&session) {}

    screen::DeskModel view(const measure::Instant& now) const;
    void take(const screen::Outcome& outcome, const measure::Instant& at);

    void character(const device::Character& character, screen::Touch& touch);
    void key(const device::Key& key, screen::Touch& touch);
    void key_up(screen::Touch& touch, std::int64_t time_ms);
    /// Time passes: a burst of keys may have ended.
    void tick(screen::Touch& touch, std::int64_t time_ms);
    /// On one screen for two readers: what the Table view shows of the Desk. Keys and letters do nothing while the drawer is shut; a
    /// scan is taken all the same.
    screen::Drawer drawer(const measure::Instant& now) const;
    std::optional<screen::FormModel> typing_page(const measure::Instant& now) const;
    /// Keys wait to be told apart: the loop must come back soon.
    bool listening() const { return burst_.keys > 0; }
    /// Whether the Desk's own screen is to be measured, since this was last asked.
    bool asks_to_measure() { return std::exchange(measure_, false); }

private:
    void hear(const intake::Key& key, screen::Touch& touch);
    void heard(const intake::Heard& heard, screen::Touch& touch, std::int64_t time_ms);
    void press(const std::string& key, screen::Touch& touch, std::int64_t time_ms);
    void touched(const screen::Target& target, const measure::Instant& at);
    void hand_over(const std::string& format, const measure::Instant& at);
    void act(const std::vector<guide::Intent>& intents, const measure::Instant& at);

    Session* session_;
    screen::DeskState state_{};
    std::optional<std::string> refusal_{}, bounced_{};
    intake::Burst burst_{};
    std::optional<std::int64_t> scanned_ms_{};  // a scan whose Enter is still to come
    bool down_ = false;                         // a key is down: a hold may begin
    bool measure_ = false, drawer_open_ = false;
};

}  // namespace graftside
