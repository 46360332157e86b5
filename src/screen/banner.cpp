// What every view says of the station, whatever else it shows. The banner is the one place for what is wrong: the most urgent is said in
// full, what stands beside it is named, so that nothing waits unseen behind something that stays; where that is too long, all are named.
// That the voice is muted has a sign of its own.
#include "measure/overloaded.hpp"
#include "screen/pages.hpp"

#include <algorithm>

namespace screen {
namespace {

using Level = Banner::Level;

/// One thing to be told: in full, and how it is named beside another.
struct Matter {
    Level level{};
    std::string text{}, named{};
};

std::string after(const std::string& first, const std::string& second) {
    return first.empty() || second.empty() ? first + second : first + " " + second;
}

/// What the last touch came to: said in full whatever else stands, since a tap that was not taken must never look like one that was.
std::string answer(const Around& around) { return after(around.refusal.value_or(""), around.notice); }

/// "Table, Desk and Far".
std::string named(const std::vector<std::string>& views, const Words& words) {
    std::string all{};
    for (const std::string& view : views) {
        const std::string name = words("view." + view);
        all = all.empty() ? name : words(&view == &views.back() ? "view.last" : "view.list", {all, name});
    }
    return all;
}

/// A view is read where it stands: of its own screen it is said that this is another, the others are named.
void add_screens(std::vector<Matter>& made, const Around& around, const Words& words) {
    const std::string here = around.here == guide::Source::Desk ? "desk" : "table";
    std::vector<std::string> others = around.screens_lost;
    if (std::erase(others, here) > 0)
        made.push_back({Level::Watch, words("banner.own_screen_lost"), words("banner.named.own_screen_lost")});
    if (others.empty()) return;
    const std::string names = named(others, words);
    made.push_back({Level::Watch, words("banner.screens_lost", {names}), words("banner.named.screens_lost", {names})});
}

/// The most urgent first.
std::vector<Matter> matters(const Around& around, const Words& words) {
    std::vector<Matter> made{};
    const std::string held = std::to_string(around.not_on_disk);
    if (around.not_on_disk > 0) {
        made.push_back(
            {Level::Watch, words.counted("banner.not_on_disk", {held, around.trouble}), words.counted("banner.named.not_on_disk", {held})});
    } else if (!around.trouble.empty()) {
        made.push_back({Level::Notice, around.trouble, words("banner.named.disk")});
    }
    add_screens(made, around, words);
    const auto add = [&](bool stands, Level level, const std::string& id) {
        if (stands) made.push_back({level, words("banner." + id), words("banner.named." + id)});
    };
    add(around.file_changed, Level::Notice, "file_changed");
    add(around.clock_jumped, Level::Watch, "clock_jumped");
    add(around.no_sound, Level::Notice, "no_sound");
    add(around.size_unknown, Level::Notice, "size_unknown");
    return made;
}

}  // namespace

std::optional<Banner> both(const std::optional<Banner>& first, const std::optional<Banner>& second) {
    if (!first || !second) return first ? first : second;
    const auto brief = [](const Banner& one) { return one.brief.empty() ? one.text : one.brief; };
    return Banner{.level = std::max(first->level, second->level),
                  .text = after(first->text, second->text),
                  .brief = after(brief(*first), brief(*second))};
}

std::optional<Banner> banner(const Around& around, const Words& words) {
    Banner made{.level = around.refusal ? Level::Watch : Level::Notice, .text = answer(around)};
    const std::vector<Matter> all = matters(around, words);
    if (all.empty()) return made.text.empty() ? std::nullopt : std::optional(made);
    std::string rest{};
    for (const Matter& one : all) {
        made.level = std::max(made.level, one.level);
        if (&one != &all.front()) rest += (rest.empty() ? "" : ", ") + one.named;
    }
    const std::string named = rest.empty() ? all.front().named : all.front().named + ", " + rest;
    made.brief = after(made.text, words("banner.brief", {named}));
    made.text = after(made.text, all.front().text);
    if (!rest.empty()) made.text = after(made.text, words("banner.also", {rest}));
    return made;
}

std::string muted(const Around& around, const Words& words) {
    return around.volume && (around.muted || *around.volume == 0) ? words("strip.muted") : "";
}

View told(View view, const Around& around, const Words& words) {
    const auto tell = [&](auto& model) {
        if (!model.banner) model.banner = banner(around, words);
        model.muted = muted(around, words);
    };
    std::visit(measure::overloaded{[](TableModel&) {}, [](DeskModel&) {}, [](FarModel&) {},  // made from `around`
                                   [&](PickModel& model) {
                                       if (!model.strip) tell(model);
                                   },
                                   [&](PlanModel& model) {
                                       if (model.strip) model.strip->muted = muted(around, words);
                                   },
                                   [&](FormModel& model) { tell(model); }, [&](MeasureModel& model) { tell(model); },
                                   [&](PastModel& model) { tell(model); }},
               view);
    return view;
}

}  // namespace screen
