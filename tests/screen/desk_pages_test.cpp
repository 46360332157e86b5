// The Desk's pages for tissue and packs, for times, for what is told at the end and for the files: what they offer, and when.
#include "screen/desk_pages.hpp"
#include "guide/timed.hpp"
#include "guide/tissue.hpp"
#include "screen/desk_seen.hpp"
#include "screen/samples.hpp"
#include "screen/scan_text.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

using namespace screen;
using guide::Against;
using models::by_key;
using models::intent;
using models::shown;

namespace {

Show turns(const Target& target) { return std::get<Show>(target.act); }

/// A pack that is expired, a label in date of another donor's tissue kept for another case, and tissue that is expired.
std::vector<guide::Seq> scan_three(models::Seen& at) {
    const auto scanned = [&](const std::string& bytes, const guide::Label& label, const std::vector<guide::Elsewhere>& elsewhere = {}) {
        REQUIRE(at.at.does(guide::Scan{.bytes = bytes, .label = label, .elsewhere = elsewhere}, guide::Who::Circulating));
        return at.at.state.scans.back().seq;
    };
    const guide::Item theirs = guide::tissue_named("A999917123456");
    return {scanned("pack", guide::Gs1{.gtin = "09506000134352", .lot = "L1", .expires = guide::PackDate{.day = {2026, 1, 31}}}),
            scanned("theirs",
                    guide::Isbt{.donation = guide::Donation{.number = "A999917123456"},
                                .product = guide::Product{.code = "V0001", .division = "001"}},
                    {{.reference = "K-2",
                      .item =
                          [&] {
                              guide::Item whole = theirs;
                              whole.product = "V0001", whole.division = "001";
                              return whole;
                          }()}}),
            scanned("old", guide::Isbt{.donation = guide::Donation{.number = "G123417654321"},
                                       .product = guide::Product{.code = "V0001", .division = "001"},
                                       .expires = guide::Moment{.day = {2026, 1, 31}}})};
}

}  // namespace

TEST_CASE("each of these pages has a key of its own for every action") {
    models::Seen at("knots");
    const auto scans = scan_three(at);
    const std::string seq = std::to_string(scans.front()), event = std::to_string(guide::timed(at.at.state).front().seq);
    const DeskState pages[] = {{.page = "tissue"},
                               {.page = "scans"},
                               {.page = "scan", .argument = seq},
                               {.page = "aside", .argument = seq},
                               {.page = "overrule", .argument = seq + "="},
                               {.page = "contact", .argument = seq},
                               {.page = "label"},
                               {.page = "tissue-said"},
                               {.page = "tell", .argument = "unfit"},
                               {.page = "depth"},
                               {.page = "depth-how", .argument = "520"},
                               {.page = "depth-words", .argument = "520"},
                               {.page = "knots"},
                               {.page = "sutures"},
                               {.page = "material"},
                               {.page = "lot", .argument = "nylon 10-0"},
                               {.page = "specimens"},
                               {.page = "specimen", .argument = "rim"},
                               {.page = "specimen-side", .argument = "rim=culture"},
                               {.page = "bank"},
                               {.page = "bank-text", .argument = "R.B."},
                               {.page = "bank-words", .argument = "R.B."},
                               {.page = "times"},
                               {.page = "times", .argument = "7"},
                               {.page = "time", .argument = event},
                               {.page = "time-why", .argument = event + "=10:00"},
                               {.page = "papers", .argument = "/somewhere"}};
    for (const DeskState& page : pages) {
        CAPTURE(page.page);
        const DeskModel model = shown(at, page);
        CHECK(model.heading != models::words()("desk.actions"));  // it is no page of its own otherwise
        CHECK(model.actions.size() > 1);
        std::set<std::string> keys{};
        for (const Target& one : model.actions) {
            CHECK_FALSE(one.key.empty());
            CHECK(keys.insert(one.key).second);
        }
        CHECK(keys.contains("Esc"));
    }
}

TEST_CASE("tissue, times and files wait while the blade can turn and in the quiet part") {
    for (const std::string step : {"tissue-here", "seat", "suction-off", "next-four", "specimens"}) {
        CAPTURE(step);
        models::Seen at(step);
        for (const std::string key : {"T", "W"}) CHECK(by_key(shown(at), key));
        CHECK(by_key(shown(at), "P").has_value() == guide::eye_entered(at.at.state));
    }
    for (const std::string step : {"lower", "entered", "cardinals"}) {
        CAPTURE(step);
        models::Seen at(step);
        for (const std::string key : {"T", "W", "P"}) CHECK_FALSE(by_key(shown(at), key));
    }
}

TEST_CASE("notes wait in the quiet part, not while the blade can turn; one that is half typed stays at a Desk of its own") {
    for (const std::string step : {"tissue-here", "lower", "ready-to-open", "next-four", "specimens"}) {
        CAPTURE(step);
        models::Seen at(step);
        CHECK(by_key(shown(at), "N"));
    }
    for (const std::string step : {"entered", "scissors", "donor-on", "cardinals"}) {
        CAPTURE(step);
        models::Seen at(step);
        CHECK_FALSE(by_key(shown(at), "N"));
        CHECK(shown(at, {.page = "note", .typed = "x"}).field);
        at.around.alone = true;
        CHECK_FALSE(shown(at, {.page = "note", .typed = "x"}).field);
    }
}

TEST_CASE("the Desk says that the lock is hers on the Table view; light and voice are changed at the Desk before it and after it") {
    models::Seen at("specimens");
    at.around.volume = 50, at.around.dimmed = true, at.around.muted = true;
    CHECK(shown(at).nurse == models::words()("desk.own_step"));
    CHECK(by_key(shown(at), "F"));
    at.at.up_to("lock");
    CHECK(shown(at).nurse == "Yours, on the Table view");
    CHECK_FALSE(by_key(shown(at), "F"));
    for (const bool locked : {false, true}) {
        CAPTURE(locked);
        if (locked) REQUIRE(at.at.does(guide::CloseCase{.how = guide::CaseEnd::Done, .why = ""}));
        CHECK(turns(*by_key(shown(at), "M")).page == "screen");
        CHECK(turns(*by_key(shown(at, {.page = "screen"}), "D")).page == "dim");
        CHECK(turns(*by_key(shown(at), "V")).page == "sound");
        CHECK(turns(*by_key(shown(at, {.page = "sound"}), "M")).page == "mute");
    }
    CHECK_FALSE(by_key(shown(at, {.page = "screen"}), "W"));  // nothing is left to be wiped over
    at.around.volume.reset();
    CHECK_FALSE(by_key(shown(at), "V"));
}

TEST_CASE("on a glass of 223 by 125 mm clocks and counts stand beside the actions at every step where the desk does not count") {
    models::Seen at;
    at.around.volume = 50;
    for (const auto& phase : models::brief().procedure.phases) {
        for (const auto& step : phase.steps) {
            if (!guide::applies(at.at.state, step)) continue;
            at.at.up_to(step.id);
            const DeskModel model = shown(at);
            const Frame frame = draw(model, samples::canvas({223, 125}, Reader::Desk));
            CAPTURE(step.id);
            CHECK(std::any_of(frame.shapes.begin(), frame.shapes.end(), [&](const picture::Shape& shape) {
                const auto* text = std::get_if<picture::Text>(&shape);
                return text != nullptr && text->text == model.times.back().label;
            }));
        }
    }
}

TEST_CASE("twelve actions stand closest before they take the place of the clocks, where each says all in one line") {
    models::Seen at("sign-in");
    at.around.volume = 50;
    at.around.foot_switch = "F9";
    DeskModel model = shown(at);
    REQUIRE(model.actions.size() == 11);
    model.actions.push_back(model.actions.back());
    const auto stands = [&] {
        const Frame frame = draw(model, samples::canvas({217, 136}, Reader::Desk));
        return std::any_of(frame.shapes.begin(), frame.shapes.end(), [&](const picture::Shape& shape) {
            const auto* text = std::get_if<picture::Text>(&shape);
            return text != nullptr && text->text == model.times.back().label;
        });
    };
    CHECK(stands());
    model.actions.front().label += " and whatever else may have to be said of it here";
    CHECK_FALSE(stands());
}

TEST_CASE("on the one screen these pages give way when the blade can turn; at a Desk of its own what is half typed stays") {
    models::Seen at("lower");
    for (const std::string page : {"tissue", "material", "times", "papers"}) {
        CAPTURE(page);
        at.around.alone = false;
        CHECK(shown(at, {.page = page}).heading != models::words()("desk.actions"));
        at.around.alone = true;
        CHECK(shown(at, {.page = page}).heading == models::words()("desk.actions"));
    }
}

TEST_CASE("what was read stands with what speaks against it in words; another patient's tissue is never overruled") {
    models::Seen at;
    const auto scans = scan_three(at);
    const Target first = *by_key(shown(at), "T");
    CHECK(first.look == Look::Watch);
    const auto page = [&](guide::Seq seq) { return shown(at, {.page = "scan", .argument = std::to_string(seq)}); };
    CHECK(page(scans[0]).line.find("2026-01-31") != std::string::npos);
    CHECK(turns(*by_key(page(scans[0]), "O")).page == "overrule");
    CHECK(page(scans[1]).line.find("K-2") != std::string::npos);
    CHECK_FALSE(by_key(page(scans[1]), "O")->why_not.empty());
    CHECK((turns(*by_key(page(scans[2]), "O")) == Show{.page = "contact", .argument = std::to_string(scans[2])}));
    const DeskModel reasons = shown(at, {.page = "overrule", .argument = std::to_string(scans[2]) + "=R. = B."});
    const Target reason = *by_key(reasons, "1");
    CHECK(reason.press == Press::Hold);
    CHECK(std::get<guide::Overrule>(intent(reason)).event == scans[2]);
    CHECK(std::get<guide::Overrule>(intent(reason)).contact == "R. = B.");
    REQUIRE(at.at.does(intent(reason), guide::Who::Surgeon));
    CHECK_FALSE(by_key(page(scans[2]), "O"));
    CHECK(by_key(page(scans[2]), "P"));
    CHECK(shown(at, {.page = "scans"}).actions.size() == 4);
}

TEST_CASE("what does not fit stands on the Table at once, under a refusal, and not in the cut or over the open eye") {
    models::Seen at("tissue-number");
    const auto scanned = [&] {
        REQUIRE(
            at.at.does(guide::Scan{.bytes = "old", .label = guide::Gs1{.lot = "L1", .expires = guide::PackDate{.day = {2026, 1, 31}}}}));
    };
    CHECK_FALSE(at.table().banner);
    scanned();
    REQUIRE(at.table().banner);
    CHECK(at.table().banner->text == "Lot L1: Expired on 2026-01-31. Put it aside (Desk,\u00A0T), or the surgeon overrules.");
    CHECK(at.table().banner->level == Banner::Level::Watch);
    at.around.refusal = "Refused.";
    CHECK(at.table().banner->text == "Refused.");
    at.around.refusal.reset();
    at.around.clock_jumped = true;  // what stays until the end hides it no more than nothing does
    CHECK(at.table().banner->text.find("Expired on 2026-01-31") != std::string::npos);
    CHECK(at.table().banner->text.find("The computer clock jumped") != std::string::npos);
    at.around.clock_jumped = false;
    REQUIRE(at.at.does(guide::PutAside{.event = at.at.state.last, .why = "wrong"}));
    CHECK_FALSE(at.table().banner);
    for (const std::string step : {"lower", "entered", "cardinals"}) {
        CAPTURE(step);
        at.at.up_to(step);
        scanned();
        CHECK_FALSE(at.table().banner);
        REQUIRE(at.at.does(guide::PutAside{.event = at.at.state.last, .why = "wrong"}));
    }
    at.at.up_to("next-four");
    scanned();
    CHECK(at.table().banner);
}

TEST_CASE("what could not be checked is not said to fit, and its page says what it was") {
    const auto scan = [&](guide::Item item) { return guide::ScanSeen{.said = {.item = std::move(item)}}; };
    const auto said = [&](guide::Item item) { return standing_text(scan(std::move(item)), models::words()); };
    const auto unchecked = [&](guide::Item item) { return unchecked_text(scan(std::move(item)), models::words()); };
    const measure::Day expires{2027, 1, 31};
    using guide::ItemKind;
    CHECK(said({.kind = ItemKind::Pack, .expires = expires, .instrument = "vacuum-punch"}) == "fits");
    CHECK(said({.kind = ItemKind::Pack, .expires = expires}) == "partly checked");
    CHECK(unchecked({.kind = ItemKind::Pack, .expires = expires}) == "Not in the unit's list: size not checked.");
    CHECK(unchecked({.kind = ItemKind::Pack, .instrument = "vacuum-punch"}) == "No expiry date read.");
    CHECK(unchecked({.kind = ItemKind::Pack}) == "Not in the unit's list: size not checked. No expiry date read.");
    CHECK(said({.kind = ItemKind::Tissue, .expires = expires}) == "fits");
    CHECK(said({.kind = ItemKind::Tissue}) == "partly checked");
    CHECK(said({.kind = ItemKind::Part, .expires = expires}) == "without its number");
    CHECK(said({.kind = ItemKind::Unread}).empty());

    models::Seen at("tissue-number");
    REQUIRE(at.at.does(guide::Scan{.bytes = "pack", .label = guide::Gs1{.lot = "L1"}}));
    const std::string seq = std::to_string(at.at.state.last);
    CHECK(shown(at, {.page = "scan", .argument = seq}).line == "Not in the unit's list: size not checked. No expiry date read.");
}

TEST_CASE("the Desk says at once what was read last, and to which number a part of a label was joined, or that it was joined to none") {
    models::Seen at("tissue-number");
    const auto read = [&](const std::string& bytes, const guide::Label& label) {
        REQUIRE(at.at.does(guide::Scan{.bytes = bytes, .label = label}, guide::Who::Circulating));
        const std::string row = shown(at).record.front().value;
        const std::string page = shown(at, {.page = "scan", .argument = std::to_string(at.at.state.last)}).line;
        return std::pair(row, page);
    };
    const guide::Isbt expiry{.expires = guide::Moment{.day = {2027, 1, 31}}};
    const std::string none = "Joined to no number: expiry 2027-01-31. Read the number of its label, then this again.";
    CHECK(read("date", expiry) == std::pair(none, none));
    CHECK(read("number", guide::Isbt{.donation = guide::Donation{.number = "G123417654321"}}).first ==
          "Tissue G123417654321: partly checked");
    const std::string number_read = measure::hour_minute(at.at.now);
    const auto joined = read("date", expiry);
    CHECK(joined.first == "Joined: expiry 2027-01-31 to Tissue G123417654321, read " + number_read + ".");
    CHECK(joined.second == "fits " + joined.first);
    CHECK(read("group", guide::Isbt{.group = "T300"}).first == "Tissue G123417654321: fits");  // adds nothing
    CHECK(read("?", guide::Unread{guide::WhyUnread::WrongCheck}).first == "A scan was not read. Scan again, or type the label.");
    CHECK(read("group", guide::Isbt{.group = "T300"}).first == "Joined to no number. Read the number of its label, then this again.");
}

TEST_CASE("a scan that stands is named with its reason over the main page and where a step is refused; never overruled, not offered so") {
    models::Seen at("tissue-here");
    CHECK(shown(at).heading == models::words()("desk.actions"));
    const auto refused = [&] {
        const auto decision = guide::decide(at.at.state, guide::Who::Scrub, guide::FinishStep{.step = "tissue-here"}, at.at.now);
        REQUIRE_FALSE(decision);
        REQUIRE(decision.error().why == guide::Refused::ScanStands);
        return refusal_text(decision.error(), at.at.state, models::words());
    };
    const auto scans = scan_three(at);
    CHECK(shown(at).heading == models::words()("packs.something_stands"));
    CHECK(shown(at).line.starts_with("Tissue G123417654321 V0001 001: Expired on 2026-01-31."));
    // The worst reason alone: it is another tissue.
    CHECK(refused() ==
          "Tissue G123417654321 V0001 001; planned is A999917123456 V0001 001. Put it aside (Desk,\u00A0T), or the surgeon overrules.");
    REQUIRE(at.at.does(guide::PutAside{.event = scans[2], .why = "wrong"}));
    CHECK(refused().find("K-2") != std::string::npos);
    CHECK(refused().find("overrules") == std::string::npos);
    REQUIRE(at.at.does(guide::PutAside{.event = scans[1], .why = "wrong"}));
    CHECK(refused() == "Lot L1: Expired on 2026-01-31. Put it aside (Desk,\u00A0T), or the surgeon overrules.");
    REQUIRE(at.at.does(guide::PutAside{.event = scans[0], .why = "wrong"}));
    CHECK(shown(at).heading == models::words()("desk.actions"));
}

TEST_CASE("a pack with a lot names the suture material; one that does not fit, or an instrument's, does not") {
    models::Seen at;
    scan_three(at);
    CHECK(shown(at, {.page = "sutures"}).actions.size() == 2);
    REQUIRE(at.at.does(guide::Scan{.bytes = "good", .label = guide::Gs1{.gtin = "06291041500213", .lot = "N10"}}, guide::Who::Circulating));
    const guide::Seq pack = at.at.state.scans.back().seq;
    const Target choice = *by_key(shown(at, {.page = "sutures"}), "1");
    CHECK(choice.label.find("N10") != std::string::npos);
    const DeskModel material = shown(at, {.page = "material", .argument = turns(choice).argument, .typed = "nylon 10-0"});
    CHECK(std::get<guide::NameSutures>(intent(*by_key(material, "Enter"))).pack == pack);
    REQUIRE(at.at.does(intent(*by_key(material, "Enter")), guide::Who::Circulating));
    CHECK(shown(at, {.page = "sutures"}).actions.size() == 2);  // named once
}

// Where and how it is measured is ours; that a cut which went through has no depth to measure is common practice, no source.
TEST_CASE("the measured depth is asked for once the cut has ended without entering, read back, and written with how") {
    models::Seen before("tissue-here"), after("next-four");
    const auto offered = [](models::Seen& at) { return by_key(shown(at, {.page = "tissue"}), "D"); };
    CHECK_FALSE(offered(before));
    REQUIRE(offered(after));
    CHECK(turns(*offered(after)).page == "depth");
    CHECK_FALSE(by_key(shown(after, {.page = "depth"}), "Enter")->why_not.empty());
    const Show next = turns(*by_key(shown(after, {.page = "depth", .typed = "520"}), "Enter"));
    CHECK((next == Show{.page = "depth-how", .argument = "520"}));
    const DeskModel how = shown(after, turned_to(next));
    CHECK(how.heading.starts_with("520 µm"));
    const auto said = std::get<guide::MeasureDepth>(intent(*by_key(how, "2")));
    CHECK(said.depth == measure::from_um(520));
    CHECK(said.how == "OCT");
    const DeskModel own = shown(after, {.page = "depth-words", .argument = "520", .typed = "a probe"});
    CHECK(std::get<guide::MeasureDepth>(intent(*by_key(own, "Enter"))).how == "a probe");
    REQUIRE(after.at.does(said, guide::Who::Circulating));
    CHECK(offered(after)->line == "520 µm");
    after.at.state.seatings.back().ended = guide::CutEnd::Entered;
    CHECK_FALSE(offered(after));
}

TEST_CASE("a depth takes whole figures only") {
    DeskState depth{.page = "depth"};
    for (const char32_t letter : U"5.2-0x11") depth = typed(depth, letter);
    CHECK(depth.typed == "5201");
}

TEST_CASE("knots and specimens are not offered before the eye was entered") {
    models::Seen before("tissue-here"), after("next-four");
    for (const std::string key : {"K", "G"}) {
        CHECK_FALSE(by_key(shown(before, {.page = "tissue"}), key)->why_not.empty());
        CHECK(by_key(shown(after, {.page = "tissue"}), key)->why_not.empty());
    }
}

TEST_CASE("a field that takes free text warns not to write names") {
    models::Seen at("specimens");
    for (const std::string page : {"tell", "material", "bank", "bank-words"}) {
        CAPTURE(page);
        const DeskModel model = shown(at, {.page = page, .argument = page == "tell" ? "unfit" : ""});
        REQUIRE(model.field);
        CHECK(model.line.find("name") != std::string::npos);
    }
}

TEST_CASE("a time is typed as HH:MM or HH:MM:SS and nothing else, for the event that was picked") {
    models::Seen at("next-four");
    const guide::Timed newest = guide::timed(at.at.state).front();
    const std::string seq = std::to_string(newest.seq);
    const auto dead = [&](const std::string& typed) {
        return !by_key(shown(at, {.page = "time", .argument = seq, .typed = typed}), "Enter")->why_not.empty();
    };
    for (const std::string wrong :
         {"", "1", "12", "12:", "12:6", "24:00", "12:60", "12:30:", "12:30:60", "12:30:1", "1230", "123:00", "::", "12:30:00:"})
        CHECK(dead(wrong));
    for (const std::string right : {"1:30", "01:30", "23:59", "00:00:00", "12:30:59"}) CHECK_FALSE(dead(right));
    const DeskModel why = shown(at, {.page = "time-why", .argument = seq + "=" + measure::hour_minute(newest.at)});
    const auto correct = std::get<guide::CorrectTime>(intent(*by_key(why, "1")));
    CHECK(correct.event == newest.seq);
    CHECK(correct.utc_ms == newest.at.utc_ms - newest.at.utc_ms % 60'000);
    CHECK_FALSE(correct.why.empty());
}

TEST_CASE("a time that is corrected says what the same tap wrote and is corrected with it") {
    models::Seen at("cardinals");
    const guide::Spell open = at.at.state.clocks.at("open-sky").back();
    const std::string seq = std::to_string(open.from_seq);
    const std::string with =
        "By the same tap, and corrected with it: " + guide::find_step(at.at.state.brief.procedure, "button-out")->title + ".";
    CHECK(shown(at, {.page = "time-why", .argument = seq + "=" + measure::hour_minute(open.from)}).line.ends_with(with));
    const guide::StepDone alone = at.at.state.steps.at("viscoelastic-in");
    const std::string written = std::to_string(alone.seq) + "=" + measure::hour_minute(alone.at);
    CHECK(shown(at, {.page = "time-why", .argument = written}).line.find("By the same tap") == std::string::npos);
}

TEST_CASE("a time of the day is that of the day on which it lies nearest, in the time zone of what was written") {
    constexpr std::int64_t hour = 3'600'000;
    const measure::Instant written = *measure::instant_from_rfc3339("2026-11-25T00:10:00.000+02:00");
    const auto utc = [](const std::string& text) { return measure::instant_from_rfc3339(text)->utc_ms; };
    CHECK(nearest_utc_ms(written, 23 * hour) == utc("2026-11-24T23:00:00.000+02:00"));
    CHECK(nearest_utc_ms(written, hour) == utc("2026-11-25T01:00:00.000+02:00"));
    const measure::Instant late = *measure::instant_from_rfc3339("2026-11-25T23:50:00.000-03:30");
    CHECK(nearest_utc_ms(late, 0) == utc("2026-11-26T00:00:00.000-03:30"));
}

TEST_CASE("a list of times that is long turns on to older ones, and each stands once") {
    models::Seen at("next-four");
    const auto all = guide::timed(at.at.state);
    std::set<std::string> seen{};
    std::string argument{};
    for (int page = 0; page < 50; ++page) {
        const DeskModel model = shown(at, {.page = "times", .argument = argument});
        for (const Target& one : model.actions)
            if (one.id.starts_with("time-")) CHECK(seen.insert(one.id).second);
        const auto older = by_key(model, "O");
        if (!older) break;
        argument = turns(*older).argument;
    }
    CHECK(seen.size() == guide::one_a_tap(at.at.state).size());
    CHECK(seen.size() < all.size());  // what one tap wrote stands in one row
}

TEST_CASE("why a time was wrong: late where the right one is earlier, early where it is later") {
    models::Seen at("next-four");
    const guide::StepDone done = at.at.state.steps.at("entered");
    const auto reasons = [&](std::int64_t by_ms) {
        measure::Instant right = done.at;
        right.utc_ms += by_ms;
        std::vector<std::string> all{};
        const std::string typed = std::to_string(done.seq) + "=" + measure::rfc3339(right).substr(11, 8);
        for (const Target& one : shown(at, {.page = "time-why", .argument = typed}).actions) all.push_back(one.label);
        return all;
    };
    CHECK(models::says(reasons(-2000), "tapped late"));
    CHECK_FALSE(models::says(reasons(-2000), "tapped early"));
    CHECK(models::says(reasons(2000), "tapped early"));
    CHECK_FALSE(models::says(reasons(2000), "tapped late"));
}

TEST_CASE("an item is named once before what speaks against it, also where that begins with it") {
    models::Seen at("tissue-here");
    scan_three(at);
    for (const guide::ScanSeen& scan : at.at.state.scans) {
        const std::string item = item_text(scan.said.item, models::words());
        for (const std::string& text : {unfitting_text(scan, models::words()), stop_text(scan, models::words())}) {
            CAPTURE(text);
            CHECK(text.find(item) != std::string::npos);
            CHECK(text.find(item + ": " + item) == std::string::npos);
        }
    }
    const guide::ScanSeen other{.said = {.item = guide::tissue_named("A999917123456"),
                                         .against = {{.what = Against::NotPlannedTissue, .values = {"A999917123456", "G1"}}}}};
    CHECK(unfitting_text(other, models::words()) == "Tissue A999917123456; planned is G1.");
}

TEST_CASE("the files say where they go, and that the case is not locked; after the lock they are still there to be written") {
    models::Seen at("specimens");
    const DeskModel open = shown(at, {.page = "papers", .argument = "/data/handover", .told = {{"csv", "written 09:00"}}});
    CHECK(open.line.find("/data/handover") != std::string::npos);
    CHECK(open.line.find("not locked") != std::string::npos);
    CHECK(by_key(open, "C")->line == "written 09:00");
    CHECK(by_key(open, "P")->line.empty());
    at.at.state.closed = guide::CaseEnd::Done;
    CHECK(by_key(shown(at), "P"));
    CHECK(shown(at, {.page = "papers", .argument = "/data/handover"}).line.find("not locked") == std::string::npos);
}
