// What a scan does in a case. The stops and who may overrule them are common practice in a theatre, no source; the numbers are the
// standards' own examples.
#include "guide/tissue.hpp"
#include "support/sample.hpp"

#include <doctest/doctest.h>

using namespace guide;
using measure::from_mm;

namespace {

constexpr Day operation{2026, 11, 25};  // of the sample's inputs

Label number(const std::string& donation) { return Isbt{.donation = Donation{.number = donation, .flags = "00"}}; }

Label whole(const std::string& donation, const std::string& division, Day expires = {2026, 12, 1}) {
    return Isbt{.donation = Donation{.number = donation, .flags = "00"},
                .product = Product{.code = "V0001", .division = division},
                .expires = Moment{.day = expires}};
}

constexpr auto ours = "G123417654321", another = "A999917123456";
constexpr auto gtin = "09506000134352", other_gtin = "06291041500213";

Brief brief(const std::optional<std::string>& donation = ours) {
    Brief made = sample::brief();
    made.inputs.file.donor.donation = donation;
    made.unit.packs = {{.gtin = gtin, .instrument = "suction-trephine", .size = from_mm(7.5)},
                       {.gtin = other_gtin, .instrument = "suction-trephine", .size = from_mm(8)},
                       {.gtin = "00000000000017", .instrument = "vacuum-punch", .size = from_mm(7.75)},
                       {.gtin = "00000000000024", .instrument = "old-trephine", .size = from_mm(7.5)}};
    return made;
}

/// What speaks against a scan, by name; the scan must be taken whatever it is.
std::vector<std::string> against(sample::Case& c, const Label& label, const std::vector<Elsewhere>& elsewhere = {}) {
    const std::string bytes = "scan " + std::to_string(c.state.last);
    REQUIRE(c.does(Scan{.bytes = bytes, .label = label, .elsewhere = elsewhere}, Who::Circulating));
    REQUIRE(c.state.scans.back().said.bytes == bytes);
    std::vector<std::string> names;
    for (const Objection& one : c.state.scans.back().said.against) names.emplace_back(name(one.what));
    return names;
}

using Names = std::vector<std::string>;

bool goes_on(sample::Case& c) { return c.does(FinishStep{.step = current_step(c.state)->id}); }

Label pack(const std::string& number, Day expires = {2027, 1, 31}, const std::string& serial = "SN7") {
    return Gs1{.gtin = number, .lot = "LOT42", .serial = serial, .expires = PackDate{.day = expires}};
}

}  // namespace

TEST_CASE("the planned tissue, in date, is taken and stops nothing") {
    sample::Case c(brief());
    CHECK(against(c, whole(ours, "001")).empty());
    CHECK(c.state.scans.back().said.item ==
          Item{.kind = ItemKind::Tissue, .donation = ours, .product = "V0001", .division = "001", .expires = Day{2026, 12, 1}});
    CHECK(goes_on(c));
}

TEST_CASE("another donation than the planned one stops, and says both numbers") {
    sample::Case c(brief());
    CHECK(against(c, whole(another, "001")) == Names{"not-planned-tissue"});
    CHECK(c.state.scans.back().said.against.front().values == Names{"A999917123456 V0001 001", ours});
    CHECK_FALSE(goes_on(c));
    CHECK(c.refusal.why == Refused::ScanStands);
    CHECK(c.refusal.values.front() == "not-planned-tissue");
}

TEST_CASE("a case file may name the tissue by its European code, with its product and division") {
    sample::Case c(brief("PL001499Z549917123456 A00T041600320171231"));
    const auto tissue = [](const std::string& division) {
        return Isbt{.donation = Donation{.number = "Z549917123456", .flags = "00"},
                    .product = Product{.code = "T0416", .division = division}};
    };
    CHECK(against(c, number("Z549917123456")).empty());
    CHECK(against(c, tissue("004")) == Names{"not-planned-tissue"});
    CHECK(c.state.scans.back().said.against.front().values == Names{"Z549917123456 T0416 004", "Z549917123456 T0416 003"});
    CHECK(against(c, tissue("003")).empty());
}

TEST_CASE("where the case file names no tissue, the first one read is the planned one") {
    sample::Case c(brief(std::nullopt));
    CHECK(against(c, whole(ours, "001")).empty());
    CHECK(against(c, whole(another, "001")) == Names{"not-planned-tissue"});
}

TEST_CASE("the named back-up is no unplanned tissue") {
    sample::Case c(brief());
    REQUIRE(c.does(TellTissue{.what = TissueWord::BackUpNamed, .text = "A9999 17 123456"}));
    CHECK(against(c, whole(another, "001")).empty());
}

TEST_CASE("tissue expires at the end of its day, or at its minute") {
    const auto tissue = [](Day day, std::optional<int> minute) {
        return Isbt{.donation = Donation{.number = ours, .flags = "00"}, .expires = Moment{.day = day, .minute = minute}};
    };
    const auto at = [&](int hour, Day day, std::optional<int> minute) {
        sample::Case c(brief());
        c.now.utc_ms = 1'795'564'800'000 + (hour - 1) * 3'600'000;  // 2026-11-25T00:00Z; the sample is an hour ahead of it
        return against(c, tissue(day, minute));
    };
    CHECK(at(12, operation, std::nullopt).empty());
    CHECK(at(12, {2026, 11, 24}, std::nullopt) == Names{"expired"});
    CHECK(at(12, operation, 12 * 60 + 1).empty());
    CHECK(at(13, operation, 12 * 60 + 1) == Names{"expired"});
    CHECK(at(12, operation, 12 * 60).empty());  // a second past twelve is still that minute
    CHECK(at(12, operation, 12 * 60 - 1) == Names{"expired"});
    CHECK(at(13, {2026, 11, 26}, 0).empty());
}

TEST_CASE("a case file with an old date does not make expired tissue good, nor one with a later date") {
    sample::Case c(brief());
    c.later(20LL * 24 * 3600);
    CHECK(against(c, whole(ours, "001", {2026, 12, 1})) == Names{"expired"});
    sample::Case early(brief());
    early.later(-20LL * 24 * 3600);
    CHECK(against(early, whole(ours, "001", {2026, 11, 24})) == Names{"expired"});
}

TEST_CASE("a label read symbol by symbol is one tissue, judged as a whole") {
    sample::Case c(brief());
    CHECK(against(c, number(ours)).empty());
    CHECK(against(c, Isbt{.product = Product{.code = "V0001", .division = "001"}}).empty());
    CHECK(against(c, Isbt{.expires = Moment{.day = {2026, 11, 1}}}) == Names{"expired"});
    const Item& item = c.state.scans.back().said.item;
    CHECK(item.donation == std::optional<std::string>(ours));
    CHECK(item.product == std::optional<std::string>("V0001"));
    CHECK(c.state.scans[0].completed);
    CHECK(c.state.scans[1].completed);
    CHECK_FALSE(c.state.scans[2].completed);
}

TEST_CASE("a part of a label without its number claims nothing but its date") {
    sample::Case c(brief());
    CHECK(against(c, Isbt{.product = Product{.code = "V0001", .division = "001"}}).empty());
    CHECK(c.state.scans.back().said.item.kind == ItemKind::Part);
    CHECK(against(c, Isbt{.expires = Moment{.day = {2026, 11, 1}}}) == Names{"expired"});
    sample::Case other(brief());
    CHECK(against(other, whole(ours, "001")).empty());
    CHECK(against(other, Isbt{.product = Product{.code = "V0001", .division = "002"}}).empty());
    CHECK(other.state.scans.back().said.item.kind == ItemKind::Part);
    CHECK_FALSE(other.state.scans.front().completed);
    CHECK(against(other, Isbt{.expires = Moment{.day = {2026, 12, 2}}}).empty());
    CHECK(other.state.scans.back().said.item.kind == ItemKind::Part);
}

namespace {

Label product(const std::string& division) { return Isbt{.product = Product{.code = "V0001", .division = division}}; }
Label expiry(Day day) { return Isbt{.expires = Moment{.day = day}}; }

}  // namespace

// The donation number alone tells no label from another: both corneas of a donor bear it (ISBT 128 product code structure).
TEST_CASE("a part joins the label being read, or none: not past another item, nor late, nor once something was decided") {
    const Day day{2026, 12, 2};
    const auto joins = [&](const auto& between) {
        sample::Case c(brief());
        REQUIRE(against(c, number(ours)).empty());
        between(c);
        against(c, expiry(day));
        const ScanSeen& last = c.state.scans.back();
        CHECK((last.said.completes != 0) == (last.said.item.kind == ItemKind::Tissue));
        return last.said.completes != 0;
    };
    CHECK(joins([](sample::Case&) {}));
    CHECK(joins([](sample::Case& c) { against(c, product("001")); }));
    CHECK_FALSE(joins([](sample::Case& c) { against(c, pack(gtin)); }));
    CHECK_FALSE(joins([](sample::Case& c) { REQUIRE(c.does(Scan{.bytes = "?", .label = Unread{WhyUnread::WrongCheck}})); }));
    CHECK_FALSE(joins([](sample::Case& c) { against(c, whole(another, "001")); }));
    CHECK_FALSE(joins([](sample::Case& c) { REQUIRE(c.does(PutAside{.event = c.state.last, .why = "not this one"})); }));
    CHECK_FALSE(joins([](sample::Case& c) { REQUIRE(c.does(TellTissue{.what = TissueWord::Accepted}, Who::Surgeon)); }));
    CHECK(joins([](sample::Case& c) { REQUIRE(c.does(TellTissue{.what = TissueWord::BackUpNamed, .text = another})); }));
    CHECK(joins([](sample::Case& c) { c.later(115); }));
    CHECK_FALSE(joins([](sample::Case& c) { c.later(120); }));
}

TEST_CASE("two labels read one after the other share no part") {
    sample::Case c(brief());
    against(c, number(ours));
    against(c, whole(another, "001", {2026, 12, 1}));
    against(c, expiry({2026, 12, 9}));
    CHECK(c.state.scans.back().said.item == Item{.kind = ItemKind::Part, .expires = Day{2026, 12, 9}});
    against(c, product("001"));  // what was joined to nothing is read on from by nothing
    CHECK(c.state.scans.back().said.completes == 0);
}

TEST_CASE("the number read again begins a label of its own where more was read before; read to its end it is the same or the mate") {
    sample::Case c(brief());
    against(c, number(ours));
    against(c, product("001"));
    against(c, expiry({2026, 12, 1}));
    const Seq first = c.state.last;
    against(c, number(ours));
    CHECK(c.state.scans.back().said.completes == 0);
    CHECK(tissue_read(c.state)->seq == first);  // a number alone takes nothing away from what was read
    against(c, expiry({2026, 12, 9}));
    CHECK(tissue_read(c.state)->seq == first);
    against(c, product("002"));
    CHECK(c.state.scans.back().said.item.expires == std::optional<Day>({2026, 12, 9}));
    REQUIRE(other_tissue_read(c.state) != nullptr);
    CHECK(other_tissue_read(c.state)->said.item.division == std::optional<std::string>("001"));
    CHECK(find_scan(c.state, first)->said.item.expires == std::optional<Day>({2026, 12, 1}));
    CHECK_FALSE(c.does(TellTissue{.what = TissueWord::Grafted}));
    CHECK(c.refusal.why == Refused::TwoTissues);
    CHECK(c.refusal.values == Names{"G123417654321 V0001 001"});
}

TEST_CASE("a label read symbol by symbol a second time takes the first one's place, and what was overruled is not raised again") {
    sample::Case c(brief());
    const Day past{2026, 11, 1};
    against(c, number(ours));
    REQUIRE(against(c, expiry(past)) == Names{"expired"});
    REQUIRE(c.does(Overrule{.event = c.state.last, .why = "checked", .contact = "bank"}, Who::Surgeon));
    CHECK(against(c, product("001")).empty());
    const Seq first = c.state.last;
    CHECK(against(c, number(ours)).empty());
    CHECK(against(c, product("001")).empty());
    CHECK(tissue_read(c.state)->seq == c.state.last);
    CHECK(tissue_read(c.state)->said.item.expires == std::optional(past));  // known from before
    CHECK(find_scan(c.state, first)->completed);
    CHECK(against(c, expiry(past)).empty());
    CHECK(goes_on(c));
    REQUIRE(c.does(PutAside{.event = c.state.scans.back().seq, .why = "not used"}));
    CHECK(tissue_read(c.state) == nullptr);
}

TEST_CASE("a label that was put aside is not read on from, and stops again when it is read again") {
    sample::Case c(brief());
    REQUIRE(against(c, number(another)) == Names{"not-planned-tissue"});
    REQUIRE(c.does(PutAside{.event = c.state.last}));
    CHECK(against(c, Isbt{.product = Product{.code = "V0001", .division = "001"}}).empty());
    CHECK(c.state.scans.back().said.item.kind == ItemKind::Part);
    CHECK(against(c, number(another)) == Names{"not-planned-tissue"});
    CHECK(c.state.scans.back().said.completes == 0);
}

TEST_CASE("tissue used in another case stops, and so does tissue of another patient; each names the case") {
    const auto elsewhere = [](const Label& label, bool used) { return std::vector<Elsewhere>{{"K-7", item_of(label), used}}; };
    sample::Case c(brief());
    CHECK(against(c, whole(ours, "001"), elsewhere(whole(ours, "001"), true)) == Names{"used-before"});
    CHECK(c.state.scans.back().said.against.front().values == Names{"K-7"});
    CHECK(against(c, whole(ours, "001"), elsewhere(whole(ours, "001"), false)) == Names{"allocated"});
    CHECK(against(c, whole(ours, "001"), elsewhere(whole(another, "001"), true)).empty());
}

// The donor's other cornea bears the same donation number; product and division tell them apart (ISBT 128 product code structure).
TEST_CASE("the donor's other cornea is no used tissue, but the number alone does not tell which cornea it is") {
    const std::vector<Elsewhere> mate{{"K-7", item_of(whole(ours, "002")), true}};
    sample::Case c(brief());
    CHECK(against(c, whole(ours, "001"), mate).empty());
    const Isbt other_product{.donation = Donation{.number = ours, .flags = "00"}, .product = Product{.code = "V0002", .division = "001"}};
    CHECK(against(c, whole(ours, "001"), {{"K-7", item_of(other_product), true}}).empty());
    sample::Case by_number(brief());
    CHECK(against(by_number, number(ours), mate) == Names{"which-cornea"});
    CHECK_FALSE(goes_on(by_number));
    CHECK_FALSE(by_number.does(Overrule{.event = by_number.state.last, .why = "bank asked"}, Who::Surgeon));
    CHECK(by_number.refusal.why == Refused::NeverOverruled);
    CHECK(against(by_number, Isbt{.product = Product{.code = "V0001", .division = "001"}}, mate).empty());
    CHECK(goes_on(by_number));
    // Where the other case has the number only, this label cannot tell more: then the surgeon may.
    sample::Case old_record(brief());
    CHECK(against(old_record, whole(ours, "001"), {{"K-7", item_of(number(ours)), true}}) == Names{"which-cornea"});
    CHECK(old_record.does(Overrule{.event = old_record.state.last, .why = "bank says the other cornea went there"}, Who::Surgeon));
}

TEST_CASE("another patient's tissue is never overruled, only put aside") {
    sample::Case c(brief());
    REQUIRE(against(c, whole(ours, "001"), {{"K-7", item_of(whole(ours, "001")), false}}) == Names{"allocated"});
    const Seq scan = c.state.last;
    CHECK_FALSE(c.does(Overrule{.event = scan, .why = "mine", .contact = "bank"}, Who::Surgeon));
    CHECK(c.refusal.why == Refused::NeverOverruled);
    CHECK(c.does(PutAside{.event = scan, .why = "for K-7"}));
    CHECK(goes_on(c));
    CHECK_FALSE(c.does(PutAside{.event = scan}));
    CHECK(c.refusal.why == Refused::AlreadyDone);
}

TEST_CASE("expired tissue is overruled by the surgeon alone, who names whom they spoke to at the tissue bank") {
    sample::Case c(brief());
    REQUIRE(against(c, whole(ours, "001", {2026, 11, 1})) == Names{"expired"});
    const Seq scan = c.state.last;
    CHECK_FALSE(c.does(Overrule{.event = scan, .why = "checked", .contact = "bank"}, Who::Circulating));
    CHECK(c.refusal.why == Refused::NeedsSurgeon);
    CHECK_FALSE(c.does(Overrule{.event = scan, .contact = "bank"}, Who::Surgeon));
    CHECK(c.refusal.why == Refused::NeedsReason);
    CHECK_FALSE(c.does(Overrule{.event = scan, .why = "checked"}, Who::Surgeon));
    CHECK(c.refusal.why == Refused::NeedsContact);
    CHECK_FALSE(goes_on(c));
    CHECK(c.does(Overrule{.event = scan, .why = "checked", .contact = "duty officer, invented bank"}, Who::Surgeon));
    CHECK(goes_on(c));
    CHECK_FALSE(c.does(Overrule{.event = scan, .why = "checked", .contact = "bank"}, Who::Surgeon));
    CHECK(c.refusal.why == Refused::AlreadyDone);
}

TEST_CASE("tissue that was grafted in another case is never overruled, nor is anything but a scan") {
    sample::Case c(brief());
    REQUIRE(against(c, whole(ours, "001"), {{"K-7", item_of(whole(ours, "001")), true}}) == Names{"used-before"});
    const Seq scan = c.state.last;
    CHECK_FALSE(c.does(Overrule{.event = scan, .why = "mine", .contact = "bank"}, Who::Surgeon));
    CHECK(c.refusal.why == Refused::NeverOverruled);
    REQUIRE(c.does(PutAside{.event = scan, .why = "of another case"}));
    CHECK_FALSE(c.does(Overrule{.event = 1, .why = "so"}, Who::Surgeon));
    CHECK(c.refusal.why == Refused::UnknownId);
}

TEST_CASE("what the surgeon has overruled is not raised again by the same label read a second time") {
    sample::Case c(brief());
    REQUIRE(against(c, whole(another, "001")) == Names{"not-planned-tissue"});
    REQUIRE(c.does(Overrule{.event = c.state.last, .why = "bank sent another"}, Who::Surgeon));
    CHECK(against(c, whole(another, "001")).empty());
    CHECK(against(c, whole(another, "001")).empty());
    CHECK(against(c, whole(another, "001"), {{"K-7", item_of(whole(another, "001")), false}}) == Names{"allocated"});
}

TEST_CASE("a pack of the planned instrument and size is taken, another size or instrument stops") {
    sample::Case c(brief());
    CHECK(against(c, pack(gtin)).empty());
    CHECK(c.state.scans.back().said.item.size == std::optional(from_mm(7.5)));
    CHECK(against(c, pack(other_gtin)) == Names{"wrong-size"});
    CHECK(c.state.scans.back().said.against.front().values == Names{"8.00", "7.50"});
    CHECK(against(c, pack("00000000000017")).empty());
    CHECK(against(c, pack("00000000000024")) == Names{"not-planned-pack"});
    CHECK(c.state.scans.back().said.against.front().values == Names{"old-trephine"});
}

TEST_CASE("of a pack that is not in the unit's list only the date is judged") {
    sample::Case c(brief());
    CHECK(against(c, pack("00000000000031")).empty());
    CHECK_FALSE(c.state.scans.back().said.item.size);
    CHECK(against(c, pack("00000000000031", {2026, 11, 24})) == Names{"expired"});
    CHECK(c.does(Overrule{.event = c.state.last, .why = "no other"}, Who::Surgeon));
}

TEST_CASE("a pack is known again by its serial; without one it may be another of its kind") {
    const std::vector<Elsewhere> used{{"K-7", item_of(pack(gtin)), true}};
    sample::Case c(brief());
    CHECK(against(c, pack(gtin), used) == Names{"used-before"});
    CHECK(against(c, pack(gtin, {2027, 1, 31}, "SN8"), used).empty());
    CHECK(against(c, Gs1{.gtin = gtin, .lot = "LOT42"}, used).empty());
}

TEST_CASE("what cannot be read is kept raw and stops nothing") {
    sample::Case c(brief());
    REQUIRE(c.does(Scan{.bytes = "hello \xff", .label = Unread{WhyUnread::UnknownForm}}));
    CHECK(c.state.scans.back().said == Scanned{.bytes = "hello \xff"});
    CHECK(goes_on(c));
}

TEST_CASE("in the quiet part a scan waits: it is recorded, and stops the first step after it") {
    Brief made = brief();
    for (Phase& phase : made.procedure.phases) {
        for (Step& step : phase.steps) step.quiet = step.id == "button-out";
    }
    sample::Case c(made);
    c.up_to("button-out");
    REQUIRE(against(c, pack(other_gtin)) == Names{"wrong-size"});
    CHECK(c.does(FinishStep{.step = "button-out"}));
    CHECK_FALSE(c.does(FinishStep{.step = "donor-on"}));
    CHECK(c.refusal.why == Refused::ScanStands);
}

TEST_CASE("a standing scan keeps suction off before the cut, and never refuses a spoke that was turned") {
    sample::Case c(brief());
    c.up_to("suction-on");
    REQUIRE(against(c, pack(other_gtin)) == Names{"wrong-size"});
    CHECK_FALSE(c.does(TurnSuction{.to = Suction::On}));
    CHECK(c.refusal.why == Refused::ScanStands);
    REQUIRE(c.does(PutAside{.event = c.state.last, .why = "another size"}));
    REQUIRE(c.does(TurnSuction{.to = Suction::On}));
    REQUIRE(against(c, pack(other_gtin, {2027, 1, 31}, "SN9")) == Names{"wrong-size"});
    CHECK(c.does(CountSpoke{.source = Source::Table}));
    CHECK(c.does(CloseCase{.how = CaseEnd::Abandoned, .why = "wrong size"}));
}
