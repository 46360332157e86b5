// Round trips of every kind of event, and what must stay as it is on disk for ledgers of earlier releases.
#include "ledger/codec.hpp"

#include "ledger/samples.hpp"

#include <doctest/doctest.h>

#include <set>

using namespace ledger;

namespace {

// A new fact without a sample does not compile: add it to samples::facts() first, then here.
static_assert(std::variant_size_v<guide::Fact> == 36, "every fact needs a sample in the codec's test");

Failure::What what_fails(std::string_view tag, std::string_view json) {
    const auto fact = decode(tag, json);
    REQUIRE_FALSE(fact);
    return fact.error().what;
}

}  // namespace

TEST_CASE("every kind of event has a sample and a tag of its own") {
    std::set<std::size_t> kinds;
    std::set<std::string> tags;
    for (const guide::Fact& fact : samples::facts()) {
        kinds.insert(fact.index());
        tags.insert(encode(fact).tag);
    }
    CHECK(kinds.size() == std::variant_size_v<guide::Fact>);
    CHECK(tags.size() == std::variant_size_v<guide::Fact>);
}

TEST_CASE("every fact reads back equal and writes the same bytes again") {
    for (const guide::Fact& fact : samples::facts()) {
        const Encoded first = encode(fact);
        CAPTURE(first.tag);
        CAPTURE(first.json);
        const auto read = decode(first.tag, first.json);
        REQUIRE(read);
        CHECK((*read == fact));
        CHECK((encode(*read) == first));
    }
}

// The form on disk, written out by hand from the rule in codec.hpp.
TEST_CASE("the bytes on disk have sorted keys, no spaces, words for enumerators, and no key for what is absent") {
    CHECK((encode(guide::SpokeTurned{.by = -1}) == Encoded{"spoke-turned", R"({"by":-1,"owes_reason":false})"}));
    CHECK((encode(guide::CutEnded{.how = guide::CutEnd::AtPlan, .position = 8}) ==
           Encoded{"cut-ended", R"({"how":"at-plan","position":8})"}));
    CHECK((encode(guide::RingSeen{}) == Encoded{"ring-seen", "{}"}));
    CHECK((encode(guide::Scanned{.bytes = "\xff", .meaning = "x"}) ==
           Encoded{"scanned", R"({"against":[],"bytes":{"bytes":[255]},"completes":0,"item":{"kind":"unread"},"meaning":"x"})"}));
}

TEST_CASE("lengths, angles and days bear their units: 62.5 um is 62500 nm, 225 degrees is 22500") {
    const std::string json = encode(guide::CaseOpened{.brief = samples::brief(), .program = ""}).json;
    CHECK(json.find(R"("advance_nm":62500)") != std::string::npos);
    CHECK(json.find(R"("at_centideg":22500)") != std::string::npos);
    CHECK(json.find(R"("expires":"2026-12-01")") != std::string::npos);
}

TEST_CASE("a missing key is the member's default, a key nobody knows is passed over") {
    const auto fact = decode("spoke-turned", R"({"from_a_newer_release":[1,2]})");
    REQUIRE(fact);
    CHECK((*fact == guide::Fact{guide::SpokeTurned{.by = 1, .owes_reason = false}}));
}

TEST_CASE("a tag nobody knows means a newer program") { CHECK(what_fails("lens-chosen", "{}") == Failure::What::Newer); }

TEST_CASE("unknown words, wrong types, figures out of range and broken JSON are damage") {
    CHECK(what_fails("cut-ended", R"({"how":"sideways"})") == Failure::What::Damaged);
    CHECK(what_fails("cut-ended", R"({"how":1})") == Failure::What::Damaged);
    CHECK(what_fails("spoke-turned", R"({"by":"1"})") == Failure::What::Damaged);
    CHECK(what_fails("spoke-turned", R"({"by":1.5})") == Failure::What::Damaged);
    CHECK(what_fails("spoke-turned", R"({"by":4294967296})") == Failure::What::Damaged);
    CHECK(what_fails("tap-undone", R"({"event":-1})") == Failure::What::Damaged);
    CHECK(what_fails("spoke-turned", "[]") == Failure::What::Damaged);
    CHECK(what_fails("spoke-turned", "{") == Failure::What::Damaged);
    CHECK(what_fails("case-opened", R"({"brief":{"inputs":{"file":{"date":"2026-02-30"}}}})") == Failure::What::Damaged);
    CHECK(what_fails("case-opened", R"({"brief":{"procedure":{"phases":[{"steps":[{"closes":"magic"}]}]}}})") == Failure::What::Damaged);
}
