// Which screen each window of a full-screen program fills, when screens come and go. Pure. The first window is the one that must
// be seen: it takes any screen that is left when its own is gone. The others wait, hidden, for their own to come back, so that
// none ever lies over the first.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace device {

/// The screen a window wants: by its number at first, by its name once it has been there.
struct Seat {
    int wished = 0;      // from 0
    std::string name{};  // empty: not yet seated
    std::optional<std::size_t> screen{};
    bool operator==(const Seat&) const = default;
};

/// Seats for the screens of these names, the windows in order of importance.
std::vector<Seat> seated(std::vector<Seat> seats, const std::vector<std::string>& screens);
/// Which of the seated windows, by their places, have no screen of their own: it is not there, or is another's that wished for the same
/// one. A window whose screen is lent to the first one is not among them: it is the first one's that is missing.
std::vector<std::size_t> without_own(const std::vector<Seat>& seats, const std::vector<std::string>& screens);

}  // namespace device
