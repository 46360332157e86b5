// The plain-text mirror: mended when it lacks lines, offered when it has more, never merged by itself.
#include "ledger/ledger.hpp"
#include "ledger/place_for_tests.hpp"
#include "ledger/samples.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

using namespace ledger;
using testplace::Folder;

namespace {

Ledger opened(const std::string& path) {
    auto ledger = Ledger::open(path);
    if (!ledger) FAIL(ledger.error().detail);
    return *std::move(ledger);
}

std::vector<guide::Event> loaded(const Ledger& ledger, std::string_view reference) {
    auto events = ledger.load(reference);
    if (!events) FAIL(events.error().detail);
    return *std::move(events);
}

std::vector<guide::Event> closed_case(int spokes) {
    auto events = samples::events(1, 1 + spokes);
    events.push_back(samples::event(events.size() + 1, guide::CaseClosed{.how = guide::CaseEnd::Done}));
    return events;
}

}  // namespace

TEST_CASE("the mirror's missing tail is mended at open, after a torn line and when it is gone") {
    const Folder folder;
    const auto path = folder.file("a.ledger");
    { opened(path).append("K-0147", samples::events(1, 4)); }
    const auto whole = testplace::read(path + ".txt");
    CHECK(std::count(whole.begin(), whole.end(), '\n') == 4);
    const auto third = whole.rfind('\n', whole.size() - 2) + 1;
    testplace::write(path + ".txt", whole.substr(0, third));
    { opened(path); }
    CHECK(testplace::read(path + ".txt") == whole);
    testplace::write(path + ".txt", whole.substr(0, third + 20));
    { opened(path); }
    CHECK(testplace::read(path + ".txt") == whole.substr(0, third + 20) + "\n" + whole.substr(third));
    std::filesystem::remove(path + ".txt");
    { opened(path); }
    CHECK(testplace::read(path + ".txt") == whole);
}

TEST_CASE("events that only the mirror has are offered, never merged by themselves, and taken over when asked") {
    const Folder folder;
    const auto path = folder.file("a.ledger");
    { opened(path).append("K-0147", samples::events(1, 3)); }
    const auto older = testplace::read(path);
    { opened(path).append("K-0147", samples::events(4, 2)); }
    testplace::write(path, older);
    auto ledger = opened(path);
    CHECK((loaded(ledger, "K-0147") == samples::events(1, 3)));
    CHECK(ledger.verify("K-0147")->only_in_mirror == 2);
    const auto offered = ledger.recoverable();
    REQUIRE(offered);
    REQUIRE(offered->size() == 1);
    CHECK((offered->front().events == samples::events(4, 2)));
    const auto taken = ledger.recover("K-0147");
    REQUIRE(taken);
    CHECK(*taken == 2);
    CHECK((loaded(ledger, "K-0147") == samples::events(1, 5)));
    CHECK(ledger.recoverable()->empty());
    CHECK((ledger.append("K-0147", samples::events(6, 1)) == Health{.on_disk = 6}));
}

TEST_CASE("a changed line of the mirror is not offered") {
    const Folder folder;
    const auto path = folder.file("a.ledger");
    { opened(path).append("K-0147", samples::events(1, 3)); }
    const auto older = testplace::read(path);
    { opened(path).append("K-0147", samples::events(4, 1)); }
    testplace::write(path, older);
    auto text = testplace::read(path + ".txt");
    text.replace(text.rfind("\"by\":1"), 6, "\"by\":2");
    testplace::write(path + ".txt", text);
    CHECK(opened(path).recoverable()->empty());
}

TEST_CASE("the whole ledger comes back from the mirror when the database is gone") {
    const Folder folder;
    const auto path = folder.file("a.ledger");
    {
        auto ledger = opened(path);
        ledger.append("K\t1\\\n", samples::events(1, 3));
        ledger.append("K-2", closed_case(2));
    }
    std::filesystem::remove(path);
    auto ledger = opened(path);
    CHECK(ledger.recoverable()->size() == 2);
    CHECK(*ledger.recover("K\t1\\\n") == 3);
    CHECK(*ledger.recover("K-2") == 4);
    CHECK((loaded(ledger, "K\t1\\\n") == samples::events(1, 3)));
    CHECK((loaded(ledger, "K-2") == closed_case(2)));
}

TEST_CASE("a mirror that cannot be written is trouble, not a failed append, and is mended when it can be") {
    const Folder folder;
    const auto path = folder.file("a.ledger");
    std::filesystem::create_directory(path + ".txt");
    auto ledger = opened(path);
    const auto health = ledger.append("K-0147", samples::events(1, 2));
    CHECK(health.held == 0);
    CHECK(health.on_disk == 2);
    REQUIRE(health.trouble.has_value());
    CHECK(health.trouble->path == path + ".txt");
    std::filesystem::remove(path + ".txt");
    CHECK((ledger.append("K-0147", samples::events(3, 1)) == Health{.on_disk = 3}));
    const auto text = testplace::read(path + ".txt");
    CHECK(std::count(text.begin(), text.end(), '\n') == 3);
}
