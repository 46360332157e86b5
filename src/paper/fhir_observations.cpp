#include "eye/frame.hpp"
#include "guide/tissue.hpp"
#include "paper/fhir_parts.hpp"

#include <algorithm>
#include <cmath>

namespace paper::r4 {
namespace {

constexpr auto estimate =
    "An estimate, not a measurement: 11 cadaver eyes aimed at 80 % of thickness reached 71 to 95 % "
    "(Clin Ophthalmol 2014;8:2391-6). Uneven seating, leaking suction, a soft eye and a blunt blade are not in it.";

void sizes(const Context& context, std::vector<Observation>& out) {
    const plan::CaseFile& file = context.record->state.inputs.file;
    out.push_back(
        {.code = "Host trephine diameter", .value = {"valueQuantity", millimetres(file.host_diameter)}, .focus = context.trephine});
    out.push_back({.code = "Donor punch diameter", .value = {"valueQuantity", millimetres(file.donor.diameter)}, .focus = context.punch});
}

void wall(const Context& context, std::vector<Observation>& out) {
    const auto& plan = context.record->state.plan;
    Observation made{.code = "Thinnest corneal thickness on the cut", .value = absent()};
    if (plan && plan->wall) {
        made.value = {"valueQuantity", micrometres(plan->wall->thinnest)};
        made.components.push_back({"Standard uncertainty", {"valueQuantity", micrometres(plan->wall->u)}});
        if (plan->wall->thinnest_at) {
            made.components.push_back(
                {"Meridian, ISO 8429 dial, 0 to 360", {"valueQuantity", degrees(plan->wall->thinnest_at->centideg())}});
        }
        made.components.push_back({"Basis", {"valueString", plan->wall->basis}});
    }
    out.push_back(std::move(made));
}

Value planned_spokes(const guide::CaseState& state) {
    if (!state.plan || !state.plan->target) return absent();
    if (!state.plan->target->spokes) return {"valueString", "to entry"};
    return {"valueInteger", *state.plan->target->spokes + state.moved};
}

std::string ended(const std::optional<guide::CutEnd>& how) {
    if (!how) return "not ended";
    switch (*how) {
        case guide::CutEnd::AtPlan:
            return "at the plan";
        case guide::CutEnd::Entered:
            return "chamber entered";
        case guide::CutEnd::Surgeon:
            return "by the surgeon";
    }
    return {};
}

void seatings(const Context& context, std::vector<Observation>& out) {
    const guide::CaseState& state = context.record->state;
    if (state.seatings.empty()) out.push_back({.code = "Spokes counted below zero", .value = absent(), .focus = context.trephine});
    for (std::size_t i = 0; i < state.seatings.size(); ++i) {
        const guide::Seating& one = state.seatings[i];
        out.push_back({.code = "Spokes counted below zero, seating " + std::to_string(i + 1),
                       .value = {"valueInteger", one.position()},
                       .components = {{"Raised before seating", {"valueInteger", one.raise}},
                                      {"Turned down", {"valueInteger", one.down}},
                                      {"Turned up", {"valueInteger", one.up}},
                                      {"Cut ended", {"valueString", ended(one.ended)}}},
                       .focus = context.trephine});
    }
    const Value second = state.seatings.empty() ? absent() : Value{"valueBoolean", state.seatings.size() > 1};
    out.push_back({.code = "Second cut, ring seated again", .value = second});
}

Value entered(const guide::CaseState& state) {
    const auto is = [&](auto test) { return std::any_of(state.seatings.begin(), state.seatings.end(), test); };
    const auto told = [](const guide::Away& away) { return away.what == "entered-by-trephine"; };
    const bool yes = is([](const guide::Seating& one) { return one.ended == guide::CutEnd::Entered; }) ||
                     std::any_of(state.departures.begin(), state.departures.end(), told);
    if (yes) return {"valueBoolean", true};
    return is([](const guide::Seating& one) { return one.ended.has_value(); }) ? Value{"valueBoolean", false} : absent();
}

void depth(const Context& context, std::vector<Observation>& out) {
    const guide::CaseState& state = context.record->state;
    const guide::Blade blade = guide::blade(state);
    out.push_back({.code = "Planned spokes below zero", .value = planned_spokes(state), .focus = context.trephine});
    seatings(context, out);
    out.push_back({.code = "Blade advance a spoke, as the profile states it",
                   .value = {"valueQuantity", micrometres(state.inputs.trephine.advance)},
                   .focus = context.trephine});
    Observation left{.code = "Expected thickness left under the blade", .value = absent(), .note = estimate};
    const bool told = state.plan && !state.seatings.empty() && blade.reliable && blade.position >= 0 &&
                      static_cast<std::size_t>(blade.position) < state.plan->ladder.size();
    if (told) {
        const plan::Rung& rung = state.plan->ladder[static_cast<std::size_t>(blade.position)];
        left.value = {"valueQuantity", micrometres(rung.reserve)};
        left.components = {{"Half-width of the 95 % interval", {"valueQuantity", micrometres(rung.reserve_u95)}},
                           {"Chance of having entered", {"valueQuantity", quantity(std::round(rung.entry_chance * 1e6) / 1e6, "1", "1")}}};
    }
    out.push_back(std::move(left));
    const auto measured = all_of<guide::DepthMeasured>(*context.record);
    Observation reached{.code = "Depth of the cut as measured", .value = absent()};
    if (!measured.empty()) {
        reached.value = {"valueQuantity", micrometres(measured.back().fact->depth)};
        reached.at = measured.back().event->at;
        reached.note = measured.back().fact->how;
    }
    out.push_back(std::move(reached));
    out.push_back({.code = "Anterior chamber entered by the trephine", .value = entered(state), .focus = context.trephine});
}

void sutures(const Context& context, std::vector<Observation>& out) {
    const guide::CaseState& state = context.record->state;
    const instrument::Trephine& trephine = state.inputs.trephine;
    for (const guide::Tied& tied : state.sutures) {
        const auto place = eye::mark_place(measure::centideg(tied.centideg), trephine.marks, trephine.mark_offset);
        Observation made{.code = "Suture " + std::to_string(tied.n) + " as placed, ISO 8429 dial, 0 to 360",
                         .value = {"valueQuantity", degrees(tied.centideg)},
                         .at = tied.at};
        if (place.mark) made.components.push_back({"Host mark", {"valueInteger", *place.mark}});
        made.components.push_back({"Times redone", {"valueInteger", tied.redone}});
        out.push_back(std::move(made));
    }
    Observation ring{.code = "Ring reflection after the sutures", .value = absent()};
    if (state.ring) {
        const auto axis = state.ring->long_axis_centideg;
        ring.value = {"valueString", axis ? "oval" : "round"};
        if (axis) ring.components.push_back({"Long axis, ISO 8429 dial", {"valueQuantity", degrees(*axis % 18000)}});
    }
    out.push_back(std::move(ring));
    Observation knots{.code = "Side on which the knots are buried", .value = absent()};
    if (state.knots) knots.value = {"valueString", std::string(guide::name(state.knots->fact.side))}, knots.at = state.knots->at;
    out.push_back(std::move(knots));
    if (state.materials.empty()) out.push_back({.code = "Suture material", .value = absent()});
    for (const auto& one : state.materials) {
        Observation made{.code = "Suture material", .value = {"valueString", one.fact.material}, .at = one.at};
        if (!one.fact.lot.empty()) made.components.push_back({"Lot", {"valueString", one.fact.lot}});
        out.push_back(std::move(made));
    }
}

void times(const Context& context, std::vector<Observation>& out) {
    const Record& record = *context.record;
    for (const auto& clock : record.state.clocks) {
        const auto reading = guide::clock_reading(record.state, clock.first, last_moment(record));
        if (!reading) continue;
        Observation made{.code = "Time: " + clock.first, .value = {"valueQuantity", seconds(reading->ms)}, .at = clock.second.front().from};
        if (!reading->running) made.until = clock.second.back().to;
        made.components.push_back({"Spells", {"valueInteger", clock.second.size()}});
        if (!reading->exact) made.note = "About: the program was stopped in between, the wall clock alone was left.";
        out.push_back(std::move(made));
    }
}

void counts(const Context& context, std::vector<Observation>& out) {
    const guide::CaseState& state = context.record->state;
    for (const guide::CountItem& item : state.brief.unit.counts) {
        const auto tally = state.counts.find(item.id);
        if (tally == state.counts.end()) continue;
        Observation made{.code = "Count: " + item.title, .value = {"valueInteger", tally->second.opened}};
        made.components.push_back({"Passed back", {"valueInteger", tally->second.passed_back}});
        for (const guide::Check& check : tally->second.checks) {
            made.components.push_back({"Seen by " + check.said.by + ", " + measure::rfc3339(check.at), {"valueInteger", check.said.seen}});
        }
        out.push_back(std::move(made));
    }
}

/// The moment at which a step was done.
Value done(const guide::CaseState& state, const guide::StepId& id) {
    return guide::confirmed(state, id) ? Value{"valueDateTime", measure::rfc3339(state.steps.at(id).at)} : absent();
}

/// What was told of the donor tissue: accepted or not, grafted or not, what was left over.
void told(const Context& context, std::vector<Observation>& out) {
    using guide::TissueWord;
    const std::pair<TissueWord, const char*> all[] = {{TissueWord::Accepted, "Donor tissue accepted by the surgeon"},
                                                      {TissueWord::Unfit, "Donor tissue found unfit"},
                                                      {TissueWord::Grafted, "Donor tissue grafted"},
                                                      {TissueWord::NotUsed, "Donor tissue not used"},
                                                      {TissueWord::LeftOver, "Donor tissue left over"}};
    for (const auto& one : all) {
        const guide::Told* said = guide::find_told(context.record->state, one.first);
        if (said != nullptr) {
            out.push_back(
                {.code = one.second, .value = {"valueBoolean", true}, .at = said->at, .focus = context.tissue, .note = said->text});
        }
    }
    const guide::CaseState& state = context.record->state;
    // Without a word the tap on the step is all there is.
    const bool judged = guide::find_told(state, TissueWord::Accepted) != nullptr || guide::find_told(state, TissueWord::Unfit) != nullptr;
    if (!judged && guide::confirmed(state, "tissue-accepted")) {
        out.push_back({.code = all[0].second,
                       .value = {"valueBoolean", true},
                       .at = state.steps.at("tissue-accepted").at,
                       .focus = context.tissue,
                       .note = "By the tap on its step."});
    }
}

/// Where each specimen went, and the side on its label.
void specimens(const guide::CaseState& state, std::vector<Observation>& out) {
    out.push_back({.code = "Specimens labelled and read back",
                   .value = done(state, "specimens"),
                   .note = state.specimens.empty() ? "Which specimens, and where they went, is not recorded." : ""});
    for (const auto& entry : state.specimens) {
        const guide::SpecimenTold& told = entry.second.fact;
        Observation made{.code = "Specimen: " + std::string(guide::name(told.what)),
                         .value = {"valueString", std::string(guide::name(told.to))},
                         .at = entry.second.at};
        if (!told.side.empty()) made.components.push_back({"Side on the label", {"valueString", told.side + " eye"}});
        out.push_back(std::move(made));
    }
}

void tissue(const Context& context, std::vector<Observation>& out) {
    const guide::CaseState& state = context.record->state;
    const plan::Donor& donor = state.inputs.file.donor;
    const auto about = [&](std::string code, Value value) {
        out.push_back({.code = std::move(code), .value = std::move(value), .focus = context.tissue});
    };
    about("Endothelial cell density",
          donor.endothelium_per_mm2 ? Value{"valueQuantity", quantity(*donor.endothelium_per_mm2, "/mm²", "/mm2")} : absent());
    const auto expires = tissue_expires(state);
    about("Tissue expires", expires ? Value{"valueDateTime", measure::iso(*expires)} : absent());
    const auto stored = guide::stored(state, state.inputs.file.date);
    about("Days in storage", stored ? Value{"valueQuantity", quantity(stored->days, "d", "d")} : absent());
    told(context, out);
    specimens(state, out);
    Observation bank{.code = "Tissue bank told", .value = absent(), .focus = context.tissue};
    if (state.bank) {
        bank.value = {"valueString", state.bank->fact.text}, bank.at = state.bank->at;
        bank.components.push_back({"Contact at the tissue bank", {"valueString", state.bank->fact.contact}});
    }
    out.push_back(std::move(bank));
    out.push_back({.code = "Pad and shield on", .value = done(state, "pad-and-shield")});
}

void departures(const Context& context, std::vector<Observation>& out) {
    const guide::CaseState& state = context.record->state;
    for (const guide::Away& away : state.departures) {
        out.push_back({.code = "Otherwise than planned",
                       .value = {"valueString", guide::departure_title(state.brief.procedure, away.what)},
                       .at = away.at,
                       .until = away.back});
    }
}

}  // namespace

std::vector<Observation> observations(const Context& context) {
    std::vector<Observation> out{};
    for (const auto part : {sizes, wall, depth, sutures, times, counts, tissue, departures}) part(context, out);
    return out;
}

Json resource(const Context& context, const Observation& observation) {
    Json made = {{"resourceType", "Observation"},
                 {"status", context.status},
                 {"code", text(observation.code)},
                 {"subject", {{"type", "Patient"}, {"display", context.subject}}},
                 {"partOf", Json::array({context.procedure})}};
    if (!observation.focus.is_null()) made["focus"] = Json::array({observation.focus});
    if (observation.at && observation.until) {
        made["effectivePeriod"] = {{"start", measure::rfc3339(*observation.at)}, {"end", measure::rfc3339(*observation.until)}};
    } else if (observation.at) {
        made["effectiveDateTime"] = measure::rfc3339(*observation.at);
    }
    made[observation.value.element] = observation.value.json;
    if (!observation.note.empty()) made["note"] = Json::array({text(observation.note)});
    for (const Component& component : observation.components) {
        made["component"].push_back({{"code", text(component.code)}, {component.value.element, component.value.json}});
    }
    return made;
}

}  // namespace paper::r4
