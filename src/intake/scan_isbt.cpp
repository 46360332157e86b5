// ISBT 128: data structures by their identifiers, alone, two side by side, or in a compound message.
#include "intake/scan_parts.hpp"

#include <array>

namespace intake::scan {
namespace {

using namespace guide;

using Fault = std::optional<WhyUnread>;

template <class T>
Fault put(std::optional<T>& place, std::optional<T> value, WhyUnread unless) {
    if (!value) return unless;
    if (place && *place != *value) return WhyUnread::Contradicts;
    place = std::move(value);
    return std::nullopt;
}

std::optional<std::string> text(std::string_view content) {
    return all(content, is_alnum) ? std::optional(std::string(content)) : std::nullopt;
}

/// "cyyjjj" or "cyyjjjhhmm"
std::optional<Moment> moment(std::string_view content) {
    constexpr std::size_t date = 6;
    const auto day = day_from_ordinal(content.substr(0, date));
    if (!day) return std::nullopt;
    if (content.size() == date) return Moment{.day = *day, .minute = std::nullopt};
    const auto hour = number(content.substr(date, 2)), minute = number(content.substr(date + 2));
    if (!hour || !minute || *hour > 23 || *minute > 59) return std::nullopt;
    return Moment{.day = *day, .minute = *hour * 60 + *minute};
}

std::optional<Product> product(std::string_view content) {
    if (!all(content, is_alnum)) return std::nullopt;
    return Product{.code = std::string(content.substr(0, 5)), .division = std::string(content.substr(5))};
}

std::optional<Processor> processor(std::string_view content) {
    if (!all(content, is_alnum)) return std::nullopt;
    return Processor{.facility = std::string(content.substr(0, 5)),
                     .product = std::string(content.substr(5, 6)),
                     .code = std::string(content.substr(11))};
}

/// Flags from 60 to 96 are 60 + the check; the others check nothing.
Fault donation(std::string_view content, Isbt& label) {
    const std::string_view numbered = content.substr(0, 13), flags = content.substr(13);
    if (!is_donation_number(numbered) || !all(flags, is_alnum)) return WhyUnread::WrongCharacter;
    const int flag = number(flags).value_or(0);
    const bool checked = flag >= 60 && flag <= 96;
    if (checked && flag != 60 + mod_37_2(numbered)) return WhyUnread::WrongCheck;
    return put(label.donation, std::optional(Donation{std::string(numbered), std::string(flags), checked}), WhyUnread::WrongCharacter);
}

struct Structure {
    std::string_view identifier{};
    std::size_t length = 0;  // of what follows
    Fault (*read)(std::string_view content, Isbt& label) = nullptr;
};

using View = std::string_view;
constexpr std::array<Structure, 12> structures{{
    {"=<", 8, [](View c, Isbt& label) { return put(label.product, product(c), WhyUnread::WrongCharacter); }},
    {"=>", 6, [](View c, Isbt& label) { return put(label.expires, moment(c), WhyUnread::NoDate); }},
    {"&>", 10, [](View c, Isbt& label) { return put(label.expires, moment(c), WhyUnread::NoDate); }},
    {"=*", 6, [](View c, Isbt& label) { return put(label.collected, moment(c), WhyUnread::NoDate); }},
    {"&*", 10, [](View c, Isbt& label) { return put(label.collected, moment(c), WhyUnread::NoDate); }},
    {"=}", 6, [](View c, Isbt& label) { return put(label.produced, moment(c), WhyUnread::NoDate); }},
    {"&}", 10, [](View c, Isbt& label) { return put(label.produced, moment(c), WhyUnread::NoDate); }},
    {"=,", 6, [](View c, Isbt& label) { return put(label.divisions, text(c), WhyUnread::WrongCharacter); }},
    {"=/", 16, [](View c, Isbt& label) { return put(label.processor, processor(c), WhyUnread::WrongCharacter); }},
    {"=%", 4, [](View c, Isbt& label) { return put(label.group, text(c), WhyUnread::WrongCharacter); }},
    {"&,1", 18, [](View c, Isbt& label) { return put(label.lot, text(c), WhyUnread::WrongCharacter); }},
    {"&,4", 40, [](View c, Isbt& label) { return put(label.european, european_code(c), WhyUnread::WrongCharacter); }},
}};

/// The donation number's identifier is '=' and the first character of the number itself.
constexpr Structure donation_number{.identifier = "=", .length = 15, .read = donation};

const Structure* structure_at(std::string_view rest) {
    for (const Structure& one : structures) {
        if (rest.starts_with(one.identifier)) return &one;
    }
    return rest.size() > 1 && rest[0] == '=' && is_alnum(rest[1]) ? &donation_number : nullptr;
}

/// Takes one structure off the front of `rest`.
Fault take(std::string_view& rest, Isbt& label) {
    const Structure* found = structure_at(rest);
    if (found == nullptr) return WhyUnread::UnknownForm;
    const std::size_t size = found->identifier.size() + found->length;
    if (rest.size() < size) return WhyUnread::WrongLength;
    const Fault fault = found->read(rest.substr(found->identifier.size(), found->length), label);
    rest.remove_prefix(size);
    return fault;
}

/// A European code of ISBT 128's own product system repeats the donation number, the product and the day of expiry.
bool agrees_with_itself(const Isbt& label) {
    if (!label.european || label.european->system != "A") return true;
    const EuropeanCode& code = *label.european;
    const bool same_donation = !label.donation || label.donation->number == code.donation;
    const bool same_product = !label.product || ("00" + label.product->code == code.product && label.product->division == code.split);
    const bool same_day = !label.expires || !code.expires || label.expires->day == *code.expires;
    return same_donation && same_product && same_day;
}

}  // namespace

guide::Label read_isbt(std::string_view bytes) {
    constexpr std::string_view compound = "=+";
    constexpr std::size_t header = 7, most_side_by_side = 2;
    std::optional<int> wanted{};
    if (bytes.starts_with(compound)) {
        wanted = number(bytes.substr(2, 2));
        if (bytes.size() < header || !wanted || !number(bytes.substr(4, 3))) return Unread{WhyUnread::WrongCount};
        bytes.remove_prefix(header);
    }
    Isbt label{};
    std::size_t taken = 0;
    for (; !bytes.empty(); ++taken) {
        if (const Fault fault = take(bytes, label)) return Unread{*fault};
    }
    if (wanted ? taken != static_cast<std::size_t>(*wanted) : taken > most_side_by_side) return Unread{WhyUnread::WrongCount};
    if (!agrees_with_itself(label)) return Unread{WhyUnread::Contradicts};
    return label;
}

}  // namespace intake::scan
