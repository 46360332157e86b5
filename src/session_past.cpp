// The pages over past cases between the ledger and the glass. The ledger is read and never written to here.
#include "past_shelf.hpp"
#include "session.hpp"

namespace graftside {
namespace {

constexpr auto usual_trephine = "suction-trephine";

/// What the pages need besides the cases: the titles of the guide, the reach as the profile has it.
Try<screen::PastSeen> past_seen(const Stock& stock) {
    auto procedure = procedure_of(stock);
    if (!procedure) return procedure.error();
    auto trephine = trephine_of(stock, usual_trephine);
    if (!trephine) return trephine.error();
    return screen::PastSeen{.procedure = *std::move(procedure), .shipped = trephine->reach};
}

}  // namespace

bool Session::open_past() {
    auto seen = past_seen(stock_);
    auto all = summaries(*ledger_);
    if (!seen || !all) {
        refusal_ = (seen ? all.error() : seen.error()).lines.front();
        return false;
    }
    past_seen_ = *std::move(seen);
    past_cases_ = *std::move(all);
    screen_.past = {};
    return true;
}

void Session::look_back(const screen::Show& show, const measure::Instant& at) {
    if (under_way() || (!past_seen_ && !open_past())) return;
    screen::ScreenState next = screen::after_past(screen_, show);
    if (!next.past.one.empty() && next.past.one != screen_.past.one) {
        const auto events = ledger_->load(next.past.one);
        if (!events) {
            refusal_ = stop(events.error()).lines.front();
            return;
        }
        past_seen_->one = guide::fold(*events);
    }
    past_seen_->figures = past::figures(past_cases_, screen::past_filter(next.past, options_.on.value_or(measure::day_of(at))));
    screen_ = std::move(next);
}

}  // namespace graftside
