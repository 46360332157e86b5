// A case that is worked on: its state, and the ledger it is written to. Decide, append, apply, in this order and at once.
#pragma once

#include "guide/decide.hpp"
#include "ledger/ledger.hpp"
#include "stock.hpp"

#include <optional>
#include <string>

namespace graftside {

/// What a ledger could not do, with the code of the contract.
Stop stop(const ledger::Failure& failure);
/// The same for a screen, in its language, by what kind of failure it is.
std::string on_screen(ledger::Failure::What what, const screen::Words& words);
/// What a screen says of it. Where that is less than the lines, they go to standard error.
std::vector<std::string> on_screen(const Stop& stop, const screen::Words& words);

class OpenCase {
public:
    /// Begins the case, with the count held by `holder`, or takes it up where its ledger stands. The ledger outlives this.
    static Try<OpenCase> take_up(ledger::Ledger& ledger, const guide::Brief& brief, guide::Source holder, const measure::Instant& now);
    static Try<OpenCase> take_up(ledger::Ledger& ledger, const std::string& reference, const measure::Instant& now);

    const guide::CaseState& state() const { return state_; }
    const std::string& reference() const { return reference_; }
    /// The events of the last act.
    const std::vector<guide::Event>& newest() const { return newest_; }
    const ledger::Health& health() const { return health_; }
    /// Set when the case file differs from what the case was opened with.
    bool file_changed() const { return file_changed_; }
    /// The fingerprint under the record; empty until it is sealed.
    const std::string& seal() const { return seal_; }

    /// Nothing, or the refusal; what was decided is on the ledger or held when this returns.
    std::optional<guide::Refusal> act(guide::Who who, const guide::Intent& intent, const measure::Instant& now);
    /// Each second while something is held or unsealed.
    void retry(const measure::Instant& now);
    /// Each second: whether the record answers, by a read of the file. Where it does not, `health` says why.
    bool answers();

private:
    OpenCase(ledger::Ledger& ledger, std::string reference) : ledger_(&ledger), reference_(std::move(reference)) {}
    static Try<OpenCase> resume(ledger::Ledger& ledger, const std::string& reference, std::vector<guide::Event> events,
                                const measure::Instant& now);
    void write(const guide::Facts& facts, guide::Who who, const measure::Instant& now);
    /// A scan with what its bytes say and what other cases hold; any other intent as it is.
    guide::Intent read(const guide::Intent& intent, const measure::Instant& now);
    void seal_if_closed(const measure::Instant& now);

    ledger::Ledger* ledger_;
    std::string reference_;
    guide::CaseState state_{};
    std::vector<guide::Event> newest_{};
    ledger::Health health_{};
    bool file_changed_ = false;
    std::string seal_{};
    std::optional<std::vector<guide::Elsewhere>> elsewhere_{};  // once a scan has asked
};

/// The figures of `state --json` and of the plain text, as at the last event.
std::string state_json(const guide::CaseState& state, const std::string& seal, std::uint64_t not_on_disk, const measure::Instant& now);
std::string state_text(const guide::CaseState& state, const std::string& seal, const measure::Instant& now, const screen::Words& words);

}  // namespace graftside
