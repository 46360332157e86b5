// The summaries of the cases on a ledger. Those of cases that are over are kept beside it (LEDGER.past), so that figures over
// thousands of cases do not fold thousands of records. The side file is no record: each line stands only for the very record whose
// last hash it bears, a line that cannot be read is passed over, and a file that is gone is made again from the ledger.
#pragma once

#include "ledger/ledger.hpp"
#include "past/summary.hpp"
#include "stock.hpp"

#include <vector>

namespace graftside {

/// In the order of their references.
Try<std::vector<past::Summary>> summaries(const ledger::Ledger& ledger);

}  // namespace graftside
