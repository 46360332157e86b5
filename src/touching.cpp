#include "touching.hpp"

#include "screen/drawer.hpp"

namespace graftside {

screen::View table_view(const Session& session, const Desk& desk, const measure::Instant& now) {
    screen::View view = session.view(now);
    auto* model = std::get_if<screen::TableModel>(&view);
    if (model == nullptr || !session.alone()) return view;
    if (auto page = desk.typing_page(now)) return screen::told(*std::move(page), session.around(now), session.stock().words);
    model->drawer = desk.drawer(now);
    return view;
}

screen::Outcome meet(screen::Touch& touch, const screen::Frame& shown, const device::Event& event) {
    if (const auto* press = std::get_if<device::Pressed>(&event))
        return touch.press(shown.touchables, {press->x_mm, press->y_mm}, press->time_ms);
    if (const auto* lifted = std::get_if<device::Released>(&event)) return touch.release(lifted->time_ms);
    if (const auto* moved = std::get_if<device::Moved>(&event)) touch.move({moved->x_mm, moved->y_mm});
    return screen::Nothing{};
}

void carry_out(Session& session, Desk& desk, const screen::Outcome& outcome, const measure::Instant& at) {
    const auto* counted = std::get_if<screen::Counted>(&outcome);
    const auto* bounced = std::get_if<screen::Bounced>(&outcome);
    if (counted == nullptr && bounced == nullptr) return;
    const screen::Target& target = counted != nullptr ? counted->target : bounced->target;
    if (target.id.starts_with(screen::drawer_prefix)) return desk.take(outcome, at);
    if (counted != nullptr) session.touched(target, at);
    if (bounced != nullptr) session.bounced(target);
}

}  // namespace graftside
