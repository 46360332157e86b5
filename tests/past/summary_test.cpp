// What is kept of a case, read off cases that were played.
#include "past/summary.hpp"

#include "support/sample.hpp"

#include <doctest/doctest.h>

using namespace past;
using namespace guide;
using doctest::Approx;
using measure::from_um;

namespace {

constexpr auto ours = "G123417654321";

Label tissue(const std::string& division) {
    return Isbt{.donation = Donation{.number = ours, .flags = "00"}, .product = Product{.code = "V0001", .division = division}};
}

/// To the end of the cut after `spokes` from the raised ring.
void cut(sample::Case& c, int spokes, CutEnd how) {
    c.up_to("lower");
    c.count(spokes);
    REQUIRE(c.does(EndCut{.how = how}));
}

const Timed* time_of(const Summary& one, const std::string& id) {
    for (const Timed& timed : one.times) {
        if (timed.id == id) return &timed;
    }
    return nullptr;
}

}  // namespace

TEST_CASE("of two tissues that were read, the one of the case alone is used") {
    guide::Brief brief = sample::brief();
    brief.inputs.file.donor.donation = "G123417654321";
    sample::Case c(brief);
    for (const std::string number : {"G123417654321", "A999917123456"}) {
        REQUIRE(c.does(guide::Scan{.bytes = number, .label = guide::Isbt{.donation = guide::Donation{.number = number}}}));
        if (number[0] == 'G') REQUIRE(c.does(guide::TellTissue{.what = guide::TissueWord::BackUpNamed, .text = "A999917123456"}));
    }
    c.state.closed = guide::CaseEnd::Done;
    const Summary one = summary(c.state);
    REQUIRE(one.items.size() == 2);
    for (const Held& held : one.items) CHECK(held.used == (held.item.donation == "G123417654321"));
}

TEST_CASE("a case that is not over has no end, and clocks that run on are not told") {
    sample::Case c;
    c.up_to("suction-off");
    const Summary one = summary(c.state);
    CHECK(one.reference == "SAMPLE-1");
    CHECK(one.trephine == sample::brief().inputs.trephine.id);
    CHECK_FALSE(one.trephine.empty());
    CHECK(one.day == Day{2026, 11, 25});
    CHECK_FALSE(one.end);
    CHECK(one.invented);
    CHECK(time_of(one, "case") == nullptr);
    CHECK(time_of(one, "ready") != nullptr);
}

TEST_CASE("a case that is done has its phases' times, the sum over the spells of a clock") {
    sample::Case c;
    c.up_to("leak-test");
    REQUIRE(c.does(MarkClock{.clock = "open-sky", .start = true}));
    c.later(60);
    REQUIRE(c.does(MarkClock{.clock = "open-sky", .start = false}));
    c.up_to("nothing");
    const Summary one = summary(c.state);
    CHECK(one.end == std::optional(CaseEnd::Done));
    // The fourth suture is tied five taps of a second after the button is out; the second spell lasts the minute and its own second.
    REQUIRE(time_of(one, "open-sky") != nullptr);
    CHECK(*time_of(one, "open-sky") == Timed{.id = "open-sky", .ms = 66'000, .exact = true});
    CHECK(time_of(one, "host")->ms > 0);
    CHECK(one.counts == 6);
    CHECK(one.counts_differed == 0);
}

TEST_CASE("the cut is kept with its travel, the plan's number and the surgeon's moves") {
    sample::Case c;
    cut(c, 12, CutEnd::Surgeon);
    const Cut made = *summary(c.state).cut;
    CHECK(made.seatings == 1);
    CHECK(made.position == 9);
    CHECK(made.planned == std::optional(8));
    CHECK(made.travel == from_um(540));
    CHECK_FALSE(summary(sample::Case().state).cut);
}

TEST_CASE("a reach is depth over travel, of a cut of one seating that did not enter and was measured") {
    sample::Case c;
    cut(c, 11, CutEnd::AtPlan);
    CHECK_FALSE(reach(summary(c.state)));
    REQUIRE(c.does(MeasureDepth{.depth = from_um(500), .how = "OCT after the cut"}));
    CHECK(*reach(summary(c.state)) == Approx(500.0 / 480));
    Summary entered = summary(c.state);
    entered.cut->end = CutEnd::Entered;
    CHECK_FALSE(reach(entered));
    Summary twice = summary(c.state);
    twice.cut->seatings = 2;
    CHECK_FALSE(reach(twice));
    CHECK_FALSE(share_at_end(twice));
}

TEST_CASE("the share at the end is travel over the thinnest wall of a plan that has a ladder") {
    sample::Case c;
    cut(c, 11, CutEnd::AtPlan);
    CHECK_FALSE(share_at_end(summary(c.state)));  // the sample's plan has none
    Summary one = summary(c.state);
    one.cut->thinnest = from_um(600);
    CHECK(*share_at_end(one) == Approx(0.8));
}

TEST_CASE("a depth is measured after a cut, and only a depth that a cornea has") {
    sample::Case c;
    CHECK_FALSE(c.does(MeasureDepth{.depth = from_um(500)}));
    CHECK(c.refusal.why == Refused::WrongStep);
    cut(c, 11, CutEnd::AtPlan);
    CHECK_FALSE(c.does(MeasureDepth{.depth = from_um(0)}));
    CHECK_FALSE(c.does(MeasureDepth{.depth = from_um(1501)}));
    CHECK(c.refusal.why == Refused::DepthOutOfRange);
    CHECK(c.does(MeasureDepth{.depth = from_um(1500)}));
}

TEST_CASE("tissue is used when the case was done, free again when it was not used, kept while the case is open") {
    const auto held = [](std::optional<TissueWord> told, std::optional<CaseEnd> end) {
        sample::Case c;
        REQUIRE(c.does(Scan{.bytes = "x", .label = tissue("001")}));
        if (told) REQUIRE(c.does(TellTissue{.what = *told, .text = "said"}));
        if (end == CaseEnd::Done) c.up_to("nothing");
        if (end == CaseEnd::Abandoned) REQUIRE(c.does(CloseCase{.how = CaseEnd::Abandoned, .why = "donor lost"}));
        Summary one = summary(c.state);
        REQUIRE(one.items.size() == 1);
        return elsewhere({one}, "another case", true);
    };
    const auto used = [](const std::vector<Elsewhere>& found) { return found.size() == 1 && found.front().used; };
    const auto kept = [](const std::vector<Elsewhere>& found) { return found.size() == 1 && !found.front().used; };
    CHECK(used(held(std::nullopt, CaseEnd::Done)));
    CHECK(used(held(TissueWord::Grafted, CaseEnd::Abandoned)));
    CHECK(held(TissueWord::NotUsed, CaseEnd::Done).empty());
    CHECK(held(std::nullopt, CaseEnd::Abandoned).empty());
    CHECK(kept(held(std::nullopt, std::nullopt)));
}

TEST_CASE("the tissue a case file names is kept for it before it is read; read, it is one item; put aside, it is free") {
    Brief brief = sample::brief();
    brief.inputs.file.donor.donation = ours;
    sample::Case c(brief);
    CHECK(summary(c.state).items == std::vector<Held>{{.item = {.kind = ItemKind::Tissue, .donation = ours}, .used = false}});
    REQUIRE(c.does(Scan{.bytes = "x", .label = tissue("001")}));
    REQUIRE(summary(c.state).items.size() == 1);
    CHECK(summary(c.state).items.front().item.division == std::optional<std::string>("001"));
    REQUIRE(c.does(Scan{.bytes = "y", .label = Gs1{.gtin = "09506000134352", .serial = "SN7"}}));
    CHECK(summary(c.state).items.back().used);
    REQUIRE(c.does(PutAside{.event = c.state.last}));
    CHECK(summary(c.state).items.size() == 1);
}

TEST_CASE("a label read symbol by symbol is one item, as its last symbol left it") {
    sample::Case c;
    REQUIRE(c.does(Scan{.bytes = "x", .label = Isbt{.donation = Donation{.number = ours, .flags = "00"}}}));
    REQUIRE(c.does(Scan{.bytes = "y", .label = Isbt{.product = Product{.code = "V0001", .division = "001"}}}));
    REQUIRE(summary(c.state).items.size() == 1);
    CHECK(summary(c.state).items.front().item.product == std::optional<std::string>("V0001"));
    REQUIRE(c.does(Scan{.bytes = "x", .label = Isbt{.donation = Donation{.number = ours, .flags = "00"}}}));
    REQUIRE(summary(c.state).items.size() == 1);  // the number alone, read again, keeps no other cornea of the donor
    CHECK(summary(c.state).items.front().item.product == std::optional<std::string>("V0001"));
}

TEST_CASE("a check that saw another number than expected is counted, also when it was put right") {
    sample::Case c;
    REQUIRE(c.does(CheckCount{.item = "needles", .seen = 1, .by = "scrub nurse"}));
    REQUIRE(c.does(CheckCount{.item = "needles", .seen = 0, .by = "scrub nurse"}));
    CHECK(summary(c.state).counts == 2);
    CHECK(summary(c.state).counts_differed == 1);
}

TEST_CASE("a case does not see itself, nor a rehearsal") {
    sample::Case c;
    REQUIRE(c.does(Scan{.bytes = "x", .label = tissue("001")}));
    const Summary one = summary(c.state);
    CHECK(elsewhere({one}, one.reference, true).empty());
    CHECK(elsewhere({one}, "another case", false).empty());
    CHECK(elsewhere({one}, "another case", true).size() == 1);
}
