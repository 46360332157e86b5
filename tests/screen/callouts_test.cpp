// What is said and what is not. The words while the blade goes down, and quiet from 'entered' to the fourth suture: common practice,
// no source.
#include "screen/callouts.hpp"

#include "intake/case.hpp"
#include "plan/sutures.hpp"
#include "screen/models.hpp"

#include <doctest/doctest.h>

#include <set>

using namespace screen;

namespace {

/// A case of the shipped guide that is listened to.
struct Heard {
    sample::Case at{models::brief()};
    VoiceWish wish{};

    explicit Heard(const std::string& step) { at.up_to(step); }
    PhraseIds after(const guide::Intent& intent) {
        const guide::CaseState before = at.state;
        const std::size_t from = at.events.size();
        REQUIRE(at.does(intent));
        return call_outs(before, std::span(at.events).subspan(from), wish);
    }
    PhraseIds spoke() { return after(guide::CountSpoke{.source = guide::Source::Table}); }
    PhraseIds tie() {
        const int n = *guide::next_suture(at.state);
        return after(guide::TieSuture{.n = n, .centideg = at.state.plan->order[static_cast<std::size_t>(n - 1)].centideg});
    }
};

using Ids = PhraseIds;

constexpr auto aim = "[aim]\nshare = 0.80\n";

/// The demo case with another aim and other sutures, if a case file may have them.
std::optional<plan::CaseFile> accepted(const std::string& with_aim, const std::string& sutures) {
    const std::string text = models::file("demo-data/demo.case.toml");
    const auto read = intake::read_case(text.substr(0, text.find("[aim]")) + with_aim + sutures, "a case");
    return read ? std::optional(read->file) : std::nullopt;
}

/// A part that is said only after something else.
bool part(const PhraseId& id) { return id.starts_with("number-") || (id.starts_with("at-") && id.ends_with("-and")); }

/// Each of them has its words in every language; an awake patient's where there are any, else the usual ones.
bool can_be_said(const PhraseIds& ids) {
    static const auto known = [] {
        std::vector<std::set<PhraseId>> made{};
        for (const std::string& language : models::languages) {
            made.emplace_back();
            for (const Phrase& phrase : phrases(models::words(language))) made.back().insert(phrase.id);
        }
        return made;
    }();
    const std::string mild = "awake-";
    const auto said = [&](const PhraseId& id) {
        const PhraseId usual = id.starts_with(mild) ? id.substr(mild.size()) : id;
        return std::all_of(known.begin(), known.end(), [&](const auto& in) { return in.contains(id) || in.contains(usual); });
    };
    return !ids.empty() && !part(ids.front()) && std::all_of(ids.begin(), ids.end(), said);
}

/// What is said when a spoke has brought the blade to a position, with so many planned; none: to entry.
PhraseIds at_position(std::optional<int> planned, int position, bool awake = false) {
    static const Heard at_lower("lower");
    Heard heard = at_lower;
    heard.wish.awake = awake;
    heard.at.state.plan->target->spokes = planned;
    guide::Seating& seating = heard.at.state.seatings.back();
    seating = {.raise = std::max(0, 1 - position)};
    seating.down = seating.raise + position - 1;
    return heard.spoke();
}

guide::StepId after_current(const guide::CaseState& state) {
    bool found = false;
    for (const guide::Phase& phase : state.brief.procedure.phases) {
        for (const guide::Step& step : phase.steps) {
            if (found) return step.id;
            found = step.id == guide::current_step(state)->id;
        }
    }
    return {};
}

/// How many sutures of a case are said, each by what can be said, with the patient asleep and awake by turns.
std::size_t sutures_said(const plan::CaseFile& file) {
    static const Heard donor_lies("donor-on");
    Heard heard = donor_lies;
    heard.wish.sutures = VoiceWish::Sutures::Every;
    plan::Inputs inputs = sample::inputs();
    inputs.file = file;
    heard.at.state.plan->order = plan::sutures_from(inputs).order;
    std::size_t said = 0;
    while (guide::next_suture(heard.at.state)) {
        heard.wish.awake = !heard.wish.awake;
        const guide::CaseState before = heard.at.state;
        const std::size_t from = heard.at.events.size();
        if (guide::current_step(before)->closes == guide::Closes::Sutures) {
            heard.at.tie(1);
        } else {
            heard.at.up_to(after_current(before));
        }
        const PhraseIds ids = call_outs(before, std::span(heard.at.events).subspan(from), heard.wish);
        if (!ids.empty() && can_be_said(ids)) ++said;
    }
    return said;
}

}  // namespace

TEST_CASE("the blade's figure is said at every spoke, to zero, at zero, to go, reached, over, and never as a bare number") {
    Heard heard("lower");
    const std::vector<Ids> wanted{{"to-zero-2"}, {"to-zero-1"}, {"at-zero-8"}, {"to-go-7"}, {"to-go-6"}, {"to-go-5"}, {"to-go-4"},
                                  {"to-go-3"},   {"to-go-2"},   {"to-go-1"},   {"reached"}, {"over-1"},  {"over-2"}};
    for (const Ids& ids : wanted) CHECK(heard.spoke() == ids);
}

TEST_CASE("a tap taken back, a blade raised and a plan moved deeper are said as the figure that is right then") {
    Heard heard("lower");
    heard.at.count(5);
    CHECK(heard.after(guide::UndoTap{}) == Ids{"to-go-7"});
    CHECK(heard.after(guide::RaiseBlade{}) == Ids{"at-zero-8"});
    CHECK(heard.after(guide::GoDeeper{}) == Ids{"at-zero-9"});
}

TEST_CASE("suction lost is said and the figure is not, and spokes under lost suction are not said as if they counted down") {
    Heard heard("lower");
    heard.at.count(5);
    CHECK(heard.after(guide::TurnSuction{.to = guide::Suction::Lost}) == Ids{"suction-lost"});
    CHECK(heard.spoke().empty());
}

TEST_CASE("from entered to the fourth suture only safety words are said, from the fifth on the next suture") {
    Heard heard("cardinals");
    REQUIRE(guide::clock_running(heard.at.state, "decompressed"));
    for (int n = 1; n <= 3; ++n) CHECK(heard.tie().empty());
    CHECK(heard.after(guide::Depart{.what = "eye-bulging", .note = ""}) == Ids{"eye-bulging"});
    CHECK(heard.after(guide::ComeBack{.what = "eye-bulging"}).empty());
    CHECK(heard.tie() == Ids{"suture-5", "at-1-and", "number-30"});
    CHECK(heard.tie() == Ids{"suture-6", "at-7-and", "number-30"});
}

TEST_CASE("a surgeon who wants every suture hears every one, one who wants none hears none") {
    Heard every("cardinals"), none("next-four");
    every.wish.sutures = VoiceWish::Sutures::Every;
    CHECK(every.tie() == Ids{"suture-2", "at-6"});
    none.wish.sutures = VoiceWish::Sutures::None;
    CHECK(none.tie().empty());
}

TEST_CASE("steps, notes, clocks and counts are silent") {
    Heard heard("tissue-number");
    CHECK(heard.after(guide::FinishStep{.step = "tissue-number"}).empty());
    CHECK(heard.after(guide::WriteNote{.text = "a note"}).empty());
    CHECK(heard.after(guide::MoveItems{.item = "needles", .by = 1}).empty());
    CHECK(heard.after(guide::MarkClock{.clock = "donor-out", .start = true}).empty());
}

TEST_CASE("with an awake patient every phrase is one of the awake set") {
    Heard heard("lower");
    heard.wish.awake = true;
    heard.at.count(10);
    CHECK(heard.spoke() == Ids{"awake-reached"});
    CHECK(heard.spoke() == Ids{"awake-over-1"});
    std::map<PhraseId, std::string> texts{};
    for (const Phrase& phrase : phrases(models::words())) texts[phrase.id] = phrase.text;
    CHECK(texts.at("reached") == "depth reached, stop");
    CHECK(texts.at("awake-reached").find("stop") == std::string::npos);
    CHECK(texts.at("awake-over-1") != texts.at("over-1"));
    CHECK_FALSE(texts.contains("awake-to-go-3"));  // nothing in it to frighten: the usual words are said
}

TEST_CASE("the suction time is said once an interval, only if the unit wants it") {
    Heard heard("lower");
    const auto from = heard.at.state.clocks.at("suction").front().from;
    const auto at = [&](std::int64_t s) {
        auto made = from;
        made.utc_ms += s * 1000, made.boottime_ms += s * 1000;
        return made;
    };
    CHECK(suction_call_out(heard.at.state, at(59), at(60), heard.wish).empty());
    heard.wish.suction_every_s = 60;
    CHECK(suction_call_out(heard.at.state, at(58), at(59), heard.wish).empty());
    CHECK(suction_call_out(heard.at.state, at(59), at(60), heard.wish) == Ids{"suction-minutes", "number-1"});
    CHECK(suction_call_out(heard.at.state, at(60), at(61), heard.wish).empty());
    CHECK(suction_call_out(heard.at.state, at(119), at(121), heard.wish) == Ids{"suction-minutes", "number-2"});
}

TEST_CASE("phrases are there once, with words that are filled; only the parts of which others are made are bare numbers") {
    for (const std::string& language : models::languages) {
        std::set<PhraseId> ids{};
        for (const Phrase& phrase : phrases(models::words(language))) {
            CAPTURE(phrase.id);
            CHECK(ids.insert(phrase.id).second);
            CHECK_FALSE(models::unfilled(phrase.text));
            if (!part(phrase.id)) CHECK(phrase.text.find_first_not_of("0123456789 ") != std::string::npos);
        }
        for (const std::string id : {"reached", "at-zero-to-entry", "suction-lost", "entered", "eye-bulging", "suction-45"})
            CHECK(ids.contains(id));
    }
}

TEST_CASE("a figure is said whole as far as forty, and beyond of its words") {
    CHECK(at_position(40, 0) == Ids{"at-zero-40"});
    CHECK(at_position(41, 0) == Ids{"at-zero-many", "number-41"});
    CHECK(at_position(126, 1) == Ids{"to-go-many", "number-100", "number-25"});
    CHECK(at_position(200, 0) == Ids{"at-zero-many", "number-200"});
    CHECK(at_position(2341, 1) == Ids{"to-go-many", "number-2", "thousand", "number-300", "number-40"});
}

TEST_CASE("every number of spokes that a case file may plan can be said, to zero, to go, over and to entry, and more than that") {
    int planned = 0;
    for (int n = 1; accepted("[aim]\nspokes = " + std::to_string(n) + "\n", ""); planned = n++) {
        CAPTURE(n);
        for (const bool awake : {false, true}) {
            CHECK(can_be_said(at_position(n, 0, awake)));
            CHECK(can_be_said(at_position(n + 1, 1, awake)));
            CHECK(can_be_said(at_position(1, n + 1, awake)));
            CHECK(can_be_said(at_position(std::nullopt, n, awake)));
            CHECK(can_be_said(at_position(1, -n, awake)));
        }
    }
    CHECK(planned == 200);
    for (const int n : {999, 1000, 1001, 12'345}) CHECK(can_be_said(at_position(n, 0)));  // a plan may be moved deeper
}

TEST_CASE("every suture of every pattern that a case file may ask for can be said, whichever minute of the dial is the first") {
    std::size_t patterns = 0, most = 0;
    for (int n = 1; n <= 100; ++n) {
        const std::string count = std::to_string(n);
        for (const std::string& pattern :
             {count + " interrupted", count + " running", count + " double running", count + " interrupted + 64 running"}) {
            const auto file = accepted(aim, "[sutures]\npattern = \"" + pattern + "\"\n");
            if (!file) continue;
            CAPTURE(pattern);
            const auto planned = static_cast<std::size_t>(file->pattern.interrupted > 0 ? file->pattern.interrupted : n);
            CHECK(sutures_said(*file) == planned);
            ++patterns;
            most = std::max(most, planned);
        }
    }
    CHECK(patterns == 15 + 61 + 61 + 15);
    CHECK(most == 64);
    for (int minute = 0; minute < 60; ++minute) {
        const std::string first = "12:" + std::to_string(minute / 10) + std::to_string(minute % 10);
        const auto file = accepted(aim, "[sutures]\npattern = \"12 interrupted\"\nfirst = \"" + first + "\"\n");
        REQUIRE(file);
        CHECK(sutures_said(*file) == 12);
    }
}

TEST_CASE("the suction time can be said at every interval, for as long as the ring is on the eye") {
    Heard heard("lower");
    heard.wish.suction_every_s = 15;
    const auto from = heard.at.state.clocks.at("suction").front().from;
    for (int s = 15; s <= 7200; s += 15) {
        auto now = from, before = from;
        now.utc_ms += s * 1000, now.boottime_ms += s * 1000;
        before.utc_ms += s * 1000 - 1, before.boottime_ms += s * 1000 - 1;
        CHECK(can_be_said(suction_call_out(heard.at.state, before, now, heard.wish)));
    }
}
