// A case of the shipped guide and what its views say, for the tests of the screen's models: no layout, no glass.
#pragma once

#include "intake/procedure.hpp"
#include "intake/unit.hpp"
#include "intake/words.hpp"
#include "measure/expect.hpp"
#include "screen/pages.hpp"
#include "support/sample.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace models {

inline std::string file(const std::string& path) {
    std::ifstream in(std::string(SOURCE_DIR) + "/" + path);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    measure::expect(!text.empty());
    return text;
}

/// The languages that are shipped; the first is the one that the guide was written in.
inline const std::vector<std::string> languages{"en", "de"};

inline const screen::Words& words(const std::string& language = "en") {
    static std::map<std::string, screen::Words> made{};
    const auto found = made.find(language);
    if (found != made.end()) return found->second;
    return made.emplace(language, screen::Words((*intake::read_words(file("assets/words/" + language + ".toml"), "words")).texts))
        .first->second;
}

/// A shipped file in a language: "NAME.toml" in the first one, "NAME.de.toml" in another.
inline std::string file_in(const std::string& language, const std::string& name) {
    return file("assets/" + name + (language == "en" ? "" : "." + language) + ".toml");
}

inline guide::Brief brief(const std::string& language = "en") {
    guide::Brief made = sample::brief();
    made.procedure = *intake::read_procedure(file_in(language, "procedures/suction-trephine-graft"), "procedure");
    return made;
}

/// The shipped guide with the shipped unit's items, in its language.
inline guide::Brief brief_of_unit(const std::string& language) {
    guide::Brief made = brief(language);
    const auto unit = intake::read_unit(file_in(language, "unit/unit"), "unit");
    made.unit.counts = unit->unit.counts;
    made.unit.scrub_name = unit->unit.scrub_name;
    made.unit.circulating_name = unit->unit.circulating_name;
    return made;
}

/// So many invented own cases, the first the quickest: phases of 18, 9, 12, 8, 34 and 11 minutes in the middle one, open sky of 13.
/// The depth was measured in the first five: reaches 1.02, 1.10, 0.95, 1.08, 1.00.
inline past::Figures own_past(int cases = 23) {
    constexpr std::int64_t minute_ms = 60'000;
    const std::vector<std::pair<std::string, std::int64_t>> minutes{{"ready", 18},    {"donor", 9},    {"host", 12},    {"open-eye", 8},
                                                                    {"suturing", 34}, {"closing", 11}, {"open-sky", 13}};
    const std::vector<double> reaches{1.02, 1.10, 0.95, 1.08, 1.00};
    std::vector<past::Summary> all{};
    for (int i = 0; i < cases; ++i) {
        past::Summary one{.reference = "R-" + std::to_string(i), .trephine = "suction-trephine", .end = guide::CaseEnd::Done};
        for (const auto& [id, middle] : minutes)
            one.times.push_back({.id = id, .ms = middle * minute_ms * (100 + 2 * (i - cases / 2)) / 100});
        one.cut = past::Cut{.end = guide::CutEnd::AtPlan, .seatings = 1, .position = 8, .planned = 8, .travel = measure::from_um(480)};
        if (static_cast<std::size_t>(i) < reaches.size()) one.cut->depth = measure::from_um(480 * reaches[static_cast<std::size_t>(i)]);
        all.push_back(one);
    }
    return past::figures(std::move(all), {});
}

/// A case of the shipped guide. A needle is counted at the opening, so that there is something to agree on.
struct Seen {
    sample::Case at{brief()};
    screen::Around around{};

    explicit Seen(const std::string& step = "") {
        around.proposed = sample::plan();
        if (!step.empty()) at.up_to(step);
    }
    screen::TableModel table() {
        around.now = at.now;
        return screen::table(at.state, around, words());
    }
    std::vector<screen::Target> hand() { return table().hand; }
    std::string first() { return hand().front().id; }
};

/// A copy: the targets it is looked for in are often a temporary.
inline std::optional<screen::Target> find(const std::vector<screen::Target>& hand, const std::string& id) {
    const auto found = std::find_if(hand.begin(), hand.end(), [&](const screen::Target& one) { return one.id == id; });
    return found == hand.end() ? std::nullopt : std::optional{*found};
}

inline void add(std::vector<std::string>& all, const std::vector<screen::Target>& targets) {
    for (const auto& one : targets) all.insert(all.end(), {one.label, one.line, one.why_not});
}

inline void add(std::vector<std::string>& all, const std::vector<screen::Row>& rows) {
    for (const auto& row : rows) all.insert(all.end(), {row.label, row.value});
}

inline void add(std::vector<std::string>& all, const screen::Strip& strip) {
    all.insert(all.end(), {strip.eye, strip.reference, strip.sizes, strip.phase, strip.time.value, strip.time.label, strip.holder});
    for (const auto& clock : strip.clocks) all.insert(all.end(), {clock.label, clock.value});
}

inline void add(std::vector<std::string>& all, const screen::Card& card) {
    all.insert(all.end(), {card.title, card.say});
    all.insert(all.end(), card.lines.begin(), card.lines.end());
    all.insert(all.end(), card.cautions.begin(), card.cautions.end());
    if (card.figure) all.insert(all.end(), {card.figure->numeral, card.figure->under, card.figure->line});
    add(all, card.rows);
    add(all, card.foot);
    for (const auto& count : card.counts) all.insert(all.end(), {count.title, count.value, count.line});
    if (const auto* section = std::get_if<picture::WallSection>(&card.picture)) {
        all.push_back(section->surface_label);
        all.insert(all.end(), section->foot.begin(), section->foot.end());
    }
    if (const auto* face = std::get_if<picture::ClockFace>(&card.picture))
        all.insert(all.end(), {face->seat_label, face->nasal_label, face->temporal_label});
}

/// Every text of a view.
inline std::vector<std::string> texts(const screen::TableModel& model) {
    std::vector<std::string> all{};
    add(all, model.strip);
    for (const auto& phase : model.path) {
        all.push_back(phase.text);
        for (const auto& step : phase.inner) all.push_back(step.text);
    }
    add(all, model.card);
    add(all, model.hand);
    if (model.banner) all.push_back(model.banner->text);
    return all;
}

inline std::vector<std::string> texts(const screen::PickModel& model) {
    std::vector<std::string> all{model.title};
    if (model.strip) add(all, *model.strip);
    all.insert(all.end(), model.lines.begin(), model.lines.end());
    add(all, model.choices);
    add(all, model.foot);
    return all;
}

inline std::vector<std::string> texts(const screen::PastModel& model) {
    std::vector<std::string> all{model.title};
    all.insert(all.end(), model.lines.begin(), model.lines.end());
    for (const auto& row : model.rows) all.insert(all.end(), {row.label, row.value});
    for (const auto& tick : model.axis.ticks) all.push_back(tick.label);
    for (const auto* targets : {&model.tabs, &model.choices, &model.foot}) add(all, *targets);
    return all;
}

inline bool says(const std::vector<std::string>& all, const std::string& part) {
    return std::any_of(all.begin(), all.end(), [&](const std::string& text) { return text.find(part) != std::string::npos; });
}

/// A place that was not filled, or a pair of angle brackets round an id that has no words.
inline bool unfilled(const std::string& text) { return text.find_first_of("{}<>") != std::string::npos; }

}  // namespace models
