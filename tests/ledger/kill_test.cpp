// The program killed at any moment: what it called saved is there. (A power cut is another matter: see fault_test.cpp.)
#include "ledger/ledger.hpp"
#include "ledger/place_for_tests.hpp"
#include "ledger/samples.hpp"

#include <doctest/doctest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <random>

using namespace ledger;
using testplace::Folder;

namespace {

/// Appends without end and writes the number of each saved event to the pipe. Ends only by being killed.
[[noreturn]] void append_without_end(const std::string& path, int pipe) {
    auto ledger = Ledger::open(path);
    if (!ledger) ::_exit(1);
    guide::Seq seq = ledger->health("K-0147").on_disk;
    while (true) {
        const auto events = samples::events(seq + 1, 1);
        if (ledger->append("K-0147", events).held > 0) ::_exit(2);
        ++seq;
        if (::write(pipe, &seq, sizeof seq) != sizeof seq) ::_exit(3);
    }
}

/// The last number that came through the pipe before the end of the child, which is killed after `milliseconds`.
guide::Seq killed_after(const std::string& path, unsigned milliseconds) {
    int ends[2];
    REQUIRE(::pipe(ends) == 0);
    const pid_t child = ::fork();
    if (child == 0) append_without_end(path, ends[1]);
    ::close(ends[1]);
    guide::Seq saved = 0;
    REQUIRE(::read(ends[0], &saved, sizeof saved) == sizeof saved);  // it is under way
    ::usleep(milliseconds * 1000);
    ::kill(child, SIGKILL);
    while (::read(ends[0], &saved, sizeof saved) == sizeof saved) {
    }
    ::close(ends[0]);
    int status = 0;
    ::waitpid(child, &status, 0);
    CHECK(WIFSIGNALED(status));
    return saved;
}

}  // namespace

TEST_CASE("killed at any moment, thirty times over: every event called saved is there and the chain is whole") {
    const Folder folder;
    const auto path = folder.file("a.ledger");
    std::mt19937 random(7);
    for (int round = 0; round < 30; ++round) {
        CAPTURE(round);
        const guide::Seq saved = killed_after(path, static_cast<unsigned>(random() % 40));
        const auto ledger = Ledger::open(path);
        REQUIRE(ledger);
        const auto events = ledger->load("K-0147");
        REQUIRE(events);
        CHECK(events->size() >= saved);
        CHECK(events->size() <= saved + 1);  // one may have been on its way
        CHECK((*events == samples::events(1, static_cast<int>(events->size()))));
        CHECK(ledger->verify("K-0147")->only_in_mirror == 0);
    }
}
