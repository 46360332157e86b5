// A small procedure, an invented case and a plan as plain values, and the means to act on them: for tests of the guide,
// the ledger and the screens.
#pragma once

#include "guide/decide.hpp"

#include <string>
#include <vector>

namespace sample {

guide::Procedure procedure();
plan::Inputs inputs();
/// 8 spokes after 3 to zero, 16 interrupted from 12 o'clock; the figures are invented, only their form matters.
plan::Plan plan();
guide::Brief brief();

/// A case that is acted on: each intent is decided and applied, seconds apart.
class Case {
public:
    explicit Case(const guide::Brief& brief = sample::brief());
    /// True if it was taken; the refusal is kept otherwise.
    bool does(const guide::Intent& intent, guide::Who who = guide::Who::Scrub);
    void later(std::int64_t seconds);
    /// Taps through every step up to, not including, `step`, doing what each step waits for.
    void up_to(const guide::StepId& step);
    void count(int spokes);
    void tie(int sutures);

    guide::CaseState state{};
    std::vector<guide::Event> events{};
    guide::Refusal refusal{};
    measure::Instant now{};

private:
    void write(const guide::Facts& facts, guide::Who who);
    void pass(const guide::Step& step);
};

}  // namespace sample
