// What a file is, and its problems by the reader of that kind: a TOML file by its keys at the top, readings by their name.
#pragma once

#include "measure/problem.hpp"
#include "measure/result.hpp"

#include <string>
#include <string_view>

namespace intake {

enum class Kind { Case, Procedure, Trephine, Punch, Unit, Words, Readings, Screens, Surgeon };

/// A file of no kind is a problem at 1:1, a text that is no TOML one at its place.
measure::Result<Kind, measure::Problems> kind_of(std::string_view text, const std::string& name);
/// "case", "procedure", "trephine", "punch", "unit", "words", "readings", "screens", "surgeon"
std::string_view text(Kind kind);
/// All problems of a file by the reader of its kind; none: the file is fine.
measure::Problems check(std::string_view text, const std::string& name);

}  // namespace intake
