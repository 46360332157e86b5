// GS1 element strings: worked examples of the General Specifications, and the rules of years and days.
#include "intake/scan.hpp"

#include "intake/scan_parts.hpp"

#include <doctest/doctest.h>

using namespace guide;
using measure::Day;

namespace {

constexpr Day today{2026, 11, 25};

/// '~' stands for GS.
std::string with_gs(std::string text) {
    std::replace(text.begin(), text.end(), '~', '\x1d');
    return text;
}

template <class T>
T as(const std::string& bytes, const Day& day = today) {
    const Label label = intake::read_scan(bytes, day);
    CAPTURE(bytes);
    REQUIRE(std::holds_alternative<T>(label));
    return std::get<T>(label);
}

WhyUnread why(const std::string& bytes) { return as<Unread>(bytes).why; }

}  // namespace

// GTIN 09506000134352 and 629104150021-3 are GS1's own examples.
TEST_CASE("the check digit of GS1 has weights 3 and 1 from the right") {
    CHECK(intake::scan::gs1_check_holds("6291041500213"));
    CHECK(intake::scan::gs1_check_holds("09506000134352"));
    CHECK_FALSE(intake::scan::gs1_check_holds("09506000134353"));
    CHECK_FALSE(intake::scan::gs1_check_holds("09506000134325"));
}

TEST_CASE("GS1 element strings: number, expiry, lot to GS, serial to the end") {
    const Gs1 pack{.gtin = "09506000134352", .lot = "LOT42", .serial = "SN7", .expires = PackDate{.day = {2026, 12, 31}}};
    CHECK(as<Gs1>(with_gs("]d201095060001343521726123110LOT42~21SN7")) == pack);
    CHECK(as<Gs1>(with_gs("]C101095060001343521726123110LOT42~21SN7")) == pack);
    CHECK(as<Gs1>(with_gs("]d2~01095060001343521726123110LOT42~21SN7~")) == pack);
    CHECK(as<Gs1>(with_gs("]d2010950600013435217261231~10LOT42~21SN7")) == pack);
    CHECK(as<Gs1>(with_gs("01095060001343521726123110LOT42~21SN7")) == pack);
    CHECK(why("]d20109506000134353") == WhyUnread::WrongCheck);
    CHECK(why("0109506000134353") == WhyUnread::WrongCheck);
    CHECK(why("]d201095060001343") == WhyUnread::WrongLength);
    CHECK(why("]d2010950600013435X") == WhyUnread::WrongCharacter);
    CHECK(why("]d2") == WhyUnread::WrongLength);
}

TEST_CASE("without GS a lot runs to the end: a serial inside it is not split off") {
    const Gs1 pack = as<Gs1>("]d2010950600013435210LOT4221SN7");
    CHECK(*pack.lot == "LOT4221SN7");
    CHECK_FALSE(pack.serial);
    CHECK(why("]d210" + std::string(21, 'L')) == WhyUnread::WrongLength);
    CHECK(*as<Gs1>("]d210" + std::string(20, 'L')).lot == std::string(20, 'L'));
    CHECK(*as<Gs1>("]d2240" + std::string(30, 'A')).additional == std::string(30, 'A'));
    CHECK(why("]d2240" + std::string(31, 'A')) == WhyUnread::WrongLength);
    CHECK(why("]d210") == WhyUnread::WrongLength);
    CHECK(why(with_gs("]d210A~10B")) == WhyUnread::Contradicts);
    CHECK(*as<Gs1>(with_gs("]d210A~10A")).lot == "A");
}

// GS1 General Specifications: element strings with predefined length end without GS; others, unknown here, at GS.
TEST_CASE("element strings that are not used are kept whole, and end where their kind ends") {
    CHECK(as<Gs1>("]d20012345678901234567821SN7").others == std::vector<std::string>{"00123456789012345678"});
    CHECK(*as<Gs1>("]d20012345678901234567821SN7").serial == "SN7");
    CHECK(as<Gs1>(with_gs("]d230012~21SN7")).others == std::vector<std::string>{"30012"});
    CHECK(as<Gs1>("]d2202121SN7").others == std::vector<std::string>{"2021"});
    CHECK(why("]d2XY12") == WhyUnread::UnknownForm);
}

// GS1 General Specifications 7.12: 51 to 99 years ahead is the century before, 50 to 99 back the next. DD = 00 is the last day of
// the month: 130200 is 2013-02-28, 160200 is 2016-02-29. The case of 74, 76 and 77 in 2026 as gs1-barcode-parser-mod (npm) reads it.
TEST_CASE("two digits of a year are within 50 ahead and 49 back of today") {
    const auto expires = [](const std::string& yymmdd, int year) { return as<Gs1>("]d217" + yymmdd, Day{year, 11, 25}).expires->day; };
    CHECK(expires("740101", 2026) == Day{2074, 1, 1});
    CHECK(expires("760101", 2026) == Day{2076, 1, 1});
    CHECK(expires("770101", 2026) == Day{1977, 1, 1});
    CHECK(expires("490101", 2098) == Day{2049, 1, 1});
    CHECK(expires("480101", 2098) == Day{2148, 1, 1});
    CHECK(expires("990101", 2049) == Day{2099, 1, 1});
    CHECK(expires("990101", 2048) == Day{1999, 1, 1});
    CHECK(as<Gs1>("]d211990101", Day{2026, 1, 1}).produced->day == Day{1999, 1, 1});
}

TEST_CASE("a pack that gives no day lasts to the end of its month") {
    CHECK(*as<Gs1>("]d217160200").expires == PackDate{.day = {2016, 2, 29}, .month_only = true});
    CHECK(*as<Gs1>("]d217130200").expires == PackDate{.day = {2013, 2, 28}, .month_only = true});
    CHECK(*as<Gs1>("]d217261100").expires == PackDate{.day = {2026, 11, 30}, .month_only = true});
    CHECK(*as<Gs1>("]d217261200").expires == PackDate{.day = {2026, 12, 31}, .month_only = true});
    CHECK(why("]d217260230") == WhyUnread::NoDate);
    CHECK(why("]d217261300") == WhyUnread::NoDate);
    CHECK(why("]d217260000") == WhyUnread::NoDate);
}
