// Past cases between the ledger and the glass: what the case that stands open is held against, and the pages over all of them. The ledger
// is read and never written to here.
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
    screen::PastSeen seen{};  // by name: GCC 12 takes the set in an unnamed one for not initialised
    seen.procedure = *std::move(procedure);
    seen.shipped = trephine->reach;
    return seen;
}

}  // namespace

bool Session::open_past() {
    auto seen = past_seen(stock_);
    auto all = summaries(*ledger_);
    if (!seen || !all) {
        refusal_ = on_screen(seen ? all.error() : seen.error(), stock_.words).front();
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
            refusal_ = on_screen(stop(events.error()), stock_.words).front();
            return;
        }
        past_seen_->one = guide::fold(*events);
    }
    past_seen_->figures = past::figures(past_cases_, screen::past_filter(next.past, options_.on.value_or(measure::day_of(at))));
    screen_ = std::move(next);
}

/// Figures over the station's other cases of this kind. Where they cannot be read the case goes on without them.
void Session::look_at_past() {
    own_past_.reset();
    auto all = summaries(*ledger_);
    if (!all) return;
    const plan::CaseFile& file = open_->state().inputs.file;
    std::erase_if(*all, [&](const past::Summary& one) { return one.reference == file.reference; });
    own_past_ = std::make_shared<past::Figures>(past::figures(*std::move(all), {.invented = file.invented}));
}

}  // namespace graftside
