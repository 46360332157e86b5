// From what comes off a glass to what it does to the session, for the Table view: the loop's part of a tap that needs no window.
#pragma once

#include "device/events.hpp"
#include "screen/touch.hpp"
#include "session.hpp"

namespace graftside {

/// A press, lift or move, met with the frame last shown; every other event is nothing here.
screen::Outcome meet(screen::Touch& touch, const screen::Frame& shown, const device::Event& event);
/// A counted touch does what its target carries; a bounce is told.
void carry_out(Session& session, const screen::Outcome& outcome, const measure::Instant& at);

}  // namespace graftside
