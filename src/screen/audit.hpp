// Looks at a drawn frame as look.md would: sizes of lettering and targets, what lies over what, what leaves the glass.
// Pure; says what is wrong, mends nothing.
#pragma once

#include "screen/frame.hpp"

#include <string>
#include <vector>

namespace screen {

struct Finding {
    enum class Is {
        SmallText,  // under look.md's minimum for its role
        TextOffGlass,
        TextOffPanel,  // reaches out of the panel or target it stands in
        TextsOverlap,
        CrowdsEdge,    // lettering or a sign on the edge of its target, or as good as on it
        SmallTarget,   // under look.md's minimum for its weight
        TargetsClose,  // less than 3 mm apart
        TargetsOverlap,
        TargetsAlike,  // two of one id, or that say the same
        TargetOffGlass,
        CoveredTarget  // something is painted over a target
    } is{};
    std::string what{};
};

/// A name for people.
std::string name(Finding::Is is);
std::vector<Finding> audit(const Frame& frame, const Canvas& canvas);

}  // namespace screen
