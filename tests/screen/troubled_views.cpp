#include "screen/troubled_views.hpp"

#include "measure/expect.hpp"
#include "screen/cases.hpp"
#include "screen/desk.hpp"
#include "screen/drawer.hpp"
#include "screen/measuring.hpp"
#include "screen/models.hpp"
#include "screen/new_case.hpp"
#include "screen/past_views.hpp"
#include "support/sample.hpp"

namespace samples {

namespace {

struct Trouble {
    std::string name{};
    screen::Around around{};
};

screen::Around muted() {
    screen::Around made{.volume = 70, .muted = true, .beat = true};
    made.proposed = sample::plan();
    return made;
}

/// One at a time, then all that can stand at once.
std::vector<Trouble> troubles(const screen::Words& words) {
    const std::vector<std::string> lost{"table", "far"};
    std::vector<Trouble> made{};
    for (const char* name : {"muted", "lost", "changed", "jumped", "unknown", "silent", "much", "all"}) made.push_back({name, muted()});
    made[1].around.screens_lost = made[7].around.screens_lost = lost;
    made[2].around.file_changed = made[7].around.file_changed = true;
    made[3].around.clock_jumped = made[6].around.clock_jumped = made[7].around.clock_jumped = true;
    made[4].around.size_unknown = made[7].around.size_unknown = true;
    made[5].around.no_sound = true;
    made[6].around.screens_lost = {"far"};
    made[7].around.not_on_disk = 12;
    made[7].around.trouble = words("disk.cannot_write");
    return made;
}

/// Table, Desk and Far view at once, and the drawer of the one screen for two readers.
void see(std::vector<Sample>& views, const sample::Case& at, const std::string& name, const screen::Words& words) {
    for (Trouble& trouble : troubles(words)) {
        screen::Around& around = trouble.around;
        around.now = at.now;
        const std::string which = trouble.name + " " + name;
        views.push_back({which, screen::table(at.state, around, words)});
        views.push_back({"far " + which, screen::far(at.state, around, words)});
        screen::Around here = around;
        here.here = guide::Source::Desk;
        views.push_back({"desk " + which, screen::desk(at.state, {}, here, words)});
        if (trouble.name != "muted" && trouble.name != "much") continue;
        around.alone = here.alone = true;
        for (const bool open : {false, true}) {
            screen::TableModel table = screen::table(at.state, around, words);
            table.drawer = screen::drawer(screen::desk(at.state, {}, here, words), open, screen::narrow_drawer(at.state), words);
            views.push_back({"drawer " + which + (open ? " open" : " shut"), std::move(table)});
        }
    }
}

/// The page on which a note is typed under the finger, on the one screen for two readers.
screen::View typing(const sample::Case& at, screen::Around around, const screen::Words& words) {
    around.alone = true;
    around.here = guide::Source::Desk;
    const screen::DeskState note{.page = "note", .typed = "THE SECOND KNOT LIES ON THE DONOR SIDE"};
    auto made = screen::typing_page(screen::desk(at.state, note, around, words), words);
    measure::expect(made.has_value());
    return *std::move(made);
}

/// Beside a case: lists, forms, the measuring of a screen, past cases.
std::vector<Sample> beside(const sample::Case& at, const screen::Around& around, const std::string& language) {
    const screen::Words& words = models::words(language);
    screen::CaseList list{.folder = "/home/somebody/.local/share/graftside/case-files", .under_way = true};
    for (int i = 1; i < 12; ++i) list.cases.push_back({.reference = "K-10" + std::to_string(10 + i), .when = "2026-11-25 12:07"});
    for (int i = 1; i < 9; ++i) list.files.push_back({.path = "/", .name = "k-10" + std::to_string(10 + i) + ".case.toml"});
    const screen::SizesInStock sizes{.host = {"7.00", "7.50", "8.00"}, .donor = {"7.25", "7.75", "8.25"}};
    const screen::ScreenState letters{.page = "new", .draft = {{"reference", "K-0147-ÄÖ"}}, .field = "reference", .turned = true};
    std::vector<Sample> all{{"cases", screen::cases(list, {.page = "cases"}, words)},
                            {"files", screen::cases(list, {.page = "cases", .argument = "files"}, words)},
                            {"set-up", screen::cases({}, {.page = "cases", .argument = "set-up"}, words)},
                            {"form", screen::new_case({.page = "new"}, sizes, {{"eye.keratometry_D", ""}}, words)},
                            {"form letters", screen::new_case(letters, sizes, {}, words)},
                            {"initials", screen::view(at.state, {.page = "count-initials", .argument = "needles=11"}, around, words)},
                            {"departures", screen::view(at.state, {.page = "departures"}, around, words)},
                            {"typing", typing(at, around, words)},
                            {"measure", screen::measure_page(screen::measuring("HDMI-1", 1920, 1080, 4), words)}};
    for (Sample& one : past_views(language)) all.push_back(std::move(one));
    for (Sample& one : all) one.view = screen::told(std::move(one.view), around, words);
    return all;
}

}  // namespace

std::vector<Sample> troubled(const std::string& language) {
    const screen::Words& words = models::words(language);
    std::vector<Sample> views{};
    sample::Case at(models::brief_of_unit(language));
    at.up_to("seat");
    for (const Trouble& trouble : troubles(words)) {
        screen::Around around = trouble.around;
        around.now = at.now;
        views.push_back({"far " + trouble.name + " seating", screen::far(at.state, around, words)});
    }
    at.up_to("lower");
    at.count(5);
    see(views, at, "cutting", words);
    sample::Case lost = at;
    measure::expect(lost.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    lost.later(3700);
    see(views, lost, "suction lost", words);
    at.up_to("entered");
    sample::Case away = at;
    measure::expect(away.does(guide::Depart{.what = "eye-bulging"}));
    see(views, away, "bulging", words);
    at.up_to("next-four");
    see(views, at, "suturing", words);
    for (const Trouble& trouble : troubles(words)) {
        if (trouble.name != "jumped" && trouble.name != "much") continue;
        for (Sample& one : beside(at, trouble.around, language)) views.push_back({trouble.name + " " + one.name, std::move(one.view)});
    }
    return views;
}

}  // namespace samples
