#include "screen/sample_parts.hpp"
#include "screen/samples.hpp"

#include <algorithm>

namespace samples {

using namespace screen;

namespace {

TableModel step(const std::string& phase, Card card, std::vector<Target> hand) {
    TableModel made{
        .strip = strip(phase),
        .path = path(
            0, {"Tissue in the building", "Read number and expiry", "Sign in", "Check the instruments", "Opening counts", "Time out"}, 3),
        .card = std::move(card),
        .hand = std::move(hand),
        .banner = std::nullopt};
    made.strip.clocks = {{"case", "00:04:12", true}};
    return made;
}

/// A step of a later phase.
TableModel later(TableModel made, std::vector<Line> path) {
    made.strip.clocks = {{"Open sky", "11:08", true}, {"Case", "01:02:44", true}};
    made.path = std::move(path);
    return made;
}

std::vector<Target> step_hand(const std::string& label) {
    Target skip = target("skip", "Skip", "asks why"), back = target("back-step", "Back a step", "Read number and expiry");
    return {target("finish", label, "", Look::Filled), back, skip, target("else", "Something else happened", "", Look::Watch)};
}

TableModel long_step() {
    Card card{.title = "Check the instruments",
              .lines = {"Host 7.50 mm, donor 7.75 mm: size, lot and expiry aloud.", "A spare of each in the room, unopened."},
              .say = "Host 7.50 mm, donor 7.75 mm, in date, spares in the room.",
              .cautions = {"Read the size on the pack before it is opened.", "Does the profile agree with this pack's leaflet?"},
              .foot = {{"Open packs now", "trephine · donor punch"}, {"Do not open yet", "spare trephine · spare donor punch · sutures"}}};
    return step("Ready", std::move(card), step_hand("Instruments agree"));
}

TableModel seat() {
    TableModel made = suturing(0, eye::Side::Left, eye::Seat::Temporal);
    made.strip = strip("Host");
    made.strip.eye = "LEFT EYE";
    made.path = path(2, {"Mark the centre", "Set zero", "Raise 3 spokes", "Seat and centre", "Suction on", "Lower the blade"}, 3);
    made.card.foot.clear();
    made.card.title = "Seat and centre";
    made.card.lines = {"Ring mark 1 on 12 o'clock. Cross-hairs on the centre.", "Plunger in and held. Seat evenly all round."};
    made.card.say = "Seated, centred, level.";
    made.card.cautions = {"No paracentesis before, unless the surgeon says so.", "Level head, level limbus, lids and speculum free."};
    std::get<picture::ClockFace>(made.card.picture).dots = 0;
    std::get<picture::ClockFace>(made.card.picture).next.clear();
    made.hand = step_hand("Seated and centred");
    return made;
}

TableModel side() {
    TableModel made = step("Ready", {.title = "Which eye?", .lines = {"From the consent form, not from this screen."}}, {});
    made.hand = {target("side-right", "Right eye", "as the consent says", Look::Filled),
                 target("side-left", "Left eye", "as the consent says", Look::Filled),
                 target("else", "Something else happened", "", Look::Watch)};
    made.strip.eye = "SIDE NOT ENTERED";
    return made;
}

TableModel plan() {
    Card card{.title = "Agree the plan",
              .lines = {"Read sizes, spokes and sutures aloud. Then hold.", "Aim: 80 % of the thinnest. An estimate, the surgeon decides."},
              .rows = {{"Host", "7.50 mm"},
                       {"Donor", "7.75 mm"},
                       {"Blade", "3 to zero, then 8"},
                       {"Thinnest on the cut", "612 µm ± 14 µm"},
                       {"Expected left", "110 µm ± 93 µm"},
                       {"Chance of entering", "about 1 in 80"},
                       {"Sutures", "16 interrupted"}},
              .say = "Host 7.50 mm, donor 7.75 mm, 8 spokes, 16 interrupted sutures.",
              .cautions = {"An estimate: 11 eyes in a laboratory aimed at 80 % reached 71 to 95 %. Watch the chamber at every spoke. "
                           "The surgeon decides."}};
    Target hold = target("accept-plan", "Plan agreed", "hold", Look::Filled);
    hold.press = Press::Hold;
    return step("Ready", std::move(card), {hold, target("else", "Something else happened", "", Look::Watch)});
}

TableModel counts() {
    Card card{.title = "Second count",
              .lines = {"Two people count aloud: needles, blades, spears, swabs.", "Trephine blade and punch blade are in this count."},
              .say = "Second count agrees.",
              .cautions = {"Must be done before the last suture goes in.", "An X-ray cannot exclude a needle this small."}};
    const std::vector<std::pair<std::string, int>> opened{{"Needles", 16}, {"Blades", 3}, {"Spears", 10}, {"Swabs", 5}, {"Sponges", 4}};
    for (const auto& [item, n] : opened) {
        CountRow row{.title = item,
                     .value = std::to_string(n),
                     .line = std::to_string(n) + " opened · 0 back",
                     .fewer = target("fewer-" + item, "−", ""),
                     .more = target("more-" + item, "+", "")};
        row.fewer.weight = row.more.weight = Weight::Elsewhere;
        card.counts.push_back(row);
    }
    Target scrub = target("check-scrub", "Scrub nurse confirms", "sees every one", Look::Plain);
    scrub.why_not = "has confirmed";
    TableModel made = step("Suturing · 15 of 16 tied", std::move(card),
                           {scrub, target("check-circulating", "circulating nurse confirms", "sees every one", Look::Filled),
                            target("undo", "Undo tap", "the last change"), target("else", "Something else happened", "", Look::Watch)});
    made = later(std::move(made), suturing(15, eye::Side::Right, eye::Seat::Head).path);
    made.strip.clocks = {{"Open sky, stopped", "11:08", false}, {"Case", "01:02:44", true}};
    for (Line& phase : made.path)
        for (std::size_t i = 0; i < phase.inner.size(); ++i)
            phase.inner[i].is = i < 2 ? Line::Is::Done : i == 2 ? Line::Is::Now : Line::Is::Later;
    return made;
}

TableModel open_eye() {
    TableModel made = suturing(0, eye::Side::Right, eye::Seat::Head);
    made.strip.phase = "Open eye";
    made.path = path(3,
                     {"Ready to open", "Four sutures loaded", "Entered", "Viscoelastic in", "Scissors round", "Button out",
                      "Descemet's out", "Donor on"},
                     5);
    made.card = {.title = "Host button out",
                 .lines = {"The surgeon says “button out”. The open-sky clock starts."},
                 .picture = picture::OpenEye{.label = "open"},
                 .foot = {{"Check", "Iris and lens clear of the blades. First four sutures loaded."},
                          {"Donor within reach", "block well, covered, table left"}}};
    made.hand = {target("out", "Button out", "starts open sky", Look::Filled),
                 target("ago-15", "15 s ago", ""),
                 target("ago-30", "30 s ago", ""),
                 target("ago-60", "1 min ago", ""),
                 target("bulging", "Eye bulging, close now", "", Look::Stop),
                 target("back-step", "Back a step", "Scissors round"),
                 target("else", "Something else happened", "", Look::Watch)};
    return made;
}

/// The count is held at the desk.
TableModel bounced() {
    TableModel made = cutting(8);
    made.strip.holder = "spokes: desk";
    Target deeper = target("deeper", "Surgeon goes deeper", "hold: plan one more");
    deeper.press = Press::Hold;
    made.hand.insert(made.hand.begin() + 3, deeper);
    Target take = target("take-count", "Take the count", "hold");
    take.press = Press::Hold;
    made.hand.push_back(take);
    made.hand[0].why_not = "counted by the foot switch";
    made.banner = Banner{.level = Banner::Level::Watch, .text = "Not on disk: 2 taps are held in memory. The disk is full."};
    return made;
}

TableModel departure() {
    Card card{.title = "Eye bulging, close now",
              .rows = {{"", "Tell the anaesthetist."},
                       {"", "Finger or donor on the opening, head up."},
                       {"", "Strong sutures, as many as it takes."},
                       {"", "Pressure-lowering drugs, as anaesthetist and surgeon order."}},
              .foot = {{"Usual practice", "the surgeon decides"}}};
    return later(step("Open eye", std::move(card),
                      {target("come-back", "Pressure is down, go on", "back to the guide", Look::Filled),
                       target("else", "Something else happened", "", Look::Watch)}),
                 open_eye().path);
}

PickModel marks() {
    const TableModel at = suturing(5, eye::Side::Right, eye::Seat::Head);
    const auto& face = std::get<picture::ClockFace>(at.card.picture);
    PickModel made{
        .strip = at.strip, .title = "Suture 6: where did it go?", .lines = {"Clock hours as one faces the eye."}, .banner = std::nullopt};
    for (int mark = 1; mark <= 16; ++mark) {
        Target one =
            target("mark-" + std::to_string(mark), eye::short_clock_text(eye::mark_angle(mark, 16, {})), "mark " + std::to_string(mark));
        const bool taken = std::find(face.done.begin(), face.done.end(), eye::mark_angle(mark, 16, {})) != face.done.end();
        if (taken) one.why_not = "taken";
        one.weight = Weight::Elsewhere;
        made.choices.push_back(one);
    }
    made.foot = {target("back", "Back", "")};
    made.picture = face;
    return made;
}

PickModel departures() {
    PickModel made{.strip = strip("Host"),
                   .title = "Something else happened",
                   .lines = {"Recorded with its time. Usual practice is shown, the surgeon decides."},
                   .banner = std::nullopt};
    const std::vector<std::string> titles = {
        "Suction lost", "Chamber entered",           "Not through all round", "Eye soft or tense", "Patient moved",
        "Ring tilted",  "Donor lost before the cut", "Wrong size opened",     "Marks not visible", "Converted to another operation",
        "Abandoned"};
    for (const auto& title : titles) {
        Target one = target(title, title, "", title == "Abandoned" ? Look::Stop : Look::Watch);
        one.weight = Weight::Elsewhere;
        made.choices.push_back(one);
    }
    made.foot = {target("back", "Back", "")};
    return made;
}

PickModel cases() {
    PickModel made{.strip = std::nullopt, .title = "Cases", .banner = std::nullopt};
    for (const std::string name : {"K-0147", "K-0151", "K-0152"})
        made.choices.push_back(target(name, "Case " + name, "right eye · host 7.50 · donor 7.75 mm"));
    made.foot = {target("new", "New case", "", Look::Filled), target("rehearsal", "Rehearsal", "an invented case")};
    made.banner = Banner{.level = Banner::Level::Notice, .text = "Rehearsal: an invented case."};
    return made;
}

FormModel form() {
    FormModel made{.title = "New case", .lines = {"Thickness is asked at three places or more."}, .banner = std::nullopt};
    const std::vector<std::pair<std::string, std::string>> fields = {
        {"Reference", "K-0147"}, {"Eye", "right"},   {"Host", "7.50 mm"}, {"Donor", "7.75 mm"}, {"Keratometry", "43.5 D"},
        {"at 12", "655 µm"},     {"at 3", "640 µm"}, {"at 6", "631 µm"},  {"at 9", "628 µm"},   {"Aim", "80 %"}};
    for (const auto& [label, value] : fields) made.fields.push_back({.target = target("field-" + label, label, ""), .value = value});
    made.fields[5].now = true;
    made.fields[4].problem = "20 to 80 D";
    for (const std::string key : {"7", "8", "9", "4", "5", "6", "1", "2", "3", ".", "0", "Clear"}) {
        made.keys.all.push_back(target("key-" + key, key, ""));
        made.keys.all.back().weight = Weight::Elsewhere;
    }
    made.foot = {target("cancel", "Back", ""), target("ok", "Open the case", "", Look::Filled)};
    for (auto& one : made.foot) one.weight = Weight::Elsewhere;
    for (auto& one : made.fields) one.target.weight = Weight::Elsewhere;
    return made;
}

}  // namespace

std::vector<Sample> all() {
    std::vector<Sample> made;
    for (const int position : {-3, 0, 3, 8, 9}) made.push_back({"cutting " + std::to_string(position), cutting(position)});
    for (const int tied : {0, 5, 15})
        made.push_back({"suturing " + std::to_string(tied), suturing(tied, eye::Side::Right, eye::Seat::Head)});
    made.push_back({"suturing temporal", suturing(8, eye::Side::Left, eye::Seat::Temporal)});
    made.push_back({"step long", long_step()});
    made.push_back({"step seat", seat()});
    made.push_back({"step side", side()});
    made.push_back({"step plan", plan()});
    made.push_back({"step counts", counts()});
    made.push_back({"step open", open_eye()});
    made.push_back({"step bounced", bounced()});
    made.push_back({"step departure", departure()});
    made.push_back({"pick marks", marks()});
    made.push_back({"pick departures", departures()});
    made.push_back({"pick cases", cases()});
    made.push_back({"form case", form()});
    return made;
}

}  // namespace samples
