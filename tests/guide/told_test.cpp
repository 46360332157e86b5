// What is told for the handover. That knots, suture material and specimens are on record, that a specimen is labelled with its side,
// and that the bank hears what became of its tissue, is common practice in a theatre, no source.
#include "support/sample.hpp"

#include <doctest/doctest.h>

using namespace guide;

TEST_CASE("the knots' side is told once a suture is tied, and the later word counts") {
    sample::Case c;
    CHECK_FALSE(c.does(TellKnots{.side = KnotSide::Host}));
    CHECK(c.refusal.why == Refused::EyeNotOpened);
    c.up_to("cardinals");
    CHECK_FALSE(c.does(TellKnots{.side = KnotSide::Host}));
    CHECK(c.refusal.why == Refused::NoSuture);
    c.tie(1);
    REQUIRE(c.does(TellKnots{.side = KnotSide::Host}));
    CHECK_FALSE(c.does(TellKnots{.side = KnotSide::Host}));
    CHECK(c.refusal.why == Refused::AlreadyDone);
    const Instant first = c.state.knots->at;
    REQUIRE(c.does(TellKnots{.side = KnotSide::NotBuried}));
    CHECK(c.state.knots->fact.side == KnotSide::NotBuried);
    CHECK(c.state.knots->at.utc_ms > first.utc_ms);
}

TEST_CASE("suture material is named with its size, each once, and the lot is the pack's where one was read") {
    sample::Case c;
    CHECK_FALSE(c.does(NameSutures{.material = "", .lot = "A1"}));
    CHECK(c.refusal.why == Refused::NeedsText);
    REQUIRE(c.does(NameSutures{.material = "nylon 10-0", .lot = "A1"}));
    CHECK_FALSE(c.does(NameSutures{.material = "nylon 10-0", .lot = "A1"}));
    CHECK(c.refusal.why == Refused::AlreadyDone);
    REQUIRE(c.does(NameSutures{.material = "nylon 10-0", .lot = "A2"}));
    REQUIRE(c.does(Scan{.bytes = "pack", .label = Gs1{.gtin = "09506000134352", .lot = "LOT42"}}, Who::Circulating));
    const Seq pack = c.state.scans.back().seq;
    REQUIRE(c.does(NameSutures{.material = "nylon 11-0", .lot = "typed", .pack = pack}));
    REQUIRE(c.state.materials.size() == 3);
    CHECK(c.state.materials.back().fact == SuturesNamed{.material = "nylon 11-0", .lot = "LOT42", .pack = pack});
}

TEST_CASE("a pack that is put aside, that something speaks against, or that is no pack names no suture") {
    sample::Case c;
    const auto scanned = [&](const std::string& bytes, const Label& label) {
        REQUIRE(c.does(Scan{.bytes = bytes, .label = label}, Who::Circulating));
        return c.state.scans.back().seq;
    };
    const Seq old = scanned("old", Gs1{.gtin = "09506000134352", .lot = "L1", .expires = PackDate{.day = {2026, 1, 31}}});
    CHECK_FALSE(c.does(NameSutures{.material = "nylon 10-0", .pack = old}));
    CHECK(c.refusal.why == Refused::ScanStands);
    REQUIRE(c.does(PutAside{.event = old, .why = "expired"}));
    CHECK_FALSE(c.does(NameSutures{.material = "nylon 10-0", .pack = old}));
    CHECK(c.refusal.why == Refused::UnknownId);
    const Seq tissue = scanned("tissue", Isbt{.donation = Donation{.number = "G123417654321"}});
    CHECK_FALSE(c.does(NameSutures{.material = "nylon 10-0", .pack = tissue}));
    CHECK(c.refusal.why == Refused::UnknownId);
    CHECK_FALSE(c.does(NameSutures{.material = "nylon 10-0", .pack = 999}));
    CHECK(c.state.materials.empty());
}

TEST_CASE("a specimen is told once the eye was entered, with where it went and the side on its label, which is the case's") {
    sample::Case c;
    const std::string side = "right", other = "left";  // of the sample's plan
    const TellSpecimen button{.what = Specimen::HostButton, .to = SentTo::Pathology, .side = side};
    CHECK_FALSE(c.does(button));
    CHECK(c.refusal.why == Refused::EyeNotOpened);
    c.up_to("cardinals");
    CHECK_FALSE(c.does(TellSpecimen{.what = Specimen::HostButton, .to = SentTo::Pathology}));
    CHECK(c.refusal.why == Refused::NeedsLabel);
    CHECK_FALSE(c.does(TellSpecimen{.what = Specimen::HostButton, .to = SentTo::Pathology, .side = other}));
    CHECK(c.refusal.why == Refused::LabelDiffers);
    CHECK_FALSE(c.does(TellSpecimen{.what = Specimen::Rim, .to = SentTo::Discarded, .side = other}));
    CHECK(c.refusal.why == Refused::LabelDiffers);
    REQUIRE(c.does(button));
    CHECK_FALSE(c.does(button));
    CHECK(c.refusal.why == Refused::AlreadyDone);
    REQUIRE(c.does(TellSpecimen{.what = Specimen::Rim, .to = SentTo::Discarded}));
    REQUIRE(c.does(TellSpecimen{.what = Specimen::Rim, .to = SentTo::Culture, .side = side}));
    CHECK(c.state.specimens.size() == 2);
    CHECK(c.state.specimens.at(Specimen::Rim).fact.to == SentTo::Culture);
}

TEST_CASE("the tissue bank was told only with a name and with what was said") {
    sample::Case c;
    CHECK_FALSE(c.does(TellBank{.contact = "", .text = "grafted"}));
    CHECK(c.refusal.why == Refused::NeedsName);
    CHECK_FALSE(c.does(TellBank{.contact = "bank, invented", .text = ""}));
    CHECK(c.refusal.why == Refused::NeedsText);
    REQUIRE(c.does(TellBank{.contact = "bank, invented", .text = "grafted"}, Who::Circulating));
    CHECK(c.state.bank->fact == BankTold{.contact = "bank, invented", .text = "grafted"});
    CHECK(c.events.back().who == Who::Circulating);
}
