// From what comes off a glass to what it does to the session, for the Table view: the loop's part of a tap that needs no window.
#pragma once

#include "desk.hpp"
#include "device/events.hpp"
#include "screen/touch.hpp"
#include "session.hpp"

namespace graftside {

/// What the Table view's glass shows: on one screen for two readers with the Desk's drawer in it.
screen::View table_view(const Session& session, const Desk& desk, const measure::Instant& now);
/// A press, lift or move, met with the frame last shown; every other event is nothing here.
screen::Outcome meet(screen::Touch& touch, const screen::Frame& shown, const device::Event& event);
/// A counted touch does what its target carries, in the drawer at the Desk; a bounce is told.
void carry_out(Session& session, Desk& desk, const screen::Outcome& outcome, const measure::Instant& at);

}  // namespace graftside
