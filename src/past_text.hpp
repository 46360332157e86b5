// Figures over past cases as JSON and as text: see README.md. Absent is null, never 0.
#pragma once

#include "past/figures.hpp"
#include "screen/words.hpp"

#include <string>

namespace graftside {

std::string past_json(const past::Figures& figures, const past::Filter& filter);
std::string past_text(const past::Figures& figures, const screen::Words& words);

}  // namespace graftside
