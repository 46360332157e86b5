#include "past/summary.hpp"

#include "guide/tissue.hpp"

#include <algorithm>

namespace past {
namespace {

using guide::CaseState;

std::vector<Timed> times(const CaseState& state) {
    std::vector<Timed> all{};
    for (const auto& [id, spells] : state.clocks) {
        const auto reading = guide::clock_reading(state, id, {});
        if (reading && !reading->running) all.push_back({.id = id, .ms = reading->ms, .exact = reading->exact});
    }
    return all;
}

std::optional<Cut> cut(const CaseState& state) {
    if (state.seatings.empty()) return std::nullopt;
    const guide::Blade blade = guide::blade(state);
    Cut made{.end = state.seatings.back().ended,
             .seatings = static_cast<int>(state.seatings.size()),
             .position = blade.position,
             .planned = blade.planned,
             .travel = blade.travel};
    if (state.plan && state.plan->wall && !state.plan->ladder.empty()) made.thinnest = state.plan->wall->thinnest;
    made.depth = state.depth;
    return made;
}

std::vector<std::string> departures(const CaseState& state) {
    std::vector<std::string> ids{};
    for (const guide::Away& away : state.departures) ids.push_back(away.what);
    std::sort(ids.begin(), ids.end());
    ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
    return ids;
}

/// The tissue of the case is used when it was grafted, or when the case was done and nobody said that it was not used; another one
/// that was read, such as a back-up, is not. An opened pack always is.
std::vector<Held> items(const CaseState& state) {
    std::vector<Held> all{};
    const bool grafted = guide::find_told(state, guide::TissueWord::Grafted) != nullptr;
    const bool spared = guide::find_told(state, guide::TissueWord::NotUsed) != nullptr;
    const bool used = grafted || (state.closed == std::optional(guide::CaseEnd::Done) && !spared);
    const guide::ScanSeen* own = guide::tissue_read(state);
    for (const guide::ScanSeen& scan : state.scans) {
        if (scan.put_aside || scan.completed || guide::number_alone(state, scan)) continue;
        const guide::Item& item = scan.said.item;
        if (item.kind == guide::ItemKind::Tissue) all.push_back({.item = item, .used = used && &scan == own});
        if (item.kind == guide::ItemKind::Pack && item.serial) all.push_back({.item = item, .used = true});
    }
    const auto planned = guide::planned_tissue(state);
    const bool read = std::any_of(
        all.begin(), all.end(), [&](const Held& held) { return planned && guide::same_item(held.item, *planned) != guide::SameItem::No; });
    if (planned && !read) all.push_back({.item = *planned, .used = used});
    return all;
}

void count_checks(const CaseState& state, Summary& made) {
    for (const auto& [item, tally] : state.counts) {
        made.counts += static_cast<int>(tally.checks.size());
        made.counts_differed += static_cast<int>(std::count_if(
            tally.checks.begin(), tally.checks.end(), [](const guide::Check& check) { return check.said.seen != check.said.expected; }));
    }
}

bool reliable(const Cut& cut) { return cut.seatings == 1 && cut.end && cut.travel.nm() > 0; }

double ratio(Length one, Length other) { return static_cast<double>(one.nm()) / static_cast<double>(other.nm()); }

}  // namespace

Summary summary(const CaseState& state) {
    const plan::CaseFile& file = state.inputs.file;
    Summary made{.reference = file.reference,
                 .day = file.date,
                 .side = file.side,
                 .reason = file.reason,
                 .invented = file.invented,
                 .trephine = state.inputs.trephine.id,
                 .host = file.host_diameter,
                 .donor = file.donor.diameter,
                 .end = state.closed,
                 .times = times(state),
                 .cut = cut(state),
                 .departures = departures(state),
                 .items = items(state)};
    count_checks(state, made);
    return made;
}

std::optional<double> reach(const Summary& one) {
    if (!one.cut || !reliable(*one.cut) || one.cut->end == guide::CutEnd::Entered || !one.cut->depth) return std::nullopt;
    return ratio(*one.cut->depth, one.cut->travel);
}

std::optional<double> share_at_end(const Summary& one) {
    if (!one.cut || !reliable(*one.cut) || !one.cut->thinnest) return std::nullopt;
    return ratio(one.cut->travel, *one.cut->thinnest);
}

std::vector<guide::Elsewhere> elsewhere(const std::vector<Summary>& all, const std::string& own, bool invented) {
    std::vector<guide::Elsewhere> found{};
    for (const Summary& one : all) {
        if (one.reference == own || one.invented != invented) continue;
        for (const Held& held : one.items) {
            const bool kept = held.used || !one.end;  // of a case that is over, what was not used is free again
            if (kept) found.push_back({.reference = one.reference, .item = held.item, .used = held.used});
        }
    }
    return found;
}

}  // namespace past
