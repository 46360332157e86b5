// What went otherwise, read off the events: one lambda a fact, so that a new fact has to be thought of here too.
#include "guide/timed.hpp"
#include "guide/tissue.hpp"
#include "measure/overloaded.hpp"
#include "paper/format.hpp"
#include "paper/sheet.hpp"

#include <algorithm>

namespace paper {
namespace {

using guide::Event;

std::string with_why(const std::string& text, const std::string& why) { return why.empty() ? text : text + ": " + why; }

/// The title as the screen had it: the one figure that the guide puts into titles is the spokes raised.
std::string step_title(const Record& record, const guide::StepId& id) {
    constexpr std::string_view gap = "{raise}";
    const guide::Step* step = guide::find_step(record.state.brief.procedure, id);
    std::string title = step == nullptr ? id : step->title;
    const auto at = title.find(gap);
    return at == std::string::npos ? title : title.replace(at, gap.size(), number(record.state.inputs.trephine.raise));
}

const std::string& item_title(const Record& record, const guide::ItemId& id) {
    const auto& items = record.state.brief.unit.counts;
    const auto item = std::find_if(items.begin(), items.end(), [&](const guide::CountItem& one) { return one.id == id; });
    return item == items.end() ? id : item->title;
}

/// What a fact says of itself when it is out of the usual; empty when it is not.
class Teller {
public:
    Teller(const Record& record, const Words& words) : record_(record), words_(words) {}

    std::string of(const Event& event) const {
        return std::visit(
            measure::overloaded{
                [](const guide::CaseOpened&) { return std::string(); },
                [](const guide::RunStarted&) { return std::string(); },
                [](const guide::SideEntered&) { return std::string(); },
                [&](const guide::PlanAccepted& fact) { return fact.why.empty() ? "" : with_why(words_("paper.plan_changed"), fact.why); },
                [&](const guide::PlanMoved& fact) { return words_("paper.plan_moved", {number(fact.by)}); },
                [](const guide::StepFinished&) { return std::string(); },
                [&](const guide::StepReopened& fact) { return with_why(words_("paper.reopened", {title(fact.step)}), fact.why); },
                [&](const guide::StepSkipped& fact) { return with_why(words_("paper.skipped", {title(fact.step)}), fact.why); },
                [](const guide::CountHeld&) { return std::string(); },
                [&](const guide::SpokeTurned& fact) { return fact.owes_reason ? spoke(event.seq) : ""; },
                [](const guide::TapUndone&) { return std::string(); },
                [&](const guide::CutEnded& fact) { return cut(fact); },
                [&](const guide::SuctionTurned& fact) { return fact.to == guide::Suction::Lost ? lost(event.seq) : ""; },
                [](const guide::ClockMarked&) { return std::string(); },
                [](const guide::SutureTied&) { return std::string(); },
                [&](const guide::SutureCut& fact) { return with_why(words_("paper.suture_cut", {number(fact.n)}), fact.why); },
                [](const guide::RingSeen&) { return std::string(); },
                [](const guide::ItemsMoved&) { return std::string(); },
                [&](const guide::CountChecked& fact) { return check(fact); },
                [&](const guide::Scanned& fact) { return objections(event.seq, fact); },
                [&](const guide::Overruled& fact) { return overruled(fact); },
                [&](const guide::Departed& fact) { return is_of_loss(event.seq) ? std::string() : departure(event, fact); },
                [](const guide::CameBack&) { return std::string(); },
                [](const guide::ReasonGiven&) { return std::string(); },
                [&](const guide::NoteWritten& fact) { return words_("paper.note", {fact.text}); },
                [&](const guide::TimeCorrected& fact) { return corrected(event, fact); },
                [](const guide::WrittenLate&) { return std::string(); },
                [&](const guide::CaseClosed& fact) { return with_why(ended(fact.how), fact.why); },
                [&](const guide::DifferenceRecorded& fact) { return difference(fact); },
                [&](const guide::ItemPutAside& fact) { return with_why(words_("paper.put_aside", {scan_name(fact.event)}), fact.why); },
                [&](const guide::TissueTold& fact) { return told(fact); },
                [](const guide::DepthMeasured&) { return std::string(); },
                [](const guide::KnotsTold&) { return std::string(); },
                [](const guide::SuturesNamed&) { return std::string(); },
                [](const guide::SpecimenTold&) { return std::string(); },
                [](const guide::BankTold&) { return std::string(); },
            },
            event.fact);
    }

private:
    std::string title(const guide::StepId& id) const { return step_title(record_, id); }

    std::string spoke(guide::Seq seq) const {
        for (const auto& given : all_of<guide::ReasonGiven>(record_)) {
            if (given.fact->event == seq) return with_why(words_("paper.spoke_over"), given.fact->why);
        }
        return with_why(words_("paper.spoke_over"), words_("paper.reason_owed"));
    }
    std::string cut(const guide::CutEnded& fact) const {
        switch (fact.how) {
            case guide::CutEnd::AtPlan:
                return {};
            case guide::CutEnd::Entered:
                return words_("paper.cut_entered", {number(fact.position)});
            case guide::CutEnd::Surgeon:
                return words_("paper.cut_surgeon", {number(fact.position)});
        }
        return {};
    }
    std::string check(const guide::CountChecked& fact) const {
        if (fact.seen == fact.expected) return {};
        return words_("paper.count_differs", {item_title(record_, fact.item), fact.by, number(fact.seen), number(fact.expected)});
    }
    /// Only sizes are figures among them: the rest are names, days and references.
    std::vector<std::string> scan_values(const guide::Objection& one) const {
        std::vector<std::string> values = one.values;
        for (std::string& value : values) value = one.what == guide::Against::WrongSize ? words_.figure(value) : value;
        return values;
    }
    /// "Tissue G1234", "Lot A1", "Scan 17" where the label says neither.
    std::string scan_name(guide::Seq event) const {
        const guide::ScanSeen* scan = guide::find_scan(record_.state, event);
        const guide::Item item = scan == nullptr ? guide::Item{} : scan->said.item;
        if (item.donation) return words_("packs.tissue", {guide::tissue_text(item)});
        if (item.lot) return words_("packs.pack_lot", {*item.lot});
        return item.gtin ? words_("packs.pack", {*item.gtin}) : words_("paper.scan", {number(event)});
    }
    /// Which item it is stands before, unless what speaks against it says so.
    std::string objections(guide::Seq event, const guide::Scanned& fact) const {
        bool named = false;
        std::string said{};
        for (const guide::Objection& one : fact.against) {
            named = named || one.what == guide::Against::NotPlannedTissue;
            said += (said.empty() ? "" : " ") + words_("scan." + std::string(guide::name(one.what)), scan_values(one));
        }
        if (said.empty()) return said;
        return words_("paper.read", {named ? said : words_("scan.item", {scan_name(event), said})});
    }
    std::string overruled(const guide::Overruled& fact) const {
        const std::string said = with_why(words_("paper.overruled", {scan_name(fact.event)}), fact.why);
        return fact.contact.empty() ? said : said + ", " + words_("paper.contact", {fact.contact});
    }
    std::string told(const guide::TissueTold& fact) const {
        switch (fact.what) {
            case guide::TissueWord::Unfit:
                return with_why(words_("paper.unfit"), fact.text);
            case guide::TissueWord::NotUsed:
                return with_why(words_("paper.tissue_not_used"), fact.text);
            case guide::TissueWord::Accepted:
            case guide::TissueWord::BackUpNamed:
            case guide::TissueWord::Grafted:
            case guide::TissueWord::LeftOver:
                return {};
        }
        return {};
    }
    std::string difference(const guide::DifferenceRecorded& fact) const {
        const std::vector<std::string> values{item_title(record_, fact.item), number(fact.seen), number(fact.expected)};
        return with_why(words_("paper.difference", values), fact.why);
    }
    const Event* at(guide::Seq seq) const {
        const auto found = std::find_if(record_.events.begin(), record_.events.end(), [&](const Event& one) { return one.seq == seq; });
        return found == record_.events.end() ? nullptr : &*found;
    }
    /// The departure that the loss of suction is written with, the next event: both are one thing, and told once.
    bool is_of_loss(guide::Seq seq) const {
        const Event* before = at(seq - 1);
        const Event* event = at(seq);
        const auto* suction = before == nullptr ? nullptr : std::get_if<guide::SuctionTurned>(&before->fact);
        const auto* departed = event == nullptr ? nullptr : std::get_if<guide::Departed>(&event->fact);
        return suction != nullptr && suction->to == guide::Suction::Lost && departed != nullptr && departed->what == "suction-lost";
    }
    std::string lost(guide::Seq seq) const {
        return is_of_loss(seq + 1) ? departure(*at(seq + 1), std::get<guide::Departed>(at(seq + 1)->fact)) : words_("lost.title");
    }
    std::string departure(const Event& event, const guide::Departed& fact) const {
        const std::string said = with_why(guide::departure_title(record_.state.brief.procedure, fact.what), fact.note);
        const auto& all = record_.state.departures;
        const auto away = std::find_if(all.begin(), all.end(), [&](const guide::Away& one) { return one.seq == event.seq; });
        if (away == all.end()) return taken_back(record_, event.seq) ? said : said + ", " + words_("paper.taken_back");
        return said + ", " + (away->back ? words_("paper.back", {measure::hour_minute(*away->back)}) : words_("paper.not_back"));
    }
    std::string clock(const guide::ClockId& id) const {
        const auto& phases = record_.state.brief.procedure.phases;
        const auto phase = std::find_if(phases.begin(), phases.end(), [&](const guide::Phase& one) { return one.id == id; });
        return phase == phases.end() ? words_("clock." + id) : phase->title;
    }
    /// "Button out", "Suture 5", "open sky"; of what stands no more, the event's number.
    std::string moment(guide::Seq event) const {
        const auto one = guide::find_timed(record_.state, event);
        if (!one) return words_("paper.event", {number(event)});
        switch (one->is) {
            case guide::Timed::Is::Step:
                return title(one->id);
            case guide::Timed::Is::ClockOn:
            case guide::Timed::Is::ClockOff:
                return clock(one->id);
            case guide::Timed::Is::Suture:
                return words_("times.suture", {number(one->n)});
        }
        return {};
    }
    /// What one tap wrote was corrected as one, and is told as one: with the first of them.
    std::string corrected(const Event& told, const guide::TimeCorrected& fact) const {
        std::string events{};
        for (const auto& one : all_of<guide::TimeCorrected>(record_)) {
            if (one.event->at != told.at || one.fact->utc_ms != fact.utc_ms || one.fact->why != fact.why) continue;
            if (events.empty() && one.event->seq != told.seq) return {};
            events += (events.empty() ? "" : ", ") + moment(one.fact->event);
        }
        const auto event =
            std::find_if(record_.events.begin(), record_.events.end(), [&](const Event& one) { return one.seq == fact.event; });
        if (event == record_.events.end()) return {};
        const measure::Instant now{.utc_ms = fact.utc_ms, .offset_min = event->at.offset_min};
        const std::vector<std::string> values{events, measure::hour_minute(event->at), measure::hour_minute(now)};
        return with_why(words_("paper.time_corrected", values), fact.why);
    }
    std::string ended(guide::CaseEnd how) const {
        switch (how) {
            case guide::CaseEnd::Done:
                return {};
            case guide::CaseEnd::Converted:
                return words_("paper.converted");
            case guide::CaseEnd::Abandoned:
                return words_("paper.abandoned");
        }
        return {};
    }

    const Record& record_;
    const Words& words_;
};

/// What must not give way where the room ends: what was found or decided against the plan; then departures, the rest, notes.
int rank(const guide::Fact& fact) {
    const auto* cut = std::get_if<guide::CutEnded>(&fact);
    const auto* suction = std::get_if<guide::SuctionTurned>(&fact);
    const auto* tissue = std::get_if<guide::TissueTold>(&fact);
    const bool first = std::holds_alternative<guide::DifferenceRecorded>(fact) || std::holds_alternative<guide::Overruled>(fact) ||
                       (tissue != nullptr && tissue->what == guide::TissueWord::Unfit) ||
                       (cut != nullptr && cut->how == guide::CutEnd::Entered) ||
                       (suction != nullptr && suction->to == guide::Suction::Lost);
    constexpr int found = 0, departed = 1, others = 2, notes = 3;
    if (first) return found;
    if (std::holds_alternative<guide::Departed>(fact)) return departed;
    return std::holds_alternative<guide::NoteWritten>(fact) ? notes : others;
}

}  // namespace

std::vector<std::string> otherwise(const Record& record, const Words& words) {
    const Teller teller(record, words);
    std::vector<std::pair<int, std::string>> ranked{};
    for (const Event& event : record.events) {
        std::string said = teller.of(event);
        if (said.empty()) continue;
        if (taken_back(record, event.seq)) said += ", " + words("paper.taken_back");
        if (written_late(record, event.seq)) said += ", " + words("paper.late_mark");
        ranked.emplace_back(rank(event.fact), measure::hour_minute(event.at) + "  " + said);
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<std::string> told{};
    for (auto& one : ranked) told.push_back(std::move(one.second));
    return told;
}

}  // namespace paper
