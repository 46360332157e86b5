#include "guide/tissue.hpp"

#include "support/sample.hpp"

#include <doctest/doctest.h>

using namespace guide;

namespace {

Brief brief(plan::Storage storage, std::optional<Day> since) {
    Brief made = sample::brief();
    made.inputs.file.donor.storage = storage;
    made.inputs.file.donor.stored = since;
    return made;
}

StorageDays band(plan::Storage storage, int days) {
    const sample::Case c(brief(storage, Day{2026, 11, 1}));
    const auto made = stored(c.state, {2026, 11, 1 + days});
    REQUIRE(made);
    CHECK(made->days == days);
    return made->band;
}

}  // namespace

// Int Ophthalmol 2008;28:155-63 (cold 7 to 14 days, warm culture to 4 weeks); JAMA Ophthalmol 2017;135:1401-9 (up to 7 days, 8 to 14).
TEST_CASE("cold tissue is flagged after 7 days and over after 14, warm culture over after 28") {
    using plan::Storage;
    CHECK(band(Storage::Cold, 7) == StorageDays::Usual);
    CHECK(band(Storage::Cold, 8) == StorageDays::Flagged);
    CHECK(band(Storage::Cold, 14) == StorageDays::Flagged);
    CHECK(band(Storage::Cold, 15) == StorageDays::Over);
    CHECK(band(Storage::Culture, 28) == StorageDays::Usual);
    CHECK(band(Storage::Culture, 29) == StorageDays::Over);
}

TEST_CASE("days in storage are told only where the kind and the first day are known; the label's collection will do") {
    sample::Case c(brief(plan::Storage::Cold, std::nullopt));
    CHECK_FALSE(stored(c.state, {2026, 11, 25}));
    REQUIRE(c.does(
        Scan{.bytes = "a", .label = Isbt{.donation = Donation{.number = "G123417654321"}, .collected = Moment{.day = {2026, 11, 20}}}}));
    CHECK(stored(c.state, {2026, 11, 25}) == Stored{.days = 5, .band = StorageDays::Usual});
    CHECK_FALSE(stored(sample::Case().state, {2026, 11, 25}));
}

// Transplantation 2004;78:1299-302: counts differ by more than 10 % in over half; so 10 % either way is the least.
TEST_CASE("a density is good to 10 %, and is under the unit's minimum or perhaps under it") {
    const auto judged = [](int counted, std::optional<int> least) {
        Brief made = sample::brief();
        made.inputs.file.donor.endothelium_per_mm2 = counted;
        made.inputs.limits.endothelium_per_mm2 = least;
        return *density(sample::Case(made).state);
    };
    CHECK(judged(2500, std::nullopt) == Density{.counted = 2500, .low = 2250, .high = 2750});
    CHECK(judged(1999, 2000).under);
    CHECK_FALSE(judged(2000, 2000).under);
    CHECK(judged(2000, 2000).perhaps_under);
    CHECK(judged(2222, 2000).perhaps_under);
    CHECK_FALSE(judged(2223, 2000).perhaps_under);
    CHECK_FALSE(judged(2000, 1800).perhaps_under);  // 10 % less is the minimum itself
    CHECK_FALSE(density(sample::Case().state));
}

TEST_CASE("the surgeon accepts the tissue or says why it is unfit, nobody else; the later word counts") {
    sample::Case c;
    CHECK_FALSE(c.does(TellTissue{.what = TissueWord::Accepted}, Who::Scrub));
    CHECK(c.refusal.why == Refused::NeedsSurgeon);
    CHECK_FALSE(c.does(TellTissue{.what = TissueWord::Unfit}, Who::Surgeon));
    CHECK(c.refusal.why == Refused::NeedsReason);
    REQUIRE(c.does(TellTissue{.what = TissueWord::Unfit, .text = "folds"}, Who::Surgeon));
    CHECK(find_told(c.state, TissueWord::Unfit)->text == "folds");
    REQUIRE(c.does(TellTissue{.what = TissueWord::Accepted}, Who::Surgeon));
    CHECK(find_told(c.state, TissueWord::Unfit) == nullptr);
    CHECK(find_told(c.state, TissueWord::Accepted) != nullptr);
}

TEST_CASE("unfit tissue holds the steps and the graft up until the surgeon accepts another") {
    sample::Case c;
    const StepId step = current_step(c.state)->id;
    REQUIRE(c.does(TellTissue{.what = TissueWord::Unfit, .text = "folds"}, Who::Surgeon));
    CHECK_FALSE(c.does(FinishStep{.step = step}));
    CHECK(c.refusal.why == Refused::TissueUnfit);
    CHECK_FALSE(c.does(TellTissue{.what = TissueWord::Grafted}));
    CHECK(c.refusal.why == Refused::TissueUnfit);
    REQUIRE(c.does(TellTissue{.what = TissueWord::Accepted}, Who::Surgeon));
    CHECK(c.does(FinishStep{.step = step}));
    CHECK(c.does(TellTissue{.what = TissueWord::Grafted}));
}

TEST_CASE("tissue found unfit once the eye is open holds no step up: the eye is closed again") {
    sample::Case c;
    c.up_to("leak-test");
    const StepId step = current_step(c.state)->id;
    REQUIRE(c.does(TellTissue{.what = TissueWord::Unfit, .text = "torn"}, Who::Surgeon));
    CHECK(c.does(FinishStep{.step = step}));
    CHECK_FALSE(c.does(TellTissue{.what = TissueWord::Grafted}));
    CHECK(c.refusal.why == Refused::TissueUnfit);
}

TEST_CASE("a back-up that was read in is not the tissue of the case, and one of two is put aside before it is said to be grafted") {
    const auto scan = [](const std::string& number) {
        return Scan{.bytes = number, .label = Isbt{.donation = Donation{.number = number}}};
    };
    for (const bool named_in_file : {true, false}) {
        CAPTURE(named_in_file);
        Brief made = sample::brief();
        if (named_in_file) made.inputs.file.donor.donation = "G123417654321";
        sample::Case c(made);
        REQUIRE(c.does(scan("G123417654321")));
        const Seq main = c.state.last;
        REQUIRE(c.does(TellTissue{.what = TissueWord::BackUpNamed, .text = "A999917123456"}));
        CHECK(other_tissue_read(c.state) == nullptr);
        REQUIRE(c.does(scan("A999917123456")));
        const Seq backup = c.state.last;
        CHECK(tissue_read(c.state)->seq == main);
        REQUIRE(other_tissue_read(c.state) != nullptr);
        CHECK(bank_note(c.state).front().values.front() == "G123417654321");
        CHECK_FALSE(c.does(TellTissue{.what = TissueWord::Grafted}));
        CHECK(c.refusal.why == Refused::TwoTissues);
        CHECK(c.refusal.values == std::vector<std::string>{"A999917123456"});
        sample::Case lost = c;
        REQUIRE(c.does(PutAside{.event = backup, .why = "not needed"}));
        REQUIRE(c.does(TellTissue{.what = TissueWord::Grafted}));
        CHECK(tissue_read(c.state)->seq == main);
        REQUIRE(lost.does(PutAside{.event = main, .why = "dropped"}));
        REQUIRE(lost.does(TellTissue{.what = TissueWord::Grafted}));
        CHECK(tissue_read(lost.state)->seq == backup);
        CHECK(bank_note(lost.state).front().values.front() == "A999917123456");
    }
}

TEST_CASE("tissue is not accepted while something speaks against it") {
    Brief made = sample::brief();
    made.inputs.file.donor.donation = "G123417654321";
    sample::Case c(made);
    REQUIRE(c.does(Scan{.bytes = "b", .label = Isbt{.donation = Donation{.number = "A999917123456"}}}));
    CHECK_FALSE(c.does(TellTissue{.what = TissueWord::Accepted}, Who::Surgeon));
    CHECK(c.refusal.why == Refused::ScanStands);
    CHECK(c.does(TellTissue{.what = TissueWord::Unfit, .text = "another number"}, Who::Surgeon));
}

TEST_CASE("the note to the tissue bank says which tissue, what became of it, and what was left over") {
    Brief made = sample::brief();
    made.inputs.file.donor.donation = "G123417654321";
    sample::Case c(made);
    const auto ids = [&] {
        std::vector<std::string> all;
        for (const Remark& one : bank_note(c.state)) all.push_back(one.id);
        return all;
    };
    CHECK(ids() == std::vector<std::string>{"bank.tissue", "bank.case", "bank.use-not-told"});
    CHECK(bank_note(c.state).front().values == std::vector<std::string>{"G123417654321", "-", "-"});
    REQUIRE(c.does(Scan{.bytes = "c",
                        .label = Isbt{.donation = Donation{.number = "G123417654321"},
                                      .product = Product{.code = "V0001", .division = "001"},
                                      .expires = Moment{.day = {2026, 12, 1}}}}));
    REQUIRE(c.does(TellTissue{.what = TissueWord::Accepted}, Who::Surgeon));
    REQUIRE(c.does(TellTissue{.what = TissueWord::Grafted}));
    CHECK_FALSE(c.does(TellTissue{.what = TissueWord::LeftOver}));
    REQUIRE(c.does(TellTissue{.what = TissueWord::LeftOver, .text = "rim and medium to culture"}));
    CHECK(ids() == std::vector<std::string>{"bank.tissue", "bank.case", "bank.expires", "bank.accepted", "bank.grafted", "bank.left-over"});
    CHECK(bank_note(c.state).front().values == std::vector<std::string>{"G123417654321", "V0001", "001"});
    CHECK(bank_note(c.state).back().values.front() == "rim and medium to culture");
}
