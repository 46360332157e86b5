// Carries out a play script through an open case, and prints after each line the number of the last event that was called
// saved. To be killed at any moment: what it printed must be on the ledger. Run as: acknowledge ASSETS LEDGER CASE SCRIPT.
#include "device/files.hpp"
#include "intake/play.hpp"
#include "open_case.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <vector>

namespace {

int fail(const std::string& why) {
    fmt::print(stderr, "{}\n", why);
    return 2;
}

/// One write to the system, so that nothing waits in a buffer when the program is killed.
bool print_now(guide::Seq saved) {
    const std::string line = fmt::format("{}\n", saved);
    return ::write(STDOUT_FILENO, line.data(), line.size()) == static_cast<ssize_t>(line.size());
}

/// accept-plan stands for the plan of the case's own inputs.
guide::Intent with_plan(guide::Intent intent, const guide::CaseState& state) {
    if (auto* accept = std::get_if<guide::AcceptPlan>(&intent)) {
        accept->inputs = state.inputs;
        accept->plan = plan::make(state.inputs);
    }
    return intent;
}

int carry_out(graftside::OpenCase& open, const std::vector<intake::PlayLine>& script) {
    for (const intake::PlayLine& line : script) {
        if (open.act(line.who, with_plan(line.intent, open.state()), line.at)) return fail(fmt::format("line {} was refused", line.line));
        if (!print_now(open.health().on_disk)) return fail("nobody listens");
    }
    return 0;
}

int run(const std::string& assets, const std::string& path, const std::string& case_path, const std::string& script_path) {
    const auto stock = graftside::load_stock({.assets = assets, .unit = assets + "/unit/unit.toml"});
    if (!stock) return fail(stock.error().lines.front());
    const auto brief = graftside::load_brief(*stock, case_path);
    if (!brief) return fail(brief.error().lines.front());
    const auto text = graftside::read_text(script_path);
    if (!text) return fail(text.error().lines.front());
    const auto script = intake::read_play(*text, script_path);
    if (!script || script->empty()) return fail("no script");
    auto ledger = ledger::Ledger::open(path);
    if (!ledger) return fail(ledger.error().detail);
    auto open = graftside::OpenCase::take_up(*ledger, *brief, guide::Source::Table, script->front().at);
    if (!open) return fail(open.error().lines.front());
    return carry_out(*open, *script);
}

}  // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv, argv + argc);
    if (words.size() != 5) return fail("usage: acknowledge ASSETS LEDGER CASE SCRIPT");
    return run(words[1], words[2], words[3], words[4]);
}
