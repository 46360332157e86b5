#include "screen/touch.hpp"

#include <algorithm>
#include <utility>

namespace screen {
namespace {

bool near(const picture::Box& box, picture::Point at) {
    return picture::Box{box.x - slip_mm, box.y - slip_mm, box.w + 2 * slip_mm, box.h + 2 * slip_mm}.contains(at);
}

bool overlap(const picture::Box& a, const picture::Box& b) {
    return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

}  // namespace

std::int64_t refractory_ms(const Target& last, const Target& now) {
    if (last.weight == Weight::Spoke || last.weight == Weight::Pointer) return 110;
    if (last.weight != Weight::Theatre || last.look != Look::Filled) return 300;
    return now.weight == Weight::Spoke ? double_tap_ms : 2000;
}

void Touch::count(const Target& target, const picture::Box& box, std::int64_t time_ms) {
    last_ = Last{.target = target, .box = box, .time_ms = time_ms};
    held_.reset();
}

Outcome Touch::press(const std::vector<Touchable>& shown, picture::Point at, std::int64_t time_ms) {
    held_.reset();
    const auto hit = std::find_if(shown.begin(), shown.end(), [&](const Touchable& one) { return one.box.contains(at); });
    if (hit == shown.end() || !hit->target.why_not.empty()) return Nothing{};
    const auto hand_ms = std::exchange(hand_ms_, time_ms);
    const bool same_place = last_ && overlap(last_->box, hit->box);
    if (same_place && time_ms - last_->time_ms < refractory_ms(last_->target, hit->target)) return Bounced{hit->target};
    if (!same_place && hand_ms && time_ms - *hand_ms < palm_ms) return Bounced{hit->target};
    if (hit->target.press == Press::Hold) {
        held_ = Held{.target = hit->target, .box = hit->box, .since_ms = time_ms};
        return Nothing{};
    }
    count(hit->target, hit->box, time_ms);
    return Counted{hit->target};
}

Outcome Touch::press(const Target& target, std::int64_t time_ms) {
    held_.reset();
    if (!target.why_not.empty()) return Nothing{};
    if (last_ && last_->target.id == target.id && time_ms - last_->time_ms < refractory_ms(target, target)) return Bounced{target};
    if (target.press == Press::Hold) {
        held_ = Held{.target = target, .box = {}, .since_ms = time_ms};
        return Nothing{};
    }
    count(target, {}, time_ms);
    return Counted{target};
}

void Touch::move(picture::Point at) {
    if (held_ && !near(held_->box, at)) held_.reset();
}

Outcome Touch::release(std::int64_t time_ms) {
    const Outcome done = tick(time_ms);
    held_.reset();
    return done;
}

Outcome Touch::tick(std::int64_t time_ms) {
    if (!held_ || time_ms - held_->since_ms < hold_ms) return Nothing{};
    const Held held = *held_;
    count(held.target, held.box, time_ms);
    return Counted{held.target};
}

Finger Touch::finger(std::int64_t time_ms) const {
    Finger shown{};
    if (held_) {
        shown.holding = held_->target.id;
        shown.held = std::clamp(static_cast<double>(time_ms - held_->since_ms) / static_cast<double>(hold_ms), 0.0, 1.0);
    }
    if (last_ && time_ms - last_->time_ms < flash_ms) shown.flash = last_->target.id;
    return shown;
}

bool Touch::lively(std::int64_t time_ms) const { return held_.has_value() || (last_ && time_ms - last_->time_ms < flash_ms); }

}  // namespace screen
