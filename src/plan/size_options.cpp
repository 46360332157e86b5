#include "plan/size_options.hpp"

#include <algorithm>
#include <tuple>

namespace plan {
namespace {

struct Pair {
    Length host{}, donor{};
    bool operator==(const Pair&) const = default;
};

bool holds(const std::vector<Length>& sizes, Length size) { return std::find(sizes.begin(), sizes.end(), size) != sizes.end(); }

/// The nearest smaller and the nearest larger size.
std::vector<Length> next_to(std::vector<Length> sizes, Length size) {
    std::sort(sizes.begin(), sizes.end());
    std::vector<Length> found{};
    const auto here = std::lower_bound(sizes.begin(), sizes.end(), size);
    if (here != sizes.begin()) found.push_back(*(here - 1));
    const auto above = std::upper_bound(here, sizes.end(), size);
    if (above != sizes.end()) found.push_back(*above);
    return found;
}

std::vector<Pair> pairs(const Inputs& inputs) {
    const Pair chosen{.host = inputs.file.host_diameter, .donor = inputs.file.donor.diameter};
    std::vector<Pair> found{chosen};
    for (const Length host : next_to(inputs.trephine.diameters, chosen.host)) {
        const Length donor = host + (chosen.donor - chosen.host);
        if (holds(inputs.punch.diameters, donor)) found.push_back({.host = host, .donor = donor});
    }
    for (const Length donor : next_to(inputs.punch.diameters, chosen.donor)) found.push_back({.host = chosen.host, .donor = donor});
    std::sort(found.begin(), found.end(),
              [](const Pair& a, const Pair& b) { return std::tie(a.host, a.donor) < std::tie(b.host, b.donor); });
    return found;
}

std::optional<std::string> stop_of(const Plan& plan) {
    const auto stop = std::find_if(plan.notes.begin(), plan.notes.end(), [](const Note& note) { return note.level == Note::Level::Stop; });
    return stop == plan.notes.end() ? std::nullopt : std::optional(stop->code);
}

SizeOption planned(const Inputs& inputs, const Pair& pair) {
    Inputs with = inputs;
    with.file.host_diameter = pair.host;
    with.file.donor.diameter = pair.donor;
    const Plan plan = make(with);
    const auto listed = [](const std::vector<Length>& sizes, Length size) { return sizes.empty() || holds(sizes, size); };
    SizeOption option{.host = pair.host, .donor = pair.donor};
    option.chosen = with == inputs;
    option.held = holds(inputs.trephine.diameters, pair.host) && holds(inputs.punch.diameters, pair.donor);
    option.in_stock = listed(inputs.limits.hosts_in_stock, pair.host) && listed(inputs.limits.donors_in_stock, pair.donor);
    option.sizes = plan.sizes;
    option.spacing = plan.spacing;
    if (plan.wall) option.thinnest = plan.wall->thinnest;
    if (plan.wall) option.u = plan.wall->u;
    if (plan.wall) option.basis = plan.wall->basis;
    if (plan.target) option.spokes = plan.target->spokes;
    option.refused = stop_of(plan);
    option.evidence = evidence(plan.sizes.oversize);
    return option;
}

}  // namespace

std::vector<SizeOption> size_options(const Inputs& inputs) {
    std::vector<SizeOption> options{};
    for (const Pair& pair : pairs(inputs)) options.push_back(planned(inputs, pair));
    return options;
}

}  // namespace plan
