#include "plan/wall.hpp"

#include "eye/wall.hpp"
#include "measure/expect.hpp"
#include "plan/notes.hpp"
#include "plan/sources.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <numeric>
#include <set>
#include <utility>

namespace plan {
namespace {

constexpr Length odd_residual = measure::nm(30'000);  // more than any instrument's scatter: a reading is likely wrong
constexpr std::size_t meridians_for_a_circle = 3;
constexpr std::size_t readings_for_a_map = 9;

using Level = Note::Level;

bool near_the_cut(const Reading& reading, Length diameter) { return std::abs((reading.ring - diameter).nm()) <= eye::on_the_cut.nm(); }

struct CircleReadings {
    std::vector<eye::RingReading> readings{};
    std::vector<std::size_t> rows{};  // which of the case's readings each is
};

CircleReadings circle_readings(const CaseFile& file) {
    CircleReadings found{};
    for (std::size_t row = 0; row < file.thickness.readings.size(); ++row) {
        const Reading& reading = file.thickness.readings[row];
        if (!near_the_cut(reading, file.host_diameter)) continue;
        found.readings.push_back({.ring = reading.ring, .at = reading.at, .thickness = reading.thickness});
        found.rows.push_back(row);
    }
    return found;
}

/// All readings about the map's centre, the central one last.
std::vector<eye::MapReading> map_readings(const Thickness& thickness) {
    std::vector<eye::MapReading> found{};
    for (const Reading& reading : thickness.readings) {
        found.push_back({.at = eye::on_ring(reading.ring, reading.at), .thickness = reading.thickness});
    }
    if (thickness.central) found.push_back({.at = {}, .thickness = *thickness.central});
    return found;
}

eye::Cut cut_of(const CaseFile& file) { return {.diameter = file.host_diameter, .x = file.centre_x, .y = file.centre_y}; }

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

std::string um(Length length) { return fmt::format("{:.0f}", length.um()); }

Wall wall(std::string basis, const eye::Thickness& thickness) {
    std::optional<Length> rms{};
    if (thickness.rms) rms = measure::from_um_tenths(thickness.rms->um());
    return {.basis = std::move(basis),
            .thinnest = thickness.thinnest,
            .thinnest_at = thickness.thinnest_at,
            .mean = thickness.mean,
            .u = measure::from_um_tenths(thickness.u_um),
            .rms = rms,
            .profile = thickness.profile};
}

WallFinding on_basis(std::string basis, const eye::Thickness& thickness) {
    return {.wall = wall(std::move(basis), thickness),
            .exact_u_um = thickness.u_um,
            .u_round_um = thickness.u_round_um,
            .depth_bar = std::nullopt,
            .bar_values = {},
            .notes = {}};
}

WallFinding barred(const std::string& code, std::vector<std::string> values = {}) {
    return {.wall = std::nullopt, .exact_u_um = 0, .u_round_um = {}, .depth_bar = code, .bar_values = std::move(values), .notes = {}};
}

/// A reading by its number in the case, with how far it is off what the others say.
Note odd_note(const Thickness& thickness, std::size_t row, Length off) {
    const std::string by = fmt::format("{:+.0f}", off.um());
    if (row == thickness.readings.size()) {
        return {.code = "reading-odd-centre", .source = source::odd, .level = Level::Watch, .values = {um(*thickness.central), by}};
    }
    const Reading& reading = thickness.readings[row];
    return {.code = "reading-odd",
            .source = source::odd,
            .level = Level::Watch,
            .values = {fmt::format("{}", row + 1), fmt::format("{}", reading.ring.mm()), eye::short_clock_text(reading.at),
                       um(reading.thickness), by}};
}

/// The thinnest reading on the cut; none if there is none.
std::optional<eye::RingReading> thinnest_of(const CircleReadings& on_it) {
    const auto least = std::min_element(on_it.readings.begin(), on_it.readings.end(),
                                        [](const auto& a, const auto& b) { return a.thickness < b.thickness; });
    return least == on_it.readings.end() ? std::nullopt : std::optional(*least);
}

/// With no reading to spare no residual tells a misreading; a wall that swings far under all that was read does.
void note_under_readings(const CircleReadings& on_it, const Wall& wall, std::vector<Note>& notes) {
    const Length least = thinnest_of(on_it)->thickness;
    if (least - wall.thinnest <= odd_residual) return;
    notes.push_back({.code = "fit-under-readings",
                     .source = source::own_file,
                     .level = Level::Watch,
                     .values = {um(least - wall.thinnest), um(least)}});
}

Note order_lowered() { return {.code = "order-lowered", .source = source::own_file, .level = Level::Info, .values = {}}; }

std::vector<Note> fit_notes(const CaseFile& file, const eye::Thickness& fit, const std::vector<std::size_t>& rows) {
    std::vector<Note> notes{};
    if (fit.rms && *fit.rms > odd_residual) {
        notes.push_back({.code = "residual-large", .source = source::repeatability, .level = Level::Watch, .values = {um(*fit.rms)}});
    }
    for (const eye::OddReading& odd : fit.odd) notes.push_back(odd_note(file.thickness, rows[odd.reading], odd.off));
    return notes;
}

WallFinding from_circle(const CaseFile& file, const CircleReadings& on_it) {
    const auto fit = eye::fit_circle(on_it.readings, file.host_diameter, reading_sd(file.thickness.method));
    if (!fit || fit->thinnest.nm() <= 0) return barred("circle-fit-refused");
    WallFinding found = on_basis("circle", *fit);
    if (fit->order < std::min(2, (static_cast<int>(on_it.readings.size()) - 1) / 2)) found.notes.push_back(order_lowered());
    append(found.notes, fit_notes(file, *fit, on_it.rows));
    note_under_readings(on_it, *found.wall, found.notes);
    if (file.centre_x.nm() != 0 || file.centre_y.nm() != 0) {
        found.notes.push_back({.code = "offset-not-in-readings", .source = source::own_file, .level = Level::Watch, .values = {}});
    }
    return found;
}

WallFinding map_barred(const std::optional<Angle>& open) {
    if (!open) return barred("map-fit-open");
    return barred("map-fit-refused", {eye::short_clock_text(*open)});
}

WallFinding from_map(const CaseFile& file) {
    const auto readings = map_readings(file.thickness);
    const Length sd = reading_sd(file.thickness.method);
    const auto fit = eye::fit_surface(readings, cut_of(file), sd);
    if (!fit.surface) return map_barred(fit.open);
    const auto on_it = eye::from_surface(*fit.surface, readings, cut_of(file));
    if (on_it.thinnest.nm() <= 0) return map_barred(on_it.thinnest_at);
    WallFinding found = on_basis("map", on_it);
    found.notes.push_back({.code = "map-surface",
                           .source = source::own_file,
                           .level = Level::Info,
                           .values = {fmt::format("{}", readings.size()), fmt::format("{}", on_it.order)}});
    if (on_it.order < 2) found.notes.push_back(order_lowered());
    if (fit.surface->scattered) {
        found.notes.push_back(
            {.code = "map-scatter", .source = source::repeatability, .level = Level::Watch, .values = {um(fit.surface->sd), um(sd)}});
    }
    std::vector<std::size_t> rows(readings.size());
    std::iota(rows.begin(), rows.end(), 0);
    append(found.notes, fit_notes(file, on_it, rows));
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

/// Readings that an estimate from the centre leaves out; one that is thinner than the estimate forbids a depth.
void tell_left_out(WallFinding& found, const CaseFile& file) {
    if (file.thickness.readings.empty()) return;
    found.notes.push_back({.code = "readings-left-out",
                           .source = source::own_file,
                           .level = Level::Watch,
                           .values = {fmt::format("{}", file.thickness.readings.size())}});
    const auto least = thinnest_of(circle_readings(file));
    if (!least || least->thickness >= found.wall->thinnest || found.depth_bar) return;
    found.depth_bar = "reading-under-estimate";
    found.bar_values = {um(least->thickness), eye::short_clock_text(least->at), um(found.wall->thinnest)};
}

WallFinding from_central(const CaseFile& file) {
    if (!file.thickness.central) return barred("too-few-readings");
    const auto thickness = eye::from_centre(*file.thickness.central, cut_of(file), reading_sd(file.thickness.method));
    WallFinding found = on_basis("centre", thickness);
    found.depth_bar = centre_bar(file);
    found.notes.push_back({.code = "estimate-from-centre", .source = source::profile, .level = Level::Watch, .values = {}});
    tell_left_out(found, file);
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

std::optional<eye::Surface> surface_from(const CaseFile& file) {
    if (!is_a_map(file.thickness)) return std::nullopt;
    return eye::fit_surface(map_readings(file.thickness), cut_of(file), reading_sd(file.thickness.method)).surface;
}

WallFinding wall_from(const CaseFile& file) {
    const auto on_the_circle = circle_readings(file);
    if (meridians(on_the_circle.readings) >= meridians_for_a_circle) return from_circle(file, on_the_circle);
    if (is_a_map(file.thickness)) return from_map(file);
    return from_central(file);
}

}  // namespace plan
