#include "plan/wall.hpp"

#include "eye/wall.hpp"
#include "measure/expect.hpp"
#include "plan/sources.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <set>

namespace plan {
namespace {

constexpr Length on_the_circle = measure::nm(250'000);  // a ring this near the host diameter counts as on the cut
constexpr Length odd_residual = measure::nm(30'000);    // more than any instrument's scatter: a reading is likely wrong
constexpr std::size_t meridians_for_a_circle = 3;
constexpr std::size_t readings_for_a_map = 9;

using Level = Note::Level;

bool near_the_cut(const Reading& reading, Length diameter) { return std::abs((reading.ring - diameter).nm()) <= on_the_circle.nm(); }

std::vector<eye::RingReading> circle_readings(const CaseFile& file) {
    std::vector<eye::RingReading> found{};
    for (const Reading& reading : file.thickness.readings) {
        if (near_the_cut(reading, file.host_diameter)) {
            found.push_back({.ring = reading.ring, .at = reading.at, .thickness = reading.thickness});
        }
    }
    return found;
}

std::size_t meridians(const std::vector<eye::RingReading>& readings) {
    std::set<Angle> distinct{};
    for (const auto& reading : readings) distinct.insert(reading.at);
    return distinct.size();
}

/// Enough readings on enough rings for a surface; the central one is a reading and a ring.
bool is_a_map(const Thickness& thickness) {
    std::set<Length> rings{};
    for (const Reading& reading : thickness.readings) rings.insert(reading.ring);
    const std::size_t centre = thickness.central ? 1 : 0;
    return thickness.readings.size() + centre >= readings_for_a_map && rings.size() + centre >= 2;
}

Wall wall(std::string basis, const eye::Thickness& thickness) {
    std::optional<Length> rms{};
    if (thickness.rms) rms = measure::from_um_tenths(thickness.rms->um());
    return {.basis = std::move(basis),
            .thinnest = thickness.thinnest,
            .thinnest_deg = thickness.thinnest_deg,
            .mean = thickness.mean,
            .u = measure::from_um_tenths(thickness.u.um()),
            .rms = rms,
            .profile = thickness.profile};
}

WallFinding barred(const std::string& code) { return {.wall = std::nullopt, .exact_u = {}, .depth_bar = code, .notes = {}}; }

WallFinding from_circle(const CaseFile& file, const std::vector<eye::RingReading>& readings) {
    const auto fit = eye::fit_circle(readings, file.host_diameter, reading_sd(file.thickness.method));
    if (!fit || fit->thinnest.nm() <= 0) return barred("circle-fit-refused");
    WallFinding found{.wall = wall("circle", *fit), .exact_u = fit->u, .depth_bar = std::nullopt, .notes = {}};
    if (fit->order < std::min(2, (static_cast<int>(readings.size()) - 1) / 2)) {
        found.notes.push_back({.code = "order-lowered", .source = source::own_file, .level = Level::Info, .values = {}});
    }
    if (fit->rms && *fit->rms > odd_residual) {
        found.notes.push_back({.code = "residual-large",
                               .source = source::repeatability,
                               .level = Level::Watch,
                               .values = {fmt::format("{:.0f}", fit->rms->um())}});
    }
    return found;
}

std::optional<std::string> centre_bar(const CaseFile& file) {
    switch (file.reason) {
        case Reason::Keratoconus:
            return "centre-never-in-keratoconus";
        case Reason::Oedema:
            return "centre-never-in-oedema";
        case Reason::Scar:
        case Reason::Dystrophy:
        case Reason::Regraft:
        case Reason::Infection:
        case Reason::Trauma:
        case Reason::Other:
            break;
    }
    if (!file.thickness.edge_looks_normal) return "centre-alone";
    return std::nullopt;
}

WallFinding from_central(const CaseFile& file) {
    if (!file.thickness.central) return barred("too-few-readings");
    const auto thickness =
        eye::from_centre(*file.thickness.central, {.diameter = file.host_diameter, .x = file.centre_x, .y = file.centre_y},
                         reading_sd(file.thickness.method));
    WallFinding found{.wall = wall("centre", thickness), .exact_u = thickness.u, .depth_bar = centre_bar(file), .notes = {}};
    found.notes.push_back({.code = "estimate-from-centre", .source = source::profile, .level = Level::Watch, .values = {}});
    return found;
}

}  // namespace

/// Within-subject or day-to-day SD, um: ultrasound 8 (Cornea 2000;19:792-5), OCT at the edge 6 (Cornea 2013;32(12)),
/// Scheimpflug 5 (Eye Vis 2016;3:6), slit scanning 5 (Cornea 2000;19:792-5).
Length reading_sd(Method method) {
    switch (method) {
        case Method::Ultrasound:
            return measure::nm(8'000);
        case Method::Oct:
            return measure::nm(6'000);
        case Method::Scheimpflug:
            return measure::nm(5'000);
        case Method::SlitScanning:
            return measure::nm(5'000);
    }
    measure::expect(false);
    return {};
}

WallFinding wall_from(const CaseFile& file) {
    const auto readings = circle_readings(file);
    if (meridians(readings) >= meridians_for_a_circle) return from_circle(file, readings);
    if (is_a_map(file.thickness)) return barred("map-basis-absent");
    return from_central(file);
}

}  // namespace plan
