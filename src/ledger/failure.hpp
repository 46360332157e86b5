// What the machine could not do with the ledger. Handled once, by the program's loop or its command line.
#pragma once

#include <string>

namespace ledger {

struct Failure {
    enum class What {
        CannotOpen,   // no such place, or no permission
        InUse,        // another program holds the ledger
        Newer,        // written by a newer program: this one must not guess
        Damaged,      // no ledger, or not whole
        Full,         // no room on the disk
        CannotWrite,  // the disk refused for another reason
    };
    What what{};
    std::string path{};
    std::string detail{};
    bool operator==(const Failure&) const = default;
};

}  // namespace ledger
