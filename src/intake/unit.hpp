// What a unit decides for itself, as values.
//
// language ("en"), theme = "dark" | "light" (dark), hand = "right" | "left" (the side of the Table's targets; right),
// surgeon_file: the name of a file of a surgeon's habits beside this one (surgeon.hpp)
// set_up = "draped" | "undraped" (draped)
// holder = "table" | "desk" | "foot-switch" (who holds the count at first; table)
// [screens_mm] table, desk, far = [width, height] of the lit glass in mm, each optional: else what the system reports
// [[count]]    id, title: what is counted, at least one
// [names]      scrub, circulating: initials or role of the two who count ("scrub nurse", "circulating nurse")
// [[pack]]     gtin, instrument, size_mm: what a trade number stands for, by the unit's own list
// [limits]     clearance_mm, endothelium_per_mm2: none has a default, since no open figure exists
// [stock]      host_mm, donor_mm: lists of the diameters on the shelf, each optional; else nothing is said of them
// [sound]      on (false), volume (70, per cent), sutures = "from-fifth" | "every" | "none", suction_every_s: a multiple of 15 to
//              600, none has a default; patient = "asleep" | "awake" (asleep)
// [foot_switch] key: a key by its name; bounce_ms 50 to 1000 (200). Which keys cannot be shared with the Desk is said here, where
//              that matters is not.
#pragma once

#include "guide/brief.hpp"
#include "guide/intent.hpp"
#include "intake/sound.hpp"
#include "measure/problem.hpp"
#include "measure/result.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace intake {

enum class Theme { Dark, Light };
enum class Hand { Right, Left };
/// Who touches the Table view: the scrub nurse through a drape, or, on one undraped screen, the circulating nurse.
enum class SetUp { Draped, Undraped };

/// A pedal that types a key. Off unless a key is named.
struct FootSwitch {
    std::string key{};    // "F9", "B", "7", "Space"; empty: none
    int bounce_ms = 200;  // a second press so soon is the same foot
    bool operator==(const FootSwitch&) const = default;
};
/// Whether a keyboard types or works the Desk with the same key: then a pedal on it cannot be told from a hand.
bool also_typed(const FootSwitch& pedal);

struct Glass {
    measure::Length width{}, height{};
    bool operator==(const Glass&) const = default;
};

struct UnitFile {
    guide::Unit unit{};
    std::string language = "en";
    Theme theme = Theme::Dark;
    Hand hand = Hand::Right;
    SetUp set_up = SetUp::Draped;
    guide::Source holder = guide::Source::Table;
    std::optional<Glass> table{}, desk{}, far{};
    Sound sound{};
    FootSwitch foot_switch{};
    std::string surgeon_file{};  // beside the unit's file; empty: none
    bool operator==(const UnitFile&) const = default;
};

measure::Result<UnitFile, measure::Problems> read_unit(std::string_view text, const std::string& name);

}  // namespace intake
