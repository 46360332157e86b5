// An invented case to start tests from: a scar in a right eye, five OCT readings on the cut. No patient stands behind it.
#pragma once

#include "plan/plan.hpp"

#include <algorithm>
#include <initializer_list>
#include <string>

namespace sample {

using measure::from_mm;
using measure::from_um;

inline std::vector<measure::Length> sizes(std::initializer_list<double> mm) {
    std::vector<measure::Length> made{};
    for (const double size : mm) made.push_back(from_mm(size));
    return made;
}

inline instrument::Trephine trephine() {
    return {.id = "suction-trephine",
            .name = "Suction trephine",
            .advance = from_um(60),
            .spokes_per_turn = 4,
            .lower = instrument::Turn::Clockwise,
            .raise = 3,
            .marks = 16,
            .mark_offset = {},
            .diameters = sizes({6, 6.5, 7, 7.5, 7.75, 8, 8.5, 9}),
            .suction = true,
            .reach = {.mean = 1.046, .sd = 0.082, .n = 11, .source = "Clin Ophthalmol 2014;8:2391-6"}};
}

inline instrument::Punch punch() {
    return {.id = "vacuum-punch",
            .name = "Vacuum punch",
            .diameters = sizes({6, 6.5, 6.75, 7, 7.25, 7.5, 7.75, 8, 8.25, 8.5, 8.75, 9, 9.5}),
            .dots = 4,
            .vacuum = true};
}

inline plan::Reading reading(double ring_mm, const char* clock, double um) {
    return {.ring = from_mm(ring_mm), .at = *eye::from_clock_text(clock), .thickness = from_um(um)};
}

inline plan::Inputs scar() {
    plan::CaseFile file{.reference = "K-0147",
                        .date = {2026, 11, 25},
                        .side = eye::Side::Right,
                        .reason = plan::Reason::Scar,
                        .keratometry_D = 43.5,
                        .white_to_white_horizontal = from_mm(11.8),
                        .white_to_white_vertical = from_mm(11.1),
                        .axial_length_mm = 23.6,
                        .lens = plan::Lens::Phakic,
                        .thickness = {.method = plan::Method::Oct, .measured = measure::Day{2026, 11, 12}, .central = from_um(538)},
                        .host_diameter = from_mm(7.5),
                        .donor = {.diameter = from_mm(7.75),
                                  .storage = plan::Storage::Cold,
                                  .expires = measure::Day{2026, 12, 1},
                                  .endothelium_per_mm2 = 2650},
                        .aim = {.goal = plan::Goal::Share, .share_permille = 800},
                        .invented = true};
    file.thickness.readings = {reading(7.5, "12:00", 655), reading(7.5, "3:00", 640), reading(7.5, "6:00", 631), reading(7.5, "9:00", 628),
                               reading(7.5, "7:30", 612)};
    return {.file = file, .trephine = trephine(), .punch = punch(), .limits = {}};
}

/// The same eye with its central reading alone, which the surgeon says may be used.
inline plan::Inputs centre() {
    plan::Inputs inputs = scar();
    inputs.file.thickness.readings = {};
    inputs.file.thickness.edge_looks_normal = true;
    return inputs;
}

/// The same eye with a map: the centre, and the normal profile at eight directions on two rings. Invented.
inline plan::Inputs map(double inner_mm, double outer_mm) {
    plan::Inputs inputs = scar();
    inputs.file.thickness.central = from_um(540);
    inputs.file.thickness.readings = {};
    for (const double ring : {inner_mm, outer_mm}) {
        for (int i = 0; i < 8; ++i) {
            inputs.file.thickness.readings.push_back({.ring = from_mm(ring),
                                                      .at = measure::centideg(i * 4500),
                                                      .thickness = measure::from_um_tenths(540 * (1 + 0.0088 * ring * ring / 4))});
        }
    }
    return inputs;
}

inline const plan::Note* note(const plan::Plan& plan, const std::string& code) {
    const auto found = std::find_if(plan.notes.begin(), plan.notes.end(), [&](const plan::Note& n) { return n.code == code; });
    return found == plan.notes.end() ? nullptr : &*found;
}

inline bool says(const plan::Plan& plan, const std::string& code, plan::Note::Level level) {
    const plan::Note* found = note(plan, code);
    return found != nullptr && found->level == level && !found->source.empty();
}

/// Neither ladder nor spokes, and a Stop note with this code.
inline bool refused(const plan::Plan& plan, const std::string& code) {
    return plan.ladder.empty() && !plan.target && says(plan, code, plan::Note::Level::Stop);
}

inline bool stopped(const plan::Plan& plan) {
    return std::any_of(plan.notes.begin(), plan.notes.end(), [](const plan::Note& n) { return n.level == plan::Note::Level::Stop; });
}

}  // namespace sample
