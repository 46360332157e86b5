// What another host or another donor would change: the sizes next to those of the case, each planned as the case would be with
// it. A table to compare by; it proposes nothing.
#pragma once

#include "plan/notes.hpp"
#include "plan/plan.hpp"

#include <optional>
#include <string>
#include <vector>

namespace plan {

struct SizeOption {
    Length host{}, donor{};
    bool chosen = false;                    // as the case has it
    bool held = true;                       // by both profiles
    bool in_stock = true;                   // by the unit's own list, where it states one
    Sizes sizes{};                          // oversize, to the limbus, host button
    Length spacing{};                       // chord between neighbouring sutures
    std::optional<Length> thinnest{}, u{};  // of the wall on this cut
    std::string basis{};                    // what that rests on, which may be another than for the case's own size; empty: nothing
    std::optional<int> spokes{};            // planned; none: to entry, or refused
    std::optional<std::string> refused{};   // the code of the note that stops it
    Evidence evidence{};                    // for and against this oversize
    bool operator==(const SizeOption&) const = default;
};

/// The chosen pair; the next smaller and larger host, each with the donor of the same oversize; the next smaller and larger
/// donor. Sizes that the profiles do not hold are left out, but for the chosen ones. By host, then by donor.
std::vector<SizeOption> size_options(const Inputs& inputs);

}  // namespace plan
