// GS1 element strings: each an application identifier and its data.
#include "intake/scan_parts.hpp"

#include <array>

namespace intake::scan {
namespace {

using namespace guide;

constexpr char gs = '\x1d';

/// Lengths, identifier included, of the element strings that need no GS after them, by their first two digits
/// (GS1 General Specifications, element strings with predefined length).
struct Predefined {
    std::string_view first{};
    std::size_t length = 0;
};
constexpr std::array<Predefined, 22> predefined{
    {{"00", 20}, {"01", 16}, {"02", 16}, {"03", 16}, {"04", 18}, {"11", 8},  {"12", 8},  {"13", 8},  {"14", 8},  {"15", 8},  {"16", 8},
     {"17", 8},  {"18", 8},  {"19", 8},  {"20", 4},  {"31", 10}, {"32", 10}, {"33", 10}, {"34", 10}, {"35", 10}, {"36", 10}, {"41", 16}}};

/// The 82 characters that an element string may hold (ISO/IEC 646, GS1 General Specifications, figure 7.11-1).
bool in_character_set(char c) {
    constexpr std::string_view signs = "!\"%&'()*+,-./:;<=>?_";
    return is_alnum(c) || (c >= 'a' && c <= 'z') || signs.find(c) != std::string_view::npos;
}

/// The year nearest to today's: 50 years ahead to 49 back.
int whole_year(int yy, const Day& today) {
    const int now = today.year % 100, century = today.year - now;
    const int ahead = yy - now;
    return yy + (ahead > 50 ? century - 100 : ahead < -49 ? century + 100 : century);
}

std::optional<PackDate> pack_date(std::string_view data, const Day& today) {
    const auto digits = number(data);
    if (!digits) return std::nullopt;
    PackDate date{.day = {whole_year(*digits / 10'000, today), *digits / 100 % 100, *digits % 100}};
    date.month_only = date.day.day == 0;
    if (date.month_only) {
        for (date.day.day = 31; date.day.day > 28 && !measure::valid(date.day);) --date.day.day;
    }
    return measure::valid(date.day) ? std::optional(date) : std::nullopt;
}

using Fault = std::optional<WhyUnread>;

template <class T>
Fault put(std::optional<T>& place, T value) {
    if (place && *place != value) return WhyUnread::Contradicts;
    place = std::move(value);
    return std::nullopt;
}

Fault put_text(std::optional<std::string>& place, std::string_view data, std::size_t longest) {
    if (data.empty() || data.size() > longest) return WhyUnread::WrongLength;
    return put(place, std::string(data));
}

Fault put_date(std::optional<PackDate>& place, std::string_view data, const Day& today) {
    const auto date = pack_date(data, today);
    return date ? put(place, *date) : WhyUnread::NoDate;
}

Fault put_gtin(std::optional<std::string>& place, std::string_view data) {
    if (!all(data, is_digit)) return WhyUnread::WrongCharacter;
    return gs1_check_holds(data) ? put(place, std::string(data)) : WhyUnread::WrongCheck;
}

Fault put_element(Gs1& pack, std::string_view element, const Day& today) {
    if (!all(element, in_character_set)) return WhyUnread::WrongCharacter;
    const auto data = [&](std::size_t identifier) { return element.substr(identifier); };
    if (element.starts_with("01")) return put_gtin(pack.gtin, data(2));
    if (element.starts_with("11")) return put_date(pack.produced, data(2), today);
    if (element.starts_with("17")) return put_date(pack.expires, data(2), today);
    if (element.starts_with("10")) return put_text(pack.lot, data(2), 20);
    if (element.starts_with("21")) return put_text(pack.serial, data(2), 20);
    if (element.starts_with("240")) return put_text(pack.additional, data(3), 30);
    if (!all(element.substr(0, 2), is_digit)) return WhyUnread::UnknownForm;
    pack.others.emplace_back(element);
    return std::nullopt;
}

/// Where the element string at the front ends; past the end when it is cut short.
std::size_t end_of_element(std::string_view rest) {
    for (const Predefined& one : predefined) {
        if (rest.starts_with(one.first)) return one.length;
    }
    return std::min(rest.find(gs), rest.size());
}

}  // namespace

guide::Label read_gs1(std::string_view elements, const Day& today) {
    if (elements.starts_with(gs)) elements.remove_prefix(1);  // some readers send the first function character too
    if (elements.empty()) return Unread{WhyUnread::WrongLength};
    Gs1 pack{};
    while (!elements.empty()) {
        const std::size_t end = end_of_element(elements);
        if (end < 3 || end > elements.size()) return Unread{WhyUnread::WrongLength};
        if (const Fault fault = put_element(pack, elements.substr(0, end), today)) return Unread{*fault};
        elements.remove_prefix(end);
        if (elements.starts_with(gs)) elements.remove_prefix(1);
    }
    return pack;
}

}  // namespace intake::scan
