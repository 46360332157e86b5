#include "paper/record.hpp"

#include <algorithm>

namespace paper {

bool taken_back(const Record& record, guide::Seq seq) {
    const auto undone = all_of<guide::TapUndone>(record);
    return std::any_of(undone.begin(), undone.end(), [&](const auto& one) { return one.fact->event == seq; });
}

bool written_late(const Record& record, guide::Seq seq) {
    const auto late = all_of<guide::WrittenLate>(record);
    return std::any_of(late.begin(), late.end(), [&](const auto& one) { return seq >= one.fact->first && seq <= one.fact->last; });
}

}  // namespace paper
