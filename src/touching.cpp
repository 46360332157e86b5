#include "touching.hpp"

namespace graftside {

screen::Outcome meet(screen::Touch& touch, const screen::Frame& shown, const device::Event& event) {
    if (const auto* press = std::get_if<device::Pressed>(&event))
        return touch.press(shown.touchables, {press->x_mm, press->y_mm}, press->time_ms);
    if (const auto* lifted = std::get_if<device::Released>(&event)) return touch.release(lifted->time_ms);
    if (const auto* moved = std::get_if<device::Moved>(&event)) touch.move({moved->x_mm, moved->y_mm});
    return screen::Nothing{};
}

void carry_out(Session& session, const screen::Outcome& outcome, const measure::Instant& at) {
    if (const auto* counted = std::get_if<screen::Counted>(&outcome)) session.touched(counted->target, at);
    if (const auto* bounced = std::get_if<screen::Bounced>(&outcome)) session.bounced(bounced->target);
}

}  // namespace graftside
