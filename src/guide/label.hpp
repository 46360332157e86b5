// What a scanned symbol says, by its structure alone: donated tissue by ISBT 128 or Single European Code, packs by GS1.
// No code table stands behind it (ISBT 128's are licensed): a product code is five characters, not a name. What cannot be read
// for certain is `Unread`, with why; the bytes themselves are kept beside it. Whether it fits the case is decided in `decide`.
#pragma once

#include "measure/instant.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace guide {

using measure::Day;

enum class WhyUnread {
    UnknownForm,  // nothing that this program knows
    WrongLength,  // begins like something it knows, and is too long or too short
    WrongCharacter,
    WrongCheck,  // the check digit or character does not belong to the number: a reading error
    NoCheck,     // typed without its check character
    NoDate,      // no day of the calendar, or of another century than can be told
    WrongCount,  // a compound message that does not hold what its header says
    Contradicts  // says one thing twice, and not the same
};

struct Unread {
    WhyUnread why{};
    bool operator==(const Unread&) const = default;
};

/// A day, and the minute of it where the symbol says one.
struct Moment {
    Day day{};
    std::optional<int> minute{};
    bool operator==(const Moment&) const = default;
};

struct Donation {
    std::string number{};  // 13 characters: facility 5, year 2, serial 6
    std::string flags{};   // two characters; empty when typed
    bool checked = false;  // a check character was there, and right
    bool operator==(const Donation&) const = default;
};

struct Product {
    std::string code{}, division{};  // 5 and 3 characters
    bool operator==(const Product&) const = default;
};

struct Processor {
    std::string facility{}, product{}, code{};  // 5, 6 and 5 characters
    bool operator==(const Processor&) const = default;
};

/// Single European Code, 40 characters: Directive 2006/86/EC, annex VII, as amended by (EU) 2015/565.
struct EuropeanCode {
    std::string country{}, establishment{}, donation{};  // 2, 6, 13
    std::string system{}, product{}, split{};            // 1 (E, A or B), 7, 3
    std::optional<Day> expires{};                        // none: 00000000, no expiry set
    bool operator==(const EuropeanCode&) const = default;
};

/// One data structure of ISBT 128, or the several of a compound message.
struct Isbt {
    std::optional<Donation> donation{};
    std::optional<Product> product{};
    std::optional<Moment> expires{}, collected{}, produced{};
    std::optional<std::string> group{}, divisions{}, lot{};
    std::optional<Processor> processor{};
    std::optional<EuropeanCode> european{};
    bool operator==(const Isbt&) const = default;
};

/// A GS1 date; `month_only` when the symbol gives no day (DD = 00): then the last day of the month stands.
struct PackDate {
    Day day{};
    bool month_only = false;
    bool operator==(const PackDate&) const = default;
};

struct Gs1 {
    std::optional<std::string> gtin{};  // 14 digits, the last its check digit
    std::optional<std::string> lot{}, serial{}, additional{};
    std::optional<PackDate> expires{}, produced{};
    std::vector<std::string> others{};  // element strings not used here, whole
    bool operator==(const Gs1&) const = default;
};

using Label = std::variant<Unread, Isbt, EuropeanCode, Gs1>;

}  // namespace guide
