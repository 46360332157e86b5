#include "measure/expect.hpp"
#include "plan/notes.hpp"
#include "plan/sources.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

namespace plan {
namespace {

using Level = Note::Level;

constexpr int stale_days = 30;                          // usual practice
constexpr Length quoted_advance = measure::nm(62'500);  // the other figure that is quoted for a spoke
constexpr Length uneven_seat = measure::nm(100'000);    // 0.1 mm across the ring, said in spokes
constexpr int early_cold_days = 7;                      // 3-year success 95.3 % to then, 92.1 % later, in another graft (source::cold_days)
constexpr int usual_cold_days = 14;                     // source::storage, as the next
constexpr int most_culture_days = 28;
constexpr int density_percent = 10;  // 42 % of 430 eye-bank counts were off by more (source::density)

// The reach of the one open depth study (source::depth); a profile with other figures answers for them itself.
constexpr double study_mean = 1.046;
constexpr double study_sd = 0.082;
constexpr int study_n = 11;

Note note(const char* code, const char* source, Level level, std::vector<std::string> values = {}) {
    return {.code = code, .source = source, .level = level, .values = std::move(values)};
}

/// Days in this storage that want a look: cold over 7 and over the usual 14, culture over 28.
std::optional<Note> storage_days(const Donor& donor, const Day& today) {
    if (!donor.storage || !donor.stored) return std::nullopt;
    const int days = days_between(*donor.stored, today);
    const auto told = [&](const char* code) { return note(code, source::storage, Level::Watch, {fmt::format("{}", days)}); };
    if (*donor.storage == Storage::Culture) return days > most_culture_days ? std::optional(told("tissue-culture-long")) : std::nullopt;
    if (days > usual_cold_days) return told("tissue-cold-long");
    if (days <= early_cold_days) return std::nullopt;
    return note("tissue-cold-over-7", source::cold_days, Level::Watch, {fmt::format("{}", days)});
}

bool repeated(const std::vector<Reading>& readings) {
    for (auto one = readings.begin(); one != readings.end(); ++one) {
        const auto same = [&](const Reading& other) { return other.ring == one->ring && other.at == one->at; };
        if (std::any_of(one + 1, readings.end(), same)) return true;
    }
    return false;
}

/// How the readings stand to those of other instruments: told, never corrected for.
Note method_note(Method method) {
    switch (method) {
        case Method::Ultrasound:
            return note("method-ultrasound", source::scheimpflug_bias, Level::Info);
        case Method::Oct:
            return note("method-oct", source::oct_bias, Level::Info);
        case Method::Scheimpflug:
            return note("method-scheimpflug", source::scheimpflug_bias, Level::Info);
        case Method::SlitScanning:
            return note("method-slit-scanning", source::slit_bias, Level::Watch);
    }
    measure::expect(false);
    return {};
}

}  // namespace

std::vector<Note> reading_notes(const CaseFile& file) {
    std::vector<Note> notes{};
    const Thickness& thickness = file.thickness;
    if (thickness.measured) {
        const int days = days_between(*thickness.measured, file.date);
        if (days > stale_days) notes.push_back(note("reading-old", source::usual, Level::Watch, {fmt::format("{}", days)}));
        if (days < 0) notes.push_back(note("reading-after-date", source::own_file, Level::Watch, {iso(*thickness.measured)}));
    }
    notes.push_back(method_note(thickness.method));
    if (thickness.through_scar) notes.push_back(note("reading-through-scar", source::usual, Level::Watch));
    if (repeated(thickness.readings)) notes.push_back(note("reading-twice", source::own_file, Level::Watch));
    return notes;
}

std::vector<Note> tissue_notes(const Inputs& inputs) {
    std::vector<Note> notes{};
    const Donor& donor = inputs.file.donor;
    if (donor.expires && *donor.expires < inputs.file.date) {
        notes.push_back(note("tissue-expired", source::own_file, Level::Stop, {iso(*donor.expires), iso(inputs.file.date)}));
    }
    if (donor.storage) {
        const bool cold = *donor.storage == Storage::Cold;
        notes.push_back(note(cold ? "tissue-cold" : "tissue-culture", source::storage, Level::Info));
    }
    if (const auto days = storage_days(donor, inputs.file.date)) notes.push_back(*days);
    const auto least = inputs.limits.endothelium_per_mm2;
    if (!donor.endothelium_per_mm2) return notes;
    const int count = *donor.endothelium_per_mm2;
    const auto text = fmt::format("{}", count);
    if (least && count < *least) {
        notes.push_back(note("endothelium-under-minimum", source::unit, Level::Watch, {text, fmt::format("{}", *least)}));
    } else if (least && count * (100 - density_percent) < *least * 100) {
        notes.push_back(note("endothelium-near-minimum", source::density, Level::Watch, {text, fmt::format("{}", *least)}));
    }
    notes.push_back(note("endothelium-rough", source::density, Level::Info, {text}));
    return notes;
}

std::vector<Note> ladder_notes(const Inputs& inputs) {
    const double spokes = static_cast<double>(uneven_seat.nm()) / static_cast<double>(inputs.trephine.advance.nm());
    const auto& reach = inputs.trephine.reach;
    const bool study = reach.mean == study_mean && reach.sd == study_sd && reach.n == study_n;
    const Note own{.code = "ladder-own-reach", .source = reach.source, .level = Level::Watch, .values = {fmt::format("{}", reach.n)}};
    return {study ? note("ladder-estimate", source::depth, Level::Watch) : own,
            note("ladder-leaves-out", source::usual, Level::Watch, {fmt::format("{:.1f}", spokes)}),
            note("ladder-may-not-enter", source::slant, Level::Info), note("ladder-slanted-path", source::slanted_path, Level::Info),
            note("watch-the-chamber", source::usual, Level::Watch)};
}

std::vector<Note> trephine_notes(const instrument::Trephine& trephine) {
    std::vector<Note> notes{};
    if (trephine.advance == quoted_advance) notes.push_back(note("advance-quoted", source::depth, Level::Watch));
    if (!trephine.suction) notes.push_back(note("no-suction", source::profiles, Level::Watch));
    return notes;
}

void append(std::vector<Note>& notes, std::vector<Note> more) {
    notes.insert(notes.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

bool stops(const std::vector<Note>& notes) {
    return std::any_of(notes.begin(), notes.end(), [](const Note& n) { return n.level == Level::Stop; });
}

}  // namespace plan
