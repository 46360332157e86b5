// The Desk's pages for tissue and packs: what was read, what speaks against it in words, what becomes of it; a label that is typed
// goes the way of a scan. What the surgeon alone decides is held, and recorded as the surgeon's.
#include "guide/tissue.hpp"
#include "screen/desk_pages.hpp"
#include "screen/format.hpp"
#include "screen/scan_text.hpp"

#include <algorithm>

namespace screen {
namespace {

using guide::CaseState;
using guide::ScanSeen;

constexpr std::size_t most_scans = 8;

std::string against_text(const ScanSeen& scan, const Words& words) {
    for (std::string text : {objections_text(scan, words), unchecked_text(scan, words)})
        if (!text.empty()) return text;
    return standing_text(scan, words);
}

/// What speaks against it, and how its parts came together.
std::string whole_text(const CaseState& state, const ScanSeen& scan, const Words& words) {
    const std::string joined = joined_text(state, scan, words);
    if (joined.empty()) return against_text(scan, words);
    return scan.said.item.kind == guide::ItemKind::Part && scan.said.against.empty() ? joined : against_text(scan, words) + " " + joined;
}

Target scan_target(std::string key, const ScanSeen& scan, const Words& words) {
    const std::string seq = std::to_string(scan.seq);
    Target made = desk_open(std::move(key), "scan-" + seq, item_text(scan.said.item, words), {.page = "scan", .argument = seq});
    made.line = standing_text(scan, words);
    if (guide::stands(scan)) made.look = Look::Watch;
    return made;
}

/// Those that stand first, then the newest; a label that was read to its end stands once.
std::vector<const ScanSeen*> scans_in_order(const CaseState& state) {
    std::vector<const ScanSeen*> all{};
    for (auto scan = state.scans.rbegin(); scan != state.scans.rend(); ++scan)
        if (!scan->completed) all.push_back(&*scan);
    std::stable_partition(all.begin(), all.end(), [](const ScanSeen* scan) { return guide::stands(*scan); });
    return all;
}

const ScanSeen* asked_for(const CaseState& state, const std::string& argument) {
    return guide::find_scan(state, static_cast<guide::Seq>(number_in(argument)));
}

DeskPage tissue_page(const CaseState& state, const Words& words) {
    DeskPage made{.heading = words("packs.title"), .line = words("packs.line")};
    if (const ScanSeen* scan = guide::standing_scan(state)) made.actions.push_back(scan_target("1", *scan, words));
    if (!state.scans.empty()) made.actions.push_back(desk_open("R", "scans", words("packs.read"), {.page = "scans"}));
    made.actions.push_back(desk_open("L", "label", words("packs.type"), {.page = "label"}));
    made.actions.push_back(desk_open("A", "tissue-said", words("packs.said"), {.page = "tissue-said"}));
    for (Target& one : desk_told_actions(state, words)) made.actions.push_back(std::move(one));
    made.actions.push_back(desk_back(words));
    return made;
}

DeskPage scans_page(const CaseState& state, const Words& words) {
    DeskPage made{.heading = words("packs.read"), .line = words(state.scans.empty() ? "packs.none_read" : "packs.read_line")};
    const auto all = scans_in_order(state);
    for (std::size_t i = 0; i < std::min(all.size(), most_scans); ++i) made.actions.push_back(scan_target(desk_nth_key(i), *all[i], words));
    if (all.size() > most_scans) made.line = words("packs.more", {std::to_string(all.size() - most_scans)});
    made.actions.push_back(desk_back(words));
    return made;
}

/// Dead with the reason where nobody may overrule it; by way of the bank's contact where that is needed.
Target overrule_target(const ScanSeen& scan, const Words& words) {
    const std::string seq = std::to_string(scan.seq);
    const bool contact = guide::needs_contact(scan);
    Target made = desk_open("O", "overrule", words("packs.overrule"),
                            {.page = contact ? "contact" : "overrule", .argument = contact ? seq : seq + "="});
    if (guide::never_overruled(scan)) made.why_not = words("packs.never");
    return made;
}

DeskPage scan_page(const CaseState& state, const ScanSeen& scan, const Words& words) {
    const guide::Item& item = scan.said.item;
    const std::string seq = std::to_string(scan.seq);
    DeskPage made{.heading = item_text(item, words), .line = whole_text(state, scan, words)};
    if (!scan.put_aside && !scan.completed)
        made.actions.push_back(desk_open("P", "put-aside", words("packs.put_aside"), {.page = "aside", .argument = seq}));
    if (guide::stands(scan)) made.actions.push_back(overrule_target(scan, words));
    if (may_name_sutures(state, scan))
        made.actions.push_back(desk_open("S", "sutures", words("packs.sutures"), {.page = "material", .argument = seq}));
    made.actions.push_back(desk_back(words));
    return made;
}

/// Reasons by their numbers, each with what it carries; held where the surgeon alone decides.
DeskPage reasons_page(const std::string& heading, std::vector<Target> reasons, const Words& words) {
    DeskPage made{.heading = heading};
    for (Target& one : reasons) made.actions.push_back(desk_keyed(desk_nth_key(made.actions.size()), std::move(one)));
    made.actions.push_back(desk_back(words));
    return made;
}

DeskPage aside_page(const ScanSeen& scan, const Words& words) {
    return reasons_page(
        words("packs.why_aside", {item_text(scan.said.item, words)}),
        reason_choices("aside", words, [&](const std::string& why) { return guide::PutAside{.event = scan.seq, .why = why}; }), words);
}

/// "17=R. B.": the scan, and the contact at the tissue bank.
DeskPage overrule_page(const CaseState& state, const std::string& argument, const Words& words) {
    const auto at = argument.find('=');
    const ScanSeen* scan = asked_for(state, argument.substr(0, at));
    const std::string contact = at == std::string::npos ? "" : argument.substr(at + 1);
    if (scan == nullptr) return {.heading = words("packs.why_overrule"), .line = words("packs.none_read"), .actions = {desk_back(words)}};
    DeskPage made = reasons_page(
        words("packs.why_overrule"),
        reason_choices("overrule", words,
                       [&](const std::string& why) { return guide::Overrule{.event = scan->seq, .why = why, .contact = contact}; }),
        words);
    made.line = against_text(*scan, words);
    for (Target& one : made.actions)
        if (one.id != "desk-back") one = desk_held(std::move(one), words);
    return made;
}

DeskPage contact_page(const DeskState& desk, const Words& words) {
    return desk_field_page(
        words("packs.contact"), desk.typed, words("packs.contact_line"),
        desk_open("Enter", "overrule", words("desk.next_why"), {.page = "overrule", .argument = desk.argument + "=" + desk.typed}), words);
}

DeskPage label_page(const DeskState& desk, const Words& words) {
    return desk_field_page(words("packs.type"), desk.typed, words("packs.type_line"),
                           desk_open("Enter", "take-label", words("packs.take"), {.page = "typed-label", .argument = desk.typed}), words);
}

struct Word {
    const char* key;
    const char* id;
    guide::TissueWord what{};
    bool text = false;  // says more than the word
};
constexpr Word tissue_words[] = {
    {"A", "accepted", guide::TissueWord::Accepted},         {"U", "unfit", guide::TissueWord::Unfit, true},
    {"B", "back-up", guide::TissueWord::BackUpNamed, true}, {"G", "grafted", guide::TissueWord::Grafted},
    {"N", "not-used", guide::TissueWord::NotUsed, true},    {"L", "left-over", guide::TissueWord::LeftOver, true}};

DeskPage said_page(const Words& words) {
    DeskPage made{.heading = words("packs.said"), .line = words("packs.said_line")};
    for (const Word& one : tissue_words) {
        const std::string label = words(std::string("packs.") + one.id);
        made.actions.push_back(one.text ? desk_open(one.key, one.id, label, {.page = "tell", .argument = one.id})
                                        : desk_act(one.key, one.id, label, {guide::TellTissue{.what = one.what, .text = ""}}));
    }
    made.actions.front() = desk_held(std::move(made.actions.front()), words);
    made.actions.push_back(desk_back(words));
    return made;
}

DeskPage tell_page(const DeskState& desk, const Words& words) {
    for (const Word& one : tissue_words) {
        if (desk.argument != one.id) continue;
        return desk_field_page(words(std::string("packs.") + one.id), desk.typed, words("packs.text_line"),
                               desk_act("Enter", "tell", words("desk.write"), {guide::TellTissue{.what = one.what, .text = desk.typed}}),
                               words);
    }
    return {.actions = {desk_back(words)}};
}

}  // namespace

bool may_name_sutures(const CaseState& state, const ScanSeen& scan) {
    const guide::Item& item = scan.said.item;
    return item.kind == guide::ItemKind::Pack && !item.instrument && !scan.put_aside && !scan.completed && !guide::stands(scan) &&
           std::none_of(state.materials.begin(), state.materials.end(), [&](const auto& one) { return one.fact.pack == scan.seq; });
}

void desk_say_what_stands(DeskPage& made, const CaseState& state, const Words& words) {
    const ScanSeen* scan = guide::standing_scan(state);
    if (scan == nullptr) return;
    made.heading = words("packs.something_stands");
    made.line = unfitting_text(*scan, words);
}

std::optional<DeskPage> desk_tissue_page(const CaseState& state, const DeskState& desk, const Words& words) {
    if (desk.page == "tissue") return tissue_page(state, words);
    if (desk.page == "scans") return scans_page(state, words);
    if (desk.page == "overrule") return overrule_page(state, desk.argument, words);
    if (desk.page == "contact") return contact_page(desk, words);
    if (desk.page == "label") return label_page(desk, words);
    if (desk.page == "tissue-said") return said_page(words);
    if (desk.page == "tell") return tell_page(desk, words);
    const ScanSeen* scan = asked_for(state, desk.argument);
    if (desk.page == "scan" && scan != nullptr) return scan_page(state, *scan, words);
    if (desk.page == "aside" && scan != nullptr) return aside_page(*scan, words);
    return std::nullopt;
}

}  // namespace screen
