// Whatever the bytes, what is read bears its check digit, days of the calendar and the lengths of its parts.
#include "intake/scan.hpp"
#include "intake/scan_parts.hpp"
#include "measure/expect.hpp"
#include "measure/overloaded.hpp"

#include <cstddef>
#include <cstdint>
#include <string>

namespace {

using measure::expect;

void look_at(const guide::EuropeanCode& code) {
    expect(code.donation.size() == 13 && code.product.size() == 7 && (!code.expires || measure::valid(*code.expires)));
}

void look_at(const guide::Isbt& label) {
    if (label.donation) expect(intake::scan::is_donation_number(label.donation->number));
    for (const auto& moment : {label.expires, label.collected, label.produced}) {
        if (moment) expect(measure::valid(moment->day) && moment->minute.value_or(0) >= 0 && moment->minute.value_or(0) < 24 * 60);
    }
    if (label.european) look_at(*label.european);
}

void look_at(const guide::Gs1& pack) {
    if (pack.gtin) expect(pack.gtin->size() == 14 && intake::scan::gs1_check_holds(*pack.gtin));
    if (pack.lot) expect(!pack.lot->empty() && pack.lot->size() <= 20);
    for (const auto& date : {pack.expires, pack.produced}) {
        if (date) expect(measure::valid(date->day));
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const guide::Label label = intake::read_scan(std::string(data, data + size), {2026, 11, 25});
    std::visit(measure::overloaded{[](const guide::Unread&) {}, [](const auto& read) { look_at(read); }}, label);
    return 0;
}
