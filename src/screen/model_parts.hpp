// What every view is made of: a target that is touched, what touching it does, the banner, a picture.
#pragma once

#include "guide/intent.hpp"
#include "picture/clock_face.hpp"
#include "picture/wall_section.hpp"

#include <string>
#include <variant>
#include <vector>

namespace screen {

enum class Press { Tap, Hold };
enum class Weight {  // touch size classes of look.md; also the refractory time
    Spoke,
    Theatre,
    Elsewhere,
    Pointer  // on the Desk: a key of the keyboard or a mouse, never a glove
};
enum class Look {
    Filled,  // what is to be tapped now
    Plain,
    Hollow,  // amber edge on the ground: counts, but past the plan
    Watch,   // amber with a triangle
    Stop     // red with an octagon
};

/// What a target does to the screen alone; never on the ledger.
struct Show {
    std::string page{};  // see ScreenState
    std::string argument{};
    bool operator==(const Show&) const = default;
};
using Act = std::variant<std::vector<guide::Intent>, Show>;

struct Target {
    std::string id{};  // stays the same from frame to frame
    std::string label{};
    std::string line{};     // a second, smaller line; may be left out where there is no room
    std::string why_not{};  // set: dead, and this is drawn in place of `line`
    Press press{};
    Weight weight = Weight::Theatre;
    Look look = Look::Plain;
    Act act{};
    std::string key{};                  // on the Desk: the key that does the same, shown beside it
    bool stays = false;                 // in its column whatever it looks like: a hand goes there without a look
    bool late = false;                  // the tap for a moment before now: such ones stand together, without others
    bool apart = false;                 // out of the column, so that it moves no other when it comes up
    std::vector<Target> in_place_of{};  // the one that stood there before, by which the others keep their places; none or one
};

struct Banner {
    enum class Level { Notice, Watch, Stop };
    Level level{};
    std::string text{};
    std::string brief{};  // the same in few words, where the text would take too much of a small glass; empty: there is nothing shorter
};

using Picture = std::variant<std::monostate, picture::ClockFace, picture::WallSection, picture::OpenEye>;

}  // namespace screen
