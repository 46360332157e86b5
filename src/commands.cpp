#include "commands.hpp"

#include "device/clocks.hpp"
#include "intake/kind.hpp"
#include "intake/play.hpp"
#include "open_case.hpp"
#include "plan_json.hpp"
#include "screen/pages.hpp"
#include "screen/plan_text.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cstdio>

namespace graftside {
namespace {

Try<ledger::Ledger> open_ledger(const Options& options, ledger::Purpose purpose) {
    auto opened = ledger::Ledger::open(ledger_path(options), {.station_key = "", .vfs = "", .purpose = purpose});
    if (!opened) return stop(opened.error());
    return *std::move(opened);
}

nlohmann::ordered_json problem_json(const measure::Problem& problem) {
    return {{"line", problem.line},   {"column", problem.column},   {"key", problem.key},
            {"found", problem.found}, {"allowed", problem.allowed}, {"file", problem.file}};
}

/// The plan that accept-plan stands for in a script: made from the inputs of the case.
guide::Intent with_plan(const guide::Intent& intent, const guide::CaseState& state) {
    const auto* accept = std::get_if<guide::AcceptPlan>(&intent);
    if (accept == nullptr) return intent;
    return guide::AcceptPlan{.inputs = state.inputs, .plan = plan::make(state.inputs), .why = accept->why};
}

/// Carries out one line; false where the script must stop.
bool carry_out(OpenCase& open, const intake::PlayLine& line, const std::string& script, const screen::Words& words) {
    const auto refusal = open.act(line.who, with_plan(line.intent, open.state()), line.at);
    if (refusal && !line.expect_refused) {
        fmt::print(stderr, "{}:{}: refused: {}\n", script, line.line, screen::refusal_text(*refusal, open.state(), words));
        return false;
    }
    if (!refusal && line.expect_refused) {
        fmt::print(stderr, "{}:{}: expected to be refused, but was taken\n", script, line.line);
        return false;
    }
    return true;
}

std::string sealed_text(const ledger::Verdict& verdict) {
    using Sealed = ledger::Verdict::Sealed;
    switch (verdict.sealed) {
        case Sealed::No:
            return "not sealed";
        case Sealed::Yes:
            return "sealed by key " + verdict.fingerprint;
        case Sealed::SignatureBad:
            return "THE SEAL'S SIGNATURE IS WRONG, key " + verdict.fingerprint;
        case Sealed::EventsAfter:
            return "EVENTS STAND AFTER THE SEAL, key " + verdict.fingerprint;
    }
    return {};
}

bool verify_one(const ledger::Ledger& ledger, const ledger::Summary& one, Exit& worst) {
    const std::string& reference = one.reference;
    const auto verdict = ledger.verify(reference);
    if (!verdict) {
        worst = tell(stop(verdict.error()));
        return false;
    }
    const bool unlocked = one.closed && verdict->sealed == ledger::Verdict::Sealed::No;
    const bool good = verdict->whole() && verdict->sealed != ledger::Verdict::Sealed::EventsAfter && !unlocked;
    const std::string bad = verdict->first_bad ? fmt::format("; first bad event {}: {}", *verdict->first_bad, verdict->why)
                                               : (verdict->why.empty() ? "" : "; " + verdict->why);
    const std::string more =
        verdict->only_in_mirror > 0 ? fmt::format("; {} further events stand only in the text mirror", verdict->only_in_mirror) : "";
    fmt::print("{}: {}, {} events whole{}; {}{}\n", reference,
               unlocked ? "CLOSED, NOT LOCKED"
               : good   ? "whole"
                        : "NOT WHOLE",
               verdict->whole_to, bad, sealed_text(*verdict), more);
    return good;
}

/// Cases of which only the mirror has events, or more than the ledger: offered, never taken over by themselves.
bool tell_recoverable(const ledger::Ledger& ledger) {
    const auto offered = ledger.recoverable();
    if (!offered) return false;
    for (const ledger::Recovery& one : *offered) {
        fmt::print("{}: {} events from {} on stand only in the text mirror. To take them over: graftside recover {}\n", one.reference,
                   one.events.size(), one.events.front().seq, one.reference);
    }
    return !offered->empty();
}

/// All problems of a file; of a case those of the readings that it names as well.
measure::Problems problems_of(const std::string& text, const std::string& path) {
    const auto kind = intake::kind_of(text, path);
    if (!kind || *kind != intake::Kind::Case) return intake::check(text, path);
    const auto document = whole_case(text, path);
    return document ? measure::Problems{} : document.error();
}

}  // namespace

Exit tell(const Stop& stop) {
    for (const std::string& line : stop.lines) fmt::print(stderr, "{}\n", line);
    return stop.code;
}

Exit plan_command(const Options& options, const std::string& case_path, Form form) {
    const auto stock = load_stock(options);
    if (!stock) return tell(stock.error());
    const auto brief = load_brief(*stock, case_path);
    if (!brief) return tell(brief.error());
    const plan::Plan made = plan::make(brief->inputs);
    fmt::print("{}", form == Form::Json ? plan_json(brief->inputs, made, stock->file_words)
                                        : screen::plan_text(brief->inputs, made, stock->words));
    return made.target ? Exit::Fine : Exit::No;
}

Exit check_command(const std::vector<std::string>& paths, Form form) {
    nlohmann::ordered_json all = nlohmann::ordered_json::array();
    bool fine = true, told = false;
    for (const std::string& path : paths) {
        const auto text = read_text(path);
        if (!text) return tell(text.error());
        const measure::Problems problems = problems_of(*text, path);
        fine = fine && problems.empty();
        nlohmann::ordered_json found = nlohmann::ordered_json::array();
        for (const measure::Problem& problem : problems) {
            found.push_back(problem_json(problem));
            if (form == Form::Text) fmt::print(stderr, "{}\n", measure::text(problem));
            told = true;
        }
        const auto kind = intake::kind_of(*text, path);
        all.push_back({{"file", path},
                       {"kind", kind ? nlohmann::ordered_json(intake::text(*kind)) : nullptr},
                       {"fine", problems.empty()},
                       {"problems", found}});
        if (form == Form::Text && problems.empty()) fmt::print("{}: a {} file, fine\n", path, kind ? intake::text(*kind) : "TOML");
    }
    if (form == Form::Json) fmt::print("{}\n", all.dump(2));
    if (form == Form::Text && told) fmt::print(stderr, "Correct what stands after each place and check again.\n");
    return fine ? Exit::Fine : Exit::No;
}

Exit state_command(const Options& options, const std::string& reference, Form form) {
    const auto stock = load_stock(options);
    if (!stock) return tell(stock.error());
    const auto ledger = open_ledger(options, ledger::Purpose::Look);
    if (!ledger) return tell(ledger.error());
    const auto events = ledger->load(reference);
    if (!events) return tell(stop(events.error()));
    if (events->empty()) return tell(stop(Exit::Wrong, reference + ": no such case in this ledger. `graftside verify` lists the cases."));
    const auto verdict = ledger->verify(reference);
    if (!verdict) return tell(stop(verdict.error()));
    const std::string seal = verdict->sealed == ledger::Verdict::Sealed::Yes ? verdict->fingerprint : "";
    const guide::CaseState state = guide::fold(*events);
    const measure::Instant last = events->back().at;
    fmt::print("{}", form == Form::Json ? state_json(state, seal, 0, last) : state_text(state, seal, last, stock->words));
    return Exit::Fine;
}

Exit play_command(const Options& options, const std::string& script_path, const std::string& case_path) {
    const auto stock = load_stock(options);
    if (!stock) return tell(stock.error());
    const auto text = read_text(script_path);
    if (!text) return tell(text.error());
    const auto script = intake::read_play(*text, script_path);
    if (!script) return tell(stop(script.error()));
    const auto brief = load_brief(*stock, case_path);
    if (!brief) return tell(brief.error());
    auto ledger = open_ledger(options, ledger::Purpose::Record);
    if (!ledger) return tell(ledger.error());
    auto open = OpenCase::take_up(*ledger, *brief, stock->unit.holder, script->empty() ? device::now() : script->front().at);
    if (!open) return tell(open.error());
    std::size_t taken = 0;
    for (const intake::PlayLine& line : *script) {
        if (!carry_out(*open, line, script_path, stock->words)) return Exit::No;
        ++taken;
    }
    if (open->health().held > 0) {
        const std::string why = open->health().trouble ? open->health().trouble->detail : "";
        return tell(stop(Exit::Machine, fmt::format("{} events are not on disk: {}", open->health().held, why)));
    }
    if (open->state().closed && open->seal().empty()) {
        const std::string why = open->health().trouble ? open->health().trouble->detail : "";
        return tell(
            stop(Exit::Machine, fmt::format("{}: closed, but not locked: the seal could not be written. {}", open->reference(), why)));
    }
    if (!options.quiet) fmt::print("{}: {} lines carried out; the case stands at event {}\n", open->reference(), taken, open->state().last);
    return Exit::Fine;
}

Exit play_list_command() {
    fmt::print("{}", intake::play_list());
    return Exit::Fine;
}

Exit verify_command(const Options& options, const std::string& reference) {
    const auto ledger = open_ledger(options, ledger::Purpose::Look);
    if (!ledger) return tell(ledger.error());
    const auto cases = ledger->cases();
    if (!cases) return tell(stop(cases.error()));
    Exit worst = Exit::Fine;
    bool whole = true, any = false;
    for (const ledger::Summary& one : *cases) {
        if (!reference.empty() && one.reference != reference) continue;
        any = true;
        whole = verify_one(*ledger, one, worst) && whole;
    }
    if (!any && !reference.empty()) return tell(stop(Exit::Wrong, reference + ": no such case in this ledger."));
    if (!any) fmt::print("no case in this ledger\n");
    tell_recoverable(*ledger);
    return worst != Exit::Fine ? worst : (whole ? Exit::Fine : Exit::No);
}

Exit recover_command(const Options& options, const std::string& reference) {
    auto ledger = open_ledger(options, ledger::Purpose::Record);
    if (!ledger) return tell(ledger.error());
    const auto taken = ledger->recover(reference);
    if (!taken) return tell(stop(taken.error()));
    if (*taken == 0) return tell(stop(Exit::No, reference + ": the text mirror has no event that the ledger lacks."));
    fmt::print("{}: {} events taken over from the text mirror; look through them before the case goes on\n", reference, *taken);
    return Exit::Fine;
}

}  // namespace graftside
