#include "plan/plan.hpp"

#include "plan/ladder.hpp"
#include "plan/notes.hpp"
#include "plan/sizes.hpp"
#include "plan/sources.hpp"
#include "plan/sutures.hpp"
#include "plan/target.hpp"
#include "plan/wall.hpp"

#include <algorithm>
#include <utility>

namespace plan {
namespace {

using Level = Note::Level;

const char* source_of_bar(const std::string& code) {
    if (code == "centre-never-in-keratoconus") return source::keratoconus;
    if (code == "centre-never-in-oedema") return source::oedema;
    if (code == "centre-alone") return source::profile;
    if (code == "reach-unusable") return source::profiles;
    return source::own_file;
}

/// Without a ladder a share of the wall cannot be planned; a surgeon's own number, or turning to entry, needs none.
void note_bar(const WallFinding& found, Goal goal, std::vector<Note>& notes) {
    const std::string& code = *found.depth_bar;
    const Level level = goal == Goal::Share ? Level::Stop : Level::Watch;
    notes.push_back({.code = code, .source = source_of_bar(code), .level = level, .values = found.bar_values});
    if (goal != Goal::Share) notes.push_back({.code = "no-depth-claim", .source = source::usual, .level = Level::Watch, .values = {}});
}

void plan_depth(const Inputs& inputs, Plan& plan) {
    WallFinding found = wall_from(inputs.file);
    append(plan.notes, std::move(found.notes));
    if (!found.depth_bar && !usable(inputs.trephine.reach)) found.depth_bar = "reach-unusable";
    std::vector<Rung> rungs{};
    if (found.depth_bar) {
        note_bar(found, inputs.file.aim.goal, plan.notes);
    } else {
        rungs = ladder(inputs.trephine, {.thinnest = found.wall->thinnest, .u_um = found.exact_u_um});
        append(plan.notes, ladder_notes(inputs));
    }
    const bool from_centre = found.wall && found.wall->basis == "centre";
    plan.wall = std::move(found.wall);
    TargetFinding aim = target_from(inputs, {.ladder = rungs, .wall = plan.wall, .from_centre = from_centre});
    rungs.resize(std::min(rungs.size(), std::size_t{shown_rungs}));
    plan.ladder = std::move(rungs);
    plan.target = aim.target;
    append(plan.notes, std::move(aim.notes));
}

int gravity(const Note& note) { return note.level == Level::Stop ? 0 : note.level == Level::Watch ? 1 : 2; }

}  // namespace

Length travel(const instrument::Trephine& trephine, int spokes) { return spokes * trephine.advance; }

Plan make(const Inputs& inputs) {
    Plan plan{};
    plan_depth(inputs, plan);
    append(plan.notes, reading_notes(inputs.file));
    append(plan.notes, trephine_notes(inputs.trephine));
    plan.sizes = sizes_from(inputs.file);
    append(plan.notes, size_notes(inputs, plan.sizes));
    Sutures sutures = sutures_from(inputs);
    plan.spacing = sutures.spacing;
    plan.order = std::move(sutures.order);
    plan.running = sutures.running;
    append(plan.notes, std::move(sutures.notes));
    append(plan.notes, tissue_notes(inputs));
    plan.notes.push_back({.code = "surgeon-decides", .source = source::usual, .level = Level::Info, .values = {}});
    std::stable_sort(plan.notes.begin(), plan.notes.end(), [](const Note& a, const Note& b) { return gravity(a) < gravity(b); });
    if (stops(plan.notes)) {
        plan.ladder.clear();
        plan.target.reset();
    }
    return plan;
}

}  // namespace plan
