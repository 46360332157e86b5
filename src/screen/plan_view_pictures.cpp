// The thickness map and the wall profile of a plan, from its readings. Where the thickness is not known nothing is shown:
// between readings on the cut alone, the rise from centre to edge is carried no farther than stands beside it.
#include "eye/surface.hpp"
#include "eye/wall.hpp"
#include "plan/wall.hpp"
#include "screen/plan_view.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <functional>
#include <numbers>

namespace screen {
namespace {

std::size_t place_in(int across, int row, int column) {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(across) + static_cast<std::size_t>(column);
}

using picture::Point;
using picture::ThicknessField;

constexpr int across = 61;                   // of the field's grid, a fifth of a millimetre apart
constexpr double beyond_cut_mm = 0.5;        // past the cut, where a central reading carries the inside
constexpr double beside_cut_mm = 0.75;       // to either side of the cut, where nothing was read in the middle
constexpr std::int64_t on_cut_nm = 250'000;  // formats.md's: a ring this near the host diameter counts as on the cut
constexpr std::size_t most_bands = 8;

double rise(double r_mm) { return 1 + eye::thickness_rise_per_mm2 * r_mm * r_mm; }

bool on_the_cut(const plan::Reading& reading, const plan::CaseFile& file) {
    return std::abs((reading.ring - file.host_diameter).nm()) <= on_cut_nm;
}

Point about(Point centre, double radius, double deg) {
    const double turn = deg * std::numbers::pi / 180;
    return {centre.x + radius * std::cos(turn), centre.y + radius * std::sin(turn)};
}

Point cut_centre(const plan::CaseFile& file) { return {file.centre_x.mm(), file.centre_y.mm()}; }

/// Distance to the limbus as near as a picture needs it, negative outside.
double to_limbus(const plan::CaseFile& file, Point at) {
    const double a = file.white_to_white_horizontal.mm() / 2, b = file.white_to_white_vertical.mm() / 2;
    return (1 - std::hypot(at.x / a, at.y / b)) * std::min(a, b);
}

/// Thickness in um at a place, and mm to the edge of what is known.
struct Known {
    double um = 0, inside = -1;
};
using FieldOf = std::function<Known(Point)>;

/// Between the two whole degrees beside a direction.
double profile_at(const plan::Wall& wall, double deg) {
    const double from = std::floor(deg);
    const auto index = [](double d) { return static_cast<std::size_t>(((static_cast<int>(d) % 360) + 360) % 360); };
    const double a = wall.profile[index(from)].um(), b = wall.profile[index(from + 1)].um();
    return a + (b - a) * (deg - from);
}

/// From readings on the cut: the wall there, and inside it the quadratic rise that meets it.
FieldOf from_circle(const plan::CaseFile& file, const plan::Wall& wall) {
    const double radius = file.host_diameter.mm() / 2;
    const bool central = file.thickness.central.has_value();
    const double middle = central ? file.thickness.central->um() : wall.mean.um() / rise(radius);
    return [=](Point at) {
        const Point centre = cut_centre(file);
        const double x = at.x - centre.x, y = at.y - centre.y, r = std::hypot(x, y), share = r / radius;
        const double edge = profile_at(wall, std::atan2(y, x) * 180 / std::numbers::pi);
        const double inside = central ? radius + beyond_cut_mm - r : beside_cut_mm - std::abs(r - radius);
        return Known{.um = middle + (edge - middle) * share * share, .inside = inside};
    };
}

FieldOf from_centre(const plan::CaseFile& file) {
    const double central = file.thickness.central->um();
    return [=](Point at) { return Known{.um = central * rise(std::hypot(at.x, at.y)), .inside = 1e3}; };
}

eye::Point on_eye(Point at) { return {.x = measure::from_mm(at.x), .y = measure::from_mm(at.y)}; }

ThicknessField sampled(const plan::CaseFile& file, const FieldOf& field) {
    const double half = std::max(file.white_to_white_horizontal, file.white_to_white_vertical).mm() / 2;
    ThicknessField made{.half_mm = half, .across = across};
    for (int row = 0; row < across; ++row) {
        for (int column = 0; column < across; ++column) {
            const Point at{(2.0 * column / (across - 1) - 1) * half, (1 - 2.0 * row / (across - 1)) * half};
            const Known here = field(at);
            made.um.push_back(static_cast<float>(here.um));
            made.known.push_back(static_cast<float>(std::min(here.inside, to_limbus(file, at))));
        }
    }
    return made;
}

/// Known or not, smoothed over the neighbours: the edge of a surface's support has no closed form.
void smooth(ThicknessField& field) {
    const std::vector<float> before = field.known;
    const double cell = 2 * field.half_mm / (across - 1);
    for (int row = 0; row < across; ++row) {
        for (int column = 0; column < across; ++column) {
            double sum = 0;
            for (int r = row - 1; r <= row + 1; ++r) {
                for (int c = column - 1; c <= column + 1; ++c) {
                    const bool off = r < 0 || c < 0 || r >= across || c >= across;
                    sum += !off && before[place_in(across, r, c)] > 0 ? 1 : -1;
                }
            }
            field.known[place_in(across, row, column)] = static_cast<float>(sum / 9 * cell * 1.5);
        }
    }
}

ThicknessField from_surface(const plan::CaseFile& file, const eye::Surface& surface) {
    ThicknessField made = sampled(file, [&](Point at) {
        const eye::Estimate here = surface.at(on_eye(at));
        return Known{.um = here.thickness.um(), .inside = here.supported ? 1.0 : -1.0};
    });
    smooth(made);
    return made;
}

ThicknessField field_of(const plan::CaseFile& file, const plan::Wall& wall) {
    if (wall.basis == "circle" && wall.profile.size() == 360) return sampled(file, from_circle(file, wall));
    if (wall.basis == "centre" && file.thickness.central) return sampled(file, from_centre(file));
    const auto fitted = wall.basis == "map" ? plan::surface_from(file) : std::nullopt;
    return fitted ? from_surface(file, *fitted) : ThicknessField{};
}

/// Whole steps round what is known, as fine as goes into so many bands.
void band(picture::ThicknessMap& map) {
    double low = 1e9, high = -1e9;
    for (std::size_t i = 0; i < map.field.um.size(); ++i) {
        if (map.field.known[i] <= 0) continue;
        low = std::min(low, static_cast<double>(map.field.um[i]));
        high = std::max(high, static_cast<double>(map.field.um[i]));
    }
    if (high < low) return;
    for (const int step : {10, 20, 50, 100, 200}) {
        map.step_um = step;
        map.low_um = static_cast<int>(std::floor(low / step)) * step;
        map.high_um = std::max(map.low_um + step, static_cast<int>(std::ceil(high / step)) * step);
        if (static_cast<std::size_t>((map.high_um - map.low_um) / step) <= most_bands) return;
    }
}

/// Half of the 95 % band at each degree.
std::vector<double> half_bands(const plan::CaseFile& file) {
    std::vector<double> half = plan::wall_from(file).u_round_um;
    for (double& u_um : half) u_um *= 1.96;
    return half;
}

}  // namespace

picture::ThicknessMap thickness_map(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words) {
    const plan::CaseFile& file = inputs.file;
    picture::ThicknessMap made{.limbus_across = file.white_to_white_horizontal,
                               .limbus_upright = file.white_to_white_vertical,
                               .cut = file.host_diameter,
                               .cut_x = file.centre_x,
                               .cut_y = file.centre_y,
                               .unit = words("plan-view.um"),
                               .turned = words("plan-view.turned")};
    const bool circle = plan.wall && plan.wall->basis == "circle";
    if (file.thickness.central) made.measured.push_back({});
    for (const plan::Reading& one : file.thickness.readings) {
        const Point centre = circle && on_the_cut(one, file) ? cut_centre(file) : Point{};
        made.measured.push_back(about(centre, one.ring.mm() / 2, one.at.deg()));
    }
    if (!plan.wall) return made;
    if (plan.wall->thinnest_at) made.thinnest = about(cut_centre(file), file.host_diameter.mm() / 2, plan.wall->thinnest_at->deg());
    made.field = field_of(file, *plan.wall);
    band(made);
    return made;
}

picture::WallProfile wall_profile(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words) {
    picture::WallProfile made{.title = words("plan-view.profile"), .unit = words("plan-view.um")};
    if (!plan.wall || plan.wall->profile.size() != 360) return made;
    const plan::CaseFile& file = inputs.file;
    for (const measure::Length at : plan.wall->profile) made.um.push_back(at.um());
    made.half_um = half_bands(file);
    if (plan.wall->thinnest_at) made.thinnest = {.deg = plan.wall->thinnest_at->deg(), .um = plan.wall->thinnest.um()};
    if (plan.wall->basis != "circle") return made;
    for (const plan::Reading& one : file.thickness.readings) {
        if (!on_the_cut(one, file)) continue;
        const double carried = one.thickness.um() * rise(file.host_diameter.mm() / 2) / rise(one.ring.mm() / 2);
        made.measured.push_back({.deg = one.at.deg(), .um = carried});
    }
    return made;
}

}  // namespace screen
