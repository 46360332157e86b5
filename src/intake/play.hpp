// A play script: one intent a line as a JSON object, with the time it bears.
//   {"at": "2026-11-25T09:41:07.250Z", "who": "scrub", "do": "count-spoke", "from": "table", "expect": "refused"}
// `from` (table) and `expect` are optional; further fields by intent are in one table that the reader and `play_list` share.
// In a play the clock is `at`: every instant belongs to boot 1 and its boot clock is the wall clock, so durations are exact.
// accept-plan carries only `why`; the caller fills in the plan. Blank lines are passed over.
#pragma once

#include "guide/intent.hpp"
#include "measure/instant.hpp"
#include "measure/problem.hpp"
#include "measure/result.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace intake {

struct PlayLine {
    int line = 0;  // in the script, from 1
    measure::Instant at{};
    guide::Who who{};
    guide::Intent intent{};
    bool expect_refused = false;
};

/// One line; `number` is its place in the script called `name`.
measure::Result<PlayLine, measure::Problem> read_play_line(std::string_view line, const std::string& name, int number);
/// A whole script; every line that is wrong is told, also one whose `at` goes back.
measure::Result<std::vector<PlayLine>, measure::Problems> read_play(std::string_view text, const std::string& name);

/// Every intent and its fields, for people.
std::string play_list();

}  // namespace intake
