#include "picture/wall_section.hpp"

#include "picture/bounds.hpp"
#include "picture/wrap.hpp"

#include <algorithm>
#include <cmath>

namespace picture {

namespace {

// Kept free above the surface, so that the scale does not change while a blade raised by three spokes comes down.
constexpr int headroom_spokes = 3;
constexpr double least_shank = 0.08;  // of the height: so much of the blade is seen even when it is raised highest
constexpr double tick_mm = 3, plan_tick_mm = 5, after_tick_mm = 1.5;

/// Where depths stand in the box.
struct Scale {
    double x = 0, w = 0;                        // the tissue
    double surface = 0, bottom = 0, spoke = 0;  // mm on the glass
    double at(double spokes) const { return surface + spokes * spoke; }
};

double wall_spokes(const WallSection& section) { return section.wall->um() / section.advance.um(); }

int deepest(const WallSection& section) { return std::max(section.position, section.planned.value_or(section.position)); }

/// How many spokes deep the section is drawn.
double depth_spokes(const WallSection& section) {
    const double blade = section.position + 1.0;
    if (!section.wall) return std::max({deepest(section) + 1.0, blade, 4.0});
    return std::max(wall_spokes(section) + 0.15, blade);
}

/// Width, length of the bevel, and the least shank that is seen of the blade.
double blade_width(double tissue_w) { return std::clamp(tissue_w * 0.13, 3.5, 8.0); }
double bevel(double tissue_w) { return blade_width(tissue_w) * 1.2; }

double number_width(const WallSection& section, const Lettering& lettering) {
    const std::string widest_number = depth_spokes(section) >= 10 ? "10" : "8";
    return std::max(lettering.width(Type::Text, widest_number), lettering.width(Type::Strong, widest_number));
}

Scale scale(const WallSection& section, const Box& box, double foot_h, const Lettering& lettering) {
    const double side = plan_tick_mm + after_tick_mm + number_width(section, lettering);
    const double widest_tissue = lettering.cap(Type::Text) * 13;
    const double w = std::min(box.w - side, widest_tissue);
    const double headroom = std::max(headroom_spokes, -section.position), shank = bevel(w) + std::max(4.0, box.h * least_shank);
    const double spoke = std::max(0.0, box.h - foot_h - shank) / (headroom + depth_spokes(section));
    const double surface = box.y + shank + headroom * spoke;
    return {.x = box.x + (box.w - side - w) / 2, .w = w, .surface = surface, .bottom = box.bottom() - foot_h, .spoke = spoke};
}

void tissue(Shapes& out, const WallSection& section, const Scale& s) {
    const double end = section.wall ? s.at(wall_spokes(section)) : s.bottom;
    out.push_back(Panel{.box = {s.x, s.surface, s.w, end - s.surface}, .fill = Ink::Tissue, .edge = Ink::Tissue});
    if (section.band_low && section.band_high) {
        const double from = std::max(0.0, section.band_low->um() / section.advance.um());
        const double to = section.band_high->um() / section.advance.um();
        const double top = s.at(from), low = std::min(s.at(to), end);
        if (low > top) out.push_back(Panel{.box = {s.x, top, s.w, low - top}, .fill = Ink::Band, .edge = Ink::Band});
    }
    out.push_back(Line{.a = {s.x, s.surface}, .b = {s.x + s.w, s.surface}, .width = 1, .ink = Ink::Cornea});
    if (section.wall) out.push_back(Line{.a = {s.x, end}, .b = {s.x + s.w, end}, .width = 1, .ink = Ink::Cornea});
}

int last_tick(const WallSection& section) {
    return section.wall ? static_cast<int>(std::floor(wall_spokes(section) + 1e-9)) : std::max(deepest(section), 0);
}

/// Numbers stand every 1, 2 or 5 spokes, so that they never touch.
int number_step(const Scale& s, const Lettering& lettering) {
    const double needed = lettering.cap(Type::Text) * 1.3;
    for (const int step : {1, 2, 5}) {
        if (step * s.spoke >= needed) return step;
    }
    return 10;
}

void ticks(Shapes& out, const WallSection& section, const Scale& s, const Lettering& lettering) {
    const double right = s.x + s.w, cap = lettering.cap(Type::Text);
    const int step = number_step(s, lettering);
    const double clear = cap * 1.3;
    for (int n = 0; n <= last_tick(section); ++n) {
        if (section.planned == n) continue;
        out.push_back(Line{.a = {right, s.at(n)}, .b = {right + tick_mm, s.at(n)}, .width = 0.4, .ink = Ink::Mark});
        const bool near_plan = section.planned && std::abs(n - *section.planned) * s.spoke < clear;
        if (n % step != 0 || near_plan) continue;
        out.push_back(Text{
            .at = {right + tick_mm + after_tick_mm, s.at(n) + cap / 2}, .text = std::to_string(n), .type = Type::Text, .ink = Ink::Soft});
    }
}

void plan_line(Shapes& out, const WallSection& section, const Scale& s, const Lettering& lettering) {
    if (!section.planned) return;
    const double y = s.at(*section.planned), right = s.x + s.w;
    out.push_back(Line{.a = {s.x, y}, .b = {right, y}, .width = 0.8, .ink = Ink::Accent, .dash = 2.4, .gap = 1.6});
    out.push_back(Line{.a = {right, y}, .b = {right + plan_tick_mm, y}, .width = 1, .ink = Ink::Accent});
    out.push_back(Text{.at = {right + plan_tick_mm + after_tick_mm, y + lettering.cap(Type::Strong) / 2},
                       .text = std::to_string(*section.planned),
                       .type = Type::Strong,
                       .ink = Ink::Accent});
}

void blade(Shapes& out, const WallSection& section, const Scale& s, const Box& box) {
    const double w = blade_width(s.w), x = s.x + s.w * 0.64, tip = s.at(section.position), shoulder = tip - bevel(s.w);
    out.push_back(
        Polygon{.points = {{x, box.y}, {x + w, box.y}, {x + w, shoulder}, {x + w * 0.75, tip}, {x, shoulder}}, .ink = Ink::Steel});
}

}  // namespace

Shapes draw(const WallSection& section, const Box& box, const Lettering& lettering) {
    if (section.advance.nm() <= 0) return {};
    std::vector<std::string> foot;
    for (const auto& line : section.foot) {
        for (auto& part : wrap(line, Type::Text, box.w, lettering)) foot.push_back(std::move(part));
    }
    const double line_h = pitch(Type::Text, lettering);
    // The captions go first where the section itself would get too low to read.
    const double least_section = line_h * 8;
    if (box.h - line_h * (static_cast<double>(foot.size()) + 0.3) < least_section) foot.clear();
    const double foot_h = foot.empty() ? 0.5 : line_h * (static_cast<double>(foot.size()) + 0.3);
    const Scale s = scale(section, box, foot_h, lettering);

    Shapes out;
    tissue(out, section, s);
    ticks(out, section, s, lettering);
    plan_line(out, section, s, lettering);
    blade(out, section, s, box);
    const double cap = lettering.cap(Type::Text);
    if (lettering.width(Type::Text, section.surface_label) < s.w * 0.64 && s.surface - box.y > cap * 1.8) {
        out.push_back(Text{.at = {s.x, s.surface - cap * 0.6}, .text = section.surface_label, .type = Type::Text, .ink = Ink::Soft});
    }
    const double foot_x = std::max(box.x, std::min(s.x, box.right() - widest(foot, Type::Text, lettering)));
    double y = s.bottom + line_h;
    for (auto& line : foot) {
        out.push_back(Text{.at = {foot_x, y}, .text = std::move(line), .type = Type::Text, .ink = Ink::Soft});
        y += line_h;
    }
    return out;
}

}  // namespace picture
