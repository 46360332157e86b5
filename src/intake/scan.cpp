#include "intake/scan.hpp"

#include "intake/scan_parts.hpp"

#include <array>

namespace intake {
namespace scan {

using namespace guide;

std::optional<EuropeanCode> european_code(std::string_view forty) {
    if (forty.size() != 40) return std::nullopt;
    const auto part = [&](std::size_t from, std::size_t length) { return std::string(forty.substr(from, length)); };
    EuropeanCode code{.country = part(0, 2),
                      .establishment = part(2, 6),
                      .donation = part(8, 13),
                      .system = part(21, 1),
                      .product = part(22, 7),
                      .split = part(29, 3)};
    const std::string_view expiry = forty.substr(32);
    if (expiry != "00000000") code.expires = day_from_digits(expiry);
    const bool dated = code.expires || expiry == "00000000";
    const bool known_system = code.system == "E" || code.system == "A" || code.system == "B";
    if (!dated || !known_system || !all(code.country, is_capital) || !all(forty, is_alnum)) return std::nullopt;
    return code;
}

Label read_typed(std::string_view text) {
    constexpr std::string_view european = "SEC:", checks = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";
    constexpr std::size_t unchecked = 13, checked = 14, forty = 40;
    const bool said_so = text.starts_with(european);
    if (said_so) text.remove_prefix(european.size());
    std::string typed(text);
    std::erase(typed, ' ');
    if (const auto code = european_code(typed)) return *code;
    if (said_so) return Unread{typed.size() == forty ? WhyUnread::WrongCharacter : WhyUnread::WrongLength};
    const std::string_view all_typed = typed, number = all_typed.substr(0, unchecked);
    if (!is_donation_number(number) || typed.size() > checked) return Unread{WhyUnread::UnknownForm};
    if (typed.size() == unchecked) return Unread{WhyUnread::NoCheck};
    if (all(typed, is_digit) && gs1_check_holds(typed)) return Unread{WhyUnread::UnknownForm};  // as well a trade number of 14 digits
    if (typed.back() != checks[static_cast<std::size_t>(mod_37_2(number))]) return Unread{WhyUnread::WrongCheck};
    return Isbt{.donation = Donation{.number = std::string(number), .flags = "", .checked = true}};
}

}  // namespace scan

namespace {

/// "]C1": a reader's own word for the kind of symbol, before the data.
bool begins_with_symbology(std::string_view bytes) { return bytes.size() >= 3 && bytes[0] == ']' && scan::is_digit(bytes[2]); }

bool says_gs1(std::string_view bytes) {
    constexpr std::array<std::string_view, 5> gs1{"]C1", "]d2", "]Q3", "]e0", "]J1"};
    return std::any_of(gs1.begin(), gs1.end(), [&](std::string_view one) { return bytes.starts_with(one); });
}

}  // namespace

guide::Label read_scan(std::string_view bytes, const measure::Day& today) {
    using guide::Unread;
    const bool gs1 = says_gs1(bytes);
    if (begins_with_symbology(bytes)) bytes.remove_prefix(3);
    if (bytes.starts_with('=') || bytes.starts_with('&')) return scan::read_isbt(bytes);
    if (gs1 || bytes.starts_with("01") ||
        bytes.starts_with("\x1d"
                          "01"))
        return scan::read_gs1(bytes, today);
    return scan::read_typed(bytes);
}

}  // namespace intake
