#include "eye/frame.hpp"

#include "measure/expect.hpp"

#include <fmt/format.h>

namespace eye {
namespace {

constexpr int top = 9000;  // 12 o'clock
constexpr int turn = 36000;
constexpr int half_a_degree = 50;  // also one minute of the dial: 360 degrees are 720 minutes

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Minutes of the dial clockwise from 12, 0 to 719.
int dial_minute(Angle at) {
    const int clockwise = measure::centideg(top - at.centideg()).centideg();
    return (clockwise + half_a_degree / 2) / half_a_degree % 720;
}

int dial_hour(int minute) { return minute < 60 ? 12 : minute / 60; }

}  // namespace

Angle from_clock(int hour, int minute) { return measure::centideg(top - 3000 * hour - half_a_degree * minute); }

std::optional<Angle> from_clock_text(std::string_view text) {
    const auto colon = text.find(':');
    if (colon == std::string_view::npos || colon < 1 || colon > 2 || text.size() != colon + 3 || text[0] == '0') return std::nullopt;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (i != colon && !is_digit(text[i])) return std::nullopt;
    }
    const int hour = colon == 1 ? text[0] - '0' : (text[0] - '0') * 10 + (text[1] - '0');
    const int minute = (text[colon + 1] - '0') * 10 + (text[colon + 2] - '0');
    if (hour > 12 || minute > 59) return std::nullopt;
    return from_clock(hour, minute);
}

std::string clock_text(Angle at) {
    const int minute = dial_minute(at);
    return fmt::format("{}:{:02}", dial_hour(minute), minute % 60);
}

std::string short_clock_text(Angle at) {
    const int minute = dial_minute(at);
    return minute % 60 == 0 ? fmt::format("{}", dial_hour(minute)) : clock_text(at);
}

Angle nasal(Side side) { return measure::centideg(side == Side::Right ? 0 : turn / 2); }

Angle temporal(Side side) { return measure::centideg(side == Side::Right ? turn / 2 : 0); }

Angle seat_meridian(Side side, Seat seat) { return seat == Seat::Head ? measure::centideg(top) : temporal(side); }

Angle surgeon_from_eye(Angle at, Side side, Seat seat) {
    return measure::centideg(at.centideg() + 27000 - seat_meridian(side, seat).centideg());
}

Angle mark_angle(int mark, int marks, Angle offset) {
    measure::expect(marks > 0);
    return measure::centideg(top + offset.centideg() - ((mark - 1) * turn + marks / 2) / marks);
}

MarkPlace mark_place(Angle at, int marks, Angle offset) {
    if (marks < 1) return {};
    // In units of 1/marks of a hundredth of a degree, so that 7 or 11 marks need no rounding.
    const int clockwise = measure::centideg(top + offset.centideg() - at.centideg()).centideg() * marks;
    const int nearest = (clockwise + turn / 2) / turn;
    const int off = clockwise - nearest * turn;
    if (off <= half_a_degree * marks && -off <= half_a_degree * marks) return {.mark = nearest % marks + 1};
    const int before = clockwise / turn;
    return {.mark = std::nullopt,
            .between = std::pair(before + 1, (before + 1) % marks + 1),
            .part_permille = (clockwise % turn * 10 + turn / 200) / (turn / 100)};
}

}  // namespace eye
