// The side file of summaries beside a ledger, and a scan that other cases of the station know.
#include "past_shelf.hpp"

#include "../ledger/place_for_tests.hpp"
#include "open_case.hpp"
#include "support/generated.hpp"
#include "support/sample.hpp"

#include <doctest/doctest.h>
#include <sys/stat.h>

#include <algorithm>

using namespace graftside;

namespace {

constexpr int cases = 12;

ledger::Ledger opened(const std::string& path, ledger::Purpose purpose = ledger::Purpose::Record) {
    auto made = ledger::Ledger::open(path, {.station_key = "", .vfs = "", .purpose = purpose});
    REQUIRE(made);
    return *std::move(made);
}

/// Twelve invented cases, the last of them still open.
void fill(const std::string& path) {
    ledger::Ledger book = opened(path);
    for (int number = 0; number < cases; ++number) {
        std::vector<guide::Event> events = sample::generated_case(number);
        if (number == cases - 1) events.pop_back();
        REQUIRE(book.append(sample::generated_reference(number), events).held == 0);
    }
}

std::vector<past::Summary> looked(const std::string& path) {
    const ledger::Ledger book = opened(path, ledger::Purpose::Look);
    auto all = summaries(book);
    REQUIRE(all);
    return *std::move(all);
}

std::string text_of(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::stringstream all;
    all << in.rdbuf();
    return all.str();
}

void write(const std::string& path, const std::string& text) { std::ofstream(path, std::ios::binary) << text; }

guide::Brief brief(const std::string& reference, bool invented = false) {
    guide::Brief made = sample::brief();
    made.inputs.file.reference = reference;
    made.inputs.file.invented = invented;
    return made;
}

constexpr measure::Instant now{.utc_ms = 1'795'600'000'000, .offset_min = 60, .boottime_ms = 5'000, .boot = 7};

OpenCase taken_up(ledger::Ledger& book, const std::string& reference, bool invented = false) {
    auto open = OpenCase::take_up(book, brief(reference, invented), guide::Source::Table, now);
    REQUIRE(open);
    return *std::move(open);
}

std::vector<guide::Objection> against(OpenCase& open, const std::string& bytes) {
    REQUIRE_FALSE(open.act(guide::Who::Circulating, guide::Scan{.bytes = bytes}, now));
    return open.state().scans.back().said.against;
}

}  // namespace

TEST_CASE("a summary is the same whether it is folded from the record or read from the side file") {
    const testplace::Folder folder;
    const std::string path = folder.file("a.ledger");
    fill(path);
    const auto folded = looked(path);
    REQUIRE(folded.size() == cases);
    for (int number = 0; number < cases - 1; ++number) {
        const auto one = static_cast<std::size_t>(number);
        CHECK((folded[one] == past::summary(guide::fold(sample::generated_case(number)))));
    }
    CHECK_FALSE(folded.back().end);
    const std::string shelf = text_of(path + ".past");
    CHECK(std::count(shelf.begin(), shelf.end(), '\n') == cases - 1);  // what is not over is not kept
    CHECK((looked(path) == folded));
    CHECK(text_of(path + ".past") == shelf);
}

TEST_CASE("what the side file holds for a record's last hash is believed, what cannot be read is made again") {
    const testplace::Folder folder;
    const std::string path = folder.file("a.ledger"), shelf_path = path + ".past";
    fill(path);
    const auto folded = looked(path);
    const std::string shelf = text_of(shelf_path);
    const auto at = shelf.find("\"counts\":0");
    REQUIRE(at != std::string::npos);
    std::string other = shelf;
    other.replace(at, 10, "\"counts\":7");
    write(shelf_path, other);
    CHECK(looked(path).front().counts == 7);
    for (const std::string& spoilt :
         {other.substr(0, at), "garbage\n" + shelf.substr(40), std::string(), shelf.substr(0, shelf.size() - 1), std::string(70, '\n')}) {
        write(shelf_path, spoilt);
        CHECK((looked(path) == folded));
    }
    std::filesystem::remove(shelf_path);
    CHECK((looked(path) == folded));
    CHECK(text_of(shelf_path) == shelf);
}

TEST_CASE("a line of another form is made again") {
    const testplace::Folder folder;
    const std::string path = folder.file("a.ledger"), shelf_path = path + ".past";
    fill(path);
    const auto folded = looked(path);
    std::string shelf = text_of(shelf_path);
    const std::string right = shelf;
    shelf[65] = '0';  // 64 digits of the hash and a tab stand before the form
    shelf.replace(shelf.find("\"counts\":0"), 10, "\"counts\":7");
    write(shelf_path, shelf);
    CHECK((looked(path) == folded));
    CHECK(text_of(shelf_path) == right);
}

TEST_CASE("a case that went on after it was kept is read anew") {
    const testplace::Folder folder;
    const std::string path = folder.file("a.ledger");
    fill(path);
    CHECK_FALSE(looked(path).back().end);
    {
        ledger::Ledger book = opened(path);
        const auto events = sample::generated_case(cases - 1);
        REQUIRE(book.append(sample::generated_reference(cases - 1), {&events.back(), 1}).held == 0);
    }
    CHECK(looked(path).back().end == std::optional(guide::CaseEnd::Done));
}

TEST_CASE("the side file is for this user alone, as the ledger is") {
    const testplace::Folder folder;
    const std::string path = folder.file("a.ledger");
    fill(path);
    looked(path);
    struct ::stat info {};
    REQUIRE(::stat((path + ".past").c_str(), &info) == 0);
    CHECK((info.st_mode & 0777) == 0600);
}

// The donation number is the example of ST-001; the pack's number GS1's own.
TEST_CASE("bytes become a label in an open case, and what another case used or keeps is told") {
    const testplace::Folder folder;
    ledger::Ledger book = opened(folder.file("a.ledger"));
    const std::string tissue = "=G12341765432170=<V0001001", pack =
                                                                 "]d2010950600013435217271231"
                                                                 "21SN7";
    {
        OpenCase first = taken_up(book, "K-1");
        CHECK(against(first, tissue).empty());
        CHECK(against(first, pack).empty());
        CHECK(first.state().scans.back().said.item.serial == std::optional<std::string>("SN7"));
    }
    OpenCase second = taken_up(book, "K-2");
    const auto kept = against(second, tissue);
    REQUIRE(kept.size() == 1);
    CHECK(kept.front() == guide::Objection{.what = guide::Against::Allocated, .values = {"K-1"}});
    const auto used = against(second, pack);
    REQUIRE(used.size() == 1);
    CHECK(used.front() == guide::Objection{.what = guide::Against::UsedBefore, .values = {"K-1"}});
    OpenCase rehearsal = taken_up(book, "R-1", true);
    CHECK(against(rehearsal, tissue).empty());
}
