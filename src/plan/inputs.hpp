// What a plan is made from: the case file and the two profiles, as values. Absent is optional, never zero.
#pragma once

#include "eye/frame.hpp"
#include "instrument/profile.hpp"
#include "measure/instant.hpp"

#include <optional>
#include <string>
#include <vector>

namespace plan {

using measure::Angle;
using measure::Day;
using measure::Length;

enum class Reason { Scar, Keratoconus, Oedema, Dystrophy, Regraft, Infection, Trauma, Other };
enum class Lens { Phakic, Pseudophakic, Aphakic };
enum class Method { Ultrasound, Oct, Scheimpflug, SlitScanning };
enum class Storage { Cold, Culture };
enum class Goal { Share, Spokes, ToEntry };

/// One thickness reading: ring is a diameter, direction as one faces the eye.
struct Reading {
    Length ring{};
    Angle at{};
    Length thickness{};
    bool operator==(const Reading&) const = default;
};

struct Thickness {
    Method method{};
    std::optional<Day> measured{};
    std::optional<Length> central{};
    bool through_scar = false;
    bool edge_looks_normal = false;  // the surgeon's word
    std::vector<Reading> readings{};
    bool operator==(const Thickness&) const = default;
};

struct Aim {
    Goal goal{};
    int share_permille = 0;  // of the thinnest wall; Goal::Share only
    int spokes = 0;          // the surgeon's own number; Goal::Spokes only
    double entry_limit = 0.05;
    bool operator==(const Aim&) const = default;
};

/// "N interrupted", "N running", "N double running", "N interrupted + M running".
struct Pattern {
    int interrupted = 0;
    int loops = 0;    // bites of one running suture; 0: none
    int running = 0;  // running sutures: 0, 1 or 2
    bool operator==(const Pattern&) const = default;
};

struct Donor {
    Length diameter{};
    std::optional<Storage> storage{};
    std::optional<Day> stored{};  // since when in this storage
    std::optional<Day> expires{};
    std::optional<int> endothelium_per_mm2{};
    std::optional<std::string> donation{};
    bool operator==(const Donor&) const = default;
};

struct CaseFile {
    std::string reference{};
    Day date{};
    eye::Side side{};
    Reason reason{};
    eye::Seat seat = eye::Seat::Head;
    double keratometry_D = 0;  // 337.5 over the radius in mm
    Length white_to_white_horizontal{}, white_to_white_vertical{};
    std::optional<double> axial_length_mm{};
    std::optional<Lens> lens{};
    Thickness thickness{};
    Length host_diameter{};
    Length centre_x{}, centre_y{};  // offset of the cut from the map's centre: x to 3 o'clock, y to 12
    Donor donor{};
    Aim aim{};
    Pattern pattern{.interrupted = 16, .loops = 0, .running = 0};
    Angle first_suture = measure::centideg(9000);
    bool invented = false;  // a demonstration or rehearsal case, said so on every view
    bool operator==(const CaseFile&) const = default;
};

/// What a unit states for itself: limits, none shipped as normal where no open figure exists, and the sizes on its shelf.
struct Limits {
    std::optional<Length> clearance{};
    std::optional<int> endothelium_per_mm2{};
    std::vector<Length> hosts_in_stock{}, donors_in_stock{};  // empty: not stated
    bool operator==(const Limits&) const = default;
};

struct Inputs {
    CaseFile file{};
    instrument::Trephine trephine{};
    instrument::Punch punch{};
    Limits limits{};
    bool operator==(const Inputs&) const = default;
};

}  // namespace plan
