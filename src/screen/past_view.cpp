#include "screen/past_view.hpp"

#include "measure/expect.hpp"
#include "screen/format.hpp"
#include "screen/past_view_parts.hpp"

#include <algorithm>
#include <array>

namespace screen {
namespace {

using plan::Reason;

constexpr std::array<std::pair<Reason, const char*>, 8> reasons_told{{{Reason::Scar, "scar"},
                                                                      {Reason::Keratoconus, "keratoconus"},
                                                                      {Reason::Oedema, "oedema"},
                                                                      {Reason::Dystrophy, "dystrophy"},
                                                                      {Reason::Regraft, "regraft"},
                                                                      {Reason::Infection, "infection"},
                                                                      {Reason::Trauma, "trauma"},
                                                                      {Reason::Other, "other"}}};

Target small(std::string id, std::string label, std::string line, Show show) {
    return {.id = std::move(id), .label = std::move(label), .line = std::move(line), .weight = Weight::Elsewhere, .act = std::move(show)};
}

Target tab(const std::string& page, const std::string& standing, const Words& words) {
    Target made = small("past-" + page, words("past-view.tab_" + page), "", {.page = "past", .argument = page});
    if (page == standing) made.look = Look::Filled;
    return made;
}

bool of_one(const PastPage& page) { return page.page == "record" || page.page == "clocks" || page.page == "marks"; }

/// The choices from the first shown on.
void put(PastModel& made, std::vector<Target> all) {
    made.all = all.size();
    made.choices.assign(all.begin() + static_cast<std::ptrdiff_t>(std::min(made.from, all.size())), all.end());
}

// ---- the filter ----

std::string eyes_text(std::optional<eye::Side> side, const Words& words) {
    if (!side) return words("past-view.eyes_both");
    return words(*side == eye::Side::Right ? "past-view.eyes_right" : "past-view.eyes_left");
}
std::string reasons_text(std::optional<Reason> reason, const Words& words) {
    return reason ? reason_text(*reason, words) : words("past-view.reasons_all");
}
std::string years_text(bool year, const Words& words) { return words(year ? "past-view.year" : "past-view.years_all"); }
std::string left_out_text(const PastSeen& seen, const Words& words) {
    const past::LeftOut& out = seen.figures.left_out;
    return words("past.left_out", {std::to_string(out.open), std::to_string(out.invented), std::to_string(out.filtered)});
}

std::string kind_text(bool invented, const Words& words) { return words(invented ? "past-view.rehearsals" : "past-view.cases"); }

std::optional<eye::Side> next_eye(std::optional<eye::Side> side) {
    if (!side) return eye::Side::Right;
    return *side == eye::Side::Right ? std::optional(eye::Side::Left) : std::nullopt;
}

void filter_page(PastModel& made, const PastSeen& seen, const PastPage& page, const Words& words) {
    made.lines.push_back(left_out_text(seen, words));
    const auto turns = [&words](const std::string& to) { return words("past-view.touch_for", {to}); };
    put(made, {small("past-eye", eyes_text(page.side, words), turns(eyes_text(next_eye(page.side), words)), {.page = "past-eye"}),
               small("past-reason", reasons_text(page.reason, words), words("past-view.choose"), {.page = "past", .argument = "reason"}),
               small("past-year", years_text(page.year, words), turns(years_text(!page.year, words)), {.page = "past-year"}),
               small("past-kind", kind_text(page.invented, words), turns(kind_text(!page.invented, words)), {.page = "past-kind"})});
}

void reason_page(PastModel& made, const PastPage& page, const Words& words) {
    std::vector<Target> all{};
    const auto add = [&](std::optional<Reason> reason, const std::string& id) {
        all.push_back(small("reason-" + id, reasons_text(reason, words), "", {.page = "past-reason", .argument = id}));
        if (page.reason == reason) all.back().look = Look::Filled;
    };
    add(std::nullopt, "all");
    for (const auto& [reason, id] : reasons_told) add(reason, id);
    put(made, std::move(all));
}

// ---- the list ----

/// Of thousands no more are made ready than any glass has room for.
constexpr std::size_t most_choices = 60;

void list_page(PastModel& made, const PastSeen& seen, const Words& words) {
    const std::vector<past::Summary>& list = seen.figures.list;
    made.all = list.size();
    for (std::size_t i = made.from; i < std::min(list.size(), made.from + most_choices); ++i) {
        const past::Summary& one = list[i];
        const std::string line = words(
            "past-view.case_line", {words(one.side == eye::Side::Right ? "form.eye_right" : "form.eye_left"), size_text(one.host, words),
                                    size_text(one.donor, words), one.end ? end_text(*one.end, words) : ""});
        made.choices.push_back(small("past-case-" + one.reference, words("past-view.case", {one.reference, measure::iso(one.day)}), line,
                                     {.page = "past-case", .argument = one.reference}));
    }
}

bool filters(const PastPage& page) { return page.page == "filter" || page.page == "reason"; }

/// One level up: from the reasons to the filter, from the filter to the page under it, from there to the list of cases.
Show one_back(const PastPage& page) {
    if (page.page == "reason") return {.page = "past", .argument = "filter"};
    if (page.page == "filter") return {.page = "past", .argument = page.under.empty() ? "times" : page.under};
    return {.page = "cases"};
}

/// Head, tabs and feet of every page over many cases.
void frame_page(PastModel& made, const PastSeen& seen, const PastPage& page, const Words& words) {
    made.title = words(page.invented ? "past-view.title_rehearsals" : "past-view.title_cases", {std::to_string(seen.figures.cases)});
    made.lines = {words("past-view.filter", {eyes_text(page.side, words), reasons_text(page.reason, words), years_text(page.year, words)})};
    for (const char* one : {"times", "cuts", "reach", "otherwise", "list"}) made.tabs.push_back(tab(one, page.page, words));
    made.foot = {tab("filter", filters(page) ? "filter" : "", words), small("back", words("page.back"), "", one_back(page))};
}

void fill_page(PastModel& made, const PastSeen& seen, const PastPage& page, const Words& words) {
    if (page.page == "filter") return filter_page(made, seen, page, words);
    if (page.page == "reason") return reason_page(made, page, words);
    if (seen.figures.cases == 0) {
        made.rows = {sentence(words("past-view.none")), sentence(left_out_text(seen, words))};
        return;
    }
    if (page.page == "times") times_page(made, seen, words);
    if (page.page == "cuts") cuts_page(made, seen, words);
    if (page.page == "reach") reach_page(made, seen, words);
    if (page.page == "otherwise") otherwise_page(made, seen, words);
    if (page.page == "list") list_page(made, seen, words);
}

/// The same day a year before; of a leap day, the day before it.
measure::Day a_year_before(measure::Day day) {
    day.year -= 1;
    if (!measure::valid(day)) day.day -= 1;
    return day;
}

}  // namespace

std::string reason_text(Reason reason, const Words& words) {
    for (const auto& [one, id] : reasons_told) {
        if (one == reason) return words(std::string("form.reason_") + id);
    }
    measure::expect(false);
    return "";
}

bool of_past_view(const Show& show) { return show.page.starts_with("past"); }

ScreenState after_past(ScreenState screen, const Show& show) {
    PastPage& page = screen.past;
    screen.page = "past";
    if (show.page == "past-more") {
        page.from = static_cast<std::size_t>(number_in(show.argument));
        return screen;
    }
    if (show.page == "past-case") {
        page.list_from = page.from;
        page.one = show.argument;
        page.page = "record";
    } else if (show.page == "past-eye") {
        page.side = next_eye(page.side);
    } else if (show.page == "past-year") {
        page.year = !page.year;
    } else if (show.page == "past-kind") {
        page.invented = !page.invented;
    } else if (show.page == "past-reason") {
        page.reason.reset();
        for (const auto& [reason, id] : reasons_told) {
            if (show.argument == id) page.reason = reason;
        }
        page.page = "filter";
    } else {
        if (show.argument == "filter" && !filters(page)) page.under = page.page;
        page.page = show.argument;
    }
    page.from = page.page == "list" && !page.one.empty() ? page.list_from : 0;
    if (!of_one(page)) page.one.clear();
    return screen;
}

past::Filter past_filter(const PastPage& page, const measure::Day& today) {
    past::Filter filter{.side = page.side, .reason = page.reason, .invented = page.invented};
    if (page.year) filter.from = a_year_before(today), filter.to = today;
    return filter;
}

PastModel past_view(const PastSeen& seen, const PastPage& page, const Words& words) {
    PastModel made{.from = page.from, .more = small("past-more", words("list.more"), "", {.page = "past-more"})};
    made.which = [&words](std::size_t from, std::size_t to, std::size_t all) {
        return words("list.of", {std::to_string(from), std::to_string(to), std::to_string(all)});
    };
    if (of_one(page) && seen.one) {
        for (const char* one : {"record", "clocks", "marks"}) made.tabs.push_back(tab(one, page.page, words));
        made.foot = {small("back", words("past-view.to_list"), "", {.page = "past", .argument = "list"})};
        one_case_page(made, *seen.one, page, words);
        made.all = made.rows.size();
        return made;
    }
    frame_page(made, seen, page, words);
    fill_page(made, seen, page, words);
    if (!made.rows.empty()) made.all = made.rows.size();
    return made;
}

}  // namespace screen
