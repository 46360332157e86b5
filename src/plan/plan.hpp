// The plan: thickness on the cut, blade ladder, planned spokes, sizes, suture order, each with its working.
// Pure: the same inputs give the same plan on any day. Closed forms and one quadrature, no random numbers.
// A plan that must not be made has no ladder or no target and a Stop note that says why; the rest is still given.
#pragma once

#include "measure/interval.hpp"
#include "plan/inputs.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace plan {

/// Thickness on the cut circle. `profile` has 360 values, index = whole degree; empty when nothing could be fitted.
struct Wall {
    std::string basis{};                 // "circle" | "map" | "centre"
    Length thinnest{};                   // to 0.1 um; everything else uses this figure
    std::optional<Angle> thinnest_at{};  // none: the direction is not known
    Length mean{}, u{};
    std::optional<Length> rms{};
    std::vector<Length> profile{};
    bool operator==(const Wall&) const = default;
};

struct Rung {
    int spoke = 0;
    Length travel{};
    double share = 0;                 // travel over the thinnest wall
    Length reserve{}, reserve_u95{};  // expected left, with the half-width of its 95 % interval, to 0.1 um
    double entry_chance = 0;          // 0 to 1
    bool operator==(const Rung&) const = default;
};

enum class Bound { Aim, EntryLimit, Surgeon, ToEntry };

struct Target {
    std::optional<int> spokes{};  // below zero; none: to entry
    int raise = 0;
    Bound bound_by{};
    int share_permille = 0;  // as used, 700 when capped; 0 where no share was asked
    std::optional<int> entry_from{}, entry_to{};
    bool operator==(const Target&) const = default;
};

struct Sizes {
    Length oversize{};  // donor minus host
    Length clearance{};
    int clearance_deg = 0;
    Length clearance_usual_offset{};
    measure::Interval button_front{}, button_back{};
    bool operator==(const Sizes&) const = default;
};

struct Suture {
    int n = 0;
    int centideg = 0;
    std::optional<int> host_mark{};
    std::optional<std::pair<int, int>> between{};
    int between_permille = 0;         // of the way from the first of these marks to the second
    std::optional<int> donor_mark{};  // dot 1 to 4, clockwise from 12
    std::optional<int> opposite{};
    bool operator==(const Suture&) const = default;
};

struct Running {
    int loops = 0;
    int sutures = 1;
    Length spacing{};
    int start_centideg = 0;
    bool clockwise = true;
    bool operator==(const Running&) const = default;
};

/// The text is in the words under "note.<code>", with `values` put in.
struct Note {
    enum class Level { Info, Watch, Stop };
    std::string code{}, source{};
    Level level{};
    std::vector<std::string> values{};
    bool operator==(const Note&) const = default;
};

struct Plan {
    int formula = 1;
    std::optional<Wall> wall{};
    std::vector<Rung> ladder{};
    std::optional<Target> target{};
    Sizes sizes{};
    Length spacing{};  // chord between neighbouring sutures
    std::vector<Suture> order{};
    std::optional<Running> running{};
    std::vector<Note> notes{};
    bool operator==(const Plan&) const = default;
};

Plan make(const Inputs& inputs);

/// Travel of a blade position below zero.
Length travel(const instrument::Trephine& trephine, int spokes);

/// A chance as it is put to people; tested on the unrounded value. The wording is by id: "chance.under", "chance.about",
/// "chance.half", "chance.sure"; `one_in` is set for "chance.about" only.
struct ChanceWords {
    std::string id{};
    std::optional<int> one_in{};
    bool operator==(const ChanceWords&) const = default;
};
ChanceWords chance_words(double chance);

}  // namespace plan
