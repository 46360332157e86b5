// The shipped languages against each other: the same ids with the same fill-ins, and the same guide but for its words.
#include "plan/sources.hpp"
#include "screen/format.hpp"
#include "screen/models.hpp"
#include "screen/plan_views.hpp"
#include "screen/samples.hpp"

#include <doctest/doctest.h>

#include <map>
#include <set>

using namespace screen;

namespace {

std::map<std::string, std::string> texts(const std::string& language) {
    return (*intake::read_words(models::file("assets/words/" + language + ".toml"), "words")).texts;
}

/// What stands in braces, with how often.
std::multiset<std::string> slots(const std::string& text) {
    std::multiset<std::string> all{};
    for (auto from = text.find('{'); from != std::string::npos; from = text.find('{', from + 1))
        all.insert(text.substr(from, text.find('}', from) - from + 1));
    return all;
}

std::multiset<std::string> slots(const std::vector<std::string>& lines) {
    std::multiset<std::string> all{};
    for (const auto& line : lines) all.merge(slots(line));
    return all;
}

guide::Procedure procedure(const std::string& language) {
    return *intake::read_procedure(models::file_in(language, "procedures/suction-trephine-graft"), "procedure");
}

/// Every text of a step, in one order.
std::vector<std::string> texts(const guide::Step& step) {
    std::vector<std::string> all{step.title, step.say, step.button};
    for (const auto* lines : {&step.lines, &step.cautions, &step.ready, &step.open_now, &step.open_later})
        all.insert(all.end(), lines->begin(), lines->end());
    return all;
}

/// A guide without its words: how many lines there are is kept.
guide::Procedure bare(guide::Procedure made) {
    const auto blank = [](std::vector<std::string>& lines) { lines.assign(lines.size(), ""); };
    made.title.clear();
    for (auto& phase : made.phases) {
        phase.title.clear();
        for (auto& step : phase.steps) {
            step.title.clear(), step.button.clear();
            step.say = step.say.empty() ? "" : "said";
            for (auto* lines : {&step.lines, &step.cautions, &step.ready, &step.open_now, &step.open_later}) blank(*lines);
        }
    }
    for (auto& departure : made.departures) departure.title.clear(), departure.back.clear(), blank(departure.lines);
    return made;
}

/// Each line that is written on a glass.
std::set<std::string> texts(const Frame& frame) {
    std::set<std::string> all{};
    for (const picture::Shape& shape : frame.shapes)
        if (const auto* text = std::get_if<picture::Text>(&shape)) all.insert(text->text);
    return all;
}

}  // namespace

TEST_CASE("every id of one language is in the other, with the same fill-ins, and nothing is empty") {
    const auto english = texts("en");
    for (const auto& language : models::languages) {
        CAPTURE(language);
        const auto own = texts(language);
        for (const auto& entry : own) {
            const std::string &id = entry.first, &text = entry.second;
            CAPTURE(id);
            CHECK_FALSE(text.empty());
            const auto other = english.find(id);
            REQUIRE(other != english.end());
            CHECK(slots(text) == slots(other->second));
        }
        CHECK(own.size() == english.size());
    }
}

TEST_CASE("the guide is the same in every language but for its words: ids, gates, clocks, and how many lines") {
    const guide::Procedure english = procedure("en");
    for (const auto& language : models::languages) {
        CAPTURE(language);
        const guide::Procedure own = procedure(language);
        CHECK(bare(own) == bare(english));
        for (std::size_t p = 0; p < std::min(own.phases.size(), english.phases.size()); ++p) {
            const auto &ours = own.phases[p].steps, &theirs = english.phases[p].steps;
            for (std::size_t s = 0; s < std::min(ours.size(), theirs.size()); ++s) {
                CAPTURE(ours[s].id);
                CHECK(slots(texts(ours[s])) == slots(texts(theirs[s])));
            }
        }
    }
}

TEST_CASE("nothing shouts: no exclamation mark in any language") {
    for (const auto& language : models::languages) {
        CAPTURE(language);
        for (const auto& entry : texts(language)) {
            const std::string &id = entry.first, &text = entry.second;
            CAPTURE(id);
            CHECK(text.find('!') == std::string::npos);
        }
        CHECK(models::file_in(language, "procedures/suction-trephine-graft").find('!') == std::string::npos);
    }
}

TEST_CASE("German puts what it quotes between its own marks") {
    for (const auto& entry : texts("de")) {
        CAPTURE(entry.first);
        CHECK(entry.second.find_first_of("'\"") == std::string::npos);
    }
    for (const auto& phase : procedure("de").phases)
        for (const auto& step : phase.steps)
            for (const auto& text : texts(step)) CHECK(text.find_first_of("'\"") == std::string::npos);
    for (const auto& departure : procedure("de").departures)
        for (const auto& line : departure.lines) CHECK(line.find_first_of("'\"") == std::string::npos);
}

TEST_CASE("what we say beside a source is in the reader's language, an instrument stands under its name, and no id is shown") {
    const Words &english = models::words(), &german = models::words("de");
    for (const auto* source : {plan::source::usual, plan::source::depth, plan::source::reach, plan::source::slant,
                               plan::source::slanted_path, plan::source::profile, plan::source::oct_bias, plan::source::scheimpflug_bias,
                               plan::source::quarter_mixed, plan::source::suction_sizes, plan::source::cold_days}) {
        CAPTURE(source);
        CHECK(source_text(source, english) == source);  // the words say what the plan's own files say
        CHECK(source_text(source, german) != source);
    }
    CHECK(source_text(plan::source::oedema, german) == plan::source::oedema);  // a publication and nothing else
    for (const char* id : {"suction-trephine", "vacuum-punch", "hand-trephine"}) {
        CAPTURE(id);
        CHECK(intake::read_words(models::file("assets/words/en.toml"), "words")->texts.contains(std::string("instrument.") + id));
        CHECK(instrument_text(id, german).find('-') == std::string::npos);
    }
    CHECK(instrument_text("our-own", german) == "our-own");
    plan::Inputs inputs = sample::inputs();
    inputs.trephine.diameters = {measure::from_mm(7)};
    inputs.punch.diameters = {measure::from_mm(7)};
    inputs.trephine.id = "suction-trephine", inputs.punch.id = "vacuum-punch";
    int named = 0;
    for (const plan::Note& note : plan::make(inputs).notes) {
        if (!note.code.ends_with("size-not-held")) continue;
        CHECK(note_text(note, german).starts_with(++named == 1 ? "Saugtrepan: " : "Vakuumstanze: "));
    }
    CHECK(named == 2);
}

TEST_CASE("German writes figures with a comma, on the glass and on the keypad; a reference stays as it was typed") {
    const Words& german = models::words("de");
    models::Seen seen;
    seen.around.proposed = sample::plan();
    CHECK(table(seen.at.state, seen.around, german).strip.sizes.find("7,50") != std::string::npos);
    CHECK(table(seen.at.state, seen.around, models::words()).strip.sizes.find("7.50") != std::string::npos);

    ScreenState form{.page = "plan-reading", .argument = "new"};
    form.draft = {{"plan-at", "7:30"}, {"plan-um", "612.5"}, {"plan-ring", "7."}};
    form.field = "plan-um";
    const FormModel model = plan_reading(samples::eight_readings(), form, german);
    CHECK(model.fields[0].value == "7:30");
    CHECK(model.fields[1].value == "612,5");
    CHECK(model.fields[2].value == "7,");
    CHECK(models::find(model.keys.all, "key-.")->label == ",");
    CHECK(std::get<Show>(models::find(model.keys.all, "key-.")->act).argument == ".");
    form.field = "plan-at";
    CHECK(models::find(plan_reading(samples::eight_readings(), form, german).keys.all, "key-:") != std::nullopt);

    form.draft["plan-um"] = "612,5";
    form.draft["plan-ring"] = "7,5";
    const TypedReading typed = typed_reading(samples::three_rings(), form);
    REQUIRE(typed.reading);
    CHECK(typed.reading->thickness == measure::from_um(612.5));
    CHECK(typed.reading->ring == measure::from_mm(7.5));
}

TEST_CASE("heads of the ladder and the words of a size are short only where the whole ones have no room") {
    const auto german = [](const std::string& column) {
        return plan_view(samples::plan_seen(samples::eight_readings(), PlanSeen::Use::Agree, {.column = column}),
                         {.page = "plan", .plan = {.column = column}}, models::words("de"));
    };
    const PlanModel depth = german("depth"), sizes = german("sizes");
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        const auto drawn = texts(draw(depth, samples::canvas(on.glass)));
        const auto stands = [&drawn](const std::string& head) { return drawn.contains(head) || drawn.contains(head + " µm"); };
        // Column by column: one long head makes no other short.
        CHECK(stands("Vorschub") == (on.name.find("800x1280") == std::string::npos));
        CHECK(stands("Weg") != stands("Vorschub"));
        CHECK(stands("Eröffnungsrisiko") == (on.name.find("-10") == std::string::npos));
        CHECK(stands("Risiko") != stands("Eröffnungsrisiko"));
        const auto ruled = texts(draw(sizes, samples::canvas(on.glass)));
        CHECK(ruled.contains("im Profil") != ruled.contains("da"));
        CHECK(ruled.contains("im Profil") == (on.name != "1920x1080-21"));
    }
}

TEST_CASE("of one thing the words are in the singular, in any language; a word of one has its word of many") {
    const auto both = [](const std::string& language, const std::string& id) {
        const Words& words = models::words(language);
        return words.counted(id, {"1", "5"}) + " / " + words.counted(id, {"2", "5"});
    };
    CHECK(both("en", "own_past.too_few") == "not shown: 1 own case, 5 are needed / not shown: 2 own cases, 5 are needed");
    CHECK(both("de", "own_past.too_few") == "nicht genannt: 1 eigener Fall, 5 sind nötig / nicht genannt: 2 eigene Fälle, 5 sind nötig");
    CHECK(both("en", "plan-view.travel_at") == "Travel at 1 spoke / Travel at 2 spokes");
    CHECK(both("de", "page.count_missing") == "1 fehlt / 2 fehlen");
    CHECK(both("en", "page.count_excess") == "1 too many / 2 too many");  // the same words of one and of many
}
