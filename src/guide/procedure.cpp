#include "guide/procedure.hpp"

#include <algorithm>

namespace guide {
namespace {

template <class Range>
auto find_id(const Range& range, const std::string& id) -> decltype(&*range.begin()) {
    const auto found = std::find_if(range.begin(), range.end(), [&](const auto& one) { return one.id == id; });
    return found == range.end() ? nullptr : &*found;
}

}  // namespace

const Step* find_step(const Procedure& procedure, const StepId& id) {
    const Phase* phase = phase_of(procedure, id);
    return phase == nullptr ? nullptr : find_id(phase->steps, id);
}

const Phase* phase_of(const Procedure& procedure, const StepId& id) {
    for (const Phase& phase : procedure.phases) {
        if (find_id(phase.steps, id) != nullptr) return &phase;
    }
    return nullptr;
}

const Departure* find_departure(const Procedure& procedure, const DepartureId& id) { return find_id(procedure.departures, id); }

std::string departure_title(const Procedure& procedure, const DepartureId& id) {
    const Departure* found = find_departure(procedure, id);
    return found == nullptr ? id : found->title;
}

}  // namespace guide
