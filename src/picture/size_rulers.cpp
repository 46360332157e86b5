#include "picture/size_rulers.hpp"

#include <algorithm>
#include <cmath>

namespace picture {

namespace {

constexpr double tick_mm = 1.8, line_width = 0.6;

/// One scale for both rulers.
struct Scale {
    double low = 0, high = 1;  // mm
    double left = 0, right = 1;
    double x(measure::Length size) const { return left + (size.mm() - low) / (high - low) * (right - left); }
};

void widen(Scale& scale, const SizeRuler& ruler) {
    scale.low = std::min(scale.low, ruler.chosen.mm());
    scale.high = std::max(scale.high, ruler.chosen.mm());
    for (const measure::Length size : ruler.sizes) scale.low = std::min(scale.low, size.mm()), scale.high = std::max(scale.high, size.mm());
}

Scale scale(const SizeRulers& rulers, const Box& box, const Lettering& lettering) {
    Scale made{.low = 1e9, .high = -1e9};
    widen(made, rulers.host);
    widen(made, rulers.donor);
    if (made.high - made.low < 1) made.high = made.low + 1;
    const double edge = lettering.width(Type::Text, "6") / 2 + 1;
    made.left = box.x + edge, made.right = box.right() - edge;
    return made;
}

double rule_y(const Box& half, double cap) { return half.y + cap * 2.55; }

void ruler(Shapes& out, const SizeRuler& of, const Box& half, const Scale& scale, const Lettering& lettering) {
    const double cap = lettering.cap(Type::Text), y = rule_y(half, cap), head = half.y + lettering.cap(Type::Strong);
    const double after = lettering.width(Type::Text, of.label) + cap * 0.6;
    const double room = half.w - after - lettering.width(Type::Strong, of.value) - cap * 0.6;
    const auto say = [&out](Point at, const std::string& text, Type type, Ink ink, Align align) {
        if (!text.empty()) out.push_back(Text{.at = at, .text = text, .type = type, .ink = ink, .align = align});
    };
    say({half.x, head}, of.label, Type::Text, Ink::Soft, Align::Left);
    say({half.x + after, head}, of.value, Type::Strong, Ink::Text, Align::Left);
    const std::string& held = lettering.width(Type::Text, of.held) <= room ? of.held : of.short_held;
    if (lettering.width(Type::Text, held) <= room)
        say({half.right(), head}, held, Type::Text, of.is_held ? Ink::Soft : Ink::Amber, Align::Right);
    out.push_back(Line{.a = {scale.left, y}, .b = {scale.right, y}, .width = line_width, .ink = Ink::Mark});
    for (const measure::Length size : of.sizes) {
        const double x = scale.x(size), up = size.nm() % 1'000'000 == 0 ? tick_mm * 1.5 : tick_mm;
        out.push_back(Line{.a = {x, y - up}, .b = {x, y}, .width = 0.5, .ink = Ink::Soft});
        if (size.nm() % 1'000'000 != 0) continue;
        out.push_back(Text{.at = {x, y + cap * 1.5},
                           .text = std::to_string(size.nm() / 1'000'000),
                           .type = Type::Text,
                           .ink = Ink::Soft,
                           .align = Align::Centre});
    }
}

void chosen(Shapes& out, const SizeRuler& of, const Box& half, const Scale& scale, double cap) {
    const Point at{scale.x(of.chosen), rule_y(half, cap)};
    if (of.is_held) {
        out.push_back(Disc{.centre = at, .radius = 2, .ink = Ink::Accent});
    } else {
        out.push_back(Ring{.centre = at, .radius = 1.7, .width = 0.8, .ink = Ink::Amber});
    }
}

}  // namespace

Shapes draw(const SizeRulers& rulers, const Box& box, const Lettering& lettering) {
    const Scale at = scale(rulers, box, lettering);
    const double cap = lettering.cap(Type::Text);
    const Box upper{box.x, box.y, box.w, box.h / 2}, lower{box.x, box.y + box.h / 2, box.w, box.h / 2};
    Shapes out;
    ruler(out, rulers.host, upper, at, lettering);
    ruler(out, rulers.donor, lower, at, lettering);
    // What the donor is larger by, as a length on its own ruler.
    const double y = rule_y(lower, cap);
    out.push_back(Line{.a = {at.x(rulers.host.chosen), y}, .b = {at.x(rulers.donor.chosen), y}, .width = 1.6, .ink = Ink::Accent});
    out.push_back(Ring{.centre = {at.x(rulers.host.chosen), y}, .radius = 1.7, .width = 0.8, .ink = Ink::Accent});
    chosen(out, rulers.host, upper, at, cap);
    chosen(out, rulers.donor, lower, at, cap);
    return out;
}

}  // namespace picture
