#include "open_case.hpp"

#include "intake/scan.hpp"
#include "measure/expect.hpp"
#include "past_shelf.hpp"

#include <spdlog/spdlog.h>

namespace graftside {

namespace {

std::string english(const ledger::Failure& failure) {
    using What = ledger::Failure::What;
    const std::string detail = failure.detail.empty() ? "" : " (" + failure.detail + ")";
    switch (failure.what) {
        case What::CannotOpen:
            return failure.path + ": cannot be opened" + detail + ". Check that the folder is there and may be written to.";
        case What::InUse:
            return failure.path + ": in use by another graftside. Close that one first.";
        case What::Newer:
            return failure.path + ": written by a newer graftside" + detail + ". Use that version.";
        case What::Damaged:
            return failure.path + ": damaged" + detail +
                   ". Nothing was changed. Keep the file and its text mirror, and run `graftside verify`.";
        case What::Full:
            return failure.path + ": the disk is full" + detail + ". Make room.";
        case What::CannotWrite:
            return failure.path + ": the disk refuses to write" + detail + ".";
    }
    measure::expect(false);
    return {};
}

}  // namespace

Stop stop(const ledger::Failure& failure) { return {.code = Exit::Machine, .lines = {english(failure)}, .ledger = failure.what}; }

std::string on_screen(ledger::Failure::What what, const screen::Words& words) {
    using What = ledger::Failure::What;
    switch (what) {
        case What::CannotOpen:
            return words("disk.cannot_open");
        case What::InUse:
            return words("disk.in_use");
        case What::Newer:
            return words("disk.newer");
        case What::Damaged:
            return words("disk.damaged");
        case What::Full:
            return words("disk.full");
        case What::CannotWrite:
            return words("disk.cannot_write");
    }
    measure::expect(false);
    return {};
}

std::vector<std::string> on_screen(const Stop& stop, const screen::Words& words) {
    if (!stop.ledger) return stop.lines;
    for (const std::string& line : stop.lines) spdlog::warn("{}", line);
    return {on_screen(*stop.ledger, words)};
}

void OpenCase::write(const guide::Facts& facts, guide::Who who, const measure::Instant& now) {
    std::vector<guide::Event> events{};
    for (const guide::Fact& fact : facts) {
        events.push_back({.seq = state_.last + static_cast<guide::Seq>(events.size()) + 1, .at = now, .who = who, .fact = fact});
    }
    health_ = ledger_->append(reference_, events);
    for (const guide::Event& event : events) state_ = guide::apply(std::move(state_), event);
    newest_ = std::move(events);
}

Try<OpenCase> OpenCase::resume(ledger::Ledger& ledger, const std::string& reference, std::vector<guide::Event> events,
                               const measure::Instant& now) {
    OpenCase open(ledger, reference);
    open.state_ = guide::fold(events);
    open.health_ = ledger.health(reference);
    if (open.state_.closed) {
        open.seal_if_closed(now);
    } else {
        open.write({guide::RunStarted{.program = program_name()}}, guide::Who::Program, now);
    }
    return open;
}

Try<OpenCase> OpenCase::take_up(ledger::Ledger& ledger, const guide::Brief& brief, guide::Source holder, const measure::Instant& now) {
    const std::string& reference = brief.inputs.file.reference;
    auto events = ledger.load(reference);
    if (!events) return stop(events.error());
    if (!events->empty()) {
        auto open = resume(ledger, reference, *std::move(events), now);
        if (open) open->file_changed_ = open->state_.brief.inputs != brief.inputs;
        return open;
    }
    OpenCase open(ledger, reference);
    open.write(guide::opening(brief, program_name(), holder), guide::Who::Program, now);
    return open;
}

Try<OpenCase> OpenCase::take_up(ledger::Ledger& ledger, const std::string& reference, const measure::Instant& now) {
    auto events = ledger.load(reference);
    if (!events) return stop(events.error());
    if (events->empty()) return stop(Exit::Wrong, reference + ": no such case in this ledger. `graftside verify` lists the cases.");
    return resume(ledger, reference, *std::move(events), now);
}

guide::Intent OpenCase::read(const guide::Intent& intent, const measure::Instant& now) {
    const auto* scan = std::get_if<guide::Scan>(&intent);
    if (scan == nullptr) return intent;
    if (!elsewhere_) {
        // A ledger whose other cases cannot be read still takes this one: then nothing is said of them.
        const auto all = summaries(*ledger_);
        elsewhere_ = all ? past::elsewhere(*all, reference_, state_.inputs.file.invented) : std::vector<guide::Elsewhere>();
    }
    return guide::Scan{.bytes = scan->bytes, .label = intake::read_scan(scan->bytes, measure::day_of(now)), .elsewhere = *elsewhere_};
}

std::optional<guide::Refusal> OpenCase::act(guide::Who who, const guide::Intent& intent, const measure::Instant& now) {
    const auto decided = guide::decide(state_, who, read(intent, now), now);
    if (!decided) return decided.error();
    write(*decided, who, now);
    seal_if_closed(now);
    return std::nullopt;
}

void OpenCase::retry(const measure::Instant& now) {
    if (health_.held > 0 || health_.trouble) {
        const ledger::Retried retried = ledger_->retry(now);
        health_ = ledger_->health(reference_);
        for (const auto& added : retried.added) {
            if (added.reference == reference_) state_ = guide::apply(std::move(state_), added.event);
        }
    }
    seal_if_closed(now);
}

bool OpenCase::answers() {
    const bool answered = ledger_->answers(reference_);
    if (!answered) health_ = ledger_->health(reference_);
    return answered;
}

void OpenCase::seal_if_closed(const measure::Instant& now) {
    if (!state_.closed || !seal_.empty() || health_.held > 0) return;
    const auto sealed = ledger_->seal(reference_, now);
    if (sealed) {
        seal_ = sealed->fingerprint;
    } else {
        health_.trouble = sealed.error();
    }
}

}  // namespace graftside
