// The record of one case as it is handed over: its events, what they fold to, and what the ledger says of itself.
// Read from the ledger by the caller. Nothing here decides what a case is; it only reads it off.
#pragma once

#include "guide/state.hpp"

#include <optional>
#include <string>
#include <vector>

namespace paper {

/// An event as it stands on disk: kind and values in the words of the ledger.
struct Entry {
    guide::Seq seq = 0;
    measure::Instant at{};
    std::string who{}, kind{};
    std::string values{};  // a JSON object
    bool operator==(const Entry&) const = default;
};

struct Seal {
    enum class State { None, Whole, Wrong };
    State state{};
    std::string hash{};         // of the last event, hex
    std::string fingerprint{};  // of the key that sealed; empty without a seal
    std::string trouble{};      // what `verify` found; empty: whole
    bool operator==(const Seal&) const = default;
};

struct Record {
    std::vector<guide::Event> events{};
    std::vector<Entry> entries{};  // the same events, in the same order
    guide::CaseState state{};      // their fold
    Seal seal{};
    std::string program{};  // name and version of what hands it over
};

inline const std::string& reference(const Record& record) { return record.state.inputs.file.reference; }
inline const measure::Instant& last_moment(const Record& record) { return record.events.back().at; }

/// Facts of one kind with their events, oldest first.
template <class Fact>
struct Told {
    const guide::Event* event = nullptr;
    const Fact* fact = nullptr;
};
template <class Fact>
std::vector<Told<Fact>> all_of(const Record& record) {
    std::vector<Told<Fact>> found{};
    for (const guide::Event& event : record.events) {
        if (const auto* fact = std::get_if<Fact>(&event.fact)) found.push_back({&event, fact});
    }
    return found;
}

/// The newest pack read for an instrument that was not put aside; none if there is none.
const guide::Item* pack_read(const guide::CaseState& state, const std::string& instrument);
/// Packs that the unit's list gives to no instrument of this case, newest last.
std::vector<const guide::Item*> other_packs(const guide::CaseState& state);
/// The donation number: as read from the label, else as the case file names it.
std::optional<std::string> donation(const guide::CaseState& state);
std::optional<measure::Day> tissue_expires(const guide::CaseState& state);

/// Whether a later tap took this event back.
bool taken_back(const Record& record, guide::Seq seq);
/// Whether the event was held in memory and written later.
bool written_late(const Record& record, guide::Seq seq);

}  // namespace paper
