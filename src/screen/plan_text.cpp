#include "screen/plan_text.hpp"

#include "eye/frame.hpp"
#include "measure/expect.hpp"
#include "plan/ladder.hpp"
#include "plan/size_options.hpp"
#include "plan/sutures.hpp"
#include "screen/format.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>
#include <vector>

namespace screen {
namespace {

using Level = plan::Note::Level;

std::string heading(const Words& words, const char* id) { return "\n" + words(id) + "\n"; }

std::string line(const std::string& text) { return "  " + text + "\n"; }

std::string clock(int centideg) { return eye::short_clock_text(measure::centideg(centideg)); }

std::string whole(measure::Length length) { return fmt::format("{}", std::lround(length.um())); }

std::string percent(double share) { return fmt::format("{:.0f}", share * 100); }

std::string said(const plan::Note& note, const Words& words) {
    return line("- " + note_text(note, words)) + line("  " + words("plan_text.source", {source_text(note.source, words)}));
}

/// Notes of one level, under a heading; nothing when there are none.
std::string notes(const plan::Plan& plan, Level level, const char* id, const Words& words) {
    std::string text{};
    for (const plan::Note& note : plan.notes) {
        if (note.level == level) text += said(note, words);
    }
    return text.empty() ? text : heading(words, id) + text;
}

std::string who(const plan::CaseFile& file, const Words& words) {
    const std::string side = words(file.side == eye::Side::Right ? "eye.right" : "eye.left");
    std::string text = words("plan_text.title", {file.reference, side}) + "\n";
    if (file.invented) text += words("plan_text.invented") + "\n";
    return text;
}

std::string sizes(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words) {
    const plan::Sizes& found = plan.sizes;
    return heading(words, "plan_text.sizes") +
           line(words("plan_text.pair", {size_text(inputs.file.host_diameter, words), size_text(inputs.file.donor.diameter, words),
                                         oversize_text(found.oversize, words)})) +
           line(words("plan_text.clearance", {size_text(found.clearance, words), clock(100 * found.clearance_deg),
                                              size_text(found.clearance_usual_offset, words)}));
}

std::string option_spokes(const plan::SizeOption& option, const Words& words) {
    if (option.refused) return words("plan_text.option_refused");
    return option.spokes ? words.counted("plan_text.option_spokes", {fmt::format("{}", *option.spokes)}) : words("plan_text.by_to_entry");
}

/// What the next smaller and larger sizes would change.
std::string other_sizes(const plan::Inputs& inputs, const Words& words) {
    std::string text = heading(words, "plan_text.options");
    for (const plan::SizeOption& option : plan::size_options(inputs)) {
        const std::string thinnest =
            option.thinnest ? words("plan_text.option_" + option.basis, {whole(*option.thinnest)}) : words("plan_text.option_unknown");
        text += line(
            words(option.chosen ? "plan_text.option_chosen" : "plan_text.option",
                  {size_text(option.host, words), size_text(option.donor, words), oversize_text(option.sizes.oversize, words),
                   size_text(option.sizes.clearance, words), size_text(option.spacing, words), thinnest, option_spokes(option, words)}));
    }
    return text;
}

std::string bound(const plan::Target& target, const Words& words) {
    switch (target.bound_by) {
        case plan::Bound::Aim:
            return words("plan_text.by_aim", {short_text(target.share_permille / 10.0, words)});
        case plan::Bound::EntryLimit:
            return words("plan_text.by_entry_limit");
        case plan::Bound::Surgeon:
            return words("plan_text.by_surgeon");
        case plan::Bound::ToEntry:
            return words("plan_text.by_to_entry");
    }
    measure::expect(false);
    return {};
}

std::string spokes(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words) {
    std::string text = heading(words, "plan_text.spokes");
    if (!plan.target) return text + line(words("plan_text.none"));
    text += line(spokes_text(*plan.target, 0, words) + ". " + bound(*plan.target, words));
    const auto count = plan.target->spokes;
    if (!count) return text;
    text += line(words("plan_text.travel", {short_text(plan::travel(inputs.trephine, *count).um(), words)}));
    if (const auto rung = plan::rung_at(plan, inputs.trephine, *count))
        text += line(words("plan_text.at_plan", {whole(rung->reserve), whole(rung->reserve_u95), chance_text(rung->entry_chance, words)}));
    return text;
}

std::string wall(const plan::Plan& plan, const Words& words) {
    std::string text = heading(words, "plan_text.wall");
    if (!plan.wall) return text + line(words("plan_text.wall_none"));
    const plan::Wall& found = *plan.wall;
    const std::string where =
        found.thinnest_at ? words("plan_text.at", {clock(found.thinnest_at->centideg())}) : words("plan_text.at_unknown");
    text += line(words("plan_text.thinnest", {whole(found.thinnest), fmt::format("{}", std::lround(1.96 * found.u.um())), where}));
    return text + line(words("plan_text.mean", {whole(found.mean), words("plan_text.basis_" + found.basis)}));
}

std::string ladder(const plan::Plan& plan, const Words& words) {
    std::string text = heading(words, "plan_text.ladder");
    if (plan.ladder.empty()) return text + line(words("plan_text.ladder_none"));
    text += line(words("plan_text.ladder_head"));
    for (const plan::Rung& rung : plan.ladder) {
        const bool planned = plan.target && plan.target->spokes == rung.spoke;
        const std::string left = whole(rung.reserve) + " ± " + whole(rung.reserve_u95);
        text += line(fmt::format("{:>5}  {:>9}  {:>5}  {:<23}  {}{}", rung.spoke, short_text(rung.travel.um(), words),
                                 percent(rung.share) + " %", left, chance_text(rung.entry_chance, words),
                                 planned ? "  " + words("plan_text.planned_here") : ""));
    }
    return text;
}

/// "one third", or in percent where no such word fits.
std::string part(int permille, const Words& words) {
    for (const int named : {250, 333, 500, 667, 750}) {
        if (std::abs(permille - named) <= 1) return words(fmt::format("plan_text.part_{}", named));
    }
    return words("plan_text.part", {fmt::format("{}", std::lround(permille / 10.0))});
}

std::string place(const plan::Suture& one, const Words& words) {
    const std::string hour = clock(one.centideg);
    if (one.host_mark) return words("plan_text.on_mark", {fmt::format("{}", one.n), hour, fmt::format("{}", *one.host_mark)});
    if (!one.between) return words("plan_text.no_mark", {fmt::format("{}", one.n), hour});
    return words("plan_text.off_mark", {fmt::format("{}", one.n), hour, fmt::format("{}", one.between->first),
                                        fmt::format("{}", one.between->second), part(one.between_permille, words)});
}

std::string sutures(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words) {
    std::string text = heading(words, "plan_text.sutures");
    if (plan.order.empty()) return text + line(words("plan_text.none"));
    text += line(words("plan_text.pattern", {pattern_text(inputs.file.pattern, words), size_text(plan.spacing, words)}));
    for (const plan::Suture& one : plan.order) text += line(place(one, words));
    if (!plan.running) return text;
    for (const plan::RunningPath& path : plan::running_paths(inputs.file.pattern, *plan.running)) {
        text += line(
            words(path.clockwise ? "plan_text.running" : "plan_text.running_back",
                  {fmt::format("{}", path.bites.size()), size_text(plan.running->spacing, words), clock(path.bites.front().centideg())}));
    }
    return text;
}

}  // namespace

std::string plan_text(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words) {
    return who(inputs.file, words) + notes(plan, Level::Stop, "plan_text.refused", words) + sizes(inputs, plan, words) +
           spokes(inputs, plan, words) + wall(plan, words) + ladder(plan, words) + notes(plan, Level::Watch, "plan_text.watches", words) +
           other_sizes(inputs, words) + sutures(inputs, plan, words) + notes(plan, Level::Info, "plan_text.infos", words) + "\n" +
           words("plan_text.not_a_device") + "\n";
}

}  // namespace screen
