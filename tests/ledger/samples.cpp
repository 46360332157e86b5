#include "ledger/samples.hpp"

#include "measure/length.hpp"

namespace samples {
namespace {

using namespace guide;
using measure::centideg;
using measure::nm;

plan::CaseFile case_file() {
    return {
        .reference = "K-0147",
        .date = {2026, 11, 25},
        .side = eye::Side::Left,
        .reason = plan::Reason::Oedema,
        .seat = eye::Seat::Temporal,
        .keratometry_D = 43.1,
        .white_to_white_horizontal = nm(11'800'000),
        .white_to_white_vertical = nm(11'100'000),
        .axial_length_mm = 23.6,
        .lens = plan::Lens::Aphakic,
        .thickness = {.method = plan::Method::SlitScanning,
                      .measured = measure::Day{2026, 11, 12},
                      .central = nm(538'000),
                      .through_scar = true,
                      .edge_looks_normal = true,
                      .readings = {{.ring = nm(7'500'000), .at = centideg(22500), .thickness = nm(612'000)}}},
        .host_diameter = nm(7'500'000),
        .centre_x = nm(-100'000),
        .centre_y = nm(50'000),
        .donor = {.diameter = nm(7'750'000),
                  .storage = plan::Storage::Culture,
                  .stored = measure::Day{2026, 11, 18},
                  .expires = measure::Day{2026, 12, 1},
                  .endothelium_per_mm2 = 2650,
                  .donation = "A999917123456"},
        .aim = {.goal = plan::Goal::Spokes, .share_permille = 800, .spokes = 8, .entry_limit = 0.1},
        .pattern = {.interrupted = 8, .loops = 12, .running = 1},
        .first_suture = centideg(8950),
        .invented = true,
    };
}

Procedure procedure() {
    const Step step{.id = "cut",
                    .title = "Cut the host",
                    .lines = {"Count every spoke", "Stop at the plan"},
                    .who = "scrub",
                    .say = "Counting",
                    .button = "Cut ended",
                    .closes = Closes::Cut,
                    .sutures = 4,
                    .only = "running",
                    .needs = {"suction"},
                    .starts = {"suction"},
                    .stops = {"case"},
                    .cautions = {"The eye may be entered early"},
                    .ready = {"Scissors"},
                    .open_now = {"Viscoelastic"},
                    .open_later = {"10-0 suture"},
                    .nurse = Nurse::Stay,
                    .pause = Pause::TimeOut,
                    .quiet = true,
                    .may_skip = false,
                    .picture = "cut",
                    .departures = {"early-entry"}};
    const Departure entry{.id = "early-entry",
                          .title = "Early entry",
                          .level = Departure::Level::Stop,
                          .lines = {"Stop turning; the surgeon decides"},
                          .back = "Cut goes on",
                          .reopens = {"cut"}};
    return {.id = "graft",
            .title = "Graft",
            .phases = {{.id = "host", .title = "Host", .steps = {step}, .departures = {"lost"}}},
            .departures = {entry}};
}

}  // namespace

plan::Inputs inputs() {
    return {.file = case_file(),
            .trephine = {.id = "suction-trephine",
                         .name = "Suction trephine (invented)",
                         .advance = nm(62'500),
                         .spokes_per_turn = 4,
                         .lower = instrument::Turn::CounterClockwise,
                         .raise = 3,
                         .marks = 8,
                         .mark_offset = centideg(-125),
                         .diameters = {nm(7'500'000), nm(8'000'000)},
                         .suction = false,
                         .reach = {.mean = 1.046, .sd = 0.082, .n = 11, .source = "invented"}},
            .punch = {.id = "vacuum-punch", .name = "Vacuum punch (invented)", .diameters = {nm(7'750'000)}, .dots = 8, .vacuum = false},
            .limits = {.clearance = nm(1'000'000),
                       .endothelium_per_mm2 = 2300,
                       .hosts_in_stock = {nm(7'500'000)},
                       .donors_in_stock = {nm(7'750'000), nm(8'000'000)}}};
}

plan::Plan plan() {
    return {.formula = 2,
            .wall = plan::Wall{.basis = "circle",
                               .thinnest = nm(612'000),
                               .thinnest_at = measure::whole_deg(225),
                               .mean = nm(637'900),
                               .u = nm(6'000),
                               .rms = nm(4'321),
                               .profile = {nm(612'000), nm(613'100)}},
            .ladder = {{.spoke = 8,
                        .travel = nm(500'000),
                        .share = 0.1 + 0.2,
                        .reserve = nm(-500),
                        .reserve_u95 = nm(11'800),
                        .entry_chance = 1e-17}},
            .target =
                plan::Target{
                    .spokes = 8, .raise = 3, .bound_by = plan::Bound::EntryLimit, .share_permille = 700, .entry_from = 9, .entry_to = 12},
            .sizes = {.oversize = nm(250'000),
                      .clearance = nm(1'800'000),
                      .clearance_deg = 90,
                      .clearance_usual_offset = nm(1'220'000),
                      .button_front = {nm(7'560'000), nm(7'850'000)},
                      .button_back = {nm(7'630'000), nm(8'290'000)}},
            .spacing = nm(1'463'000),
            .order = {{.n = 1,
                       .centideg = 9000,
                       .host_mark = 1,
                       .between = std::pair{2, 3},
                       .between_permille = 333,
                       .donor_mark = 1,
                       .opposite = 2},
                      {.n = 2, .centideg = 27000}},
            .running = plan::Running{.loops = 12, .sutures = 2, .spacing = nm(1'963'000), .start_centideg = 7500, .clockwise = false},
            .notes = {{.code = "central-only", .source = "invented", .level = plan::Note::Level::Stop, .values = {"538", "µm"}}}};
}

Brief brief() {
    return {.inputs = inputs(),
            .procedure = procedure(),
            .unit = {.counts = {{.id = "needles", .title = "Needles"}},
                     .scrub_name = "A.B.",
                     .circulating_name = "C.D.",
                     .limits = {.clearance = nm(900'000), .endothelium_per_mm2 = 2000},
                     .packs = {{.gtin = "09506000134352", .instrument = "suction-trephine", .size = nm(7'500'000)}}}};
}

std::vector<Fact> facts() {
    return {
        CaseOpened{.brief = brief(), .program = "0.1.0"},
        CaseOpened{},
        RunStarted{.program = "0.1.0"},
        SideEntered{.side = "left"},
        PlanAccepted{.inputs = inputs(), .shown = plan(), .why = "thinner than measured"},
        PlanAccepted{},
        PlanMoved{.by = -1},
        StepFinished{.step = "cut", .ago_s = 30},
        StepReopened{.step = "cut", .why = "too early"},
        StepSkipped{.step = "cut", .why = "not needed"},
        CountHeld{.source = Source::FootSwitch},
        SpokeTurned{.by = -1, .owes_reason = true},
        TapUndone{.event = 18'446'744'073'709'551'615U},
        CutEnded{.how = CutEnd::Entered, .position = -3},
        SuctionTurned{.to = Suction::Lost},
        ClockMarked{.clock = "open-sky", .start = false, .ago_s = 5},
        SutureTied{.n = 3, .centideg = 35999},
        SutureCut{.n = 3, .why = "tight"},
        RingSeen{.long_axis_centideg = 9000},
        RingSeen{},
        ItemsMoved{.item = "needles", .by = -2},
        CountChecked{.item = "needles", .seen = 4, .expected = 5, .by = "A.B."},
        Scanned{.bytes = std::string("]d2\x1d\0\xff", 6),
                .meaning = "no code",
                .item = {.kind = ItemKind::Tissue,
                         .donation = "A999917123456",
                         .product = "T0416",
                         .division = "003",
                         .gtin = "09506000134352",
                         .lot = "LOT42",
                         .serial = "SN7",
                         .expires = measure::Day{2026, 12, 1},
                         .collected = measure::Day{2026, 11, 20},
                         .expires_minute = 1439,
                         .instrument = "suction-trephine",
                         .size = nm(7'500'000)},
                .against = {{.what = Against::WhichCornea, .values = {"K-0146"}}},
                .completes = 6},
        Overruled{.event = 7, .why = "second reader", .contact = "bank, invented"},
        Departed{.what = "early-entry", .note = "at 7 o'clock\n\"quoted\""},
        CameBack{.what = "early-entry"},
        ReasonGiven{.event = 9, .why = "over the plan"},
        NoteWritten{.text = "cornéenne Ωμ"},
        TimeCorrected{.event = 4, .utc_ms = -1, .why = "clock was wrong"},
        WrittenLate{.first = 2, .last = 5},
        CaseClosed{.how = CaseEnd::Abandoned, .why = "donor not usable"},
        DifferenceRecorded{.item = "needles", .seen = 7, .expected = 8, .why = "searched, not found"},
        ItemPutAside{.event = 3, .why = "another size"},
        TissueTold{.what = TissueWord::LeftOver, .text = "rim to culture"},
        DepthMeasured{.depth = nm(500'000), .how = "OCT after the cut"},
        KnotsTold{.side = KnotSide::Donor},
        SuturesNamed{.material = "nylon 10-0", .lot = "N10", .pack = 8},
        SpecimenTold{.what = Specimen::Rim, .to = SentTo::Culture, .side = "left"},
        BankTold{.contact = "bank, invented", .text = "grafted, rim to culture"},
    };
}

measure::Instant instant(int second) {
    return {
        .utc_ms = 1'795'599'667'250 + 1000 * second, .offset_min = 60, .boottime_ms = 5'000 + 1000 * second, .boot = 0xF00D'0000'0000'0001};
}

Event event(Seq seq, Fact fact) { return {.seq = seq, .at = instant(static_cast<int>(seq)), .who = Who::Scrub, .fact = std::move(fact)}; }

std::vector<Event> events(Seq first, int count) {
    std::vector<Event> made;
    for (Seq seq = first; seq < first + static_cast<Seq>(count); ++seq)
        made.push_back(seq == 1 ? event(seq, CaseOpened{.brief = brief(), .program = "0.1.0"}) : event(seq, SpokeTurned{.by = 1}));
    return made;
}

}  // namespace samples
