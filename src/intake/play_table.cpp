#include "intake/play_table.hpp"

#include "eye/frame.hpp"
#include "measure/expect.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace intake {
namespace {

using namespace guide;

constexpr std::int64_t day_s = 86'400;
constexpr std::int64_t largest_event = 9'007'199'254'740'992;  // whole numbers that JSON readers agree on end at 2^53
constexpr std::int64_t year_2100_ms = 4'102'444'800'000;

constexpr PlayField text_field(std::string_view name, Need need) { return {.name = name, .form = Form::Text, .need = need}; }
constexpr PlayField whole_field(std::string_view name, Need need, std::int64_t low, std::int64_t high) {
    return {.name = name, .form = Form::Whole, .need = need, .low = low, .high = high};
}
constexpr PlayField word_field(std::string_view name, Need need, std::string_view words) {
    return {.name = name, .form = Form::Word, .need = need, .low = 0, .high = 0, .words = words};
}

constexpr std::string_view sources = "table|desk|foot-switch";
constexpr PlayField why = text_field("why", Need::Optional);
constexpr PlayField step = text_field("step", Need::Required);
constexpr PlayField ago_s = whole_field("ago_s", Need::Optional, 0, day_s);
constexpr PlayField event = whole_field("event", Need::Required, 1, largest_event);
constexpr PlayField item = text_field("item", Need::Required);
constexpr PlayField what = text_field("what", Need::Required);
constexpr PlayField clock_hour = {.name = "clock_hour", .form = Form::ClockHour, .need = Need::Optional};

constexpr std::array<PlayField, 5> every_line{
    {text_field("at", Need::Required), word_field("who", Need::Required, "scrub|circulating|surgeon"), text_field("do", Need::Required),
     word_field("from", Need::Optional, sources), word_field("expect", Need::Optional, "refused")}};

Source source(const PlayValues& v) {
    const std::string word = v.has("source") ? v.text("source") : v.text("from");
    return word == "desk" ? Source::Desk : word == "foot-switch" ? Source::FootSwitch : Source::Table;
}

CutEnd cut_end(const std::string& word) {
    return word == "entered" ? CutEnd::Entered : word == "surgeon" ? CutEnd::Surgeon : CutEnd::AtPlan;
}

Suction suction(const std::string& word) { return word == "on" ? Suction::On : word == "lost" ? Suction::Lost : Suction::Off; }

CaseEnd case_end(const std::string& word) {
    return word == "converted" ? CaseEnd::Converted : word == "abandoned" ? CaseEnd::Abandoned : CaseEnd::Done;
}

TissueWord tissue_word(const std::string& word) {
    using enum TissueWord;
    return word == "unfit"           ? Unfit
           : word == "back-up-named" ? BackUpNamed
           : word == "grafted"       ? Grafted
           : word == "not-used"      ? NotUsed
           : word == "left-over"     ? LeftOver
                                     : Accepted;
}

KnotSide knot_side(const std::string& word) {
    return word == "host" ? KnotSide::Host : word == "donor" ? KnotSide::Donor : KnotSide::NotBuried;
}

Specimen specimen(const std::string& word) {
    return word == "host-button" ? Specimen::HostButton : word == "rim" ? Specimen::Rim : Specimen::Medium;
}

SentTo sent_to(const std::string& word) {
    return word == "pathology" ? SentTo::Pathology : word == "culture" ? SentTo::Culture : SentTo::Discarded;
}

/// The direction in a field, or as the hour of the dial that stands instead of it.
std::optional<int> direction(const PlayValues& v, std::string_view field) {
    if (const auto hour = eye::from_clock_text(v.text("clock_hour"))) return hour->centideg();
    const auto centideg = v.whole(field);
    return centideg ? std::optional(static_cast<int>(*centideg)) : std::nullopt;
}

Seq seq(const PlayValues& v) { return static_cast<Seq>(v.whole("event").value_or(0)); }

using V = const PlayValues&;
constexpr std::array<PlayIntent, 34> table{{
    {"enter-side", {word_field("side", Need::Required, "right|left")}, [](V v) -> Intent { return EnterSide{v.text("side")}; }},
    {"accept-plan", {why}, [](V v) -> Intent { return AcceptPlan{.inputs = {}, .plan = {}, .why = v.text("why")}; }},
    {"finish-step",
     {step, ago_s},
     [](V v) -> Intent {
         return FinishStep{v.text("step"), v.count("ago_s")};
     }},
    {"reopen-step",
     {step, why},
     [](V v) -> Intent {
         return ReopenStep{v.text("step"), v.text("why")};
     }},
    {"skip-step",
     {step, why},
     [](V v) -> Intent {
         return SkipStep{v.text("step"), v.text("why")};
     }},
    {"hold-count", {word_field("source", Need::Optional, sources)}, [](V v) -> Intent { return HoldCount{source(v)}; }},
    {"count-spoke", {}, [](V v) -> Intent { return CountSpoke{source(v)}; }},
    {"raise-blade", {}, [](V) -> Intent { return RaiseBlade{}; }},
    {"undo-tap", {whole_field("event", Need::Optional, 0, largest_event)}, [](V v) -> Intent { return UndoTap{seq(v)}; }},
    {"go-deeper", {}, [](V) -> Intent { return GoDeeper{}; }},
    {"end-cut",
     {word_field("how", Need::Required, "at-plan|entered|surgeon")},
     [](V v) -> Intent { return EndCut{cut_end(v.text("how"))}; }},
    {"turn-suction", {word_field("to", Need::Required, "off|on|lost")}, [](V v) -> Intent { return TurnSuction{suction(v.text("to"))}; }},
    {"mark-clock",
     {text_field("clock", Need::Required), PlayField{.name = "start", .form = Form::Flag}, ago_s},
     [](V v) -> Intent {
         return MarkClock{v.text("clock"), v.flag("start").value_or(true), v.count("ago_s")};
     }},
    {"tie-suture",
     {whole_field("n", Need::Optional, 0, 64), whole_field("centideg", Need::Optional, 0, 35'999), clock_hour},
     [](V v) -> Intent {
         return TieSuture{v.count("n"), direction(v, "centideg")};
     }},
    {"cut-suture",
     {whole_field("n", Need::Required, 1, 64), why},
     [](V v) -> Intent {
         return CutSuture{v.count("n"), v.text("why")};
     }},
    {"see-ring",
     {whole_field("long_axis_centideg", Need::Optional, 0, 35'999), clock_hour},
     [](V v) -> Intent { return SeeRing{direction(v, "long_axis_centideg")}; }},
    {"move-items",
     {item, whole_field("by", Need::Required, -999, 999)},
     [](V v) -> Intent {
         return MoveItems{v.text("item"), v.count("by")};
     }},
    {"check-count",
     {item, whole_field("seen", Need::Required, 0, 9999), text_field("by", Need::Required)},
     [](V v) -> Intent {
         return CheckCount{v.text("item"), v.count("seen"), v.text("by")};
     }},
    {"record-difference",
     {item, why},
     [](V v) -> Intent {
         return RecordDifference{v.text("item"), v.text("why")};
     }},
    {"scan", {text_field("bytes", Need::Required)}, [](V v) -> Intent { return Scan{.bytes = v.text("bytes")}; }},
    {"overrule",
     {event, why, text_field("contact", Need::Optional)},
     [](V v) -> Intent { return Overrule{.event = seq(v), .why = v.text("why"), .contact = v.text("contact")}; }},
    {"put-aside",
     {event, why},
     [](V v) -> Intent {
         return PutAside{seq(v), v.text("why")};
     }},
    {"measure-depth",
     {whole_field("um", Need::Required, 1, 1500), text_field("how", Need::Optional)},
     [](V v) -> Intent {
         return MeasureDepth{measure::from_um(v.count("um")), v.text("how")};
     }},
    {"tell-tissue",
     {word_field("what", Need::Required, "accepted|unfit|back-up-named|grafted|not-used|left-over"), text_field("text", Need::Optional)},
     [](V v) -> Intent {
         return TellTissue{tissue_word(v.text("what")), v.text("text")};
     }},
    {"tell-knots",
     {word_field("side", Need::Required, "host|donor|not-buried")},
     [](V v) -> Intent { return TellKnots{knot_side(v.text("side"))}; }},
    {"name-sutures",
     {text_field("material", Need::Required), text_field("lot", Need::Optional), whole_field("pack", Need::Optional, 1, largest_event)},
     [](V v) -> Intent {
         return NameSutures{v.text("material"), v.text("lot"), static_cast<Seq>(v.whole("pack").value_or(0))};
     }},
    {"tell-specimen",
     {word_field("what", Need::Required, "host-button|rim|medium"), word_field("to", Need::Required, "pathology|culture|discarded"),
      word_field("side", Need::Optional, "right|left")},
     [](V v) -> Intent {
         return TellSpecimen{specimen(v.text("what")), sent_to(v.text("to")), v.text("side")};
     }},
    {"tell-bank",
     {text_field("contact", Need::Required), text_field("text", Need::Required)},
     [](V v) -> Intent {
         return TellBank{v.text("contact"), v.text("text")};
     }},
    {"depart",
     {what, text_field("note", Need::Optional)},
     [](V v) -> Intent {
         return Depart{v.text("what"), v.text("note")};
     }},
    {"come-back", {what}, [](V v) -> Intent { return ComeBack{v.text("what")}; }},
    {"give-reason",
     {event, why},
     [](V v) -> Intent {
         return GiveReason{seq(v), v.text("why")};
     }},
    {"write-note", {text_field("text", Need::Required)}, [](V v) -> Intent { return WriteNote{v.text("text")}; }},
    {"correct-time",
     {event, whole_field("utc_ms", Need::Required, 0, year_2100_ms), why},
     [](V v) -> Intent {
         return CorrectTime{seq(v), v.whole("utc_ms").value_or(0), v.text("why")};
     }},
    {"close-case",
     {word_field("how", Need::Required, "done|converted|abandoned"), why},
     [](V v) -> Intent {
         return CloseCase{case_end(v.text("how")), v.text("why")};
     }},
}};
static_assert(table.size() == std::variant_size_v<Intent>, "every intent can be played");

}  // namespace

std::string PlayValues::text(std::string_view field) const {
    const auto found = values_.find(field);
    const auto* text = found == values_.end() ? nullptr : std::get_if<std::string>(&found->second);
    return text == nullptr ? std::string{} : *text;
}

std::optional<std::int64_t> PlayValues::whole(std::string_view field) const {
    const auto found = values_.find(field);
    const auto* whole = found == values_.end() ? nullptr : std::get_if<std::int64_t>(&found->second);
    return whole == nullptr ? std::nullopt : std::optional(*whole);
}

std::optional<bool> PlayValues::flag(std::string_view field) const {
    const auto found = values_.find(field);
    const auto* flag = found == values_.end() ? nullptr : std::get_if<bool>(&found->second);
    return flag == nullptr ? std::nullopt : std::optional(*flag);
}

std::span<const PlayIntent> play_intents() { return table; }

std::span<const PlayField> common_fields() { return every_line; }

std::string allowed(const PlayField& field) {
    switch (field.form) {
        case Form::None:
            return "nothing";
        case Form::Text:
            return "text";
        case Form::Whole:
            return fmt::format("a whole number from {} to {}", field.low, field.high);
        case Form::Flag:
            return "true or false";
        case Form::Word:
            return std::string(field.words);
        case Form::ClockHour:
            return "an hour of the dial such as \"7:30\"";
    }
    measure::expect(false);
    return {};
}

bool is_one_of(std::string_view word, std::string_view words) {
    while (true) {
        const auto bar = words.find('|');
        if (words.substr(0, bar) == word) return true;
        if (bar == std::string_view::npos) return false;
        words.remove_prefix(bar + 1);
    }
}

}  // namespace intake
