// Everything a case was opened with, as read: the ledger needs no file again.
#pragma once

#include "guide/procedure.hpp"
#include "plan/inputs.hpp"

#include <string>
#include <vector>

namespace guide {

struct CountItem {
    ItemId id{};
    std::string title{};  // "Needles"
    bool operator==(const CountItem&) const = default;
};

/// A pack that the unit keeps: what its trade number stands for. No maker's table is shipped.
struct Pack {
    std::string gtin{};        // 14 digits
    std::string instrument{};  // id of the profile
    measure::Length size{};
    bool operator==(const Pack&) const = default;
};

/// What a unit decides for itself.
struct Unit {
    std::vector<CountItem> counts{};
    std::string scrub_name = "scrub nurse";  // initials or role of the two who count
    std::string circulating_name = "circulating nurse";
    plan::Limits limits{};
    std::vector<Pack> packs{};
    bool operator==(const Unit&) const = default;
};

struct Brief {
    plan::Inputs inputs{};
    Procedure procedure{};
    Unit unit{};
    bool operator==(const Brief&) const = default;
};

}  // namespace guide
