// A drawn view as data: shapes to paint and targets to touch, in millimetres on the glass. Made by pure draw functions,
// so that what a finger would meet can be tested and measured without a window.
#pragma once

#include "screen/model.hpp"
#include "screen/typography.hpp"

#include <vector>

namespace screen {

struct Touchable {
    Target target{};
    picture::Box box{};
};

struct Frame {
    picture::Shapes shapes{};
    std::vector<Touchable> touchables{};
    std::vector<std::string> short_of{};  // what does not fit this display, in words; shown, never shrunk silently
    std::vector<std::string> gave_way{};  // lines that only explain the target above them and would have crowded it
};

/// What passes on the glass while a finger is on it.
struct Finger {
    std::string holding{};  // id of the target held
    double held = 0;        // 0 to 1 of the hold
    std::string flash{};    // id of the target just tapped
};

/// The display a frame is drawn for.
struct Canvas {
    Glass glass{};
    Typography type{};
    picture::Lettering lettering{};
    Finger finger{};
};

/// Whose view it is: what lettering it is drawn in.
Reader reader(const View& view);

Frame draw(const TableModel& model, const Canvas& canvas);
Frame draw(const PickModel& model, const Canvas& canvas);
Frame draw(const FormModel& model, const Canvas& canvas);
Frame draw(const PlanModel& model, const Canvas& canvas);
Frame draw(const FarModel& model, const Canvas& canvas);
Frame draw(const DeskModel& model, const Canvas& canvas);
Frame draw(const MeasureModel& model, const Canvas& canvas);
Frame draw(const PastModel& model, const Canvas& canvas);
Frame draw(const View& view, const Canvas& canvas);

}  // namespace screen
