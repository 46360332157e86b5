// What a view shows, ready to draw: words and numbers are made here, layout elsewhere. Models are pure functions of the
// case, of what no event says (`Around`) and of the words.
#pragma once

#include "guide/state.hpp"
#include "past/figures.hpp"
#include "picture/size_rulers.hpp"
#include "picture/thickness_map.hpp"
#include "picture/wall_profile.hpp"
#include "screen/past_model.hpp"
#include "screen/words.hpp"

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace screen {

struct ClockShown {
    std::string label{}, value{};
    bool live = true;  // false: stopped, drawn soft
};

struct Strip {
    std::string eye{};        // "RIGHT EYE"; "SIDE ?" until the side is entered
    std::string reference{};  // "Case K-0147"
    std::string sizes{};      // "host 7.50 · donor 7.75"
    std::string phase{};      // "Host · cutting"
    std::vector<ClockShown> clocks{};
    ClockShown time{};           // "09:41", the time of day
    std::string holder{};        // "count: Table"
    std::optional<bool> beat{};  // the heart: one way or the other, by turns
    std::string muted{};         // "muted", beside its sign; empty: the voice is heard, or there is none
};

struct Line {
    enum class Is { Done, Skipped, Now, Later };
    Is is{};
    std::string text{};
    std::vector<Line> inner{};  // the steps of the present phase
};

/// A label and what stands for it.
struct Row {
    std::string label{}, value{};
    bool watch = false;  // with the triangle
};

/// A row of a table: what it is of, and two columns on their right edges; the last may be empty all through.
struct TableRow {
    std::string label{}, value{}, beside{};
};

/// A thing that is counted, with its two small targets.
struct CountRow {
    std::string title{}, value{}, line{};
    std::string expected{}, due{};  // the value with what it is; the same in fewer letters
    Target fewer{}, more{};
};

/// The giant figure.
struct Figure {
    std::string numeral{}, under{}, line{};  // "5", "spokes to go", "3 of 8 below zero"
    bool to_zero = false;                    // on the way down to zero: not what is left to go
    bool over = false;                       // past the plan
};

struct Card {
    std::string title{};
    Banner::Level level = Banner::Level::Notice;  // of the title: above a notice it says what went otherwise
    std::vector<std::string> lines{};             // one or two, what to do
    std::optional<Figure> figure{};
    Picture picture{};
    std::vector<Row> rows{};  // read aloud, checked
    std::vector<CountRow> counts{};
    std::string say{};  // the words said aloud
    std::vector<std::string> cautions{};
    std::vector<Row> foot{};  // "Next, have ready" …
};

/// What is being typed; label and line where the heading over it does not say all.
struct Typed {
    std::string label{}, text{}, line{};
};

/// Of the Desk, on the one screen that two readers share; see drawer.hpp.
struct Drawer {
    std::string nurse{};  // may she leave the room
    bool stay = false;    // she may not
    Row open_now{};
    Target handle{};
    bool open = false, narrow = false;
    std::string heading{}, line{};
    std::vector<Row> rows{};
    std::vector<Target> actions{};
    std::optional<Typed> field{};    // typed on a keyboard
    std::optional<Banner> banner{};  // the Desk's own, where the Table view has none
};

struct TableModel {
    Strip strip{};
    std::vector<Line> path{};
    Card card{};
    std::vector<Target> hand{};  // the hand's column, first is the biggest
    std::optional<Banner> banner{};
    std::optional<Drawer> drawer{};
};

/// A page with one list of targets to choose from: cases, departures, marks, reasons, sutures to redo.
struct PickModel {
    std::optional<Strip> strip{};
    std::string title{};
    std::vector<std::string> lines{};
    std::vector<Target> choices{};
    std::vector<TableRow> table{};  // where there is nothing to choose; the first heads the columns
    std::vector<Target> foot{};     // back, pages
    Picture picture{};
    std::optional<Banner> banner{};
    std::string muted{};  // where no strip says so
};

/// Keys under a finger: so many a row at most, fewer on a narrow glass.
struct Keys {
    std::vector<Target> all{};
    int a_row = 3;
    bool wide_last = false;  // the last takes two places at least, and what its row leaves
};

/// A form filled by touch: one field at a time, with a keypad.
struct FormModel {
    std::string title{};
    std::vector<std::string> lines{};
    struct Field {
        Target target{};  // picks the field
        std::string value{}, problem{};
        bool now = false;
    };
    std::vector<Field> fields{};
    std::optional<Typed> typed{};  // in place of fields
    Keys keys{};
    std::vector<Target> foot{};
    std::optional<Banner> banner{};
    std::string muted{};
};

/// What the surgeon sees from the microscope: one figure or one clock face, never a control.
struct FarModel {
    /// The giant digits with what they count.
    struct Numeral {
        std::string digits{}, under{};
        bool watch = false;    // past the plan, or suction lost
        bool to_zero = false;  // on the way down to zero: not what is left to go
    };
    /// Something happened otherwise: said in words.
    struct Said {
        std::string text{};
        Banner::Level level{};
    };
    /// The next suture: one disc.
    struct Dial {
        std::string suture{}, at{};
        picture::ClockFace face{};
    };
    std::string eye{}, holder{};  // holder: who counts, until the cut is done
    std::string step{};           // its title, where nothing but a clock is to be read
    std::optional<ClockShown> clock{};
    std::variant<std::monostate, Numeral, Said, Dial, ClockShown> shown{};  // a clock that stands there stands nowhere else
    std::optional<bool> beat{};
    std::optional<Banner> banner{};
    std::string muted{};
};

/// The plan with its working: what was measured, how deep, which sizes. A tap on a figure opens its panel in its column, another
/// tap closes it; a tap on a rung proposes that number.
struct PlanModel {
    struct Rung {
        Target target{};
        std::string spokes{}, travel{}, share{}, left{}, chance{};
        double entry_chance = 0;             // 0 to 1, as a bar
        bool planned = false, over = false;  // over the limit on the chance of entering
    };
    /// How a figure comes about, where it is from and how sure it is.
    struct Panel {
        std::string title{}, value{};
        std::vector<Row> rows{};
        std::vector<Target> targets{};
        Target close{}, more{};  // more: where the rows do not fit
        int from = 0;            // the first row shown
        int column = 0;
    };
    struct Caution {
        Banner::Level level{};
        std::string text{};
    };
    std::optional<Strip> strip{};
    std::vector<Target> tabs{};  // one a column, where only one has room
    int column = 0;              // that stands then
    // measured
    std::string measured{};  // "OCT, 2026-11-16, 9 days old"
    std::vector<Target> readings{};
    Target thinnest{};
    picture::ThicknessMap map{};
    // how deep
    std::vector<Target> heads{};  // of the ladder's columns
    std::vector<Rung> rungs{};
    int middle = 0;  // the rung round which a ladder that is too long is shown
    Target earlier{}, later{}, why{};
    picture::WallProfile profile{};
    // sizes
    picture::SizeRulers rulers{};
    std::vector<Target> steps{};  // host smaller, host larger, donor smaller, donor larger
    std::vector<Target> figures{};
    // always there
    std::string spokes{};  // "3 to zero, then 8"
    std::vector<Caution> cautions{};
    Target all_cautions{};
    std::vector<Target> foot{};  // the last is the hold
    std::optional<Panel> panel{};
    std::optional<Banner> banner{};
};

/// The circulating nurse's view: what is and what may be done, every action with its key.
struct DeskModel {
    Strip strip{};
    std::string title{};                          // the present step
    std::string nurse{};                          // may she leave the room
    bool stay = false;                            // she may not
    Banner::Level level = Banner::Level::Notice;  // of the title: above a notice it says what went otherwise
    std::vector<std::string> how{};               // what to do at a step of the circulating nurse's own, where there is room
    std::vector<Row> step{};                      // open now, do not open yet, have ready, what is usual; a row without a label goes on
    std::vector<Row> times{}, counts{};
    std::vector<Row> expected{}, record{};  // as far as there is room; record: newest first
    std::string heading{}, line{};          // over the actions
    std::vector<Target> actions{};
    Keys keys{};             // letters or names, where there is no keyboard
    std::size_t turned = 0;  // pages by which a list of actions is turned on
    std::optional<Typed> field{};
    std::optional<Banner> banner{};
};

/// A screen is measured: the outline of a bank card, made to match one that lies on it.
struct MeasureModel {
    std::string title{}, figure{};
    std::vector<std::string> lines{}, notes{};
    double card_w = 0, card_h = 0;  // of the outline, in the millimetres the page is drawn in
    std::vector<Target> steps{}, foot{};
    std::optional<Banner> banner{};
    std::string muted{};
};

using View = std::variant<TableModel, PickModel, FormModel, PlanModel, FarModel, DeskModel, MeasureModel, PastModel>;

/// What no event says; the app fills it in. Screen knows no ledger and no device.
struct Around {
    measure::Instant now{};
    std::uint64_t not_on_disk = 0;
    std::string trouble{};                    // the words for why what is written does not go to the disk, or not to its mirror
    std::vector<std::string> screens_lost{};  // the views whose screens are not found: "table", "desk", "far"
    bool file_changed = false, clock_jumped = false, no_sound = false, size_unknown = false;
    std::optional<int> volume{};  // per cent; none: the unit has no sound
    bool muted = false, dimmed = false;
    bool alone = false;                               // one screen for two readers: the Desk is a drawer of the Table view
    std::optional<bool> beat{};                       // turns with each second that went through session and ledger
    std::string foot_switch{};                        // the key that is the foot switch; empty: there is none
    bool has_desk = false;                            // a Desk has a screen of its own
    guide::Source here = guide::Source::Table;        // which source this view's taps are
    std::optional<std::string> refusal{};             // the words of the last refusal, until the next tap
    std::string notice{};                             // what the last touch came to, until the next
    std::optional<std::string> bounced{};             // id of a target whose tap was taken for a bounce: offer to count it
    std::optional<plan::Plan> proposed{};             // what the inputs give, to be agreed; none once it is of no use
    std::string seal{};                               // the fingerprint under a locked record
    std::shared_ptr<const past::Figures> own_past{};  // over the station's other cases of this kind; null: not known
};

}  // namespace screen
