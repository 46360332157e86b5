// The procedure as values: phases, steps, gates, departures. A unit may edit its own copy of the file.
// Text holds placeholders that the model fills: {eye} {host} {donor} {raise} {planned} {sutures} {spokes} {lower} {aim}.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace guide {

using StepId = std::string;  // ids of the files, never indices
using ItemId = std::string;
using ClockId = std::string;
using DepartureId = std::string;

/// What closes a step.
enum class Closes {
    Tap,         // a tap
    Hold,        // a hold: what cannot be undone
    Side,        // the side entered blind agrees with the plan
    Plan,        // the plan is accepted by a hold
    Counts,      // every item checked by two people
    SuctionOn,   // suction turned on
    Cut,         // the cut has ended
    SuctionOff,  // suction turned off after the cut
    Sutures,     // so many sutures tied
    Ring,        // the ring reflection is recorded
    Close        // the case is closed and its record locked
};

enum class Pause { None, SignIn, TimeOut, SignOut };
enum class Nurse { May, Stay };  // may the circulating nurse leave the room

struct Step {
    StepId id{};
    std::string title{};               // at most 28 characters, says what to do
    std::vector<std::string> lines{};  // one or two lines of what to do
    std::string who{};                 // "scrub" | "circulating" | "surgeon" | "anaesthetist" | "all"
    std::string say{};                 // the words that are said aloud
    std::string button{};              // the label of what closes it, said as done
    Closes closes = Closes::Tap;
    int sutures = 0;              // Closes::Sutures: tied sutures that close it; 0: all of the pattern
    std::string only{};           // "": always; "running": only with a running suture
    std::vector<StepId> needs{};  // gates: these are done, not skipped
    std::vector<ClockId> starts{}, stops{};
    std::vector<std::string> cautions{};
    std::vector<std::string> ready{};  // next, have ready
    std::vector<std::string> open_now{}, open_later{};
    Nurse nurse = Nurse::May;
    Pause pause = Pause::None;
    bool quiet = false;
    bool may_skip = true;
    std::string picture{};                  // "" | "cut" | "clock-face" | "open" | "section-zero" | …; see picture/
    std::vector<DepartureId> departures{};  // beside those of the phase
    bool operator==(const Step&) const = default;
};

struct Phase {
    std::string id{};
    std::string title{};
    std::vector<Step> steps{};
    std::vector<DepartureId> departures{};
    bool operator==(const Phase&) const = default;
};

struct Departure {
    enum class Level { Watch, Stop };
    DepartureId id{};
    std::string title{};
    Level level = Level::Watch;
    std::vector<std::string> lines{};  // usual practice, the surgeon decides
    std::string back{};                // the way back, as a button says it
    std::vector<StepId> reopens{};     // done before the way back, they are to be done again: what they rested on was replaced
    bool operator==(const Departure&) const = default;
};

struct Procedure {
    std::string id{};
    std::string title{};
    std::vector<Phase> phases{};
    std::vector<Departure> departures{};
    bool operator==(const Procedure&) const = default;
};

const Step* find_step(const Procedure& procedure, const StepId& id);
const Phase* phase_of(const Procedure& procedure, const StepId& id);
const Departure* find_departure(const Procedure& procedure, const DepartureId& id);
/// What a departure is called; its id where the procedure does not know it.
std::string departure_title(const Procedure& procedure, const DepartureId& id);

}  // namespace guide
