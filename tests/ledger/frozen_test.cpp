// Ledgers of earlier releases still load. The files in frozen/ were written by freeze_ledger of that release and stay as they are.
#include "ledger/ledger.hpp"
#include "ledger/place_for_tests.hpp"

#include <doctest/doctest.h>

#include <set>

using namespace ledger;

namespace {

Ledger frozen(const testplace::Folder& folder, const std::string& name) {
    std::filesystem::copy_file(std::string(TESTS_DIR) + "/ledger/frozen/" + name, folder.file(name));
    auto ledger = Ledger::open(folder.file(name), {.purpose = Purpose::Look});
    if (!ledger) FAIL(ledger.error().detail);
    return *std::move(ledger);
}

}  // namespace

TEST_CASE("the ledger frozen with form 1 still loads, whole and sealed") {
    const testplace::Folder folder;
    const auto ledger = frozen(folder, "v1.ledger");
    const auto list = ledger.cases();
    REQUIRE(list);
    REQUIRE(list->size() == 2);
    CHECK(list->at(0).reference == "K-0148");
    CHECK((list->at(1).closed && list->at(1).sealed));
    const auto verdict = ledger.verify("K-0147");
    REQUIRE(verdict);
    CHECK(verdict->whole());
    CHECK(verdict->whole_to == 29);
    CHECK(verdict->sealed == Verdict::Sealed::Yes);
    CHECK(ledger.load("K-0148")->size() == 3);
}

TEST_CASE("every kind of event of form 1 still means what it meant") {
    const testplace::Folder folder;
    const auto ledger = frozen(folder, "v1.ledger");
    const auto events = ledger.load("K-0147");
    REQUIRE(events);
    std::set<std::size_t> kinds;
    for (const auto& event : *events) kinds.insert(event.fact.index());
    CHECK(kinds.size() == 28);
    const auto& brief = std::get<guide::CaseOpened>(events->at(0).fact).brief;
    CHECK((brief.inputs.trephine.advance == measure::nm(62'500)));
    CHECK((brief.inputs.file.first_suture == measure::centideg(8950)));
    CHECK(brief.procedure.phases.at(0).steps.at(0).closes == guide::Closes::Cut);
    const auto& shown = std::get<guide::PlanAccepted>(events->at(3).fact).shown;
    CHECK(shown.ladder.at(0).share == 0.1 + 0.2);  // not 0.3: doubles come back to the last bit
    CHECK(shown.ladder.at(0).reserve == measure::nm(-500));
    CHECK((events->at(3).at ==
           measure::Instant{.utc_ms = 1'795'599'671'250, .offset_min = 60, .boottime_ms = 9'000, .boot = 0xF00D'0000'0000'0001}));
    CHECK(std::get<guide::CaseClosed>(events->back().fact).how == guide::CaseEnd::Abandoned);
}
