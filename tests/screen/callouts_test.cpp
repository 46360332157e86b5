// What is said and what is not. The words while the blade goes down, and quiet from 'entered' to the fourth suture: common practice,
// no source.
#include "screen/callouts.hpp"
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
    CHECK(heard.tie() == Ids{"suture-5", "at-1-30"});
    CHECK(heard.tie() == Ids{"suture-6", "at-7-30"});
}

TEST_CASE("a surgeon who wants every suture hears every one, one who wants none hears none") {
    Heard every("cardinals"), none("next-four");
    every.wish.sutures = VoiceWish::Sutures::Every;
    CHECK(every.tie() == Ids{"suture-2", "at-6-00"});
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
    CHECK(suction_call_out(heard.at.state, at(59), at(60), heard.wish) == Ids{"suction-60"});
    CHECK(suction_call_out(heard.at.state, at(60), at(61), heard.wish).empty());
    CHECK(suction_call_out(heard.at.state, at(119), at(121), heard.wish) == Ids{"suction-120"});
}

TEST_CASE("everything that a call-out may ask for is among the phrases, once, with words that are filled and never a bare number") {
    std::set<PhraseId> ids{};
    for (const Phrase& phrase : phrases(models::words())) {
        CAPTURE(phrase.id);
        CHECK(ids.insert(phrase.id).second);
        CHECK_FALSE(models::unfilled(phrase.text));
        const bool part = phrase.id.find("at-") != std::string::npos && phrase.id.find("zero") == std::string::npos;
        const bool place = part && phrase.id.find("suction") == std::string::npos;  // said after "suture six"
        if (!place) CHECK(phrase.text.find_first_not_of("0123456789 ") != std::string::npos);
    }
    for (const std::string id : {"to-zero-3", "at-zero-8", "to-go-1", "reached", "over-1", "below-4", "suture-16", "at-12-00", "at-7-30",
                                 "at-1-15", "suction-lost", "entered", "eye-bulging", "suction-90", "awake-reached"})
        CHECK(ids.contains(id));
}
