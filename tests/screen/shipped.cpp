#include "screen/shipped.hpp"

#include "guide/timed.hpp"
#include "measure/expect.hpp"
#include "screen/cases.hpp"
#include "screen/desk.hpp"
#include "screen/drawer.hpp"
#include "screen/measuring.hpp"
#include "screen/models.hpp"
#include "screen/new_case.hpp"
#include "screen/pages.hpp"
#include "screen/plan_views.hpp"
#include "support/sample.hpp"

#include <string>
#include <vector>

namespace samples {

namespace {

/// Nothing is wrong, and the unit has a past of its own.
screen::Around quiet() { return {.beat = true, .own_past = std::make_shared<past::Figures>(models::own_past())}; }

struct Walk {
    screen::Words words;
    std::vector<Sample> views{};
    screen::Around around = quiet();

    void see(const sample::Case& at, const std::string& name, const screen::ScreenState& state = {}) {
        around.now = at.now;
        views.push_back({name, screen::view(at.state, state, around, words)});
        if (!state.page.empty()) return;
        views.push_back({"far " + name, screen::far(at.state, around, words)});
        see_desk(at, name, {});
    }
    void see_desk(const sample::Case& at, const std::string& name, const screen::DeskState& desk) {
        screen::Around here = around;
        here.here = guide::Source::Desk;
        here.volume = 70;
        here.foot_switch = "F9";
        views.push_back({"desk " + name, screen::desk(at.state, desk, here, words)});
    }
};

/// The cut from raised to one over, the count held elsewhere, a bounce, suction lost.
void see_cut(Walk& walk, sample::Case at) {
    for (int turned = 0; turned <= 12; ++turned) {
        walk.see(at, "step lower " + std::to_string(turned));
        at.count(1);
    }
    walk.around.bounced = "spoke";
    walk.see(at, "step lower bounced");
    walk.around.bounced.reset();
    walk.around.not_on_disk = 2;
    walk.around.trouble = walk.words("disk.cannot_write");
    measure::expect(at.does(guide::HoldCount{.source = guide::Source::Desk}));
    walk.see(at, "step lower elsewhere");
    measure::expect(at.does(guide::HoldCount{.source = guide::Source::Table}));
    walk.around = quiet();
    measure::expect(at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    walk.see(at, "step lower lost");
}

/// A count that differs: one has said so, both have, and the pages on the way.
void see_difference(Walk& walk, sample::Case at) {
    measure::expect(at.does(guide::MoveItems{.item = "needles", .by = 1}));
    walk.see(at, "page count-differs", {.page = "count-differs"});
    walk.see(at, "page count-seen", {.page = "count-seen", .argument = "needles"});
    walk.see(at, "page count-by", {.page = "count-by", .argument = "needles=11"});
    walk.see(at, "page count-initials", {.page = "count-initials", .argument = "needles=11"});
    walk.see(at, "page count-initials all", {.page = "count-initials", .draft = {{"initials", "MMMMMMMMMMMM"}}});
    const auto& unit = at.state.brief.unit;
    measure::expect(at.does(guide::CheckCount{.item = "needles", .seen = 11, .by = unit.scrub_name}));
    walk.see(at, "step count one differs");
    measure::expect(at.does(guide::CheckCount{.item = "needles", .seen = 11, .by = unit.circulating_name}));
    walk.see(at, "step count both differ");
    walk.see(at, "page count-record", {.page = "count-record", .argument = "needles"});
}

/// Readings all round, so that the card has every row of a plan: what is expected to be left, the chance of entering, with its cautions.
void see_measured_plan(Walk& walk, const sample::Case& at) {
    const screen::Around before = walk.around;
    walk.around.proposed = plan::make(eight_readings());
    measure::expect(walk.around.proposed->ladder.size() > 1);
    walk.see(at, "step plan measured");
    walk.around = before;
}

/// Two tissues were read: the second does not fit, for the longest reason.
void scan_what_stands(sample::Case& at) {
    const guide::Donation first{.number = "G123417654321"}, other{.number = "A999917123456"};
    measure::expect(at.does(guide::Scan{.bytes = "1", .label = guide::Isbt{.donation = first}}));
    measure::expect(
        at.does(guide::Scan{.bytes = "2", .label = guide::Isbt{.donation = other, .expires = guide::Moment{.day = {2026, 1, 31}}}}));
}

/// It is said on the Table at once, whatever the step.
void see_what_stands(Walk& walk, sample::Case at, const std::string& step) {
    scan_what_stands(at);
    walk.views.push_back({"stands " + step, screen::view(at.state, {}, walk.around, walk.words)});
}

/// A step refused for what was scanned.
void see_refused_scan(Walk& walk, sample::Case at) {
    scan_what_stands(at);
    const auto refused = guide::decide(at.state, guide::Who::Scrub, guide::FinishStep{.step = guide::current_step(at.state)->id}, at.now);
    walk.around.refusal = screen::refusal_text(refused.error(), at.state, walk.words);
    walk.see(at, "refused scan");
    walk.around.refusal.reset();
}

/// Every page of the Desk; the longest note and initials that go in.
void see_desk_pages(Walk& walk, const sample::Case& at) {
    const std::string item = at.state.brief.unit.counts.front().id, note(240, 'n');
    for (const std::string page : {"clocks", "counts", "otherwise", "sound", "screen", "reader"})
        walk.see_desk(at, "page " + page, {.page = page});
    walk.see_desk(at, "page clock", {.page = "clock", .argument = "decompressed"});
    walk.see_desk(at, "page count", {.page = "count", .argument = item});
    walk.see_desk(at, "page seen", {.page = "seen", .argument = item, .typed = "12"});
    walk.see_desk(at, "page who", {.page = "who", .argument = item + "=12"});
    walk.see_desk(at, "page by", {.page = "by", .argument = item + "=12", .typed = "MMMMMMMMMMMM"});
    walk.see_desk(at, "page note", {.page = "note", .typed = "The second knot lies on the donor side, said by the surgeon."});
    walk.see_desk(at, "page long note", {.page = "note", .typed = note});
}

/// Scans that fit and scans that do not, more than a page lists; the longest lot.
void scan_many(sample::Case& at) {
    const auto scanned = [&](const std::string& bytes, const guide::Label& label) {
        measure::expect(at.does(guide::Scan{.bytes = bytes, .label = label}, guide::Who::Circulating));
    };
    for (int i = 0; i < 9; ++i)
        scanned("pack " + std::to_string(i), guide::Gs1{.gtin = "09506000134352", .lot = "LOT-OF-20-LETTERS-0" + std::to_string(i)});
    measure::expect(at.does(guide::PutAside{.event = at.state.last, .why = "opened"}));
    scanned("old", guide::Isbt{.donation = guide::Donation{.number = "G123417654321"},
                               .product = guide::Product{.code = "V0001", .division = "001"},
                               .expires = guide::Moment{.day = {2026, 1, 31}}});
    scanned("unread", guide::Unread{});
}

/// The Desk's pages for tissue and packs, what is told, times and files, with the longest that goes in.
std::vector<screen::DeskState> more_pages(const sample::Case& at, const screen::Words& words) {
    const std::string scan = std::to_string(at.state.scans.size() > 9 ? at.state.scans[9].seq : 0), name(28, 'M'), lot(20, 'M');
    const auto times = guide::timed(at.state);
    const std::string event = std::to_string(times.empty() ? 0 : times.front().seq);
    return {{.page = "tissue"},
            {.page = "scans"},
            {.page = "scan", .argument = scan},
            {.page = "aside", .argument = scan},
            {.page = "overrule", .argument = scan + "=" + name},
            {.page = "contact", .argument = scan, .typed = name},
            {.page = "label", .typed = "SEC:PL001499Z549917123456A00T041600320171231"},
            {.page = "tissue-said"},
            {.page = "tell", .argument = "left-over", .typed = "rim and medium, kept cold until the bank has answered"},
            {.page = "depth", .typed = "1500"},
            {.page = "depth-how", .argument = "1500"},
            {.page = "depth-words", .argument = "1500", .typed = "OCT of the microscope, read by the surgeon"},
            {.page = "knots"},
            {.page = "sutures"},
            {.page = "material", .typed = "nylon 10-0, double armed"},
            {.page = "lot", .argument = "nylon 10-0", .typed = lot},
            {.page = "specimens"},
            {.page = "specimen", .argument = "host-button"},
            {.page = "specimen-side", .argument = "host-button=pathology"},
            {.page = "bank", .typed = name},
            {.page = "bank-text", .argument = name},
            {.page = "bank-words", .argument = name, .typed = "grafted, the rim goes to culture, more when it is grown"},
            {.page = "times"},
            {.page = "time", .argument = event, .typed = "08:23"},
            {.page = "time-why", .argument = event + "=08:23:10"},
            {.page = "papers",
             .argument = "/home/somebody/.local/share/graftside/handover",
             .told = {{"pdf", words("papers.written", {"12:07"})}, {"csv", words("papers.held")}}}};
}

void see_more_pages(Walk& walk, sample::Case at) {
    for (const screen::DeskState& page : more_pages(at, walk.words)) walk.see_desk(at, "early " + page.page, page);
    scan_many(at);
    walk.see_desk(at, "something stands", {});
    for (const screen::DeskState& page : more_pages(at, walk.words)) walk.see_desk(at, "page " + page.page, page);
}

/// The Table view on one screen for two readers, its drawer shut and open on pages of the Desk.
void see_drawer(Walk& walk, const sample::Case& at, const std::string& name) {
    walk.around.alone = true;
    const std::string item = at.state.brief.unit.counts.front().id;
    std::vector<screen::DeskState> pages{{},
                                         {.turned = 1},
                                         {.page = "clocks"},
                                         {.page = "otherwise"},
                                         {.page = "count", .argument = item},
                                         {.page = "seen", .argument = item, .typed = "12"},
                                         {.page = "by", .argument = item + "=12"},
                                         {.page = "initials", .argument = item + "=12", .typed = "ÄÖÜß"},
                                         {.page = "note", .typed = "THE SECOND KNOT LIES ON THE DONOR SIDE"},
                                         {.page = "note", .typed = "THE SECOND KNOT, 2 TURNS", .turned = 1}};
    for (std::size_t turned = 1; guide::cutting(at.state) && turned <= 6; ++turned)
        pages.push_back({.page = "otherwise", .turned = turned});
    const bool waits = guide::cutting(at.state) || guide::current_step(at.state)->quiet;
    for (const screen::DeskState& page : waits ? std::vector<screen::DeskState>{} : more_pages(at, walk.words)) pages.push_back(page);
    for (const bool open : {false, true}) {
        for (const screen::DeskState& page : pages) {
            walk.around.now = at.now;
            screen::DeskModel desk = screen::desk(at.state, page, walk.around, walk.words);
            const std::string which = open ? " open " + page.page + std::to_string(page.turned) : " shut";
            if (auto typing = screen::typing_page(desk, walk.words); typing && open) {
                walk.views.push_back({"drawer " + name + which, *std::move(typing)});
                continue;
            }
            screen::TableModel table = screen::table(at.state, walk.around, walk.words);
            const bool narrow = screen::narrow_drawer(at.state);
            table.drawer = screen::drawer(std::move(desk), open, narrow, walk.words);
            walk.views.push_back({"drawer " + name + which, std::move(table)});
            if (!open) break;
        }
    }
    walk.around.alone = false;
}

void see_pages(Walk& walk, const sample::Case& at, const guide::Step& step) {
    walk.see(at, "page departures " + step.id, {.page = "departures", .argument = ""});
    if (step.closes == guide::Closes::Sutures) {
        walk.see(at, "page other-mark " + step.id, {.page = "other-mark", .argument = std::to_string(*guide::next_suture(at.state))});
        walk.see(at, "page redo " + step.id, {.page = "redo"});
        if (at.state.sutures.empty()) return;
        walk.see(at, "page redo-why " + step.id, {.page = "redo-why", .argument = std::to_string(at.state.sutures.back().n)});
    }
}

}  // namespace

std::vector<Sample> shipped(const std::string& language) {
    Walk walk{.words = models::words(language)};
    sample::Case at(models::brief_of_unit(language));
    walk.around.proposed = sample::plan();
    for (const auto& [item, opened] : {std::pair{"needles", 11}, {"blades", 2}, {"spears", 20}, {"swabs", 10}})
        measure::expect(at.does(guide::MoveItems{.item = item, .by = opened}));
    for (const auto& phase : at.state.brief.procedure.phases) {
        for (const auto& step : phase.steps) {
            if (!guide::applies(at.state, step)) continue;
            at.up_to(step.id);
            walk.see(at, "step " + step.id);
            see_what_stands(walk, at, step.id);
            if (step.closes == guide::Closes::Plan) see_measured_plan(walk, at);
            if (step.closes == guide::Closes::Cut) see_cut(walk, at);
            if (step.closes == guide::Closes::Cut || step.closes == guide::Closes::Sutures ||
                &step == &at.state.brief.procedure.phases.front().steps.front())
                see_drawer(walk, at, step.id);
            if (step.closes == guide::Closes::Counts) see_difference(walk, at);
            if (&step == &phase.steps.front()) see_desk_pages(walk, at);
            if (&step == &at.state.brief.procedure.phases.front().steps.front()) see_refused_scan(walk, at);
            if (step.id == "knots") see_more_pages(walk, at);
            if (&step == &phase.steps.front()) walk.see(at, "page wipe " + step.id, {.page = "wipe"});
            if (&step == &phase.steps.back() || step.closes == guide::Closes::Sutures) see_pages(walk, at, step);
            if (step.closes == guide::Closes::Ring) walk.see(at, "page ring", {.page = "ring", .argument = ""});
            for (const auto* departure : screen::departures_of(at.state, step)) {
                sample::Case away = at;
                if (away.does(guide::Depart{.what = departure->id})) walk.see(away, "away " + departure->id + " " + step.id);
            }
        }
    }
    sample::Case locked = at;
    measure::expect(locked.does(guide::CloseCase{.how = guide::CaseEnd::Done, .why = ""}));
    walk.see(locked, "step locked");
    walk.see(at, "page phase-times", {.page = "phase-times"});
    walk.see(at, "page skip", {.page = "skip", .argument = "medicines"});
    walk.see(at, "page end", {.page = "end", .argument = "abandoned"});
    walk.views.push_back(
        {"page set-up", screen::cases({.dimmed = true, .alone = true}, {.page = "cases", .argument = "set-up"}, walk.words)});
    walk.views.push_back({"page measure", screen::measure_page(screen::measuring("HDMI-1", 1920, 1080, 4), walk.words)});
    walk.views.push_back({"form new", screen::new_case({.page = "new", .argument = ""},
                                                       {.host = {"7.00", "7.50", "8.00"}, .donor = {"7.25", "7.75", "8.25"}},
                                                       {{"eye.keratometry_D", ""}, {"thickness.readings[1].um", ""}}, walk.words)});
    for (const bool letters : {false, true}) {
        const screen::ScreenState typing{.page = "new", .draft = {{"reference", "K-0147-ÄÖ"}}, .field = "reference", .turned = letters};
        walk.views.push_back({letters ? "form letters" : "form digits", screen::new_case(typing, {}, {}, walk.words)});
    }
    return walk.views;
}

}  // namespace samples
