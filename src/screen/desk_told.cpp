// The Desk's pages for what is told after the cut and at the end: how deep the cut was measured, where the knots are, which suture
// material, where the specimens went, and whom at the tissue bank was told what.
#include "guide/tissue.hpp"
#include "screen/desk_pages.hpp"
#include "screen/format.hpp"
#include "screen/scan_text.hpp"

namespace screen {
namespace {

using guide::CaseState;

constexpr std::size_t most_packs = 6;

/// There is a depth to measure once a cut has ended, and not where it went through.
bool may_measure_depth(const CaseState& state) {
    return !state.seatings.empty() && state.seatings.back().ended && state.seatings.back().ended != guide::CutEnd::Entered;
}

DeskPage depth_page(const DeskState& desk, const Words& words) {
    return desk_field_page(words("packs.depth"), desk.typed, words("packs.depth_line"),
                           desk_open("Enter", "depth-how", words("packs.depth_next"), {.page = "depth-how", .argument = desk.typed}),
                           words);
}

/// "520": writes that depth, measured in this way.
std::vector<guide::Intent> measured(const std::string& um, const std::string& how) {
    return {guide::MeasureDepth{.depth = measure::from_um(static_cast<double>(number_in(um))), .how = how}};
}

/// The depth read back, and how it was measured.
DeskPage depth_how_page(const std::string& um, const Words& words) {
    DeskPage made{.heading = words("packs.depth_how", {um}), .line = words("packs.depth_how_line")};
    for (const std::string how : {"ultrasound", "oct", "eye"}) {
        const std::string label = words("packs.depth_" + how);
        made.actions.push_back(desk_act(desk_nth_key(made.actions.size()), "depth-" + how, label, measured(um, label)));
    }
    made.actions.push_back(desk_open("T", "own-words", words("packs.own_words"), {.page = "depth-words", .argument = um}));
    made.actions.push_back(desk_back(words));
    return made;
}

DeskPage depth_words_page(const DeskState& desk, const Words& words) {
    return desk_field_page(words("packs.depth_how", {desk.argument}), desk.typed, words("packs.text_line"),
                           desk_act("Enter", "write", words("desk.write"), measured(desk.argument, desk.typed)), words);
}

DeskPage knots_page(const Words& words) {
    using guide::KnotSide;
    DeskPage made{.heading = words("packs.knots"), .line = words("packs.knots_line")};
    for (const KnotSide side : {KnotSide::Host, KnotSide::Donor, KnotSide::NotBuried}) {
        const std::string id(guide::name(side));
        made.actions.push_back(
            desk_act(desk_nth_key(made.actions.size()), "knots-" + id, words("packs.knots_" + id), {guide::TellKnots{.side = side}}));
    }
    made.actions.push_back(desk_back(words));
    return made;
}

/// The packs that were read and stand for no instrument, or as told.
DeskPage sutures_page(const CaseState& state, const Words& words) {
    DeskPage made{.heading = words("packs.sutures"), .line = words("packs.sutures_line")};
    for (auto scan = state.scans.rbegin(); scan != state.scans.rend() && made.actions.size() < most_packs; ++scan) {
        if (!may_name_sutures(state, *scan)) continue;
        const std::string seq = std::to_string(scan->seq);
        made.actions.push_back(desk_open(desk_nth_key(made.actions.size()), "pack-" + seq, item_text(scan->said.item, words),
                                         {.page = "material", .argument = seq}));
    }
    made.actions.push_back(desk_open("T", "as-told", words("packs.as_told"), {.page = "material"}));
    made.actions.push_back(desk_back(words));
    return made;
}

/// Material and size; the lot is the pack's, or asked for next.
DeskPage material_page(const DeskState& desk, const Words& words) {
    const auto pack = static_cast<guide::Seq>(number_in(desk.argument));
    Target enter =
        pack == 0 ? desk_open("Enter", "lot", words("packs.next_lot"), {.page = "lot", .argument = desk.typed})
                  : desk_act("Enter", "write", words("desk.write"), {guide::NameSutures{.material = desk.typed, .lot = "", .pack = pack}});
    return desk_field_page(words("packs.material"), desk.typed, words("packs.material_line"), std::move(enter), words);
}

/// A lot that is not known is left empty.
DeskPage lot_page(const DeskState& desk, const Words& words) {
    DeskPage made = desk_field_page(
        words("packs.lot"), desk.typed, words("packs.lot_line"),
        desk_act("Enter", "write", words("desk.write"), {guide::NameSutures{.material = desk.argument, .lot = desk.typed, .pack = 0}}),
        words);
    made.actions.front().why_not.clear();
    return made;
}

constexpr guide::Specimen specimens[] = {guide::Specimen::HostButton, guide::Specimen::Rim, guide::Specimen::Medium};
constexpr guide::SentTo places[] = {guide::SentTo::Pathology, guide::SentTo::Culture, guide::SentTo::Discarded};

DeskPage specimens_page(const CaseState& state, const Words& words) {
    DeskPage made{.heading = words("packs.specimens"), .line = words("packs.specimens_line")};
    for (const guide::Specimen what : specimens) {
        const std::string id(guide::name(what));
        made.actions.push_back(
            desk_open(desk_nth_key(made.actions.size()), "specimen-" + id, words("packs." + id), {.page = "specimen", .argument = id}));
        const auto told = state.specimens.find(what);
        if (told != state.specimens.end())
            made.actions.back().line = words("specimen.to_" + std::string(guide::name(told->second.fact.to)));
    }
    made.actions.push_back(desk_back(words));
    return made;
}

std::optional<guide::Specimen> specimen_of(const std::string& id) {
    for (const guide::Specimen what : specimens)
        if (guide::name(what) == id) return what;
    return std::nullopt;
}

/// Where it goes; what is kept has a label whose side is asked for next.
DeskPage specimen_page(guide::Specimen what, const Words& words) {
    const std::string id(guide::name(what)), asked = id + "=";
    DeskPage made{.heading = words("packs." + id), .line = words("packs.where")};
    for (const guide::SentTo to : places) {
        const std::string place(guide::name(to)), label = words("packs.to_" + place), key = desk_nth_key(made.actions.size());
        made.actions.push_back(to == guide::SentTo::Discarded
                                   ? desk_act(key, "to-" + place, label, {guide::TellSpecimen{.what = what, .to = to, .side = ""}})
                                   : desk_open(key, "to-" + place, label, {.page = "specimen-side", .argument = asked + place}));
    }
    made.actions.push_back(desk_back(words));
    return made;
}

/// "rim=culture": which side stands on the label.
DeskPage side_page(const std::string& argument, const Words& words) {
    const auto at = argument.find('=');
    const auto what = specimen_of(argument.substr(0, at));
    DeskPage made{.heading = words("packs.label_side"), .line = words("packs.label_side_line")};
    for (const guide::SentTo to : places) {
        if (!what || at == std::string::npos || guide::name(to) != argument.substr(at + 1)) continue;
        const auto labelled = [&](const std::string& side) {
            return std::vector<guide::Intent>{guide::TellSpecimen{.what = *what, .to = to, .side = side}};
        };
        made.actions.push_back(desk_act("R", "label-right", words("packs.right"), labelled("right")));
        made.actions.push_back(desk_act("L", "label-left", words("packs.left"), labelled("left")));
    }
    made.actions.push_back(desk_back(words));
    return made;
}

/// The note that goes back to the bank, without the lines that say which tissue.
std::string note_text(const CaseState& state, const Words& words) {
    constexpr std::size_t which_tissue = 2;
    std::string text{};
    const auto note = guide::bank_note(state);
    for (std::size_t i = which_tissue; i < note.size(); ++i) {
        text += (text.empty() ? "" : " ") + words(note[i].id, note[i].values);
        if (!text.ends_with('.')) text += '.';
    }
    return text;
}

DeskPage bank_page(const DeskState& desk, const Words& words) {
    return desk_field_page(words("packs.bank"), desk.typed, words("packs.bank_line"),
                           desk_open("Enter", "bank-text", words("packs.next_text"), {.page = "bank-text", .argument = desk.typed}), words);
}

/// What was told: the note as it stands, or own words.
DeskPage bank_text_page(const CaseState& state, const std::string& contact, const Words& words) {
    const std::string note = note_text(state, words);
    return {
        .heading = words("packs.bank_text"),
        .line = note,
        .actions = {desk_act("1", "as-note", words("packs.as_note"), {guide::TellBank{.contact = contact, .text = note}}),
                    desk_open("T", "own-words", words("packs.own_words"), {.page = "bank-words", .argument = contact}), desk_back(words)}};
}

DeskPage bank_words_page(const DeskState& desk, const Words& words) {
    return desk_field_page(
        words("packs.bank_text"), desk.typed, words("packs.text_line"),
        desk_act("Enter", "tell-bank", words("desk.write"), {guide::TellBank{.contact = desk.argument, .text = desk.typed}}), words);
}

}  // namespace

std::vector<Target> desk_told_actions(const CaseState& state, const Words& words) {
    std::vector<Target> made{desk_open("K", "knots", words("packs.knots"), {.page = "knots"}),
                             desk_open("S", "sutures", words("packs.sutures"), {.page = "sutures"}),
                             desk_open("G", "specimens", words("packs.specimens"), {.page = "specimens"}),
                             desk_open("B", "bank", words("packs.bank_told"), {.page = "bank"})};
    for (Target& one : made) {
        const bool waits = one.id == "knots" || one.id == "specimens";
        if (waits && !guide::eye_entered(state)) one.why_not = words("packs.later");
    }
    if (!may_measure_depth(state)) return made;
    made.push_back(desk_open("D", "depth", words("packs.depth"), {.page = "depth"}));
    if (state.depth) made.back().line = um_text(*state.depth);
    return made;
}

std::optional<DeskPage> desk_told_page(const CaseState& state, const DeskState& desk, const Words& words) {
    if (desk.page == "depth") return depth_page(desk, words);
    if (desk.page == "depth-how") return depth_how_page(desk.argument, words);
    if (desk.page == "depth-words") return depth_words_page(desk, words);
    if (desk.page == "knots") return knots_page(words);
    if (desk.page == "sutures") return sutures_page(state, words);
    if (desk.page == "material") return material_page(desk, words);
    if (desk.page == "lot") return lot_page(desk, words);
    if (desk.page == "specimens") return specimens_page(state, words);
    if (desk.page == "specimen-side") return side_page(desk.argument, words);
    if (desk.page == "bank") return bank_page(desk, words);
    if (desk.page == "bank-text") return bank_text_page(state, desk.argument, words);
    if (desk.page == "bank-words") return bank_words_page(desk, words);
    const auto what = specimen_of(desk.argument);
    if (desk.page == "specimen" && what) return specimen_page(*what, words);
    return std::nullopt;
}

}  // namespace screen
