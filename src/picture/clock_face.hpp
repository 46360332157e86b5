// The clock face of the suture order as the surgeon sees it: hours outside the rim, host marks on the rim, donor dots,
// sutures done, the next one or two in discs, where the surgeon sits, nasal and temporal. Labels stay upright.
// On a screen only the next sutures bear a number; on paper all may, inside the cut.
#pragma once

#include "eye/frame.hpp"
#include "picture/lettering.hpp"

#include <string>
#include <vector>

namespace picture {

struct ClockFace {
    eye::Side side{};
    eye::Seat seat{};
    int marks = 16;
    measure::Angle mark_offset{};
    int dots = 4;                        // donor dots; 0: no donor on
    std::vector<measure::Angle> done{};  // sutures in place
    struct Next {
        int n = 0;
        measure::Angle at{};
    };
    std::vector<Next> next{};                                   // at most two, the first is now
    std::vector<Next> numbered{};                               // numbers inside the cut, without a line or a disc
    std::string seat_label{}, nasal_label{}, temporal_label{};  // words; without them, for who reads from afar, the hours alone
};

/// The open eye: the hole in the cornea, with a word in it.
struct OpenEye {
    std::string label{};
};

Shapes draw(const ClockFace& face, const Box& box, const Lettering& lettering);
Shapes draw(const OpenEye& eye, const Box& box, const Lettering& lettering);

}  // namespace picture
