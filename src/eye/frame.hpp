// Sides, seats, clock hours and host marks as directions.
// Frame: as one faces the eye, 0 degrees at 3 o'clock, counter-clockwise (ISO 8429), the same for right and left eye.
// A surgeon at the head sees the eye turned by 180 degrees; a temporal seat puts the temporal meridian at the bottom.
#pragma once

#include "measure/angle.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace eye {

using measure::Angle;

enum class Side { Right, Left };
enum class Seat { Head, Temporal };

/// Hour 1 to 12, minute 0 to 59: alpha = 90 - 30 h.
Angle from_clock(int hour, int minute);
/// "7:30" or "12:00"; nothing else is a clock hour.
std::optional<Angle> from_clock_text(std::string_view text);
/// "H:MM", hour 1 to 12, to the nearest minute of the dial (half a degree).
std::string clock_text(Angle at);
/// "7:30", but "6" for a full hour: as it is said and drawn.
std::string short_clock_text(Angle at);

Angle nasal(Side side);
Angle temporal(Side side);
/// The meridian at the bottom of the surgeon's picture, where the surgeon sits.
Angle seat_meridian(Side side, Seat seat);
/// Where a direction of the eye appears in the surgeon's picture: 0 to the right, counter-clockwise, seat at 270.
Angle surgeon_from_eye(Angle at, Side side, Seat seat);

/// Host mark 1 to `marks`, clockwise from 12 o'clock, the whole ring turned counter-clockwise by `offset`.
Angle mark_angle(int mark, int marks, Angle offset);
struct MarkPlace {
    std::optional<int> mark{};                     // on a mark, within half a degree
    std::optional<std::pair<int, int>> between{};  // else the neighbours, clockwise
    int part_permille = 0;                         // how far on from the first of them to the second
    bool operator==(const MarkPlace&) const = default;
};
MarkPlace mark_place(Angle at, int marks, Angle offset);

}  // namespace eye
