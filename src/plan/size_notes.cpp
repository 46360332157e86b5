#include "plan/notes.hpp"
#include "plan/sources.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace plan {
namespace {

using Level = Note::Level;

constexpr Length quarter = measure::nm(250'000);
constexpr Length half = measure::nm(500'000);
constexpr Length usual_host_low = measure::nm(7'000'000);  // usual practice; 7.5 to 8.5 is called standard
constexpr Length usual_host_high = measure::nm(8'500'000);
constexpr Length small_in_keratoconus = measure::nm(7'500'000);
constexpr double long_eye_mm = 24.5;  // the limit of one series of 142 eyes (source::long_eye)

Note note(const char* code, const char* source, Level level, std::vector<std::string> values = {}) {
    return {.code = code, .source = source, .level = level, .values = std::move(values)};
}

std::string mm(Length length) { return fmt::format("{:.2f}", length.mm()); }

/// The sizes next to one that is not held, "7.25 and 7.50"; one alone at an end.
std::string beside(std::vector<Length> sizes, Length size) {
    std::sort(sizes.begin(), sizes.end());
    const auto above = std::upper_bound(sizes.begin(), sizes.end(), size);
    const std::string larger = above == sizes.end() ? "" : mm(*above), smaller = above == sizes.begin() ? "" : mm(*(above - 1));
    return smaller.empty() || larger.empty() ? smaller + larger : fmt::format("{} / {}", smaller, larger);
}

bool held(const std::vector<Length>& sizes, Length size) { return std::find(sizes.begin(), sizes.end(), size) != sizes.end(); }

void add_held(const Inputs& inputs, std::vector<Note>& notes) {
    const CaseFile& file = inputs.file;
    if (!held(inputs.trephine.diameters, file.host_diameter)) {
        notes.push_back(note("host-size-not-held", source::profiles, Level::Stop,
                             {mm(file.host_diameter), inputs.trephine.id, beside(inputs.trephine.diameters, file.host_diameter)}));
    }
    if (!held(inputs.punch.diameters, file.donor.diameter)) {
        notes.push_back(note("donor-size-not-held", source::profiles, Level::Stop,
                             {mm(file.donor.diameter), inputs.punch.id, beside(inputs.punch.diameters, file.donor.diameter)}));
    }
}

/// A unit that lists nothing has said nothing.
bool on_shelf(const std::vector<Length>& sizes, Length size) { return sizes.empty() || held(sizes, size); }

void add_stock(const Inputs& inputs, std::vector<Note>& notes) {
    const CaseFile& file = inputs.file;
    if (!on_shelf(inputs.limits.hosts_in_stock, file.host_diameter)) {
        notes.push_back(note("host-not-in-stock", source::shelf, Level::Watch, {mm(file.host_diameter)}));
    }
    if (!on_shelf(inputs.limits.donors_in_stock, file.donor.diameter)) {
        notes.push_back(note("donor-not-in-stock", source::shelf, Level::Watch, {mm(file.donor.diameter)}));
    }
}

bool may_be_long(const CaseFile& file) { return file.axial_length_mm && *file.axial_length_mm > long_eye_mm; }

void add_oversize(const CaseFile& file, Length oversize, std::vector<Note>& notes) {
    const Evidence found = evidence(oversize);
    append(notes, found.speaks_for);
    append(notes, found.against);
    if (oversize > Length{} && (may_be_long(file) || file.reason == Reason::Keratoconus)) {
        notes.push_back(note("same-size-option", source::registry, Level::Info));
    }
    if (oversize < half && file.lens == Lens::Aphakic) notes.push_back(note("half-option-aphakic", source::half_for, Level::Info));
}

void add_host(const CaseFile& file, std::vector<Note>& notes) {
    if (file.host_diameter < usual_host_low || file.host_diameter > usual_host_high) {
        notes.push_back(note("host-outside-usual", source::usual, Level::Watch, {mm(file.host_diameter)}));
    }
    if (file.reason == Reason::Keratoconus && file.host_diameter <= small_in_keratoconus) {
        notes.push_back(note("host-small-keratoconus", source::small_host, Level::Watch, {mm(file.host_diameter)}));
    }
}

void add_clearance(const Inputs& inputs, const Sizes& sizes, std::vector<Note>& notes) {
    const auto limit = inputs.limits.clearance;
    if (sizes.clearance.nm() <= 0) {
        notes.push_back(note("cut-leaves-cornea", source::own_file, Level::Stop, {mm(sizes.clearance)}));
    } else if (limit && sizes.clearance < *limit) {
        notes.push_back(note("clearance-under-limit", source::unit, Level::Watch, {mm(sizes.clearance), mm(*limit)}));
    } else if (limit && sizes.clearance_usual_offset < *limit) {
        notes.push_back(
            note("clearance-offset-under-limit", source::decentration, Level::Watch, {mm(sizes.clearance_usual_offset), mm(*limit)}));
    }
    notes.push_back(note("clearance-no-threshold", source::decentration, Level::Info, {mm(sizes.clearance_usual_offset)}));
}

}  // namespace

Evidence evidence(Length oversize) {
    Evidence found{};
    if (oversize < Length{}) {
        found.against.push_back(note("undersize", source::undersize, Level::Watch, {mm(Length{} - oversize)}));
    } else if (oversize == Length{}) {
        found.speaks_for = {note("same-size-for", source::quarter_for, Level::Info),
                            note("same-size-long-eye", source::long_eye, Level::Info)};
        found.against = {note("same-size-against", source::registry, Level::Watch)};
    } else if (oversize <= quarter) {
        found.speaks_for = {note("oversize-quarter-for", source::registry, Level::Info)};
        found.against = {note("oversize-quarter-against", source::quarter_for, Level::Info),
                         note("oversize-quarter-mixed", source::quarter_mixed, Level::Info)};
    } else {
        found.speaks_for = {note("oversize-half-for", source::half_for, Level::Info)};
        found.against = {note("oversize-half-against", source::half_against, Level::Info)};
    }
    if (oversize > half) found.against.push_back(note("oversize-large", source::oversize_round, Level::Watch, {mm(oversize)}));
    if (oversize > Length{} && oversize <= half) {
        found.speaks_for.push_back(note("oversize-suction", source::suction_sizes, Level::Info));
    }
    return found;
}

std::vector<Note> size_notes(const Inputs& inputs, const Sizes& sizes) {
    std::vector<Note> notes{};
    add_held(inputs, notes);
    add_stock(inputs, notes);
    add_oversize(inputs.file, sizes.oversize, notes);
    add_host(inputs.file, notes);
    add_clearance(inputs, sizes, notes);
    notes.push_back(note("button-range", source::button, Level::Info,
                         {mm(sizes.button_front.low), mm(sizes.button_front.high), mm(sizes.button_back.low), mm(sizes.button_back.high)}));
    return notes;
}

}  // namespace plan
