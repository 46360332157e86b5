#include "screen/past_views.hpp"

#include "intake/instrument.hpp"
#include "measure/expect.hpp"
#include "screen/cases.hpp"
#include "screen/models.hpp"

namespace samples {

using past::Summary;
using screen::PastPage;

namespace {

constexpr int cases = 40;

/// So many minutes give or take, scattered by the number of the case.
past::Timed timed(const std::string& id, int minutes, int number) {
    const int seconds = minutes * 60 + (number * 37 % 41 - 20) * minutes;
    return {.id = id, .ms = seconds * std::int64_t{1000}, .exact = id != "case" || number % 13 != 0};
}

past::Cut cut(int number) {
    const int planned = 8, position = number % 11 == 0 ? 7 : number % 7 == 0 ? 9 : planned;
    past::Cut made{.end = number % 9 == 4 ? guide::CutEnd::Entered : guide::CutEnd::AtPlan,
                   .seatings = number % 17 == 3 ? 2 : 1,
                   .position = position,
                   .planned = planned,
                   .travel = position * measure::from_um(60)};
    made.thinnest = measure::from_um(560 + number % 6 * 24);
    if (number % 5 == 0) made.depth = measure::from_um(position * 60 * (0.97 + number % 4 * 0.04));
    return made;
}

Summary summary(int number) {
    Summary made{.reference = "K-" + std::to_string(1000 + number),
                 .day = {2023 + number / 14, 1 + number % 12, 1 + number % 28},
                 .side = number % 3 == 0 ? eye::Side::Left : eye::Side::Right,
                 .reason = number % 2 == 0 ? plan::Reason::Keratoconus : plan::Reason::Scar,
                 .trephine = "suction-trephine",
                 .host = measure::from_mm(7.5),
                 .donor = measure::from_mm(7.75),
                 .end = number % 19 == 0   ? guide::CaseEnd::Abandoned
                        : number % 16 == 0 ? guide::CaseEnd::Converted
                                           : guide::CaseEnd::Done,
                 .cut = cut(number)};
    for (const auto& [id, minutes] : std::vector<std::pair<std::string, int>>{{"ready", 14},
                                                                              {"donor", 9},
                                                                              {"host", 11},
                                                                              {"open-eye", 7},
                                                                              {"suturing", 41},
                                                                              {"closing", 6},
                                                                              {"suction", 2},
                                                                              {"open-sky", 12},
                                                                              {"decompressed", 15},
                                                                              {"donor-out", 24},
                                                                              {"case", 88}})
        made.times.push_back(timed(id, minutes, number));
    if (number % 8 == 1) made.departures.emplace_back("suction-lost");
    if (number % 9 == 4) made.departures.emplace_back("entered-by-trephine");
    if (number % 12 == 2) made.departures.emplace_back("patient-moved");
    if (number % 20 == 7) made.departures.emplace_back("eye-bulging");
    made.counts = 30;
    made.counts_differed = number % 10 == 6 ? 1 : 0;
    return made;
}

PastPage on(const std::string& page) {
    PastPage made{};
    made.page = page;
    return made;
}

}  // namespace

std::vector<Summary> past_cases() {
    std::vector<Summary> all{};
    for (int number = 0; number < cases; ++number) all.push_back(summary(number));
    all.push_back(summary(cases));
    all.back().end.reset();
    return all;
}

screen::PastSeen past_seen(const std::vector<Summary>& all, const past::Filter& filter, const std::string& language) {
    screen::PastSeen made{.figures = past::figures(all, filter), .procedure = models::brief(language).procedure};
    made.shipped = intake::read_trephine(models::file("assets/instruments/suction-trephine.toml"), "trephine")->reach;
    return made;
}

guide::CaseState case_that_is_over(const std::string& language) {
    sample::Case at(models::brief_of_unit(language));
    const guide::Step* last = guide::step_that_closes(at.state.brief.procedure, guide::Closes::Close);
    const guide::Step* sutures = guide::step_that_closes(at.state.brief.procedure, guide::Closes::Sutures);
    measure::expect(last != nullptr && sutures != nullptr);
    for (const guide::Phase& phase : models::brief(language).procedure.phases) {
        for (const guide::Step& step : phase.steps) {
            if (guide::applies(at.state, step)) at.up_to(step.id);
            at.later(75);
            if (&step == sutures) break;
        }
    }
    measure::expect(at.does(guide::Depart{.what = "patient-moved"}));
    measure::expect(at.does(guide::ComeBack{.what = "patient-moved"}));
    measure::expect(at.does(guide::WriteNote{.text = "Knots lie on the donor side, said by the surgeon."}));
    measure::expect(at.does(guide::Scan{.bytes = "tissue", .label = guide::Isbt{.donation = guide::Donation{.number = "G123417654321"}}}));
    measure::expect(at.does(guide::Scan{.bytes = "pack", .label = guide::Gs1{.gtin = "09506000134352", .lot = "LOT-7"}}));
    measure::expect(at.does(guide::Scan{.bytes = "other pack", .label = guide::Gs1{.gtin = "09506000134352", .lot = "LOT-8"}}));
    measure::expect(at.does(guide::SeeRing{.long_axis_centideg = 4500}));
    measure::expect(at.does(guide::TellKnots{.side = guide::KnotSide::Host}));
    measure::expect(at.does(guide::NameSutures{.material = "nylon 10-0", .lot = "N10"}));
    measure::expect(at.does(guide::TellSpecimen{.what = guide::Specimen::Rim, .to = guide::SentTo::Culture, .side = "right"}));
    at.up_to(last->id);
    measure::expect(at.does(guide::CloseCase{.how = guide::CaseEnd::Done}));
    return at.state;
}

std::vector<Sample> past_views(const std::string& language) {
    const screen::Words& words = models::words(language);
    std::vector<Sample> views{};
    screen::PastSeen full = past_seen(past_cases(), {}, language);
    full.one = case_that_is_over(language);
    const auto see = [&](const std::string& name, const screen::PastSeen& seen, const PastPage& page) {
        views.push_back({"past " + name, screen::past_view(seen, page, words)});
    };
    for (const char* page : {"times", "cuts", "reach", "otherwise", "list", "filter", "reason", "record", "clocks", "marks"})
        see(page, full, on(page));
    for (const char* page : {"times", "cuts", "otherwise", "list", "marks"}) {
        PastPage turned = on(page);
        turned.from = 5;
        see(std::string(page) + " turned", full, turned);
    }
    for (const char* page : {"times", "reach", "list"}) see(std::string(page) + " none", past_seen({}, {}, language), on(page));
    std::vector<Summary> few{summary(1), summary(2)};
    few[0].end = few[1].end = guide::CaseEnd::Abandoned;
    few[0].cut->end.reset(), few[1].cut->end.reset();
    few[0].departures.clear(), few[1].departures.clear();
    for (const char* page : {"times", "cuts", "reach", "otherwise"})
        see(std::string(page) + " few", past_seen(few, {}, language), on(page));
    screen::CaseList list{.under_way = true};
    for (const char* reference : {"K-1040", "K-1039", "K-1038"}) list.cases.push_back({.reference = reference, .when = "2026-11-25 12:07"});
    views.push_back({"past cases", screen::cases(list, {.page = "cases"}, words)});
    const screen::Banner banner{.level = screen::Banner::Level::Notice, .text = words("banner.left_out")};
    screen::PastModel told = screen::past_view(full, on("times"), words);
    told.banner = banner;
    views.push_back({"past banner", std::move(told)});
    return views;
}

}  // namespace samples
