// What was scanned in a case, as the record keeps it: tissue or a pack, and what speaks against using it.
#pragma once

#include "guide/label.hpp"
#include "measure/length.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace guide {

using Seq = std::uint64_t;

enum class ItemKind {
    Unread,  // the bytes are kept, nothing is claimed
    Part,    // of a tissue label, without the number it belongs to
    Tissue,
    Pack
};

/// Absent: the symbol does not say, or the unit's list does not have it.
struct Item {
    ItemKind kind = ItemKind::Unread;
    std::optional<std::string> donation{}, product{}, division{};  // tissue
    std::optional<std::string> gtin{}, lot{}, serial{};            // pack
    std::optional<Day> expires{}, collected{};
    std::optional<int> expires_minute{};      // of that day, local time of the label
    std::optional<std::string> instrument{};  // by the unit's own list: id of the profile
    std::optional<measure::Length> size{};    // by the same
    bool operator==(const Item&) const = default;
};

enum class Against {
    Expired,
    NotPlannedTissue,
    NotPlannedPack,
    WrongSize,
    UsedBefore,  // in another case of this station
    Allocated,   // to another patient: planned for, or read into, a case that is not over
    WhichCornea  // the same donor's number stands in another case, and the label read so far does not tell which cornea this is
};

/// One thing that speaks against, with what the words need.
struct Objection {
    Against what{};
    std::vector<std::string> values{};
    bool operator==(const Objection&) const = default;
};

/// An item of another case on this station, told by whoever asks for a decision.
struct Elsewhere {
    std::string reference{};
    Item item{};
    bool used = false;  // else it is planned for that case or was read into it, and the case is not over
    bool operator==(const Elsewhere&) const = default;
};

enum class SameItem { No, Yes, Perhaps };
/// Tissue by number, product and division; a pack by its number and serial, and without a serial never.
SameItem same_item(const Item& one, const Item& other);

/// One of the two says of tissue what the other says otherwise; the number apart.
bool contradict(const Item& one, const Item& other);

/// The tissue that a case file names: a donation number, or a Single European Code; blanks do not count.
Item tissue_named(const std::string& text);

/// "G123417654321 V0001 001": the donation number, with product and division where they are known, since two corneas of a donor differ in
/// nothing else.
std::string tissue_text(const Item& item);

/// What a label says of the item it sticks on.
Item item_of(const Label& label);

/// "expired", "which-cornea" …
std::string_view name(Against what);

}  // namespace guide
