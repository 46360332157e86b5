#include "intake/case.hpp"
#include "intake/case_words.hpp"
#include "intake/toml_text.hpp"

#include <fmt/format.h>

namespace intake {
namespace {

/// The shortest decimal that reads back to the same nanometres.
std::string mm(measure::Length length) { return fmt::format("{}", length.mm()); }
std::string um(measure::Length length) { return fmt::format("{}", length.um()); }

std::string case_table(const plan::CaseFile& file) {
    std::string out = fmt::format("[case]\nreference = {}\ndate = {}\neye = {}\nreason = {}\nseat = {}\n", quoted(file.reference),
                                  measure::iso(file.date), quoted(word_for(side_words(), file.side)),
                                  quoted(word_for(reason_words(), file.reason)), quoted(word_for(seat_words(), file.seat)));
    if (file.invented) out += "invented = true\n";
    return out;
}

std::string eye_table(const plan::CaseFile& file) {
    std::string out = fmt::format("\n[eye]\nkeratometry_D = {}\nwhite_to_white_mm = [{}, {}]\n", file.keratometry_D,
                                  mm(file.white_to_white_horizontal), mm(file.white_to_white_vertical));
    if (file.axial_length_mm) out += fmt::format("axial_length_mm = {}\n", *file.axial_length_mm);
    if (file.lens) out += fmt::format("lens = {}\n", quoted(word_for(lens_words(), *file.lens)));
    return out;
}

std::string thickness_table(const CaseDocument& document) {
    const plan::Thickness& thickness = document.file.thickness;
    std::string out = fmt::format("\n[thickness]\nmethod = {}\n", quoted(word_for(method_words(), thickness.method)));
    if (thickness.measured) out += fmt::format("measured = {}\n", measure::iso(*thickness.measured));
    if (thickness.central) out += fmt::format("central_um = {}\n", um(*thickness.central));
    if (thickness.through_scar) out += "through_scar = true\n";
    if (thickness.edge_looks_normal) out += "edge = \"looks-normal\"\n";
    if (!document.readings_csv.empty()) out += fmt::format("readings_csv = {}\n", quoted(document.readings_csv));
    if (thickness.readings.empty()) return out;
    out += "readings = [\n";
    for (const plan::Reading& reading : thickness.readings) {
        out +=
            fmt::format("  {{ ring_mm = {}, meridian_deg = {}, um = {} }},\n", mm(reading.ring), reading.at.deg(), um(reading.thickness));
    }
    return out + "]\n";
}

std::string host_table(const CaseDocument& document) {
    const plan::CaseFile& file = document.file;
    return fmt::format("\n[host]\ntrephine = {}\ndiameter_mm = {}\ncentre_mm = [{}, {}]\n", quoted(document.trephine),
                       mm(file.host_diameter), mm(file.centre_x), mm(file.centre_y));
}

std::string donor_table(const CaseDocument& document) {
    const plan::Donor& donor = document.file.donor;
    std::string out = fmt::format("\n[donor]\npunch = {}\ndiameter_mm = {}\n", quoted(document.punch), mm(donor.diameter));
    if (donor.storage) out += fmt::format("storage = {}\n", quoted(word_for(storage_words(), *donor.storage)));
    if (donor.stored) out += fmt::format("stored = {}\n", measure::iso(*donor.stored));
    if (donor.expires) out += fmt::format("expires = {}\n", measure::iso(*donor.expires));
    if (donor.endothelium_per_mm2) out += fmt::format("endothelium_per_mm2 = {}\n", *donor.endothelium_per_mm2);
    if (donor.donation) out += fmt::format("donation = {}\n", quoted(*donor.donation));
    return out;
}

std::string goal_line(const plan::Aim& aim) {
    switch (aim.goal) {
        case plan::Goal::Share:
            return fmt::format("share = {}", aim.share_permille / 1000.0);
        case plan::Goal::Spokes:
            return fmt::format("spokes = {}", aim.spokes);
        case plan::Goal::ToEntry:
            return "goal = \"to-entry\"";
    }
    measure::expect(false);
    return {};
}

}  // namespace

std::string text(const plan::Pattern& pattern) {
    if (pattern.interrupted > 0 && pattern.running > 0)
        return fmt::format("{} interrupted + {} running", pattern.interrupted, pattern.loops);
    if (pattern.interrupted > 0) return fmt::format("{} interrupted", pattern.interrupted);
    return fmt::format("{} {}running", pattern.loops, pattern.running == 2 ? "double " : "");
}

std::string write_case(const CaseDocument& document) {
    const plan::CaseFile& file = document.file;
    return case_table(file) + eye_table(file) + thickness_table(document) + host_table(document) + donor_table(document) +
           fmt::format("\n[aim]\n{}\nentry_limit = {}\n", goal_line(file.aim), file.aim.entry_limit) +
           fmt::format("\n[sutures]\npattern = {}\nfirst = {}\n", quoted(text(file.pattern)), quoted(eye::clock_text(file.first_suture)));
}

}  // namespace intake
