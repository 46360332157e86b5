// Invented values for the ledger's tests: no real person, unit or instrument.
#pragma once

#include "guide/fact.hpp"

#include <string>
#include <vector>

namespace samples {

plan::Inputs inputs();
plan::Plan plan();
guide::Brief brief();
/// Every fact at least once, every field away from its default.
std::vector<guide::Fact> facts();

measure::Instant instant(int second);
/// `count` events from `first` on: a case that is opened and then counts spokes.
std::vector<guide::Event> events(guide::Seq first, int count);
guide::Event event(guide::Seq seq, guide::Fact fact);

}  // namespace samples
