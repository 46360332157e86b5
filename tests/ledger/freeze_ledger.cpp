// Writes a ledger as this release writes it: freeze_ledger PATH. Run once a release under a new name (tests/ledger/frozen);
// files of earlier releases are never written again. Values are invented.
#include "ledger/ledger.hpp"
#include "ledger/samples.hpp"

#include <cstdio>

int main(int count, char** words) {
    if (count != 2) return std::fputs("freeze_ledger PATH\n", stderr), 2;
    auto ledger = ledger::Ledger::open(words[1]);
    if (!ledger) return std::fputs(ledger.error().detail.c_str(), stderr), 3;
    std::vector<guide::Event> events;
    for (const guide::Fact& fact : samples::facts())
        if (fact != guide::Fact{guide::CaseOpened{}} && fact != guide::Fact{guide::PlanAccepted{}})
            events.push_back(samples::event(events.size() + 1, fact));
    if (ledger->append("K-0147", events).held > 0 || ledger->append("K-0148", samples::events(1, 3)).held > 0) return 3;
    const auto seal = ledger->seal("K-0147", samples::instant(100));
    if (!seal) return std::fputs(seal.error().detail.c_str(), stderr), 3;
    std::printf("%s\n", seal->fingerprint.c_str());
    return 0;
}
