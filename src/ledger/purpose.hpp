// What a ledger is opened for.
#pragma once

namespace ledger {

enum class Purpose {
    Record,  // made if missing; held by this program alone
    Look,    // must be there; no event and no mirror is written
};

}  // namespace ledger
