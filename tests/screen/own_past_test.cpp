// A case beside the unit's own past: what is called usual, when the end is expected, what the debrief shows.
#include "screen/own_past.hpp"

#include "screen/desk.hpp"
#include "screen/models.hpp"
#include "screen/samples.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>

using namespace screen;

namespace {

void give_past(models::Seen& seen, int cases = 23) { seen.around.own_past = std::make_shared<past::Figures>(models::own_past(cases)); }

std::string value(const std::vector<Row>& rows, const std::string& label) {
    for (const Row& row : rows) {
        if (row.label == label) return row.value;
    }
    return "";
}

std::vector<Row> expected(models::Seen& seen) {
    seen.around.now = seen.at.now;
    return expected_rows(seen.at.state, seen.around, models::words());
}

std::vector<Row> debrief(models::Seen& seen) {
    seen.around.now = seen.at.now;
    return debrief_rows(seen.at.state, seen.around, models::words());
}

}  // namespace

// Of 23 cases between 78 and 122 % in steps of 2 %, the quartiles (R type 7) are 89 and 111 %, the median 100 %.
TEST_CASE("the Desk tells the phase beside the middle half of own cases, and the end by what they had still to go") {
    models::Seen at("centre");
    give_past(at);
    const auto rows = expected(at);
    CHECK(value(rows, "Phase Host").ends_with(" min, usual 10.7 to 13.3"));
    const auto reading = guide::clock_reading(at.at.state, "host", at.at.now);
    REQUIRE(reading);
    REQUIRE(reading->ms < 78 * 12 * 600);  // every one of them was longer
    // Host, open eye, suturing and closing take 65 minutes in the middle case, 57:51 and 72:09 at the quartiles.
    const auto at_end = [&](std::int64_t seconds) {
        return measure::hour_minute(measure::earlier(at.at.now, reading->ms - seconds * 1000));
    };
    CHECK(value(rows, "Expected end") == at_end(65 * 60) + " (" + at_end(57 * 60 + 51) + "–" + at_end(72 * 60 + 9) + ")");
    CHECK(desk(at.at.state, {}, at.around, models::words()).expected.size() == rows.size());
}

TEST_CASE("on the smallest glass a usual time of three lines stands, a row that has no room is left out, and the record still shows") {
    models::Seen at("centre");
    give_past(at);
    REQUIRE(at.at.does(guide::WriteNote{.text = "soft eye"}));
    at.around.now = at.at.now;
    DeskModel model = desk(at.at.state, {}, at.around, models::words());
    const std::string usual = "about 8.1 min, usual 18.9 to 21.0", seven(7 * usual.size(), 'w');
    model.expected = {{"Too long", usual + " " + usual + " " + usual + " " + seven}, {"Donor", usual}, {"Expected end", usual}};
    std::string all{};
    for (const auto& shape : draw(model, samples::canvas({223, 125}, Reader::Desk)).shapes) {
        if (const auto* text = std::get_if<picture::Text>(&shape)) all += text->text + " ";
    }
    CHECK(all.find("Too long") == std::string::npos);
    CHECK(all.find("Donor") != std::string::npos);
    CHECK(all.find("Expected end") != std::string::npos);
    CHECK(all.find("soft eye") != std::string::npos);
}

TEST_CASE("under five own cases, or in a phase longer than nearly all of them, no end is told") {
    models::Seen at("centre");
    CHECK(expected(at).empty());
    give_past(at, 4);
    CHECK(expected(at).empty());
    give_past(at, 5);
    CHECK(expected(at).size() == 2);
    at.at.later(60 * 60);
    CHECK(value(expected(at), "Expected end").empty());
    CHECK(value(expected(at), "Phase Host").starts_with("6"));
}

TEST_CASE("the debrief: what went otherwise, the reach with its interval, open sky and phases against what is usual") {
    models::Seen at("punch");
    give_past(at);
    REQUIRE(at.at.does(guide::Depart{.what = "donor-off-centre"}));
    REQUIRE(at.at.does(guide::ComeBack{.what = "donor-off-centre"}));
    at.at.up_to("debrief");
    const Card shown = card(at.at.state, *guide::current_step(at.at.state), at.around, models::words());
    const auto rows = debrief(at);
    CHECK(shown.rows.size() == rows.size());
    CHECK(value(rows, "Otherwise than planned") == guide::find_departure(at.at.state.brief.procedure, "donor-off-centre")->title);
    // Mean and 95 % interval of R's t.test(c(1.02, 1.10, 0.95, 1.08, 1.00)): 1.03, 0.9544728 to 1.1055272.
    CHECK(value(rows, "Depth over travel") == "this cut not measured; own mean 1.030 (0.954 to 1.106, 95 %), 5 cuts");
    CHECK(value(rows, "Open sky").ends_with(" min, usual 11.6 to 14.4"));
    CHECK(value(rows, "Usual") == "middle half of 23 own cases");
    REQUIRE(models::find(at.hand(), "phase-times") != std::nullopt);
    const PickModel times = page(at.at.state, {.page = "phase-times"}, at.around, models::words());
    const auto& phases = at.at.state.brief.procedure.phases;
    REQUIRE(times.table.size() == phases.size() + 1);
    for (std::size_t i = 0; i < phases.size(); ++i) CHECK(times.table[i + 1].label == phases[i].title);
    CHECK(times.table[3].beside == "10.7 to 13.3");
    CHECK(times.table[3].value == "0.3");
    CHECK(times.lines.front().find("23 own cases") != std::string::npos);
}

TEST_CASE("the phase times stand in columns: each on one edge, in every language on every glass, and without a usual in two") {
    for (const std::string& language : models::languages) {
        models::Seen at("debrief");
        give_past(at);
        for (const bool known : {true, false}) {
            if (!known) at.around.own_past.reset();
            const PickModel times = page(at.at.state, {.page = "phase-times"}, at.around, models::words(language));
            CHECK((times.table.front().beside.empty()) == !known);
            for (const auto& on : samples::glasses()) {
                CAPTURE(on.name);
                const Frame frame = draw(times, samples::canvas(on.glass));
                CHECK(frame.short_of.empty());
                std::set<double> edges{};
                std::size_t cells = 0;
                for (const picture::Shape& shape : frame.shapes) {
                    const auto* text = std::get_if<picture::Text>(&shape);
                    const auto is_cell = [&](const TableRow& row) {
                        return text->text == row.value || (!row.beside.empty() && text->text == row.beside);
                    };
                    if (text == nullptr || text->align != picture::Align::Right) continue;
                    if (std::none_of(times.table.begin(), times.table.end(), is_cell)) continue;
                    edges.insert(std::round(text->at.x * 100));
                    ++cells;
                }
                const std::size_t columns = known ? 2 : 1;
                CHECK(edges.size() == columns);
                CHECK(cells == columns * times.table.size());
            }
        }
    }
}

TEST_CASE("the debrief of a unit without a past tells the case alone, and says why") {
    models::Seen at("debrief");
    const auto rows = debrief(at);
    CHECK(value(rows, "Otherwise than planned") == "nothing recorded");
    CHECK(value(rows, "Depth over travel") == "this cut not measured");
    CHECK(value(rows, "Open sky").find("usual") == std::string::npos);
    CHECK(value(rows, "Usual") == "not shown: 0 own cases, 5 are needed");
}

TEST_CASE("a reach measured with another trephine is not this one's") {
    models::Seen at("debrief");
    past::Figures other = models::own_past();
    other.cuts.measured_with = {"another"};
    at.around.own_past = std::make_shared<past::Figures>(other);
    CHECK(value(debrief(at), "Depth over travel") == "this cut not measured");
}

TEST_CASE("a count difference that was recorded stands under otherwise than planned, at the debrief and when the record is locked [H-13]") {
    models::Seen seen("opening-count");
    const auto& unit = seen.at.state.brief.unit;
    REQUIRE(seen.at.does(guide::MoveItems{.item = "needles", .by = 4}));
    for (const std::string& by : {unit.scrub_name, unit.circulating_name})
        REQUIRE(seen.at.does(guide::CheckCount{.item = "needles", .seen = 3, .by = by}));
    CHECK(value(debrief(seen), models::words()("closed.otherwise")) == models::words()("own_past.nothing"));
    CHECK(value(record_rows(seen.at.state, seen.around, models::words()), models::words()("closed.otherwise")) == "0");
    REQUIRE(seen.at.does(guide::RecordDifference{.item = "needles", .why = "searched, not found"}));
    const std::string said = "Needles: 3 there, 4 expected, recorded: searched, not found";
    CHECK(value(debrief(seen), models::words()("closed.otherwise")) == said);
    CHECK(value(record_rows(seen.at.state, seen.around, models::words()), models::words()("closed.otherwise")) == "1 · " + said);
}
