#include "device/seats.hpp"

#include <algorithm>

namespace device {
namespace {

std::optional<std::size_t> own_screen(const Seat& seat, const std::vector<std::string>& screens) {
    if (!seat.name.empty()) {
        const auto found = std::find(screens.begin(), screens.end(), seat.name);
        return found == screens.end() ? std::nullopt : std::optional(static_cast<std::size_t>(found - screens.begin()));
    }
    const auto wished = static_cast<std::size_t>(seat.wished);
    return wished < screens.size() ? std::optional(wished) : std::nullopt;
}

}  // namespace

std::vector<Seat> seated(std::vector<Seat> seats, const std::vector<std::string>& screens) {
    std::vector<bool> taken(screens.size(), false);
    for (Seat& seat : seats) {
        seat.screen = own_screen(seat, screens);
        const bool first = &seat == &seats.front();
        if (first && !seat.screen && !screens.empty()) {
            seat.screen = 0;  // not its own: its own is taken again when it comes back
        } else if (seat.screen && taken[*seat.screen]) {
            seat.screen.reset();
        } else if (seat.screen) {
            seat.name = screens[*seat.screen];
        }
        if (seat.screen) taken[*seat.screen] = true;
    }
    return seats;
}

std::vector<std::size_t> without_own(const std::vector<Seat>& seats, const std::vector<std::string>& screens) {
    std::vector<bool> owned(screens.size(), false);
    std::vector<std::size_t> without{};
    for (std::size_t i = 0; i < seats.size(); ++i) {
        const auto own = own_screen(seats[i], screens);
        if (!own || owned[*own]) {
            without.push_back(i);
        } else {
            owned[*own] = true;
        }
    }
    return without;
}

}  // namespace device
