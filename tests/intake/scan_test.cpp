// Worked examples of the standards. Only their own example numbers stand here; no code table.
#include "intake/scan.hpp"

#include "intake/scan_parts.hpp"

#include <doctest/doctest.h>

using namespace guide;
using measure::Day;

namespace {

constexpr Day today{2026, 11, 25};

template <class T>
T as(const std::string& bytes, const Day& day = today) {
    const Label label = intake::read_scan(bytes, day);
    CAPTURE(bytes);
    REQUIRE(std::holds_alternative<T>(label));
    return std::get<T>(label);
}

WhyUnread why(const std::string& bytes) { return as<Unread>(bytes).why; }

const std::string compound_5 = "=+05000=Z54991712345600=%T300=<T0416003&>0183652359&,4PL001499Z549917123456A00T041600320181231";

}  // namespace

// UK Red Book annex 2 (first row: weighted sum 148354, mod 37 = 21, 38 - 21 = 17); ST-001 appendix A (second); the others agree in
// python3-stdnum 1.18 (stdnum.iso7064.mod_37_2) and two packages of npm.
TEST_CASE("the check of a donation number is ISO/IEC 7064 MOD 37-2") {
    CHECK(intake::scan::mod_37_2("G123498654321") == 17);
    CHECK(intake::scan::mod_37_2("G123417654321") == 10);
    CHECK(intake::scan::mod_37_2("A999917123456") == 9);
    CHECK(intake::scan::mod_37_2("W000009123456") == 16);
    CHECK(intake::scan::mod_37_2("Z549917123456") == 25);
    CHECK(intake::scan::mod_37_2("G123489654321") == 34);
}

// ST-001 table RT004: flags 60 to 96 carry the check, the others none. Example number of ST-001 appendix A.
TEST_CASE("flags of 60 to 96 are the check of the donation number, others are not looked at") {
    const Isbt right = as<Isbt>("=G12341765432170");
    REQUIRE(right.donation);
    CHECK(*right.donation == Donation{.number = "G123417654321", .flags = "70", .checked = true});
    CHECK(why("=G12341765432171") == WhyUnread::WrongCheck);
    CHECK_FALSE(as<Isbt>("=G12341765432100").donation->checked);
    CHECK_FALSE(as<Isbt>("=G12341765432159").donation->checked);
    CHECK(why("=G12341765432160") == WhyUnread::WrongCheck);
    CHECK(why("=G12341765432196") == WhyUnread::WrongCheck);
    CHECK_FALSE(as<Isbt>("=G12341765432197").donation->checked);
}

// A property of MOD 37-2 (ISO/IEC 7064): every wrong character and every swap of two neighbours is found.
TEST_CASE("a donation number with one character wrong or two neighbours swapped is refused") {
    const std::string alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ", good = "=G12349865432177";
    CHECK(as<Isbt>(good).donation->checked);
    for (std::size_t at = 1; at < 14; ++at) {
        for (const char c : alphabet) {
            std::string bad = good;
            if (bad[at] == c) continue;
            bad[at] = c;
            CAPTURE(bad);
            CHECK(std::holds_alternative<Unread>(intake::read_scan(bad, today)));
        }
        std::string swapped = good;
        std::swap(swapped[at], swapped[at + 1]);
        if (at < 13 && swapped != good) CHECK(std::holds_alternative<Unread>(intake::read_scan(swapped, today)));
    }
}

TEST_CASE("the letter O and a zero in front stand in no facility number") {
    CHECK(why("=GO23417654321"
              "00") == WhyUnread::WrongCharacter);
    CHECK(why("=O123417654321"
              "00") == WhyUnread::WrongCharacter);
    CHECK(why("=0123417654321"
              "00") == WhyUnread::WrongCharacter);
    CHECK(why("=G1234176543A1"
              "00") == WhyUnread::WrongCharacter);
}

// Red Book: check character H in its box, flags 77; ST-001: A.
TEST_CASE("a number typed by hand needs the check character in its box") {
    const Donation typed{.number = "G123498654321", .flags = "", .checked = true};
    CHECK(*as<Isbt>("G1234 98 654321 H").donation == typed);
    CHECK(*as<Isbt>("G123498654321H").donation == typed);
    CHECK(as<Isbt>("G123417654321A").donation->checked);
    CHECK(why("G1234 98 654321") == WhyUnread::NoCheck);
    CHECK(why("G1234 98 654321 A") == WhyUnread::WrongCheck);
    CHECK(why("G1234 98 654321 HH") == WhyUnread::UnknownForm);
    CHECK(why("g1234 98 654321 h") == WhyUnread::UnknownForm);
}

// '*' is the 37th character of the alphabet: a number whose check is 36.
TEST_CASE("a check of 36 is typed as a star") {
    std::string number = "A999926000000";
    for (int i = 0; intake::scan::mod_37_2(number) != 36; ++i) number = "A9999260000" + std::to_string(10 + i);
    CHECK(as<Isbt>(number + "*").donation->number == number);
    CHECK(as<Isbt>("=" + number + "96").donation->checked);
}

// ST-001 and ST-012 examples: =<T0416003, =>019031 (2019-01-31), &>0183652359 (2018-12-31 23:59), =}017032 (2017-02-01).
TEST_CASE("product code, expiry with and without its minute, and production stand alone") {
    CHECK(*as<Isbt>("=<T0416003").product == Product{.code = "T0416", .division = "003"});
    CHECK(*as<Isbt>("=>019031").expires == Moment{.day = {2019, 1, 31}, .minute = std::nullopt});
    CHECK(*as<Isbt>("&>0183652359").expires == Moment{.day = {2018, 12, 31}, .minute = 23 * 60 + 59});
    CHECK(*as<Isbt>("=}017032").produced == Moment{.day = {2017, 2, 1}, .minute = std::nullopt});
    CHECK(*as<Isbt>("=*026001").collected == Moment{.day = {2026, 1, 1}, .minute = std::nullopt});
    CHECK(as<Isbt>("&*0260010000").collected->minute == std::optional(0));
    CHECK(as<Isbt>("&}0263652359").produced->day == Day{2026, 12, 31});
    CHECK(*as<Isbt>("=,000012").divisions == "000012");
    CHECK(*as<Isbt>("&,1000000000000XYZ123").lot == "000000000000XYZ123");
    CHECK(*as<Isbt>("=/A9997AB3456T0123").processor == Processor{.facility = "A9997", .product = "AB3456", .code = "T0123"});
}

// The Gregorian calendar: 2024 and 2000 are leap years, 2026 is none. A century digit other than 0 cannot be told for certain.
TEST_CASE("a day of the year is a day of that year, or refused") {
    CHECK(as<Isbt>("=>024060").expires->day == Day{2024, 2, 29});
    CHECK(as<Isbt>("=>026060").expires->day == Day{2026, 3, 1});
    CHECK(as<Isbt>("=>024366").expires->day == Day{2024, 12, 31});
    CHECK(as<Isbt>("=>000366").expires->day == Day{2000, 12, 31});
    CHECK(why("=>026366") == WhyUnread::NoDate);
    CHECK(why("=>026000") == WhyUnread::NoDate);
    CHECK(why("=>024367") == WhyUnread::NoDate);
    CHECK(why("=>926001") == WhyUnread::NoDate);
    CHECK(why("=>126001") == WhyUnread::NoDate);
    CHECK(why("&>0260012400") == WhyUnread::NoDate);
    CHECK(why("&>0260012360") == WhyUnread::NoDate);
    CHECK(why("=>0260A1") == WhyUnread::NoDate);
}

// ST-017 and ST-012 examples.
TEST_CASE("a compound message splits into what its header counts") {
    const Isbt four = as<Isbt>("=+04000=/A9997XYZ100T0479=A99991712345600=,000012=>019031");
    CHECK(four.processor->code == "T0479");
    CHECK(four.donation->number == "A999917123456");
    CHECK(*four.divisions == "000012");
    CHECK(four.expires->day == Day{2019, 1, 31});
    const Isbt six = as<Isbt>("=+06000=/A9999XYZ100T0476=,000025=A99971712345600=>019032=}017032&,1000000000000XYZ123");
    CHECK(six.expires->day == Day{2019, 2, 1});
    CHECK(six.produced->day == Day{2017, 2, 1});
    CHECK(*six.lot == "000000000000XYZ123");
    const Isbt five = as<Isbt>(compound_5);
    CHECK(five.donation->number == "Z549917123456");
    CHECK(*five.group == "T300");
    CHECK(*five.product == Product{.code = "T0416", .division = "003"});
    CHECK(*five.expires == Moment{.day = {2018, 12, 31}, .minute = 1439});
    CHECK(*five.european == EuropeanCode{.country = "PL",
                                         .establishment = "001499",
                                         .donation = "Z549917123456",
                                         .system = "A",
                                         .product = "00T0416",
                                         .split = "003",
                                         .expires = Day{2018, 12, 31}});
}

TEST_CASE("a compound message whose count is not what it holds is refused") {
    std::string bad = compound_5;
    bad[3] = '4';
    CHECK(why(bad) == WhyUnread::WrongCount);
    bad[3] = '6';
    CHECK(why(bad) == WhyUnread::WrongCount);
    CHECK(why("=+05000=/A9997XYZ100T0479=A99991712345600=,000012=>019031") == WhyUnread::WrongCount);
    CHECK(why("=+0X000=,000012") == WhyUnread::WrongCount);
    CHECK(why("=+01") == WhyUnread::WrongCount);
    CHECK(why(compound_5.substr(0, compound_5.size() - 1)) == WhyUnread::WrongLength);
    CHECK(why("=+02000=A99991712345600=(000012") == WhyUnread::UnknownForm);
}

TEST_CASE("a message that says one thing in two ways is refused") {
    std::string other_donation = compound_5;
    other_donation.replace(other_donation.find("PL001499Z") + 8, 13, "Z549917123457");
    CHECK(why(other_donation) == WhyUnread::Contradicts);
    std::string other_day = compound_5;
    other_day.replace(other_day.size() - 8, 8, "20181230");
    CHECK(why(other_day) == WhyUnread::Contradicts);
    std::string other_split = compound_5;
    other_split.replace(other_split.find("T0416003") + 5, 3, "004");
    CHECK(why(other_split) == WhyUnread::Contradicts);
    std::string other_product = compound_5;
    other_product.replace(other_product.find("=<T0416") + 2, 5, "T0417");
    CHECK(why(other_product) == WhyUnread::Contradicts);
    CHECK(why("=>019031=>019032") == WhyUnread::Contradicts);
    std::string no_expiry_set = compound_5;
    no_expiry_set.replace(no_expiry_set.size() - 8, 8, "00000000");
    CHECK_FALSE(as<Isbt>(no_expiry_set).european->expires);
}

TEST_CASE("two structures may stand side by side, three without a header may not") {
    CHECK(*as<Isbt>("=A99991712345600=,000012").divisions == "000012");
    CHECK(why("=A99991712345600=,000012=>019031") == WhyUnread::WrongCount);
    CHECK(why("=A999917123456") == WhyUnread::WrongLength);
    CHECK(why("=") == WhyUnread::UnknownForm);
    CHECK(why("= 0001") == WhyUnread::UnknownForm);
}

// Directive 2006/86/EC annex VII: 2 + 6 + 13 | 1 + 7 + 3 + 8; the eye-readable form is figure 2 of ST-012; 00000000 as the
// Austrian Gewebesicherheitsgesetz, Anlage 1, has it.
TEST_CASE("a Single European Code is 40 characters in its parts, typed or scanned") {
    const EuropeanCode code{.country = "PL",
                            .establishment = "001499",
                            .donation = "Z549917123456",
                            .system = "A",
                            .product = "00T0416",
                            .split = "003",
                            .expires = Day{2017, 12, 31}};
    CHECK(as<EuropeanCode>("SEC: PL001499Z549917123456 A00T041600320171231") == code);
    CHECK(as<EuropeanCode>("PL001499Z549917123456A00T041600320171231") == code);
    CHECK(*as<Isbt>("&,4PL001499Z549917123456A00T041600320171231").european == code);
    CHECK_FALSE(as<EuropeanCode>("PL001499Z549917123456A00T041600300000000").expires);
    CHECK(why("SEC: PL001499Z549917123456 A00T04160032017123") == WhyUnread::WrongLength);
    CHECK(why("SEC: PL001499Z549917123456 C00T041600320171231") == WhyUnread::WrongCharacter);
    CHECK(why("SEC: PL001499Z549917123456 A00T041600320171332") == WhyUnread::WrongCharacter);
    CHECK(why("SEC: P1001499Z549917123456 A00T041600320171231") == WhyUnread::WrongCharacter);
    CHECK(why("PL001499Z549917123456C00T041600320171231") == WhyUnread::UnknownForm);
}

TEST_CASE("what is none of these is not read") {
    for (const std::string bytes : {"", "hello", "]d1", "4006381333931", "+A123BJC5D6E71", "\xff\xfe", "SEC:", "&", "&,9123"}) {
        CAPTURE(bytes);
        CHECK(std::holds_alternative<Unread>(intake::read_scan(bytes, today)));
    }
    CHECK(why("4006381333931") == WhyUnread::NoCheck);
}

TEST_CASE("fourteen digits whose both checks hold may be a donation or a trade number: not read") {
    const auto with_check = [](int serial) {
        const std::string number = "1234567" + std::to_string(100'000 + serial);
        return number + "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*"[static_cast<std::size_t>(intake::scan::mod_37_2(number))];
    };
    int both = 0, donations = 0;
    for (int serial = 0; serial < 2000; ++serial) {
        const std::string number = with_check(serial);
        const bool trade = number.back() >= '0' && number.back() <= '9' && intake::scan::gs1_check_holds(number);
        CAPTURE(number);
        CHECK(std::holds_alternative<Unread>(intake::read_scan(number, today)) == trade);
        (trade ? both : donations) += 1;
    }
    CHECK(both > 0);
    CHECK(donations > 0);
}
