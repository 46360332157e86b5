// The words that stand for enumerators on disk. Never changed once released. An enumerator without a word does not compile
// cleanly (-Wswitch-enum); a value outside an enumeration has the empty word, which ends the search when reading.
#pragma once

#include "guide/fact.hpp"

#include <optional>
#include <string_view>

namespace ledger {

// clang-format off
constexpr std::string_view word(guide::Who value) {
    using enum guide::Who;
    switch (value) {
        case Scrub: return "scrub";
        case Circulating: return "circulating";
        case Surgeon: return "surgeon";
        case Program: return "program";
    }
    return "";
}
constexpr std::string_view word(guide::Source value) {
    using enum guide::Source;
    switch (value) {
        case Table: return "table";
        case Desk: return "desk";
        case FootSwitch: return "foot-switch";
    }
    return "";
}
constexpr std::string_view word(guide::Suction value) {
    using enum guide::Suction;
    switch (value) {
        case Off: return "off";
        case On: return "on";
        case Lost: return "lost";
    }
    return "";
}
constexpr std::string_view word(guide::CutEnd value) {
    using enum guide::CutEnd;
    switch (value) {
        case AtPlan: return "at-plan";
        case Entered: return "entered";
        case Surgeon: return "surgeon";
    }
    return "";
}
constexpr std::string_view word(guide::CaseEnd value) {
    using enum guide::CaseEnd;
    switch (value) {
        case Done: return "done";
        case Converted: return "converted";
        case Abandoned: return "abandoned";
    }
    return "";
}
constexpr std::string_view word(guide::TissueWord value) {
    using enum guide::TissueWord;
    switch (value) {
        case Accepted: return "accepted";
        case Unfit: return "unfit";
        case BackUpNamed: return "back-up-named";
        case Grafted: return "grafted";
        case NotUsed: return "not-used";
        case LeftOver: return "left-over";
    }
    return "";
}
constexpr std::string_view word(guide::KnotSide value) {
    using enum guide::KnotSide;
    switch (value) {
        case Host: return "host";
        case Donor: return "donor";
        case NotBuried: return "not-buried";
    }
    return "";
}
constexpr std::string_view word(guide::Specimen value) {
    using enum guide::Specimen;
    switch (value) {
        case HostButton: return "host-button";
        case Rim: return "rim";
        case Medium: return "medium";
    }
    return "";
}
constexpr std::string_view word(guide::SentTo value) {
    using enum guide::SentTo;
    switch (value) {
        case Pathology: return "pathology";
        case Culture: return "culture";
        case Discarded: return "discarded";
    }
    return "";
}
constexpr std::string_view word(guide::ItemKind value) {
    using enum guide::ItemKind;
    switch (value) {
        case Unread: return "unread";
        case Part: return "part";
        case Tissue: return "tissue";
        case Pack: return "pack";
    }
    return "";
}
constexpr std::string_view word(guide::Against value) {
    using enum guide::Against;
    switch (value) {
        case Expired: return "expired";
        case NotPlannedTissue: return "not-planned-tissue";
        case NotPlannedPack: return "not-planned-pack";
        case WrongSize: return "wrong-size";
        case UsedBefore: return "used-before";
        case Allocated: return "allocated";
        case WhichCornea: return "which-cornea";
    }
    return "";
}
constexpr std::string_view word(guide::Closes value) {
    using enum guide::Closes;
    switch (value) {
        case Tap: return "tap";
        case Hold: return "hold";
        case Side: return "side";
        case Plan: return "plan";
        case Counts: return "counts";
        case SuctionOn: return "suction-on";
        case Cut: return "cut";
        case SuctionOff: return "suction-off";
        case Sutures: return "sutures";
        case Ring: return "ring";
        case Close: return "close";
    }
    return "";
}
constexpr std::string_view word(guide::Pause value) {
    using enum guide::Pause;
    switch (value) {
        case None: return "none";
        case SignIn: return "sign-in";
        case TimeOut: return "time-out";
        case SignOut: return "sign-out";
    }
    return "";
}
constexpr std::string_view word(guide::Nurse value) {
    using enum guide::Nurse;
    switch (value) {
        case May: return "may";
        case Stay: return "stay";
    }
    return "";
}
constexpr std::string_view word(guide::Departure::Level value) {
    using enum guide::Departure::Level;
    switch (value) {
        case Watch: return "watch";
        case Stop: return "stop";
    }
    return "";
}
constexpr std::string_view word(instrument::Turn value) {
    using enum instrument::Turn;
    switch (value) {
        case Clockwise: return "clockwise";
        case CounterClockwise: return "counter-clockwise";
    }
    return "";
}
constexpr std::string_view word(eye::Side value) {
    using enum eye::Side;
    switch (value) {
        case Right: return "right";
        case Left: return "left";
    }
    return "";
}
constexpr std::string_view word(eye::Seat value) {
    using enum eye::Seat;
    switch (value) {
        case Head: return "head";
        case Temporal: return "temporal";
    }
    return "";
}
constexpr std::string_view word(plan::Reason value) {
    using enum plan::Reason;
    switch (value) {
        case Scar: return "scar";
        case Keratoconus: return "keratoconus";
        case Oedema: return "oedema";
        case Dystrophy: return "dystrophy";
        case Regraft: return "regraft";
        case Infection: return "infection";
        case Trauma: return "trauma";
        case Other: return "other";
    }
    return "";
}
constexpr std::string_view word(plan::Lens value) {
    using enum plan::Lens;
    switch (value) {
        case Phakic: return "phakic";
        case Pseudophakic: return "pseudophakic";
        case Aphakic: return "aphakic";
    }
    return "";
}
constexpr std::string_view word(plan::Method value) {
    using enum plan::Method;
    switch (value) {
        case Ultrasound: return "ultrasound";
        case Oct: return "oct";
        case Scheimpflug: return "scheimpflug";
        case SlitScanning: return "slit-scanning";
    }
    return "";
}
constexpr std::string_view word(plan::Storage value) {
    using enum plan::Storage;
    switch (value) {
        case Cold: return "cold";
        case Culture: return "culture";
    }
    return "";
}
constexpr std::string_view word(plan::Goal value) {
    using enum plan::Goal;
    switch (value) {
        case Share: return "share";
        case Spokes: return "spokes";
        case ToEntry: return "to-entry";
    }
    return "";
}
constexpr std::string_view word(plan::Bound value) {
    using enum plan::Bound;
    switch (value) {
        case Aim: return "aim";
        case EntryLimit: return "entry-limit";
        case Surgeon: return "surgeon";
        case ToEntry: return "to-entry";
    }
    return "";
}
constexpr std::string_view word(plan::Note::Level value) {
    using enum plan::Note::Level;
    switch (value) {
        case Info: return "info";
        case Watch: return "watch";
        case Stop: return "stop";
    }
    return "";
}
// clang-format on

/// The enumerator a word stands for. Enumerators count up from 0 without gaps, so the first empty word is the end.
template <class Enum>
constexpr std::optional<Enum> from_word(std::string_view text) {
    for (int i = 0; !word(static_cast<Enum>(i)).empty(); ++i)
        if (word(static_cast<Enum>(i)) == text) return static_cast<Enum>(i);
    return std::nullopt;
}

}  // namespace ledger
