// Invented cases in any number, for figures over many: the same number gives the same case on any day.
#pragma once

#include "guide/fact.hpp"

#include <string>
#include <vector>

namespace sample {

/// "G-00042"
std::string generated_reference(int number);
/// The events of a short case that was done; every hundredth was abandoned, every fiftieth entered by the trephine.
std::vector<guide::Event> generated_case(int number);

}  // namespace sample
