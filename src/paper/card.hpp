// The fallback card: one page printed before the case, to go on from if the screen dies. Eye, sizes, a box to tick for every spoke,
// the sutures as the surgeon sees them and as a list to tick, what to write down by hand. Only for a plan that can be used.
#pragma once

#include "guide/brief.hpp"
#include "paper/column.hpp"
#include "paper/page.hpp"
#include "paper/words.hpp"
#include "picture/clock_face.hpp"
#include "plan/plan.hpp"

#include <functional>
#include <string>
#include <vector>

namespace paper {

/// Boxes to tick in one go, numbered from 1; `spare` ones after them are beyond the plan.
struct Ticks {
    std::string label{};
    int planned = 0, spare = 0;
    std::string then{};  // what stands after the boxes
    bool operator==(const Ticks&) const = default;
};

struct Card {
    std::string title{}, if_dead{}, side{}, reference{}, under{}, invented{};
    std::string spokes_title{}, spokes_line{};
    std::vector<Ticks> spokes{};
    std::string figures_title{}, sutures_title{}, by_hand_title{}, cautions_title{};
    std::vector<Pair> figures{};
    picture::ClockFace face{};
    std::string pattern{};
    std::vector<std::string> running{};  // the path of each running suture
    std::vector<std::string> order{};
    std::vector<std::string> by_hand{};  // a line to fill for each
    std::vector<std::string> cautions{};
    std::string not_a_device{};
    std::function<std::string(std::size_t)> more{}, more_spokes{};
};

Card card(const guide::Brief& brief, const plan::Plan& plan, const Words& words);
/// How tall the lettering of the card is.
Caps card_caps();
picture::Shapes draw(const Card& card, Size size, const picture::Lettering& lettering);

}  // namespace paper
