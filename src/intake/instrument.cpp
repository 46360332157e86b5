#include "intake/instrument.hpp"

#include "intake/reading.hpp"
#include "plan/sources.hpp"

namespace intake {
namespace {

using measure::Length;

/// At least one size, each larger than the one before.
std::vector<Length> read_sizes(Fields& fields) {
    const Rule<Length> size = millimetres({.low = 1, .high = 12});
    const auto listed = fields.list("sizes_mm", size);
    if (!fields.has("sizes_mm")) fields.missing("sizes_mm", "a list: " + size.allowed);
    if (fields.is_empty_list("sizes_mm")) fields.wrong("sizes_mm", "at least one size");
    std::vector<Length> sizes;
    for (const auto& [mm, at] : listed) {
        if (!sizes.empty() && mm <= sizes.back()) {
            fields.report().add(at, fields.path_of("sizes_mm"), shown({.at = at, .value = mm.mm()}),
                                "sizes from small to large, each once");
        }
        sizes.push_back(mm);
    }
    return sizes;
}

instrument::Reach read_reach(Fields& fields) {
    return {.mean = fields.required("mean", number({.low = 0.5, .high = 2}, "")),
            .sd = fields.required("sd", number({.low = 0.001, .high = 0.5}, "")),
            .n = fields.required("n", whole(3, 100'000)),
            .source = fields.required("source", line(200))};
}

void read_names(Fields& fields, const std::string& kind, std::string& id_text, std::string& name) {
    fields.required("kind", one_of<bool>({{kind, true}}));
    id_text = fields.required("id", id());
    name = fields.required("name", line(60));
}

}  // namespace

instrument::Reach published_reach() { return {.mean = 1.046, .sd = 0.082, .n = 11, .source = plan::source::reach}; }

measure::Result<instrument::Trephine, Problems> read_trephine(std::string_view text, const std::string& name) {
    return read_file(text, name, [](Fields& root) {
        instrument::Trephine trephine;
        read_names(root, "trephine", trephine.id, trephine.name);
        trephine.advance = root.required("advance_um", micrometres({.low = 10, .high = 250}));
        trephine.spokes_per_turn = root.required("spokes_per_turn", whole(1, 72));
        trephine.lower = root.required("lower", one_of<instrument::Turn>({{"clockwise", instrument::Turn::Clockwise},
                                                                          {"counter-clockwise", instrument::Turn::CounterClockwise}}));
        trephine.raise = root.required("raise", whole(0, 20));
        trephine.marks = root.required("marks", whole(0, 72));
        trephine.mark_offset = root.optional("mark_offset_deg", turned_degrees()).value_or(measure::Angle{});
        trephine.diameters = read_sizes(root);
        trephine.suction = root.optional("suction", flag()).value_or(true);
        trephine.reach = published_reach();
        root.table("reach", [&](Fields& fields) { trephine.reach = read_reach(fields); });
        return trephine;
    });
}

measure::Result<instrument::Punch, Problems> read_punch(std::string_view text, const std::string& name) {
    return read_file(text, name, [](Fields& root) {
        instrument::Punch punch;
        read_names(root, "punch", punch.id, punch.name);
        punch.diameters = read_sizes(root);
        punch.dots = root.optional("dots", whole(0, 24)).value_or(4);
        punch.vacuum = root.optional("vacuum", flag()).value_or(true);
        return punch;
    });
}

}  // namespace intake
