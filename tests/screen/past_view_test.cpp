// The pages over past cases: what they say and where they turn to. Wilson's interval is checked in tests/past; here, that each
// figure stands with events, cases and interval. "1.046 ± 0.082, 11" is the shipped profile's (Clin Ophthalmol 2014;8:2391-6).
#include "screen/past_view.hpp"

#include "screen/audit.hpp"
#include "screen/models.hpp"
#include "screen/past_views.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <set>

using namespace screen;
using PastRow = PastModel::Row;

namespace {

PastPage on(const std::string& page) {
    PastPage made{};
    made.page = page;
    return made;
}

PastModel page(const std::string& name, const std::vector<past::Summary>& cases = samples::past_cases(),
               const std::string& language = "en") {
    return past_view(samples::past_seen(cases, {}, language), on(name), models::words(language));
}

PastModel again(const std::string& part) {
    PastSeen seen = samples::past_seen(samples::past_cases(), {});
    seen.one = samples::case_that_is_over();
    return past_view(seen, on(part), models::words());
}

const PastRow* row(const PastModel& model, const std::string& label) {
    const auto found = std::find_if(model.rows.begin(), model.rows.end(), [&](const PastRow& one) { return one.label == label; });
    return found == model.rows.end() ? nullptr : &*found;
}

std::vector<std::string> labels(const PastModel& model) {
    std::vector<std::string> all{};
    for (const PastRow& one : model.rows) all.push_back(one.label);
    return all;
}

std::vector<Target> targets(const PastModel& model) {
    std::vector<Target> all = model.tabs;
    for (const auto* some : {&model.choices, &model.foot}) all.insert(all.end(), some->begin(), some->end());
    all.push_back(model.more);
    return all;
}

/// Every text that a frame draws.
std::set<std::string> drawn(const Frame& frame) {
    std::set<std::string> all{};
    for (const auto& shape : frame.shapes) {
        if (const auto* text = std::get_if<picture::Text>(&shape)) all.insert(text->text);
    }
    return all;
}

const Touchable* touchable(const Frame& frame, const std::string& id) {
    const auto found =
        std::find_if(frame.touchables.begin(), frame.touchables.end(), [&](const Touchable& one) { return one.target.id == id; });
    return found == frame.touchables.end() ? nullptr : &*found;
}

const std::vector<std::string> pages{"times", "cuts", "reach", "otherwise", "list", "filter", "reason"};

}  // namespace

TEST_CASE("times stand by the phases of the guide in their order, then the clocks, in minutes on one axis") {
    const PastModel made = page("times");
    CHECK(labels(made) == std::vector<std::string>{"Ready", "Donor", "Host", "Open eye", "Suturing", "Closing", "Whole case",
                                                   "Since entered", "Donor out", "Open sky", "Suction on"});
    std::vector<past::Summary> four(4);
    for (std::size_t i = 0; i < four.size(); ++i) {
        four[i].end = guide::CaseEnd::Done;
        const auto minutes = static_cast<std::int64_t>(i + 1) * 60'000;
        four[i].times = {{.id = "suction", .ms = minutes, .exact = i > 0}, {.id = "case", .ms = 30 * minutes}};
    }
    const PastModel few = page("times", four);
    REQUIRE(few.rows.size() == 2);
    CHECK(few.rows[0].value == "75.0 (52.5\u00A0to\u00A097.5)\u00A0·\u00A04");
    CHECK(few.rows[1].value == "2.5 (1.8\u00A0to\u00A03.2)\u00A0·\u00A04, 1 of them approximate");
    CHECK((std::get<picture::BoxMark>(few.rows[1].mark) == picture::BoxMark{1, 1.75, 2.5, 3.25, 4}));
    CHECK(few.axis.low == 0);
    CHECK(few.axis.high >= 4);
}

TEST_CASE("every rate says how many of how many, with its interval, and its mark stands at the same figures") {
    for (const std::string name : {"cuts", "otherwise"}) {
        for (const PastRow& one : page(name).rows) {
            const auto* mark = std::get_if<picture::IntervalMark>(&one.mark);
            if (mark == nullptr) continue;
            CAPTURE(one.label);
            int events = -1, of = -1;
            REQUIRE(std::sscanf(one.value.c_str(), "%d of %d", &events, &of) == 2);
            const past::Rate rate = *past::wilson(events, of);
            CHECK(mark->at == doctest::Approx(rate.share * 100));
            CHECK(mark->low == doctest::Approx(rate.low * 100));
            CHECK(mark->high == doctest::Approx(rate.high * 100));
            CHECK(one.value.ends_with(")"));
        }
    }
    // Wilson's interval of 4 in 40, from the formula (J Am Stat Assoc 1927;22:209-12) by hand: 0.0396 to 0.2305
    CHECK(row(page("cuts"), "Entered by the trephine")->value == "4 of 40, 10 % (4.0 to 23)");
    // and of 0 in 2: 0 to 0.6576
    std::vector<past::Summary> two(2);
    two[0].end = two[1].end = guide::CaseEnd::Done;
    CHECK(row(page("otherwise", two), "Otherwise than planned")->value == "0 of 2, 0 % (0 to 66)");
}

TEST_CASE("spokes stand against the plan, entries by the share of the wall, second seatings beside them") {
    const PastModel made = page("cuts");
    const past::Cuts cuts = past::figures(samples::past_cases(), {}).cuts;
    const auto begins = [&](const std::string& label, int events) {
        const PastRow* found = row(made, label);
        REQUIRE(found != nullptr);
        CHECK(found->value.starts_with(std::to_string(events) + " of "));
    };
    begins("As planned", cuts.as_planned);
    begins("Fewer", cuts.fewer);
    begins("More", cuts.more);
    begins("Ring put on a second time", cuts.second_seatings);
    for (const past::Entries& one : cuts.by_share)
        begins(std::to_string(std::lround(one.from * 100)) + " to " + std::to_string(std::lround(one.below * 100)) + " %",
               one.entered.events);
}

TEST_CASE("the difference from the plan has a sign of its own for fewer, no hyphen") {
    const auto all = page("cuts");
    const PastRow* differs = row(all, "Difference from plan");
    REQUIRE(differs != nullptr);
    CHECK(differs->value.find("least −") != std::string::npos);  // U+2212
    CHECK(differs->value.find('-') == std::string::npos);
    CHECK(differs->value.find("most +") != std::string::npos);
}

TEST_CASE("departures bear their titles, the most frequent first; how the cases ended stands below") {
    const auto all = labels(page("otherwise"));
    CHECK(all.front() == "Suction lost");
    CHECK(std::find(all.begin(), all.end(), "suction-lost") == all.end());
    int last = 1'000;
    for (const PastRow& one : page("otherwise").rows) {
        if (one.is == PastRow::Is::Heading) break;
        CHECK(std::stoi(one.value) <= last);
        last = std::stoi(one.value);
    }
    CHECK(all.back() == "Abandoned");
    std::vector<past::Summary> cases(1);
    cases[0].end = guide::CaseEnd::Done;
    cases[0].departures = {"of-our-unit"};
    CHECK(row(page("otherwise", cases), "of-our-unit") != nullptr);
}

TEST_CASE("the own reach stands beside the shipped one with a caution, and what a profile asks for in plain words") {
    const PastModel made = page("reach");
    CHECK(made.rows.front().is == PastRow::Is::Caution);
    CHECK(models::says({made.rows.front().label}, "7 of 40"));
    const past::Spread own = *past::figures(samples::past_cases(), {}).cuts.reach;
    const PastRow* line = row(made, "Own, 7 cuts");
    REQUIRE(line != nullptr);
    CHECK(std::get<picture::IntervalMark>(line->mark).low == own.mean_low);
    CHECK(std::get<picture::IntervalMark>(row(made, "Own, next cut")->mark).high == own.next_high);
    const PastRow* shipped = row(made, "Profile, 11 cuts");
    REQUIRE(shipped != nullptr);
    CHECK(shipped->value.starts_with("1.046 ± 0.082 ("));
    CHECK(models::says(labels(made), "Clin Ophthalmol 2014;8:2391-6"));
    REQUIRE(row(made, "For the profile Suction trephine, if the surgeon agrees") != nullptr);
    CHECK(line->value.starts_with(row(made, "Mean")->value));
    CHECK(line->value.find(row(made, "Scatter, SD")->value) != std::string::npos);
    CHECK(row(made, "Cuts")->value == "7");
    CHECK(row(made, "Source")->value == "own cuts");
    const PastModel german = page("reach", samples::past_cases(), "de");
    REQUIRE(row(german, "Für das Profil Saugtrepan, wenn der Operateur zustimmt") != nullptr);
    CHECK(row(german, "Mittel")->value.starts_with("1,0"));
    CHECK(models::says(labels(german), "11 Leichenaugen, 83,7 ± 6,53 % erreicht"));
    // No file's syntax, on no page over past cases.
    for (const PastModel* model : {&made, &german}) {
        for (const PastRow& one : model->rows) {
            CAPTURE(one.label);
            CHECK((one.label + one.value).find_first_of("[]=\"`") == std::string::npos);
        }
    }
}

TEST_CASE("a reach measured with more than one trephine is not told, and says which") {
    std::vector<past::Summary> cases = samples::past_cases();
    for (std::size_t i = 0; i < cases.size(); i += 2) cases[i].trephine = "another";
    const PastModel made = page("reach", cases);
    CHECK(row(made, "Source") == nullptr);
    const auto mixed = std::find_if(made.rows.begin(), made.rows.end(),
                                    [](const PastRow& one) { return one.label.find("more than one trephine") != std::string::npos; });
    REQUIRE(mixed != made.rows.end());
    CHECK(mixed->label.ends_with("another, Suction trephine"));
    CHECK(mixed->label.find('`') == std::string::npos);
}

TEST_CASE("a reach of fewer than three measured cuts is not told, and says so") {
    std::vector<past::Summary> cases = samples::past_cases();
    int kept = 0;
    for (past::Summary& one : cases) {
        if (one.cut->depth && ++kept > 2) one.cut->depth.reset();
    }
    const PastModel made = page("reach", cases);
    CHECK(models::says(labels(made), "not measured"));
    CHECK(models::says(labels(made), "2 cuts; three are needed"));
    CHECK(row(made, "Source") == nullptr);
    CHECK(row(made, "Profile, 11 cuts") != nullptr);
}

TEST_CASE("a page with nothing says so, in either language") {
    for (const std::string& language : models::languages) {
        for (const std::string name : {"times", "cuts", "reach", "otherwise", "list"}) {
            const PastModel made = page(name, {}, language);
            REQUIRE(made.rows.size() == 2);
            CHECK(made.rows[0].label == models::words(language)("past-view.none"));
            CHECK(made.choices.empty());
        }
    }
    std::vector<past::Summary> abandoned(1);
    abandoned[0].end = guide::CaseEnd::Abandoned;
    CHECK(page("times", abandoned).rows[0].label == models::words()("past-view.no_times"));
    CHECK(page("cuts", abandoned).rows[0].label == models::words()("past-view.no_cuts"));
}

TEST_CASE("targets of the filter turn eye, reason, months and kind, and the filter says what they mean") {
    const measure::Day today{2028, 2, 29};
    ScreenState state = after_past({}, {.page = "past", .argument = "filter"});
    CHECK((past_filter(state.past, today) == past::Filter{}));
    const auto tap = [&](const std::string& id) {
        const PastModel made = past_view(samples::past_seen({}, {}), state.past, models::words());
        const auto all = targets(made);
        const auto found = models::find(all, id);
        REQUIRE(found != std::nullopt);
        state = after_past(state, std::get<Show>(found->act));
    };
    tap("past-eye");
    CHECK(past_filter(state.past, today).side == std::optional(eye::Side::Right));
    tap("past-eye");
    CHECK(past_filter(state.past, today).side == std::optional(eye::Side::Left));
    tap("past-eye");
    CHECK_FALSE(past_filter(state.past, today).side);
    tap("past-reason");
    tap("reason-oedema");
    CHECK(past_filter(state.past, today).reason == std::optional(plan::Reason::Oedema));
    CHECK(state.past.page == "filter");
    tap("past-reason");
    tap("reason-all");
    CHECK_FALSE(past_filter(state.past, today).reason);
    tap("past-year");
    CHECK((past_filter(state.past, today).from == std::optional(measure::Day{2027, 2, 28})));
    CHECK((past_filter(state.past, today).to == std::optional(today)));
    tap("past-kind");
    CHECK(past_filter(state.past, today).invented);
    tap("past-cuts");
    CHECK(state.past.page == "cuts");
    CHECK(past_filter(state.past, today).invented);
}

TEST_CASE("where all that is over was a rehearsal, the page says so") {
    std::vector<past::Summary> all = samples::past_cases();
    all.resize(3);
    for (past::Summary& one : all) one.invented = true;
    const PastModel made = past_view(samples::past_seen(all, {}), on("times"), models::words());
    REQUIRE(made.rows.size() == 2);
    CHECK(made.rows[1].label == "Left out: 0 still open, 3 of the other kind (rehearsals, or cases), 0 by the filter");
}

TEST_CASE("rows and cases without room are turned to, none is left out, on every glass") {
    for (const auto& on_glass : samples::glasses()) {
        for (const std::string name : {"times", "cuts", "reach", "otherwise", "list"}) {
            CAPTURE(on_glass.name);
            CAPTURE(name);
            const PastSeen all = samples::past_seen(samples::past_cases(), {});
            PastPage at = on(name);
            std::set<std::string> seen{};
            do {
                const Frame frame = draw(past_view(all, at, models::words()), samples::canvas(on_glass.glass));
                CHECK(frame.short_of.empty());
                seen.merge(drawn(frame));
                const Touchable* more = touchable(frame, "past-more");
                const Show show = more == nullptr ? Show{.page = "past-more", .argument = "0"} : std::get<Show>(more->target.act);
                CHECK(show.page == "past-more");
                const auto next = static_cast<std::size_t>(std::stoul(show.argument));
                REQUIRE((next == 0 || next > at.from));
                at.from = next;
            } while (at.from > 0);
            const PastModel model = page(name);
            if (name == "list") {
                for (const past::Summary& one : all.figures.list) CHECK(seen.contains(one.reference + " · " + measure::iso(one.day)));
            }
            for (const PastRow& one : model.rows) {
                // The first word at least: long ones are broken into lines.
                const std::string& text = one.value.empty() ? one.label : one.value;
                CHECK(std::any_of(seen.begin(), seen.end(), [&](const std::string& drawn) { return text.starts_with(drawn); }));
            }
        }
    }
}

TEST_CASE("a group that goes on bears its heading again, a new one its own alone") {
    const PastSeen all = samples::past_seen(samples::past_cases(), {});
    const std::string heading = "Spokes against the plan, one seating, not entered";
    std::size_t at_heading = 0;
    const PastModel whole = page("cuts");
    while (whole.rows.at(at_heading).label != heading) ++at_heading;
    const auto says = [&](std::size_t from) {
        PastPage at = on("cuts");
        at.from = from;
        return drawn(draw(past_view(all, at, models::words()), samples::canvas(samples::glasses().back().glass))).contains(heading);
    };
    CHECK(says(at_heading + 2));
    CHECK(says(at_heading));
    std::size_t next = at_heading + 1;
    while (whole.rows.at(next).is != PastRow::Is::Heading) ++next;
    CHECK_FALSE(says(next));
    CHECK_FALSE(says(next + 1));
}

TEST_CASE("one case again: its record, the clock face as placed, its clocks and its marks in their order") {
    const guide::CaseState state = samples::case_that_is_over();
    const PastModel record = again("record");
    CHECK(models::says({record.title}, state.inputs.file.reference));
    CHECK(row(record, "Case ended")->value == "Done");
    CHECK(row(record, "Spokes below zero")->value == "8, planned 8");
    CHECK(row(record, "Donation number")->value == "G123417654321");
    CHECK(row(record, "Other packs read")->value == "Lot LOT-7, Lot LOT-8");
    auto names = labels(record);
    std::sort(names.begin(), names.end());
    CHECK(std::adjacent_find(names.begin(), names.end()) == names.end());  // one name for one thing
    CHECK(row(record, "Suture material")->value == "nylon 10-0, lot N10");
    CHECK(row(record, "Ring reflection")->value == "oval, long axis at 1:30");
    CHECK(row(record, "Knots")->value == "Buried on the host side");
    CHECK(row(record, "Donor rim")->value == "culture");
    const guide::CountItem& counted = state.brief.unit.counts.front();
    CHECK(row(record, counted.title)->value.find(std::to_string(state.counts.at(counted.id).opened)) == 0);
    const auto& face = std::get<picture::ClockFace>(record.picture);
    CHECK(face.done.size() == state.sutures.size());
    CHECK(face.done.front() == measure::centideg(state.sutures.front().centideg));
    PastSeen unfinished = samples::past_seen({}, {});
    unfinished.one = state;
    unfinished.one->sutures.resize(3);
    const PastModel placed = past_view(unfinished, on("record"), models::words());
    CHECK(std::get<picture::ClockFace>(placed.picture).done.size() == 3);
    CHECK(std::get<picture::ClockFace>(placed.picture).next.empty());
    const PastModel clocks = again("clocks");
    const auto& suction = std::get<picture::SpanMark>(row(clocks, "Suction on")->mark);
    REQUIRE(suction.spans.size() == 1);
    CHECK(suction.spans[0].to > suction.spans[0].from);
    const auto& whole = std::get<picture::SpanMark>(row(clocks, "Whole case")->mark);
    CHECK(whole.spans[0].from == 0);
    CHECK(whole.spans[0].to <= clocks.axis.high);
    const PastModel marks = again("marks");
    double last = 0;
    for (const PastRow& one : marks.rows) {
        const double at = std::get<picture::IntervalMark>(one.mark).at;
        CHECK(at >= last);
        last = at;
    }
    CHECK(marks.rows.size() == state.steps.size() + state.departures.size() + state.notes.size());
    CHECK(models::says(labels(marks), "Otherwise: Patient coughs or moves"));
    CHECK(models::says(labels(marks), "Note: Knots lie on the donor side"));
}

TEST_CASE("no target of these pages carries an intent, all are 15 mm, and no word is missing") {
    for (const std::string& language : models::languages) {
        for (const auto& sample : samples::past_views(language)) {
            const auto* model = std::get_if<PastModel>(&sample.view);
            if (model == nullptr) continue;
            CAPTURE(sample.name);
            for (const Target& one : targets(*model)) {
                CHECK(std::holds_alternative<Show>(one.act));
                CHECK(one.press == Press::Tap);
                CHECK(one.weight == Weight::Elsewhere);
            }
            for (const std::string& text : models::texts(*model)) CHECK_FALSE(models::unfilled(text));
        }
    }
}

TEST_CASE("from a case one comes back to where the list was turned to") {
    ScreenState state = after_past({}, {.page = "past", .argument = "list"});
    state = after_past(state, {.page = "past-more", .argument = "12"});
    state = after_past(state, {.page = "past-case", .argument = "K-1"});
    CHECK(state.past.one == "K-1");
    state = after_past(state, {.page = "past", .argument = "marks"});
    state = after_past(state, {.page = "past-more", .argument = "7"});
    CHECK(state.past.from == 7);
    state = after_past(state, {.page = "past", .argument = "list"});
    CHECK(state.past.from == 12);
    CHECK(state.past.one.empty());
    state = after_past(state, {.page = "past", .argument = "times"});
    CHECK(state.past.from == 0);
}

TEST_CASE("upright a short page stands whole: figures have the room that their labels leave") {
    for (const std::string& language : models::languages) {
        for (const samples::Sample& sample : samples::past_views(language)) {
            if (sample.name != "past otherwise few") continue;
            CAPTURE(language);
            const auto& model = std::get<PastModel>(sample.view);
            const Frame frame = draw(model, samples::canvas({136, 217}));
            for (const Touchable& one : frame.touchables) CHECK(one.target.id != model.more.id);
        }
    }
}

TEST_CASE("back goes one level up: from the reasons to the filter, from there to the page under it, then to the list of cases") {
    ScreenState state = after_past({}, {.page = "past", .argument = "cuts"});
    const auto back = [&] {
        const PastModel made = past_view(samples::past_seen({}, {}), state.past, models::words());
        return std::get<Show>(models::find(made.foot, "back")->act);
    };
    CHECK(back().page == "cases");
    state = after_past(state, {.page = "past", .argument = "filter"});
    state = after_past(state, {.page = "past", .argument = "reason"});
    REQUIRE(back().page == "past");
    state = after_past(state, back());
    CHECK(state.past.page == "filter");
    state = after_past(state, back());
    CHECK(state.past.page == "cuts");
    CHECK(back().page == "cases");
}
