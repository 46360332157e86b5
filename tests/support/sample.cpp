#include "support/sample.hpp"

#include "measure/expect.hpp"

namespace sample {

using namespace guide;

namespace {

Step tap(std::string id, std::string title, std::vector<StepId> needs = {}) {
    return {.id = std::move(id),
            .title = std::move(title),
            .lines = {"As usual."},
            .who = "scrub",
            .button = "Done",
            .needs = std::move(needs)};
}

Step closing(Step step, Closes closes) {
    step.closes = closes;
    step.may_skip = false;
    return step;
}

Step sutures(std::string id, std::string title, int to) {
    Step step = closing(tap(std::move(id), std::move(title)), Closes::Sutures);
    step.sutures = to;
    step.picture = "clock-face";
    return step;
}

Phase host() {
    Phase phase{.id = "host", .title = "Host"};
    phase.steps = {tap("mark-centre", "Mark the centre", {"donor-good"}),
                   tap("zero", "Set zero", {"donor-good"}),
                   tap("raise", "Raise {raise} spokes", {"zero"}),
                   tap("seat", "Seat and centre", {"raise"}),
                   closing(tap("suction-on", "Suction on", {"seat"}), Closes::SuctionOn),
                   closing(tap("lower", "Lower the blade", {"suction-on"}), Closes::Cut),
                   closing(tap("suction-off", "Suction off", {"lower"}), Closes::SuctionOff),
                   tap("ink", "Dry, ink the marks")};
    phase.departures = {"suction-lost", "entered-by-trephine"};
    return phase;
}

Phase open_eye() {
    Phase phase{.id = "open-eye", .title = "Open eye"};
    Step ready = tap("ready-to-open", "Ready to open");
    ready.may_skip = false;
    Step entered = tap("entered", "Entered", {"ready-to-open"});
    entered.starts = {"decompressed"};
    Step out = tap("button-out", "Button out", {"entered"});
    out.starts = {"open-sky"};
    out.picture = "open";
    phase.steps = {ready, entered, out, tap("donor-on", "Donor on")};
    phase.departures = {"eye-bulging"};
    return phase;
}

Phase suturing() {
    Step cardinals = sutures("cardinals", "Cardinals, 1 to 4", 4);
    cardinals.stops = {"decompressed", "open-sky"};
    Step running = tap("running", "Running suture");
    running.only = "running";
    return {.id = "suturing",
            .title = "Suturing",
            .steps = {cardinals, sutures("next-four", "Next four, to 8", 8),
                      closing(tap("count-before-last", "Count before the last"), Closes::Counts),
                      sutures("rest", "The rest, to {sutures}", 0), running, closing(tap("tension", "Ring reflection"), Closes::Ring)}};
}

}  // namespace

Procedure procedure() {
    Step sign_in = closing(tap("side", "Enter the side"), Closes::Side);
    Step time_out = tap("time-out", "Time out");
    time_out.pause = Pause::TimeOut;
    Step sign_out = tap("sign-out", "Sign out", {"final-count"});
    sign_out.pause = Pause::SignOut;
    Step done_sign_in = tap("sign-in", "Sign in");
    done_sign_in.pause = Pause::SignIn;
    Procedure all{.id = "sample", .title = "A small procedure for tests"};
    all.phases = {{.id = "ready",
                   .title = "Ready",
                   .steps = {tap("tissue-here", "Tissue in the building"), sign_in, done_sign_in,
                             closing(tap("opening-count", "Opening count"), Closes::Counts),
                             closing(tap("agree-plan", "Agree the plan"), Closes::Plan), time_out}},
                  {.id = "donor", .title = "Donor", .steps = {tap("punch", "Punch"), tap("donor-good", "Donor good")}},
                  host(),
                  open_eye(),
                  suturing(),
                  {.id = "closing",
                   .title = "Closing",
                   .steps = {tap("leak-test", "Leak test"), closing(tap("final-count", "Final count"), Closes::Counts), sign_out,
                             closing(tap("lock", "Lock the record", {"sign-out"}), Closes::Close)}}};
    all.departures = {{.id = "suction-lost", .title = "Suction lost", .lines = {"Stop turning. Ring off."}, .back = "Go on"},
                      {.id = "entered-by-trephine", .title = "Chamber entered", .lines = {"Stop turning."}, .back = "Go on"},
                      {.id = "eye-bulging",
                       .title = "Eye bulging, close now",
                       .level = Departure::Level::Stop,
                       .lines = {"Tell the anaesthetist."},
                       .back = "Calm again"}};
    return all;
}

plan::Inputs inputs() {
    plan::Inputs made{};
    made.file = {
        .reference = "SAMPLE-1", .date = {2026, 11, 25}, .side = eye::Side::Right, .reason = plan::Reason::Scar, .keratometry_D = 43.5};
    made.file.white_to_white_horizontal = measure::from_mm(11.8);
    made.file.white_to_white_vertical = measure::from_mm(11.1);
    made.file.host_diameter = measure::from_mm(7.5);
    made.file.donor.diameter = measure::from_mm(7.75);
    made.file.aim = {.goal = plan::Goal::Share, .share_permille = 800};
    made.file.invented = true;
    made.trephine = {.id = "suction-trephine", .advance = measure::from_um(60), .spokes_per_turn = 4, .raise = 3, .marks = 16};
    made.trephine.reach = {.mean = 1.046, .sd = 0.082, .n = 11};
    made.punch = {.id = "vacuum-punch"};
    return made;
}

plan::Plan plan() {
    plan::Plan made{};
    made.wall = plan::Wall{.basis = "circle",
                           .thinnest = measure::from_um(612),
                           .thinnest_at = measure::whole_deg(225),
                           .mean = measure::from_um(638),
                           .u = measure::from_um(6)};
    made.target =
        plan::Target{.spokes = 8, .raise = 3, .bound_by = plan::Bound::Aim, .share_permille = 800, .entry_from = 9, .entry_to = 12};
    // Clock positions in sixteenths from 12, clockwise, in the usual order: each followed by its opposite.
    const std::vector<int> order{0, 8, 4, 12, 2, 10, 6, 14, 1, 9, 5, 13, 3, 11, 7, 15};
    for (std::size_t i = 0; i < order.size(); ++i) {
        const int n = static_cast<int>(i) + 1;
        made.order.push_back({.n = n,
                              .centideg = measure::centideg(9000 - order[i] * 2250).centideg(),
                              .host_mark = order[i] + 1,
                              .donor_mark = order[i] % 4 == 0 ? std::optional(order[i] / 4 + 1) : std::nullopt,
                              .opposite = n % 2 == 1 ? n + 1 : n - 1});
    }
    made.spacing = measure::from_um(1463);
    return made;
}

Brief brief() { return {.inputs = inputs(), .procedure = procedure(), .unit = {.counts = {{.id = "needles", .title = "Needles"}}}}; }

Case::Case(const Brief& brief) {
    now = {.utc_ms = 1'795'000'000'000, .offset_min = 60, .boottime_ms = 1'000'000, .boot = 7};
    write(opening(brief, "graftside test", Source::Table), Who::Program);
}

void Case::write(const Facts& facts, Who who) {
    for (const Fact& fact : facts) {
        events.push_back({.seq = state.last + 1, .at = now, .who = who, .fact = fact});
        state = apply(std::move(state), events.back());
    }
}

bool Case::does(const Intent& intent, Who who) {
    later(1);
    const auto decided = decide(state, who, intent, now);
    if (!decided) {
        refusal = decided.error();
        return false;
    }
    write(*decided, who);
    return true;
}

void Case::later(std::int64_t seconds) {
    now.utc_ms += seconds * 1000;
    now.boottime_ms += seconds * 1000;
}

void Case::count(int spokes) {
    for (int i = 0; i < spokes; ++i) measure::expect(does(CountSpoke{.source = Source::Table}));
}

void Case::tie(int sutures) {
    for (int i = 0; i < sutures; ++i) measure::expect(does(TieSuture{}));
}

void Case::pass(const Step& step) {
    switch (step.closes) {
        case Closes::Tap:
        case Closes::Hold:
            return measure::expect(does(FinishStep{.step = step.id}));
        case Closes::Side:
            return measure::expect(does(EnterSide{.side = inputs().file.side == eye::Side::Right ? "right" : "left"}));
        case Closes::Plan:
            return measure::expect(does(AcceptPlan{.inputs = inputs(), .plan = plan()}));
        case Closes::Counts:
            for (const auto& [item, tally] : std::map(state.counts)) {
                measure::expect(does(CheckCount{.item = item, .seen = tally.expected(), .by = "scrub nurse"}));
                measure::expect(does(CheckCount{.item = item, .seen = tally.expected(), .by = "circulating nurse"}));
            }
            return;
        case Closes::SuctionOn:
            return measure::expect(does(TurnSuction{.to = Suction::On}));
        case Closes::Cut:
            count(11);
            return measure::expect(does(EndCut{.how = CutEnd::AtPlan}));
        case Closes::SuctionOff:
            return measure::expect(does(TurnSuction{.to = Suction::Off}));
        case Closes::Sutures:
            return tie(sutures_wanted(state, step) - static_cast<int>(state.sutures.size()));
        case Closes::Ring:
            return measure::expect(does(SeeRing{}));
        case Closes::Close:
            return measure::expect(does(CloseCase{.how = CaseEnd::Done}));
    }
}

void Case::up_to(const StepId& step) {
    for (const Step* present = current_step(state); present != nullptr && present->id != step; present = current_step(state)) {
        pass(Step(*present));
    }
}

}  // namespace sample
