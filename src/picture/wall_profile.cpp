#include "picture/wall_profile.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace picture {

namespace {

constexpr int step_deg = 2;       // of curve and band
constexpr double seam_mm = 0.08;  // neighbours of the band lie over each other by this, so that no seam is seen

/// Where figures stand in the plot.
struct Scale {
    Box plot{};
    double low = 0, high = 1;  // um
    double x(double share) const { return plot.x + share * plot.w; }
    double y(double um) const { return plot.bottom() - (um - low) / (high - low) * plot.h; }
};

std::size_t clockwise(int deg_from_12) { return static_cast<std::size_t>(((90 - deg_from_12) % 360 + 360) % 360); }

constexpr double over_caps = 2, under_caps = 1.9, least_plot_caps = 2;  // cap heights: title, hours, what can still be read

/// What the figures are of; where that has no room their unit alone, never nothing.
const std::string& heading(const WallProfile& profile, const Box& box, const Lettering& lettering) {
    return lettering.width(Type::Text, profile.title) <= box.w ? profile.title : profile.unit;
}

Scale scale(const WallProfile& profile, const Box& box, const Lettering& lettering) {
    const double cap = lettering.cap(Type::Text), top = cap * over_caps, bottom = cap * under_caps;
    Scale made{.low = 1e9, .high = -1e9};
    for (std::size_t deg = 0; deg < profile.um.size(); ++deg) {
        made.low = std::min(made.low, profile.um[deg] - profile.half_um[deg]);
        made.high = std::max(made.high, profile.um[deg] + profile.half_um[deg]);
    }
    for (const auto& place : profile.measured) made.low = std::min(made.low, place.um), made.high = std::max(made.high, place.um);
    const double air = std::max(2.0, 0.06 * (made.high - made.low));
    made.low -= air, made.high += air;
    const double left = lettering.width(Type::Text, "000") + cap * 0.6;
    made.plot = {box.x + left, box.y + top, box.w - left - cap * 0.9, box.h - top - bottom};
    return made;
}

/// The finest whole step whose figures do not touch.
int figure_step(const Scale& scale, double cap) {
    for (const int step : {10, 20, 25, 30, 40, 50, 100, 200}) {
        if (step / (scale.high - scale.low) * scale.plot.h >= cap * 1.7) return step;
    }
    return 500;
}

void figures(Shapes& out, const Scale& scale, const Lettering& lettering) {
    const double cap = lettering.cap(Type::Text);
    const int step = figure_step(scale, cap);
    for (int um = static_cast<int>(std::ceil(scale.low / step)) * step; um <= scale.high; um += step) {
        const double y = scale.y(um);
        out.push_back(Line{.a = {scale.plot.x, y}, .b = {scale.plot.right(), y}, .width = 0.3, .ink = Ink::Line});
        out.push_back(Text{.at = {scale.plot.x - cap * 0.5, y + cap / 2},
                           .text = std::to_string(um),
                           .type = Type::Text,
                           .ink = Ink::Soft,
                           .align = Align::Right});
    }
    for (int quarter = 0; quarter <= 4; ++quarter) {
        constexpr std::array<const char*, 5> hours{"12", "3", "6", "9", "12"};
        const double x = scale.x(quarter / 4.0);
        out.push_back(Line{.a = {x, scale.plot.bottom()}, .b = {x, scale.plot.bottom() + 1}, .width = 0.4, .ink = Ink::Mark});
        out.push_back(Text{.at = {x, scale.plot.bottom() + cap * 1.55},
                           .text = hours[static_cast<std::size_t>(quarter)],
                           .type = Type::Text,
                           .ink = Ink::Soft,
                           .align = Align::Centre});
    }
}

void band(Shapes& out, const WallProfile& profile, const Scale& scale) {
    for (int at = 0; at < 360; at += step_deg) {
        const std::size_t a = clockwise(at), b = clockwise(at + step_deg);
        const double left = scale.x(at / 360.0) - seam_mm, right = scale.x((at + step_deg) / 360.0) + seam_mm;
        out.push_back(Polygon{.points = {{left, scale.y(profile.um[a] + profile.half_um[a])},
                                         {right, scale.y(profile.um[b] + profile.half_um[b])},
                                         {right, scale.y(profile.um[b] - profile.half_um[b])},
                                         {left, scale.y(profile.um[a] - profile.half_um[a])}},
                              .ink = Ink::Band});
    }
}

void curve(Shapes& out, const WallProfile& profile, const Scale& scale) {
    for (int at = 0; at < 360; at += step_deg) {
        const Point from{scale.x(at / 360.0), scale.y(profile.um[clockwise(at)])};
        const Point to{scale.x((at + step_deg) / 360.0), scale.y(profile.um[clockwise(at + step_deg)])};
        out.push_back(Line{.a = from, .b = {to.x, to.y + (from.y == to.y ? 1e-6 : 0)}, .width = 0.8, .ink = Ink::Text});
    }
}

}  // namespace

double least_height(const Lettering& lettering) { return lettering.cap(Type::Text) * (over_caps + least_plot_caps + under_caps); }

double along(double deg) {
    const double turned = std::fmod(90 - deg, 360.0);
    return (turned < 0 ? turned + 360 : turned) / 360;
}

Shapes draw(const WallProfile& profile, const Box& box, const Lettering& lettering) {
    Shapes out;
    const double cap = lettering.cap(Type::Text);
    if (box.h < least_height(lettering)) return out;
    out.push_back(Text{.at = {box.x, box.y + cap}, .text = heading(profile, box, lettering), .type = Type::Text, .ink = Ink::Soft});
    if (profile.um.size() != 360 || profile.half_um.size() != 360) return out;
    const Scale at = scale(profile, box, lettering);
    band(out, profile, at);
    figures(out, at, lettering);
    curve(out, profile, at);
    for (const auto& place : profile.measured)
        out.push_back(Disc{.centre = {at.x(along(place.deg)), at.y(place.um)}, .radius = 1, .ink = Ink::Text});
    if (profile.thinnest) {
        const Point on{at.x(along(profile.thinnest->deg)), at.y(profile.thinnest->um)};
        out.push_back(Ring{.centre = on, .radius = 2.2, .width = 0.9, .ink = Ink::Accent});
    }
    return out;
}

}  // namespace picture
