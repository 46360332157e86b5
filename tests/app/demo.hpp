// The invented demo case for tests of the program without a window: its stock, its script, a session on it, and a finger.
#pragma once

#include "intake/play.hpp"
#include "ledger/place_for_tests.hpp"
#include "session.hpp"

#include <string>
#include <vector>

namespace demo {

using Script = std::vector<intake::PlayLine>;

const graftside::Stock& stock();
std::string case_path();
std::string reference();
const Script& script();
/// The lines before the first `count-spoke`, and those of the cut: up to the suction's end.
Script before_cut();
Script cut();

graftside::Options options(const std::string& ledger);
/// Carries out one line as `graftside play` does; the refusal if there is one.
std::optional<guide::Refusal> carry_out(graftside::OpenCase& open, const intake::PlayLine& line);
/// Carries out lines on a ledger of their own that is closed again; the state they lead to.
guide::CaseState play(const std::string& ledger, const Script& lines);

/// What stands on the ledger's disk, read by another opening of it, chain and all checked.
std::vector<guide::Event> on_disk(const std::string& ledger);
bool written_late(const std::vector<guide::Event>& events);

// ---- a finger ----
/// The target of that name on the view; fails the test if there is none.
screen::Target target(const screen::View& view, const std::string& id);
bool has_target(const screen::View& view, const std::string& id);
void tap(graftside::Session& session, const std::string& id, const measure::Instant& at);
/// The words of the banner; empty if there is none.
std::string banner(const screen::View& view);
/// The word beside the sign of a muted voice; empty if it is not shown.
std::string muted(const screen::View& view);

measure::Instant later(measure::Instant at, std::int64_t ms);

}  // namespace demo
