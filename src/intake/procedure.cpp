#include "intake/procedure.hpp"

#include "intake/procedure_checks.hpp"
#include "intake/reading.hpp"

#include <fmt/format.h>

namespace intake {
namespace {

using guide::Closes;

constexpr std::size_t longest_title = 28;   // characters that fit the card's title
constexpr std::size_t longest_button = 22;  // and the hand's biggest target
constexpr std::size_t longest_line = 100;

Rule<Closes> closes_rule() {
    return one_of<Closes>({{"tap", Closes::Tap},
                           {"hold", Closes::Hold},
                           {"side", Closes::Side},
                           {"plan", Closes::Plan},
                           {"counts", Closes::Counts},
                           {"suction-on", Closes::SuctionOn},
                           {"cut", Closes::Cut},
                           {"suction-off", Closes::SuctionOff},
                           {"sutures", Closes::Sutures},
                           {"ring", Closes::Ring},
                           {"close", Closes::Close}});
}

/// Words that stand for themselves.
Rule<std::string> any_of(std::initializer_list<std::string> words) {
    WordsFor<std::string> pairs;
    for (const std::string& word : words) pairs.emplace_back(word, word);
    return one_of(pairs);
}

/// Reads keys and keeps where each value stood.
class Placed {
public:
    explicit Placed(Fields& fields) : fields_(&fields) {}
    Mention mention(std::string_view key, const std::string& text) const {
        return {.text = text, .at = fields_->at(key), .path = fields_->path_of(key)};
    }
    Mention id(std::string_view key) { return mention(key, fields_->required(key, intake::id())); }
    std::string text(std::string_view key, std::size_t longest, std::vector<Mention>& wording) {
        const std::string read = fields_->required(key, line(longest));
        wording.push_back(mention(key, read));
        return read;
    }
    std::string optional_text(std::string_view key, std::size_t longest, std::vector<Mention>& wording) {
        const auto read = fields_->optional(key, line(longest));
        if (read) wording.push_back(mention(key, *read));
        return read.value_or("");
    }
    std::vector<std::string> list(std::string_view key, const Rule<std::string>& rule, std::vector<Mention>& mentions) {
        std::vector<std::string> texts;
        for (const auto& [text, at] : fields_->list(key, rule)) {
            mentions.push_back({.text = text, .at = at, .path = fmt::format("{}[{}]", fields_->path_of(key), texts.size() + 1)});
            texts.push_back(text);
        }
        return texts;
    }
    /// The lines of what to do: at least one, at most `most`.
    std::vector<std::string> lines(std::size_t most, std::vector<Mention>& wording) {
        const std::string allowed = fmt::format("a list of 1 to {} lines", most);
        if (!fields_->has("do")) fields_->missing("do", allowed);
        auto read = list("do", line(longest_line), wording);
        if (fields_->is_empty_list("do") || read.size() > most) fields_->wrong("do", allowed);
        return read;
    }

private:
    Fields* fields_;
};

void read_gates(Fields& fields, guide::Step& step, PlacedStep& places) {
    Placed placed(fields);
    step.needs = placed.list("needs", id(), places.needs);
    step.starts = placed.list("starts", id(), places.clocks);
    step.stops = placed.list("stops", id(), places.clocks);
    step.departures = placed.list("departures", id(), places.departures);
}

void read_wording(Fields& fields, guide::Step& step, std::vector<Mention>& wording) {
    Placed placed(fields);
    const Rule<std::string> one = line(longest_line);
    step.title = placed.text("title", longest_title, wording);
    step.lines = placed.lines(2, wording);
    step.say = placed.optional_text("say", longest_line, wording);
    step.button = placed.optional_text("button", longest_button, wording);
    step.cautions = placed.list("cautions", one, wording);
    step.ready = placed.list("ready", one, wording);
    step.open_now = placed.list("open-now", one, wording);
    step.open_later = placed.list("open-later", one, wording);
}

void read_closing(Fields& fields, guide::Step& step, PlacedStep& places) {
    step.closes = fields.optional("closes", closes_rule()).value_or(Closes::Tap);
    const auto sutures = fields.optional("sutures", whole(0, 64));
    step.sutures = sutures.value_or(0);
    if (sutures && step.closes != Closes::Sutures) fields.wrong("sutures", "only with closes = \"sutures\"");
    places.closes = step.closes;
    places.closes_at = {
        .text = fields.optional("closes", line(20)).value_or("tap"), .at = fields.at("closes"), .path = fields.path_of("closes")};
}

guide::Step read_step(Fields& fields, PlacedStep& places) {
    guide::Step step;
    places.id = Placed(fields).id("id");
    step.id = places.id.text;
    step.who = fields.required("who", any_of({"scrub", "circulating", "surgeon", "anaesthetist", "all"}));
    read_wording(fields, step, places.wording);
    read_closing(fields, step, places);
    read_gates(fields, step, places);
    step.only = fields.optional("only", any_of({"", "running"})).value_or("");
    using guide::Nurse;
    step.nurse = fields.optional("nurse", one_of<Nurse>({{"may-leave", Nurse::May}, {"stay", Nurse::Stay}})).value_or(Nurse::May);
    using guide::Pause;
    const auto pauses = one_of<Pause>({{"sign-in", Pause::SignIn}, {"time-out", Pause::TimeOut}, {"sign-out", Pause::SignOut}});
    step.pause = fields.optional("pause", pauses).value_or(Pause::None);
    step.quiet = fields.optional("quiet", flag()).value_or(false);
    step.may_skip = fields.optional("may-skip", flag()).value_or(true);
    step.picture = fields.optional("picture", any_of({"", "clock-face", "open", "section"})).value_or("");
    return step;
}

guide::Phase read_phase(Fields& fields, PlacedProcedure& places) {
    guide::Phase phase;
    Placed placed(fields);
    places.phases.push_back(placed.id("id"));
    phase.id = places.phases.back().text;
    phase.title = placed.text("title", longest_title, places.other_wording);
    phase.departures = placed.list("departures", id(), places.departures_of_phases);
    fields.tables("step", [&](Fields& step) { phase.steps.push_back(read_step(step, places.steps.emplace_back())); });
    if (!fields.has("step") || fields.is_empty_list("step")) fields.missing("step", "at least one [[phase.step]]");
    return phase;
}

guide::Departure read_departure(Fields& fields, PlacedProcedure& places) {
    guide::Departure departure;
    Placed placed(fields);
    places.departures.push_back(placed.id("id"));
    departure.id = places.departures.back().text;
    departure.title = placed.text("title", longest_title, places.other_wording);
    using Level = guide::Departure::Level;
    departure.level = fields.optional("level", one_of<Level>({{"watch", Level::Watch}, {"stop", Level::Stop}})).value_or(Level::Watch);
    departure.lines = placed.lines(8, places.other_wording);
    departure.back = placed.text("back", longest_title, places.other_wording);
    departure.reopens = placed.list("reopens", id(), places.reopened);
    return departure;
}

}  // namespace

measure::Result<guide::Procedure, Problems> read_procedure(std::string_view text, const std::string& name) {
    return read_file(text, name, [](Fields& root) {
        guide::Procedure procedure;
        PlacedProcedure places;
        procedure.id = root.required("id", id());
        procedure.title = root.required("title", line(60));
        root.tables("phase", [&](Fields& fields) { procedure.phases.push_back(read_phase(fields, places)); });
        if (!root.has("phase")) root.missing("phase", "at least one [[phase]]");
        root.tables("departure", [&](Fields& fields) { procedure.departures.push_back(read_departure(fields, places)); });
        check(places, root.report());
        return procedure;
    });
}

}  // namespace intake
