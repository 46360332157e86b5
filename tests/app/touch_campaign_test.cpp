// Streams of touches as a draped screen gives them, made by chance from a fixed seed and played through touch, session and ledger at
// five frame rates and for either hand. A touch screen arrives as a mouse: one pointer, whatever lies on the glass. What is asked
// for is what was meant: not a spoke fewer, not one more, and nothing else on the record.
// The times of bounces, palms and double taps are look.md's and our own assumptions, no source.
#include "touching.hpp"

#include "app/demo.hpp"
#include "support/lettering.hpp"

#include <algorithm>
#include <filesystem>
#include <random>

using graftside::Session;
using testplace::Folder;

namespace {

constexpr int rates[] = {5, 15, 30, 60, 144};
constexpr std::int64_t second_ms = 1000;

struct Report {
    std::int64_t at_ms = 0;
    device::Event event{};
};

struct Stream {
    std::vector<Report> reports{};
    int meant = 0;
};

screen::Canvas canvas(screen::Hand hand) {
    const screen::Glass glass{.width_mm = 223, .height_mm = 125, .hand = hand};
    const auto type = screen::typography(screen::Reader::Table, glass);
    return {.glass = glass, .type = type, .lettering = support::lettering(type)};
}

/// Makes a stream for a frame: taps on its biggest target, and all that comes beside them.
class Hands {
public:
    Hands(unsigned seed, const screen::Frame& frame, const screen::Glass& glass) : chance_(seed), frame_(frame), glass_(glass) {}

    /// Spokes as they are said, some of them caught up with by a double tap.
    Stream spokes() {
        const int n = from(6, 13);
        for (int i = 0; i < n; ++i) {
            meant(100);
            pass(from(1, 4) == 1 ? from(150, 220) : from(300, 1200));
        }
        return done(n);
    }

    /// What closes a step or ties a suture: never twice within 2 s.
    Stream steps(int n) {
        for (int i = 0; i < n; ++i) {
            meant(1900);
            pass(from(2000, 3200));
        }
        return done(n);
    }

    /// A cloth: everywhere, in short contacts, never at rest as long as a hold.
    Stream wiping() {
        for (int i = 0; i < 120; ++i) {
            const picture::Point at{from(0, static_cast<int>(glass_.width_mm)) * 1.0, from(0, static_cast<int>(glass_.height_mm)) * 1.0};
            press(now_, at);
            move(now_ + 20, anywhere());
            if (from(1, 3) > 1) lift(now_ + from(30, 600), anywhere());
            pass(from(5, 700));
        }
        lift(now_, anywhere());
        return done(0);
    }

private:
    int from(int low, int high) { return low + static_cast<int>(chance_() % static_cast<unsigned>(high - low + 1)); }
    const picture::Box& biggest() const { return frame_.touchables.front().box; }
    picture::Point within(const picture::Box& box) { return {box.x + box.w * from(5, 95) / 100.0, box.y + box.h * from(5, 95) / 100.0}; }
    picture::Point anywhere() { return within({0, 0, glass_.width_mm, glass_.height_mm}); }
    /// Where nothing is touched on any step of these streams: the strip on top.
    picture::Point bare() {
        for (;;) {
            const picture::Point at = within({0, 0, glass_.width_mm, glass_.height_mm / 10});
            const auto hit = [at](const screen::Touchable& one) { return one.box.contains(at); };
            if (std::none_of(frame_.touchables.begin(), frame_.touchables.end(), hit)) return at;
        }
    }
    void add(std::int64_t at_ms, device::Event event) { stream_.reports.push_back({at_ms, event}); }
    void press(std::int64_t at_ms, picture::Point at) { add(at_ms, device::Pressed{.x_mm = at.x, .y_mm = at.y, .time_ms = at_ms}); }
    void lift(std::int64_t at_ms, picture::Point at) { add(at_ms, device::Released{.x_mm = at.x, .y_mm = at.y, .time_ms = at_ms}); }
    void move(std::int64_t at_ms, picture::Point at) { add(at_ms, device::Moved{.x_mm = at.x, .y_mm = at.y}); }

    /// One tap that was meant, as it may arrive; what is told of it again comes within `bounce_ms`.
    void meant(int bounce_ms) {
        const picture::Point at = within(biggest());
        press(now_, at);
        switch (from(0, 4)) {
            case 0:
                return lift(now_ + from(40, 120), at);
            case 1:
                return bounce(bounce_ms);
            case 2:
                return smear();
            case 3:
                return palm();
            default:
                return fingers();
        }
    }
    void bounce(int bounce_ms) {
        for (int i = from(1, 3); i > 0; --i) {
            const std::int64_t again = now_ + from(12, bounce_ms);
            lift(again - 8, within(biggest()));
            press(again, within(biggest()));
        }
    }
    /// The drape sticks: the pointer wanders, and the lift comes late or never.
    void smear() {
        for (int i = 0; i < 4; ++i) move(now_ + 15 * i, anywhere());
        if (from(0, 1) == 1) lift(now_ + from(100, 140), anywhere());
    }
    /// More of the hand lands after the finger, on whatever is there.
    void palm() {
        std::int64_t at = now_;
        for (int i = from(1, 4); i > 0; --i) {
            at += from(2, 25);
            lift(at - 1, anywhere());
            press(at, anywhere());
        }
    }
    /// One pointer for several fingers: it jumps from one to the other.
    void fingers() {
        for (int i = 0; i < 3; ++i) move(now_ + 20 * i, within(frame_.touchables[static_cast<std::size_t>(i)].box));
        lift(now_ + 90, anywhere());
    }
    /// Time passes, and the drape does what it does: drops on bare glass, a swipe in from an edge across the target.
    void pass(int ms) {
        for (int i = from(0, 2); i > 0; --i) {
            const std::int64_t at = now_ + from(0, ms);
            press(at, bare());
            if (from(0, 1) == 1) lift(at + from(3, 3000), anywhere());
        }
        if (from(0, 5) == 0) {
            const std::int64_t at = now_ + from(0, ms);
            press(at, {from(0, 1) == 1 ? 0.2 : glass_.width_mm - 0.2, glass_.height_mm / 2});
            for (int i = 0; i < 5; ++i) move(at + 8 * i, within(biggest()));
            lift(at + 60, within(biggest()));
        }
        now_ += ms;
    }
    Stream done(int meant) {
        std::stable_sort(stream_.reports.begin(), stream_.reports.end(),
                         [](const Report& a, const Report& b) { return a.at_ms < b.at_ms; });
        stream_.meant = meant;
        return std::move(stream_);
    }

    std::mt19937 chance_;
    const screen::Frame& frame_;
    screen::Glass glass_;
    Stream stream_{};
    std::int64_t now_ = 400;
};

/// A session at a place of the demo case, on a ledger of its own that is a copy of one played so far.
class Place {
public:
    explicit Place(std::size_t lines) : at_(demo::script()[lines].at) {
        demo::play(played_.file("a.ledger"), {demo::script().begin(), demo::script().begin() + static_cast<std::ptrdiff_t>(lines)});
    }
    Session start(const Folder& folder) const {
        std::filesystem::copy(played_.path(), folder.path(), std::filesystem::copy_options::recursive);
        auto session = Session::start(demo::options(folder.file("a.ledger")), demo::stock(), demo::case_path(), at(0));
        REQUIRE(session);
        return *std::move(session);
    }
    measure::Instant at(std::int64_t ms) const { return demo::later(at_, ms); }

private:
    Folder played_{testplace::in_memory()};
    measure::Instant at_{};
};

std::size_t line_of(auto is) {
    const auto found = std::find_if(demo::script().begin(), demo::script().end(), is);
    REQUIRE(found != demo::script().end());
    return static_cast<std::size_t>(found - demo::script().begin());
}

/// A session with its Desk, which on one screen for two readers is a drawer of the Table view.
struct Station {
    explicit Station(Session started) : session(std::move(started)) {}
    Session session;
    graftside::Desk desk{session};
};

screen::Frame frame(const Station& station, const Place& place, std::int64_t ms, const screen::Canvas& on) {
    return screen::draw(graftside::table_view(station.session, station.desk, place.at(ms)), on);
}

/// As the loop meets it that draws so many frames a second: what came since the last frame, then time passes, then the next frame.
void play(Station& station, const Stream& stream, const Place& place, const screen::Canvas& on, int fps) {
    screen::Touch touch;
    screen::Frame shown = frame(station, place, 0, on);
    std::size_t next = 0;
    std::int64_t drawn_s = 0;
    const std::int64_t end = stream.reports.back().at_ms + 3 * second_ms;
    for (std::int64_t n = 1; n * second_ms / fps < end; ++n) {
        const std::int64_t now = n * second_ms / fps, before = static_cast<std::int64_t>(next);
        for (; next < stream.reports.size() && stream.reports[next].at_ms <= now; ++next) {
            const Report& report = stream.reports[next];
            graftside::carry_out(station.session, station.desk, graftside::meet(touch, shown, report.event), place.at(report.at_ms));
        }
        graftside::carry_out(station.session, station.desk, touch.tick(now), place.at(now));
        station.session.tick(place.at(now));
        if (static_cast<std::int64_t>(next) == before && now / second_ms == drawn_s) continue;
        drawn_s = now / second_ms;
        shown = frame(station, place, now, on);
    }
}

/// Facts on the record after a stream, less those before it.
struct Came {
    std::uint64_t facts = 0;
    int spokes = 0, sutures = 0, steps = 0;
    bool operator==(const Came&) const = default;
};

Came sums(const Station& station) {
    const guide::CaseState& state = station.session.open()->state();
    return {state.last, state.seatings.empty() ? 0 : state.seatings.back().down, static_cast<int>(state.sutures.size()),
            static_cast<int>(state.steps.size())};
}

Came operator-(const Came& a, const Came& b) { return {a.facts - b.facts, a.spokes - b.spokes, a.sutures - b.sutures, a.steps - b.steps}; }

/// What so many plain touches of the biggest target come to, one every four seconds.
Came plainly(const Place& place, int n) {
    const Folder folder(testplace::in_memory());
    Station station(place.start(folder));
    const Came before = sums(station);
    for (int i = 0; i < n; ++i)
        station.session.touched(frame(station, place, i * 4000, canvas(screen::Hand::Right)).touchables.front().target, place.at(i * 4000));
    return sums(station) - before;
}

/// On one undraped screen, with the drawer open.
void open_drawer(Station& station, const Place& place) {
    station.session.turn_screen({.page = "undraped"});
    const auto drawer = station.desk.drawer(place.at(0));
    graftside::carry_out(station.session, station.desk, screen::Counted{drawer.handle}, place.at(0));
    REQUIRE(station.desk.drawer(place.at(0)).open);
}

/// The same streams at every frame rate and for either hand; `made` makes one of a seed.
void campaign(const Place& place, unsigned seeds, const auto& made, const auto& expected, bool one_screen = false) {
    for (const screen::Hand hand : {screen::Hand::Right, screen::Hand::Left}) {
        const screen::Canvas on = canvas(hand);
        for (unsigned seed = 1; seed <= seeds; ++seed) {
            for (const int fps : rates) {
                const Folder folder(testplace::in_memory());
                Station station(place.start(folder));
                if (one_screen) open_drawer(station, place);
                const screen::Frame first = frame(station, place, 0, on);
                const Stream stream = made(Hands(seed, first, on.glass));
                const Came before = sums(station);
                play(station, stream, place, on, fps);
                CAPTURE(static_cast<int>(hand));
                CAPTURE(seed);
                CAPTURE(fps);
                const Came came = sums(station) - before, asked = expected(stream);
                CHECK(came.facts == asked.facts);
                CHECK(came.spokes == asked.spokes);
                CHECK(came.sutures == asked.sutures);
                CHECK(came.steps == asked.steps);
            }
        }
    }
}

const auto is_spoke = [](const auto& line) { return std::holds_alternative<guide::CountSpoke>(line.intent); };
const auto is_tie = [](const auto& line) { return std::holds_alternative<guide::TieSuture>(line.intent); };
const auto is_ink = [](const auto& line) {
    const auto* step = std::get_if<guide::FinishStep>(&line.intent);
    return step != nullptr && step->step == "ink-wells";
};

}  // namespace

TEST_CASE("spokes: what was meant is what counts, from 5 to 144 frames a second, for either hand [H-07]") {
    const Place place(line_of(is_spoke));
    campaign(
        place, 10, [](Hands hands) { return hands.spokes(); },
        [](const Stream& stream) {
            return Came{static_cast<std::uint64_t>(stream.meant), stream.meant, 0, 0};
        });
}

TEST_CASE("one undraped screen with the drawer open: what was meant is what counts all the same [H-07]") {
    const Place place(line_of(is_spoke));
    campaign(
        place, 3, [](Hands hands) { return hands.spokes(); },
        [](const Stream& stream) {
            return Came{static_cast<std::uint64_t>(stream.meant), stream.meant, 0, 0};
        },
        true);
}

TEST_CASE("sutures: no touch too many reaches the next one, from 5 to 144 frames a second, for either hand [H-07]") {
    const Place place(line_of(is_tie));
    const Came plain = plainly(place, 8);
    REQUIRE(plain.sutures == 8);
    campaign(
        place, 4, [](Hands hands) { return hands.steps(8); }, [&](const Stream&) { return plain; });
}

TEST_CASE("steps: one touch, one step, from 5 to 144 frames a second, for either hand [H-07]") {
    const Place place(line_of(is_ink));
    const Came plain = plainly(place, 6);
    REQUIRE(plain.steps == 6);
    campaign(
        place, 4, [](Hands hands) { return hands.steps(6); }, [&](const Stream&) { return plain; });
}

TEST_CASE("locked for wiping nothing counts, whatever the cloth does; a hold unlocks") {
    const Place place(line_of(is_ink));
    for (const screen::Hand hand : {screen::Hand::Right, screen::Hand::Left}) {
        const screen::Canvas on = canvas(hand);
        for (unsigned seed = 1; seed <= 10; ++seed) {
            CAPTURE(seed);
            const Folder folder(testplace::in_memory());
            Station station(place.start(folder));
            Session& session = station.session;
            const Came before = sums(station);
            demo::tap(session, "something-else", place.at(0));
            demo::tap(session, "wipe", place.at(0));
            const screen::Frame locked = frame(station, place, 0, on);
            REQUIRE(locked.touchables.size() == 1);
            CHECK(locked.touchables.front().target.press == screen::Press::Hold);
            play(station, Hands(seed, locked, on.glass).wiping(), place, on, 30);
            CHECK(sums(station) == before);
            CHECK(demo::has_target(session.view(place.at(0)), "unlock"));
            CHECK_FALSE(demo::has_target(session.view(place.at(0)), "finish-ink-wells"));
            demo::tap(session, "unlock", place.at(1));
            CHECK(demo::has_target(session.view(place.at(1)), "finish-ink-wells"));
            CHECK(sums(station) == before);
        }
    }
}

TEST_CASE("the lock for wiping is not there while the blade can turn nor in the quiet part, and gives way to what happens") {
    const Folder folder(testplace::in_memory());
    const Place cut(line_of(is_spoke));
    Session cutting = cut.start(folder);
    cutting.touched({.id = "x", .act = screen::Show{.page = "wipe"}}, cut.at(0));
    CHECK(demo::has_target(cutting.view(cut.at(0)), "spoke"));  // even if the page were asked for
    const Folder other(testplace::in_memory());
    const Place open(line_of(is_tie));
    Session quiet = open.start(other);
    demo::tap(quiet, "something-else", open.at(0));
    CHECK_FALSE(demo::has_target(quiet.view(open.at(0)), "wipe"));
    const Folder third(testplace::in_memory());
    const Place donor(line_of(is_ink));
    Session wiping = donor.start(third);
    wiping.touched({.id = "x", .act = screen::Show{.page = "wipe"}}, donor.at(0));
    REQUIRE(demo::has_target(wiping.view(donor.at(0)), "unlock"));
    // What the Desk records meanwhile is shown at once.
    REQUIRE_FALSE(wiping.act(guide::Who::Circulating, {guide::Depart{.what = "donor-lost-before", .note = ""}}, donor.at(1)));
    CHECK_FALSE(demo::has_target(wiping.view(donor.at(1)), "unlock"));
}
