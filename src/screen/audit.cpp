#include "screen/audit.hpp"

#include "measure/expect.hpp"
#include "picture/bounds.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>
#include <optional>

namespace screen {

namespace {

using Findings = std::vector<Finding>;

constexpr double tolerance = 0.05;  // mm
constexpr double least_gap_mm = 3, pointer_gap_mm = 1;
constexpr double least_clear_mm = 0.3;  // between the edge of a target, as it is painted, and what the target bears

double least_gap(const Target& a, const Target& b) {
    return a.weight == Weight::Pointer && b.weight == Weight::Pointer ? pointer_gap_mm : least_gap_mm;
}

struct Placed {
    picture::Text text{};
    Box box{};
};

std::vector<Placed> placed(const Frame& frame, const Canvas& canvas) {
    std::vector<Placed> all;
    for (const auto& shape : frame.shapes) {
        if (const auto* text = std::get_if<picture::Text>(&shape)) all.push_back({*text, picture::bounds(*text, canvas.lettering)});
    }
    return all;
}

std::vector<Box> panels(const Frame& frame) {
    std::vector<Box> all;
    for (const auto& shape : frame.shapes) {
        if (const auto* panel = std::get_if<picture::Panel>(&shape)) all.push_back(panel->box);
    }
    return all;
}

bool within(const Box& inner, const Box& outer) {
    return inner.x >= outer.x - tolerance && inner.y >= outer.y - tolerance && inner.right() <= outer.right() + tolerance &&
           inner.bottom() <= outer.bottom() + tolerance;
}

/// The smallest panel in which the middle of a text lies.
const Box* own_panel(const std::vector<Box>& all, const Box& text) {
    const Box* own = nullptr;
    for (const auto& box : all) {
        if (box.contains(text.centre()) && (own == nullptr || box.w * box.h < own->w * own->h)) own = &box;
    }
    return own;
}

void look_at_texts(Findings& out, const Frame& frame, const Canvas& canvas) {
    const auto all = placed(frame, canvas);
    const auto boxes = panels(frame);
    const Box glass{0, 0, canvas.glass.width_mm, canvas.glass.height_mm};
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto& one = all[i];
        if (canvas.lettering.cap(one.text.type) < minimum_mm(canvas.type.reader, one.text.type) - 1e-9)
            out.push_back({Finding::Is::SmallText, one.text.text});
        if (!within(one.box, glass)) out.push_back({Finding::Is::TextOffGlass, one.text.text});
        const Box* own = own_panel(boxes, one.box);
        if (own != nullptr && !within(one.box, *own)) out.push_back({Finding::Is::TextOffPanel, one.text.text});
        for (std::size_t k = i + 1; k < all.size(); ++k) {
            if (picture::overlap(one.box, all[k].box)) out.push_back({Finding::Is::TextsOverlap, one.text.text + " | " + all[k].text.text});
        }
    }
}

/// Nobody can tell at the table which of the two to touch. A sign such as + is told apart by its row, pages by their panels.
bool alike(const Target& a, const Target& b) {
    const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    const bool words = a.weight == Weight::Theatre && std::any_of(a.label.begin(), a.label.end(), letter);
    return a.id == b.id || (words && a.label == b.label && a.line == b.line);
}

void look_at_targets(Findings& out, const Frame& frame, const Canvas& canvas) {
    const auto& all = frame.touchables;
    const Box glass{0, 0, canvas.glass.width_mm, canvas.glass.height_mm};
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto& [target, box] = all[i];
        const double least = least_side_mm(target.weight) - 1e-6;
        if (box.w < least || box.h < least) out.push_back({Finding::Is::SmallTarget, target.label});
        if (!within(box, glass)) out.push_back({Finding::Is::TargetOffGlass, target.label});
        for (std::size_t k = i + 1; k < all.size(); ++k) {
            const std::string both = target.label + " | " + all[k].target.label;
            if (alike(target, all[k].target)) out.push_back({Finding::Is::TargetsAlike, both});
            if (picture::overlap(box, all[k].box)) {
                out.push_back({Finding::Is::TargetsOverlap, both});
            } else if (picture::gap(box, all[k].box) < least_gap(target, all[k].target) - 1e-6) {
                out.push_back({Finding::Is::TargetsClose, both});
            }
        }
    }
}

Box round(const picture::Polygon& polygon) {
    const auto across = [](const picture::Point& a, const picture::Point& b) { return a.x < b.x; };
    const auto down = [](const picture::Point& a, const picture::Point& b) { return a.y < b.y; };
    const auto [left, right] = std::minmax_element(polygon.points.begin(), polygon.points.end(), across);
    const auto [top, bottom] = std::minmax_element(polygon.points.begin(), polygon.points.end(), down);
    return {left->x, top->y, right->x - left->x, bottom->y - top->y};
}

Box round(const picture::Point& centre, double radius) { return {centre.x - radius, centre.y - radius, 2 * radius, 2 * radius}; }

/// Where lettering or a sign stands; none for grounds, edges and lines.
std::optional<Box> borne(const picture::Shape& shape, const Canvas& canvas) {
    if (const auto* text = std::get_if<picture::Text>(&shape)) return picture::bounds(*text, canvas.lettering);
    if (const auto* polygon = std::get_if<picture::Polygon>(&shape)) return round(*polygon);
    if (const auto* disc = std::get_if<picture::Disc>(&shape)) return round(disc->centre, disc->radius);
    if (const auto* ring = std::get_if<picture::Ring>(&shape)) return round(ring->centre, ring->radius + ring->width / 2);
    return std::nullopt;
}

/// How wide the edge of a target is painted, inwards.
double edge_of(const Frame& frame, const Box& target) {
    for (const auto& shape : frame.shapes) {
        const auto* panel = std::get_if<picture::Panel>(&shape);
        if (panel != nullptr && panel->box == target) return panel->edge_width;
    }
    return 0;
}

void look_at_edges(Findings& out, const Frame& frame, const Canvas& canvas) {
    for (const auto& [target, box] : frame.touchables) {
        const double clear = edge_of(frame, box) + least_clear_mm;
        const Box inside{box.x + clear, box.y + clear, box.w - 2 * clear, box.h - 2 * clear};
        for (const auto& shape : frame.shapes) {
            const auto one = borne(shape, canvas);
            if (!one || !box.contains(one->centre()) || within(*one, inside)) continue;
            const auto* text = std::get_if<picture::Text>(&shape);
            out.push_back({Finding::Is::CrowdsEdge, target.label + " | " + (text == nullptr ? "a sign" : text->text)});
        }
    }
}

/// A panel painted after a target's own, over any part of it and not a part of it: a banner, another panel.
void look_for_covers(Findings& out, const Frame& frame) {
    const auto boxes = panels(frame);
    for (const auto& [target, box] : frame.touchables) {
        const auto own = std::find(boxes.begin(), boxes.end(), box);
        for (auto later = own == boxes.end() ? own : own + 1; later != boxes.end(); ++later) {
            if (picture::overlap(*later, box) && !within(*later, box)) out.push_back({Finding::Is::CoveredTarget, target.label});
        }
    }
}

}  // namespace

std::string name(Finding::Is is) {
    switch (is) {
        case Finding::Is::SmallText:
            return "text under its least size";
        case Finding::Is::TextOffGlass:
            return "text off the glass";
        case Finding::Is::TextOffPanel:
            return "text off its panel";
        case Finding::Is::TextsOverlap:
            return "texts overlap";
        case Finding::Is::CrowdsEdge:
            return "lettering or sign at the edge of its target";
        case Finding::Is::SmallTarget:
            return "target under its least size";
        case Finding::Is::TargetsClose:
            return "targets too close";
        case Finding::Is::TargetsOverlap:
            return "targets overlap";
        case Finding::Is::TargetsAlike:
            return "targets alike";
        case Finding::Is::TargetOffGlass:
            return "target off the glass";
        case Finding::Is::CoveredTarget:
            return "target covered";
    }
    measure::expect(false);
    return "";
}

std::vector<Finding> audit(const Frame& frame, const Canvas& canvas) {
    Findings out;
    look_at_texts(out, frame, canvas);
    look_at_targets(out, frame, canvas);
    look_at_edges(out, frame, canvas);
    look_for_covers(out, frame);
    return out;
}

}  // namespace screen
