// A procedure file as values: phases, steps, gates, departures. A unit may edit its own copy.
//
// id, title
// [[phase]]       id, title, departures = [ids]
// [[phase.step]]  id, title (1 to 28 characters), do = [one or two lines], who = "scrub" | "circulating" | "surgeon" |
//                 "anaesthetist" | "all"; all others may be left out:
//                 say, button (1 to 22 characters), closes = "tap" (default) | "hold" | "side" | "plan" | "counts" |
//                 "suction-on" | "cut" | "suction-off" | "sutures" | "ring" | "close", sutures (with closes = "sutures"; 0: all),
//                 only = "running", needs = [step ids], starts = [clocks], stops = [clocks], cautions, ready, open-now,
//                 open-later = [lines], nurse = "may-leave" (default) | "stay", pause = "sign-in" | "time-out" | "sign-out",
//                 quiet (false), may-skip (true), picture = "" | "clock-face" | "open" | "section", departures = [ids]
// [[departure]]   id, title, level = "watch" (default) | "stop", do = [one to eight lines], back
//
// Checked beside the single values: ids are unique; a phase has a step and its id is no clock's name; `needs` names earlier
// steps; departures exist; clocks are suction, decompressed, open-sky, donor-out, case or a phase; exactly one step closes by
// the cut and at most one by closing the case; the steps "zero" and "raise" are there, since the count rests on them; placeholders are
// known, and {eye} stands in no step up to the one that closes with the side, since the side is entered blind.
#pragma once

#include "guide/procedure.hpp"
#include "measure/problem.hpp"
#include "measure/result.hpp"

#include <string>
#include <string_view>

namespace intake {

measure::Result<guide::Procedure, measure::Problems> read_procedure(std::string_view text, const std::string& name);

}  // namespace intake
