#include "app/demo.hpp"

#include "measure/overloaded.hpp"

#include <algorithm>

namespace demo {
namespace {

std::size_t first(std::size_t from, auto is) {
    const auto begin = script().begin() + static_cast<std::ptrdiff_t>(from);
    return static_cast<std::size_t>(std::find_if(begin, script().end(), is) - script().begin());
}
std::size_t first_spoke() {
    return first(0, [](const auto& line) { return std::holds_alternative<guide::CountSpoke>(line.intent); });
}

std::vector<screen::Target> targets(const screen::View& view) {
    std::vector<screen::Target> all{};
    const auto add = [&](const std::vector<screen::Target>& some) { all.insert(all.end(), some.begin(), some.end()); };
    if (const auto* table = std::get_if<screen::TableModel>(&view)) add(table->hand);
    if (const auto* pick = std::get_if<screen::PickModel>(&view)) {
        add(pick->choices);
        add(pick->foot);
    }
    if (const auto* plan = std::get_if<screen::PlanModel>(&view)) {
        for (const auto* some : {&plan->tabs, &plan->readings, &plan->heads, &plan->steps, &plan->figures, &plan->foot}) add(*some);
        for (const auto& rung : plan->rungs) all.push_back(rung.target);
        for (const auto* one : {&plan->thinnest, &plan->earlier, &plan->later, &plan->why, &plan->all_cautions}) all.push_back(*one);
        if (plan->panel) add(plan->panel->targets), all.push_back(plan->panel->close);
    }
    if (const auto* form = std::get_if<screen::FormModel>(&view)) {
        for (const auto& field : form->fields) all.push_back(field.target);
        add(form->keys.all);
        add(form->foot);
    }
    if (const auto* past = std::get_if<screen::PastModel>(&view)) {
        for (const auto* some : {&past->tabs, &past->choices, &past->foot}) add(*some);
        all.push_back(past->more);
    }
    return all;
}

}  // namespace

const graftside::Stock& stock() {
    static const graftside::Stock loaded = [] {
        auto made = graftside::load_stock({.assets = SOURCE_DIR "/assets", .unit = SOURCE_DIR "/assets/unit/unit.toml"});
        REQUIRE(made);
        return *made;
    }();
    return loaded;
}

std::string case_path() { return SOURCE_DIR "/demo-data/demo.case.toml"; }
std::string reference() { return "DEMO-1"; }

const Script& script() {
    static const Script read = [] {
        const std::string path = TESTS_DIR "/journeys/demo.jsonl";
        auto lines = intake::read_play(testplace::read(path), path);
        REQUIRE(lines);
        return *lines;
    }();
    return read;
}

Script before_cut() { return {script().begin(), script().begin() + static_cast<std::ptrdiff_t>(first_spoke())}; }

Script cut() {
    const std::size_t off = first(first_spoke(), [](const auto& line) { return std::holds_alternative<guide::TurnSuction>(line.intent); });
    return {script().begin() + static_cast<std::ptrdiff_t>(first_spoke()), script().begin() + static_cast<std::ptrdiff_t>(off + 1)};
}

graftside::Options options(const std::string& ledger) { return {.ledger = ledger, .assets = SOURCE_DIR "/assets"}; }

std::optional<guide::Refusal> carry_out(graftside::OpenCase& open, const intake::PlayLine& line) {
    guide::Intent intent = line.intent;
    if (auto* accept = std::get_if<guide::AcceptPlan>(&intent)) {
        accept->inputs = open.state().inputs;
        accept->plan = plan::make(accept->inputs);
    }
    return open.act(line.who, intent, line.at);
}

guide::CaseState play(const std::string& ledger, const Script& lines) {
    auto opened = ledger::Ledger::open(ledger);
    REQUIRE(opened);
    const auto brief = graftside::load_brief(stock(), case_path());
    REQUIRE(brief);
    auto open = graftside::OpenCase::take_up(*opened.operator->(), *brief, guide::Source::Table, lines.front().at);
    REQUIRE(open);
    for (const intake::PlayLine& line : lines) REQUIRE_FALSE(carry_out(*open.operator->(), line));
    REQUIRE(open->health().held == 0);
    return open->state();
}

std::vector<guide::Event> on_disk(const std::string& ledger) {
    const auto opened = ledger::Ledger::open(ledger);
    REQUIRE(opened);
    const auto verdict = opened->verify(reference());
    REQUIRE(verdict);
    CHECK(verdict->whole());
    const auto events = opened->load(reference());
    REQUIRE(events);
    return *events;
}

bool written_late(const std::vector<guide::Event>& events) {
    return std::any_of(events.begin(), events.end(),
                       [](const auto& event) { return std::holds_alternative<guide::WrittenLate>(event.fact); });
}

bool has_target(const screen::View& view, const std::string& id) {
    const auto all = targets(view);
    return std::any_of(all.begin(), all.end(), [&](const screen::Target& one) { return one.id == id; });
}

screen::Target target(const screen::View& view, const std::string& id) {
    const auto all = targets(view);
    const auto found = std::find_if(all.begin(), all.end(), [&](const screen::Target& one) { return one.id == id; });
    CAPTURE(id);
    REQUIRE(found != all.end());
    return *found;
}

void tap(graftside::Session& session, const std::string& id, const measure::Instant& at) {
    session.touched(target(session.view(at), id), at);
}

std::string banner(const screen::View& view) {
    const auto shown = std::visit([](const auto& model) { return model.banner; }, view);
    return shown ? shown->text : "";
}

std::string muted(const screen::View& view) {
    return std::visit(measure::overloaded{[](const screen::TableModel& model) { return model.strip.muted; },
                                          [](const screen::DeskModel& model) { return model.strip.muted; },
                                          [](const screen::PlanModel& model) { return model.strip ? model.strip->muted : ""; },
                                          [](const screen::PickModel& model) { return model.strip ? model.strip->muted : model.muted; },
                                          [](const screen::FormModel& model) { return model.muted; },
                                          [](const screen::FarModel& model) { return model.muted; },
                                          [](const screen::MeasureModel& model) { return model.muted; },
                                          [](const screen::PastModel& model) { return model.muted; }},
                      view);
}

measure::Instant later(measure::Instant at, std::int64_t ms) {
    at.utc_ms += ms;
    at.boottime_ms += ms;
    return at;
}

}  // namespace demo
