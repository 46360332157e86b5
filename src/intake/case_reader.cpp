#include "intake/case.hpp"
#include "intake/case_rules.hpp"
#include "intake/case_words.hpp"
#include "intake/reading.hpp"
#include "intake/readings.hpp"
#include "plan/sutures.hpp"

#include <charconv>
#include <cmath>

namespace intake {
namespace {

using measure::Length;

// Keratometry in dioptres is 337.5 over the radius in mm: the keratometric index 1.3375 every keratometer is set to.
constexpr double dioptre_mm = 337.5;
constexpr Range keratometry{.low = 30, .high = 70};
constexpr Range radius{.low = 4.83, .high = 11.25};  // 337.5 over 30 to 70 D, to hundredths

/// Text that can stand in a file name and on a label.
Rule<std::string> reference() {
    const Rule<std::string> text = line(40);
    return {.allowed = "1 to 40 characters without / and \\, no dot at the start; never a patient's name",
            .read = [text](const Node& node) -> std::optional<std::string> {
                auto value = text.read(node);
                if (!value || value->find_first_of("/\\") != std::string::npos || value->front() == '.') return std::nullopt;
                return value;
            }};
}

/// ISBT 128 donation number (13 characters) or Single European Code (40); a check of its digits belongs to scanning.
Rule<std::string> donation() {
    return {.allowed = "13 to 42 capital letters, digits and blanks", .read = [](const Node& node) -> std::optional<std::string> {
                const auto* code = std::get_if<std::string>(&node.value);
                if (code == nullptr || code->size() < 13 || code->size() > 42) return std::nullopt;
                return code->find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 ") == std::string::npos ? std::optional(*code)
                                                                                                             : std::nullopt;
            }};
}

struct Pair {
    Length first{}, second{};
};

/// Two lengths in a list.
Pair two_lengths(Fields& fields, std::string_view key, Range range) {
    const auto values = fields.list(key, millimetres(range));
    if (values.size() != 2) return {};
    return {.first = values[0].first, .second = values[1].first};
}

Rule<List> exactly_two(const std::string& allowed) {
    return {.allowed = allowed, .read = [](const Node& node) -> std::optional<List> {
                const auto* list = std::get_if<List>(&node.value);
                return list != nullptr && list->size() == 2 ? std::optional(*list) : std::nullopt;
            }};
}

void read_case_table(Fields& fields, plan::CaseFile& file) {
    file.reference = fields.required("reference", reference());
    file.date = fields.required("date", day());
    file.side = fields.required("eye", one_of(side_words()));
    file.reason = fields.required("reason", one_of(reason_words()));
    file.seat = fields.optional("seat", one_of(seat_words())).value_or(eye::Seat::Head);
    file.invented = fields.optional("invented", flag()).value_or(false);
}

void read_eye(Fields& fields, plan::CaseFile& file) {
    const auto dioptres = fields.optional("keratometry_D", number(keratometry, "D"));
    const auto mm = fields.optional("radius_mm", number(radius, "mm"));
    fields.exactly_one({"keratometry_D", "radius_mm"});
    file.keratometry_D = dioptres ? *dioptres : dioptre_mm / mm.value_or(1.0);
    constexpr Range white_to_white{.low = 9, .high = 14};
    if (fields.required("white_to_white_mm", exactly_two("two numbers from 9 to 14 mm, horizontal and vertical")).size() == 2) {
        const Pair limbus = two_lengths(fields, "white_to_white_mm", white_to_white);
        file.white_to_white_horizontal = limbus.first;
        file.white_to_white_vertical = limbus.second;
    }
    file.axial_length_mm = fields.optional("axial_length_mm", number({.low = 15, .high = 40}, "mm"));
    file.lens = fields.optional("lens", one_of(lens_words()));
}

/// A reading, and whether its place could be read.
std::pair<plan::Reading, bool> read_reading(Fields& fields) {
    plan::Reading reading;
    reading.ring = fields.required("ring_mm", ring_diameter());
    const auto hour = fields.optional("clock", clock_hour());
    const auto meridian = fields.optional("meridian_deg", degrees());
    fields.exactly_one({"clock", "meridian_deg"});
    reading.at = hour ? *hour : meridian.value_or(measure::Angle{});
    reading.thickness = fields.required("um", corneal_thickness());
    return {reading, reading.ring != Length{} && (hour || meridian)};
}

std::vector<plan::Reading> listed_readings(Fields& fields) {
    std::vector<plan::Reading> readings;
    ReadingPlaces places;
    fields.tables("readings", [&](Fields& row) {
        const auto [reading, placed] = read_reading(row);
        readings.push_back(reading);
        if (!placed || places.take(reading)) return;
        row.report().add(row.header(), row.path(), ReadingPlaces::found_again(reading), ReadingPlaces::allowed);
    });
    return readings;
}

/// A file beside the case, or in a folder beside it: never a path that leaves the case's folder.
Rule<std::string> csv_name() {
    const Rule<std::string> text = line(100);
    return {.allowed = "the name of a .csv file in the case's folder", .read = [text](const Node& node) -> std::optional<std::string> {
                const auto value = text.read(node);
                const bool leaves = !value || value->front() == '/' || value->find('\\') != std::string::npos ||
                                    value->find(':') != std::string::npos || ("/" + *value).find("/.") != std::string::npos;
                return !leaves && names_readings(*value) ? value : std::nullopt;
            }};
}

void read_thickness(Fields& fields, CaseDocument& document) {
    plan::Thickness& thickness = document.file.thickness;
    thickness.method = fields.required("method", one_of(method_words()));
    thickness.measured = fields.optional("measured", day());
    thickness.central = fields.optional("central_um", corneal_thickness());
    thickness.through_scar = fields.optional("through_scar", flag()).value_or(false);
    thickness.edge_looks_normal = fields.optional("edge", one_of<bool>({{"looks-normal", true}})).value_or(false);
    thickness.readings = listed_readings(fields);
    document.readings_csv = fields.optional("readings_csv", csv_name()).value_or("");
    if (fields.has("readings") && fields.has("readings_csv")) fields.exactly_one({"readings", "readings_csv"});
    const bool no_reading = !fields.has("readings") || fields.is_empty_list("readings");
    if (!fields.has("central_um") && no_reading && !fields.has("readings_csv")) {
        fields.missing("central_um", "central_um or readings");
    }
}

void read_host(Fields& fields, CaseDocument& document) {
    document.trephine = fields.required("trephine", id());
    document.file.host_diameter = fields.required("diameter_mm", millimetres({.low = 1, .high = 12}));
    constexpr Range offset{.low = -5, .high = 5};
    if (fields.optional("centre_mm", exactly_two("two numbers from -5 to 5 mm, to 3 o'clock and to 12"))) {
        const Pair centre = two_lengths(fields, "centre_mm", offset);
        document.file.centre_x = centre.first;
        document.file.centre_y = centre.second;
    }
}

void read_donor(Fields& fields, CaseDocument& document) {
    plan::Donor& donor = document.file.donor;
    document.punch = fields.required("punch", id());
    donor.diameter = fields.required("diameter_mm", millimetres({.low = 1, .high = 12}));
    donor.storage = fields.optional("storage", one_of(storage_words()));
    donor.stored = fields.optional("stored", day());
    donor.expires = fields.optional("expires", day());
    donor.endothelium_per_mm2 = fields.optional("endothelium_per_mm2", whole(0, 10'000));
    donor.donation = fields.optional("donation", donation());
}

void read_aim(Fields& fields, plan::Aim& aim) {
    const auto permille = fields.optional("share", aim_share());
    const auto spokes = fields.optional("spokes", own_spokes());
    const auto goal = fields.optional("goal", aim_goal());
    fields.exactly_one({"share", "spokes", "goal"});
    aim.goal = goal ? *goal : spokes ? plan::Goal::Spokes : plan::Goal::Share;
    aim.share_permille = permille.value_or(0);
    aim.spokes = spokes.value_or(0);
    aim.entry_limit = fields.optional("entry_limit", number({.low = 0.001, .high = 0.5}, "")).value_or(0.05);
}

void read_sutures(Fields& fields, plan::CaseFile& file) {
    if (const auto chosen = fields.optional("pattern", suture_pattern())) file.pattern = *chosen;
    if (const auto first = fields.optional("first", clock_hour())) file.first_suture = *first;
}

/// The number at the front of a text, taken off it.
std::optional<int> front_number(std::string_view& text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || text.front() == '-') return std::nullopt;
    text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    return value;
}

std::optional<int> bites(std::optional<int> n) { return n && *n >= 4 && *n <= plan::most_bites ? n : std::nullopt; }

}  // namespace

Rule<int> aim_share() {
    return {.allowed = "a number from 0.3 to 0.95, at most three decimals", .read = [](const Node& node) -> std::optional<int> {
                const auto value = finite(node);
                if (!value || *value < 0.30 || *value > 0.95) return std::nullopt;
                const double permille = std::round(*value * 1000.0);
                return std::abs(*value * 1000.0 - permille) < 1e-6 ? std::optional(static_cast<int>(permille)) : std::nullopt;
            }};
}

// 0 is read, and refused by the plan with its reason.
Rule<int> own_spokes() { return whole(0, 200); }

Rule<plan::Goal> aim_goal() { return one_of<plan::Goal>({{"to-entry", plan::Goal::ToEntry}}); }

Rule<plan::Pattern> suture_pattern() {
    return {
        .allowed =
            "\"N interrupted\", \"M running\", \"M double running\" or \"N interrupted + M running\", N even from 4 to 32, M from 4 to 64",
        .read = [](const Node& node) -> std::optional<plan::Pattern> {
            const auto* words = std::get_if<std::string>(&node.value);
            return words != nullptr ? pattern_from(*words) : std::nullopt;
        }};
}

std::optional<plan::Pattern> pattern_from(std::string_view text) {
    const auto n = front_number(text);
    if (n && text == " running") return bites(n) ? std::optional(plan::Pattern{.interrupted = 0, .loops = *n, .running = 1}) : std::nullopt;
    if (n && text == " double running")
        return bites(n) ? std::optional(plan::Pattern{.interrupted = 0, .loops = *n, .running = 2}) : std::nullopt;
    constexpr std::string_view interrupted = " interrupted";
    if (!n || *n < 4 || *n > plan::most_interrupted || *n % 2 != 0 || !text.starts_with(interrupted)) return std::nullopt;
    text.remove_prefix(interrupted.size());
    if (text.empty()) return plan::Pattern{.interrupted = *n, .loops = 0, .running = 0};
    if (!text.starts_with(" + ")) return std::nullopt;
    text.remove_prefix(3);
    const auto loops = bites(front_number(text));
    return loops && text == " running" ? std::optional(plan::Pattern{.interrupted = *n, .loops = *loops, .running = 1}) : std::nullopt;
}

measure::Result<CaseDocument, Problems> read_case(std::string_view text, const std::string& name) {
    return read_file(text, name, [](Fields& root) {
        CaseDocument document;
        root.required_table("case", "a table with reference, date, eye, reason", [&](Fields& f) { read_case_table(f, document.file); });
        root.required_table("eye", "a table with keratometry_D or radius_mm, white_to_white_mm",
                            [&](Fields& f) { read_eye(f, document.file); });
        root.required_table("thickness", "a table with method, and central_um or readings",
                            [&](Fields& f) { read_thickness(f, document); });
        root.required_table("host", "a table with trephine, diameter_mm", [&](Fields& f) { read_host(f, document); });
        root.required_table("donor", "a table with punch, diameter_mm", [&](Fields& f) { read_donor(f, document); });
        root.required_table("aim", "a table with exactly one of share, spokes, goal", [&](Fields& f) { read_aim(f, document.file.aim); });
        root.table("sutures", [&](Fields& f) { read_sutures(f, document.file); });
        return document;
    });
}

}  // namespace intake
