// The fields of the case, the instruments and the plan on disk: one list a struct, used for writing and for reading.
// Names bear their unit. Only ever added to.
#pragma once

#include "plan/plan.hpp"

#include <concepts>
#include <type_traits>

namespace ledger {

/// T or const T: one field list serves both directions.
template <class Value, class T>
concept a = std::same_as<std::remove_const_t<Value>, T>;

void each(auto& field, a<measure::Interval> auto& v) {
    field("low_nm", v.low);
    field("high_nm", v.high);
}

// ---- instruments ----

void each(auto& field, a<instrument::Reach> auto& v) {
    field("mean", v.mean);
    field("sd", v.sd);
    field("n", v.n);
    field("source", v.source);
}

void each(auto& field, a<instrument::Trephine> auto& v) {
    field("id", v.id);
    field("name", v.name);
    field("advance_nm", v.advance);
    field("spokes_per_turn", v.spokes_per_turn);
    field("lower", v.lower);
    field("raise", v.raise);
    field("marks", v.marks);
    field("mark_offset_centideg", v.mark_offset);
    field("diameters_nm", v.diameters);
    field("suction", v.suction);
    field("reach", v.reach);
}

void each(auto& field, a<instrument::Punch> auto& v) {
    field("id", v.id);
    field("name", v.name);
    field("diameters_nm", v.diameters);
    field("dots", v.dots);
    field("vacuum", v.vacuum);
}

// ---- the case ----

void each(auto& field, a<plan::Reading> auto& v) {
    field("ring_nm", v.ring);
    field("at_centideg", v.at);
    field("thickness_nm", v.thickness);
}

void each(auto& field, a<plan::Thickness> auto& v) {
    field("method", v.method);
    field("measured", v.measured);
    field("central_nm", v.central);
    field("through_scar", v.through_scar);
    field("edge_looks_normal", v.edge_looks_normal);
    field("readings", v.readings);
}

void each(auto& field, a<plan::Aim> auto& v) {
    field("goal", v.goal);
    field("share_permille", v.share_permille);
    field("spokes", v.spokes);
    field("entry_limit", v.entry_limit);
}

void each(auto& field, a<plan::Pattern> auto& v) {
    field("interrupted", v.interrupted);
    field("loops", v.loops);
    field("running", v.running);
}

void each(auto& field, a<plan::Donor> auto& v) {
    field("diameter_nm", v.diameter);
    field("storage", v.storage);
    field("stored", v.stored);
    field("expires", v.expires);
    field("endothelium_per_mm2", v.endothelium_per_mm2);
    field("donation", v.donation);
}

void each(auto& field, a<plan::CaseFile> auto& v) {
    field("reference", v.reference);
    field("date", v.date);
    field("side", v.side);
    field("reason", v.reason);
    field("seat", v.seat);
    field("keratometry_D", v.keratometry_D);
    field("white_to_white_horizontal_nm", v.white_to_white_horizontal);
    field("white_to_white_vertical_nm", v.white_to_white_vertical);
    field("axial_length_mm", v.axial_length_mm);
    field("lens", v.lens);
    field("thickness", v.thickness);
    field("host_diameter_nm", v.host_diameter);
    field("centre_x_nm", v.centre_x);
    field("centre_y_nm", v.centre_y);
    field("donor", v.donor);
    field("aim", v.aim);
    field("pattern", v.pattern);
    field("first_suture_centideg", v.first_suture);
    field("invented", v.invented);
}

void each(auto& field, a<plan::Limits> auto& v) {
    field("clearance_nm", v.clearance);
    field("endothelium_per_mm2", v.endothelium_per_mm2);
    field("hosts_in_stock_nm", v.hosts_in_stock);
    field("donors_in_stock_nm", v.donors_in_stock);
}

void each(auto& field, a<plan::Inputs> auto& v) {
    field("file", v.file);
    field("trephine", v.trephine);
    field("punch", v.punch);
    field("limits", v.limits);
}

// ---- the plan as it was shown ----

/// The direction of the thinnest place in hundredths of a degree; in whole degrees beside it for programs that know no others,
/// and alone in records of such programs.
void each_direction(auto& field, auto& direction) {
    std::optional<int> whole{};
    if (direction) whole = (direction->centideg() + 50) / 100 % 360;
    field("thinnest_deg", whole);
    field("thinnest_centideg", direction);
    if constexpr (!std::is_const_v<std::remove_reference_t<decltype(direction)>>) {
        if (whole && !direction) direction = measure::whole_deg(*whole);
    }
}

void each(auto& field, a<plan::Wall> auto& v) {
    field("basis", v.basis);
    field("thinnest_nm", v.thinnest);
    each_direction(field, v.thinnest_at);
    field("mean_nm", v.mean);
    field("u_nm", v.u);
    field("rms_nm", v.rms);
    field("profile_nm", v.profile);
}

void each(auto& field, a<plan::Rung> auto& v) {
    field("spoke", v.spoke);
    field("travel_nm", v.travel);
    field("share", v.share);
    field("reserve_nm", v.reserve);
    field("reserve_u95_nm", v.reserve_u95);
    field("entry_chance", v.entry_chance);
}

void each(auto& field, a<plan::Target> auto& v) {
    field("spokes", v.spokes);
    field("raise", v.raise);
    field("bound_by", v.bound_by);
    field("share_permille", v.share_permille);
    field("entry_from", v.entry_from);
    field("entry_to", v.entry_to);
}

void each(auto& field, a<plan::Sizes> auto& v) {
    field("oversize_nm", v.oversize);
    field("clearance_nm", v.clearance);
    field("clearance_deg", v.clearance_deg);
    field("clearance_usual_offset_nm", v.clearance_usual_offset);
    field("button_front", v.button_front);
    field("button_back", v.button_back);
}

void each(auto& field, a<plan::Suture> auto& v) {
    field("n", v.n);
    field("centideg", v.centideg);
    field("host_mark", v.host_mark);
    field("between", v.between);
    field("between_permille", v.between_permille);
    field("donor_mark", v.donor_mark);
    field("opposite", v.opposite);
}

void each(auto& field, a<plan::Running> auto& v) {
    field("loops", v.loops);
    field("sutures", v.sutures);
    field("spacing_nm", v.spacing);
    field("start_centideg", v.start_centideg);
    field("clockwise", v.clockwise);
}

void each(auto& field, a<plan::Note> auto& v) {
    field("code", v.code);
    field("source", v.source);
    field("level", v.level);
    field("values", v.values);
}

void each(auto& field, a<plan::Plan> auto& v) {
    field("formula", v.formula);
    field("wall", v.wall);
    field("ladder", v.ladder);
    field("target", v.target);
    field("sizes", v.sizes);
    field("spacing_nm", v.spacing);
    field("order", v.order);
    field("running", v.running);
    field("notes", v.notes);
}

}  // namespace ledger
