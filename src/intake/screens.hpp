// Screens whose size was measured against a bank card, as the program writes them down and reads them again.
//
// [[screen]]   name: as the system names it; pixels = [width, height]; reported_mm = [width, height]: what it says of itself, and by
//              which another one in its place is told from it; glass_mm = [width, height] of the lit glass, as measured
#pragma once

#include "intake/unit.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace intake {

/// Which screen: as far as the system can tell one from another.
struct ScreenId {
    std::string name{};
    int width_px = 0, height_px = 0;
    int reported_width_mm = 0, reported_height_mm = 0;
    bool operator==(const ScreenId&) const = default;
};

struct MeasuredScreen {
    ScreenId screen{};
    Glass glass{};
    bool operator==(const MeasuredScreen&) const = default;
};
using MeasuredScreens = std::vector<MeasuredScreen>;

measure::Result<MeasuredScreens, measure::Problems> read_screens(std::string_view text, const std::string& name);
std::string screens_text(const MeasuredScreens& screens);
/// With this one measured anew.
MeasuredScreens with(MeasuredScreens screens, const MeasuredScreen& measured);

}  // namespace intake
