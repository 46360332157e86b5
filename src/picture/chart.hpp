// Rows of figures over one common axis: quartiles between least and most, a figure with its interval, stretches of time. Each row is
// drawn into a box of its own, so that rows can be turned through while the axis stays. Words beside the rows are the caller's.
#pragma once

#include "picture/lettering.hpp"

#include <string>
#include <variant>
#include <vector>

namespace picture {

struct Axis {
    struct Tick {
        double at = 0;
        std::string label{};
        bool operator==(const Tick&) const = default;
    };
    double low = 0, high = 1;
    std::vector<Tick> ticks{};
    bool operator==(const Axis&) const = default;
};

/// A box from the first quartile to the third with the median in it, on a line from the least to the most.
struct BoxMark {
    double least = 0, q1 = 0, median = 0, q3 = 0, most = 0;
    bool operator==(const BoxMark&) const = default;
};
/// A point with a bar from `low` to `high`; a moment where all three are the same.
struct IntervalMark {
    double at = 0, low = 0, high = 0;
    bool operator==(const IntervalMark&) const = default;
};
/// Stretches from one place on the axis to another.
struct SpanMark {
    struct Span {
        double from = 0, to = 0;
        bool operator==(const Span&) const = default;
    };
    std::vector<Span> spans{};
    bool operator==(const SpanMark&) const = default;
};
using Mark = std::variant<std::monostate, BoxMark, IntervalMark, SpanMark>;

/// Where a value stands in a box; what lies off the axis stands at its end.
double place(const Axis& axis, const Box& box, double value);
/// The lines of the ticks behind a row, then the row's mark.
Shapes draw(const Mark& mark, const Axis& axis, const Box& row, const Lettering& lettering);
/// The labels under the rows, the last and as many as do not touch; the box begins where the rows end.
Shapes labels(const Axis& axis, const Box& under, const Lettering& lettering);

}  // namespace picture
