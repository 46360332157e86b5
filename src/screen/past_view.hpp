// The pages over past cases: figures, the filter they go by, the list, and one case again as it was. Reads alone: no target of these
// pages carries an intent. Where the cases come from, and which day today is, is the caller's.
#pragma once

#include "past/figures.hpp"
#include "screen/screen_state.hpp"
#include "screen/words.hpp"

#include <optional>

namespace screen {

/// What the pages are made of.
struct PastSeen {
    past::Figures figures{};
    guide::Procedure procedure{};                // the present guide: titles of phases and departures
    std::optional<instrument::Reach> shipped{};  // of the profile that a new case by touch takes
    std::optional<guide::CaseState> one{};       // the case that is looked at again
};

/// Whether a target turns within these pages, or to them.
bool of_past_view(const Show& show);
ScreenState after_past(ScreenState screen, const Show& show);
past::Filter past_filter(const PastPage& page, const measure::Day& today);
PastModel past_view(const PastSeen& seen, const PastPage& page, const Words& words);

}  // namespace screen
