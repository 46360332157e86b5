// The program with a window: poll, touch, act, draw, present. Frames are drawn when something changes.
#pragma once

#include "stock.hpp"

#include <string>

namespace graftside {

/// Opens on a case file, or on the list of cases when `case_path` is empty.
Exit run_window(const Options& options, const std::string& case_path);

}  // namespace graftside
