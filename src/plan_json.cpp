#include "plan_json.hpp"

#include "eye/frame.hpp"
#include "intake/case.hpp"
#include "measure/expect.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <cstdlib>

namespace {

using Json = nlohmann::ordered_json;
using measure::Length;

Json tenths(Length length) { return static_cast<double>(std::llround(static_cast<double>(length.nm()) / 100)) / 10; }

Json tenths(const std::optional<Length>& length) { return length ? tenths(*length) : Json(nullptr); }

/// To the nanometre, written as a whole number where it is one.
Json exact(Length length) {
    if (length.nm() % 1000 == 0) return length.nm() / 1000;
    return length.um();
}

Json or_null(const std::optional<int>& value) { return value ? Json(*value) : Json(nullptr); }

/// Six significant digits.
double six_digits(double value) { return std::strtod(fmt::format("{:.6g}", value).c_str(), nullptr); }

Json range(const measure::Interval& interval) { return Json::array({exact(interval.low), exact(interval.high)}); }

Json wall(const plan::Wall& wall) {
    Json profile = Json::array();
    for (const Length thickness : wall.profile) profile.push_back(tenths(thickness));
    return {{"basis", wall.basis},
            {"thinnest_um", tenths(wall.thinnest)},
            {"thinnest_deg", wall.thinnest_at ? Json(wall.thinnest_at->deg()) : Json(nullptr)},
            {"mean_um", tenths(wall.mean)},
            {"u_um", tenths(wall.u)},
            {"rms_um", tenths(wall.rms)},
            {"profile_um", profile}};
}

std::string words_of(double chance, const screen::Words& words) {
    const auto put = plan::chance_words(chance);
    return words(put.id, put.one_in ? std::vector<std::string>{fmt::format("{}", *put.one_in)} : std::vector<std::string>{});
}

Json ladder(const std::vector<plan::Rung>& rungs, const screen::Words& words) {
    if (rungs.empty()) return nullptr;
    Json rows = Json::array();
    for (const plan::Rung& rung : rungs) {
        rows.push_back({{"spoke", rung.spoke},
                        {"travel_um", exact(rung.travel)},
                        {"share", std::round(rung.share * 1e4) / 1e4},
                        {"reserve_um", tenths(rung.reserve)},
                        {"reserve_u95_um", tenths(rung.reserve_u95)},
                        {"entry_chance", six_digits(rung.entry_chance)},
                        {"words", words_of(rung.entry_chance, words)}});
    }
    return rows;
}

std::string name(plan::Bound bound) {
    switch (bound) {
        case plan::Bound::Aim:
            return "aim";
        case plan::Bound::EntryLimit:
            return "entry-limit";
        case plan::Bound::Surgeon:
            return "surgeon";
        case plan::Bound::ToEntry:
            return "to-entry";
    }
    measure::expect(false);
    return {};
}

Json planned(const plan::Inputs& inputs, const std::optional<plan::Target>& target) {
    if (!target) return nullptr;
    return {{"spokes", or_null(target->spokes)},
            {"raise", target->raise},
            {"travel_um", target->spokes ? exact(plan::travel(inputs.trephine, *target->spokes)) : Json(nullptr)},
            {"bound_by", name(target->bound_by)},
            {"aim_share", target->share_permille > 0 ? Json(target->share_permille / 1000.0) : Json(nullptr)},
            {"entry_from", or_null(target->entry_from)},
            {"entry_to", or_null(target->entry_to)}};
}

Json sizes(const plan::Sizes& sizes) {
    return {{"oversize_um", exact(sizes.oversize)},
            {"clearance_um", exact(sizes.clearance)},
            {"clearance_deg", sizes.clearance_deg},
            {"clearance_usual_offset_um", exact(sizes.clearance_usual_offset)},
            {"button_front_range_um", range(sizes.button_front)},
            {"button_back_range_um", range(sizes.button_back)}};
}

std::string clock(int centideg) { return eye::clock_text(measure::centideg(centideg)); }

Json suture(const plan::Suture& one) {
    Json row = {{"n", one.n}, {"clock", clock(one.centideg)}, {"deg", one.centideg / 100.0}, {"mark", or_null(one.host_mark)}};
    if (one.between) row["between"] = Json::array({one.between->first, one.between->second});
    row["opposite"] = or_null(one.opposite);
    return row;
}

Json running(const std::optional<plan::Running>& running) {
    if (!running) return nullptr;
    return {{"loops", running->loops},
            {"spacing_um", tenths(running->spacing)},
            {"start", clock(running->start_centideg)},
            {"direction", running->clockwise ? "clockwise" : "counter-clockwise"}};
}

Json sutures(const plan::Inputs& inputs, const plan::Plan& plan) {
    Json order = Json::array();
    for (const plan::Suture& one : plan.order) order.push_back(suture(one));
    return {{"pattern", intake::text(inputs.file.pattern)},
            {"spacing_um", plan.order.empty() ? Json(nullptr) : tenths(plan.spacing)},
            {"order", order},
            {"running", running(plan.running)}};
}

std::string name(plan::Note::Level level) {
    switch (level) {
        case plan::Note::Level::Info:
            return "info";
        case plan::Note::Level::Watch:
            return "watch";
        case plan::Note::Level::Stop:
            return "stop";
    }
    measure::expect(false);
    return {};
}

Json notes(const std::vector<plan::Note>& notes, const screen::Words& words) {
    Json rows = Json::array();
    for (const plan::Note& note : notes) {
        rows.push_back(
            {{"code", note.code}, {"level", name(note.level)}, {"text", words("note." + note.code, note.values)}, {"source", note.source}});
    }
    return rows;
}

}  // namespace

std::string plan_json(const plan::Inputs& inputs, const plan::Plan& plan, const screen::Words& words) {
    const Json all = {{"case", inputs.file.reference},
                      {"eye", inputs.file.side == eye::Side::Right ? "right" : "left"},
                      {"formula", plan.formula},
                      {"wall", plan.wall ? wall(*plan.wall) : Json(nullptr)},
                      {"ladder", ladder(plan.ladder, words)},
                      {"planned", planned(inputs, plan.target)},
                      {"sizes", sizes(plan.sizes)},
                      {"sutures", sutures(inputs, plan)},
                      {"notes", notes(plan.notes, words)}};
    return all.dump(2) + "\n";
}
