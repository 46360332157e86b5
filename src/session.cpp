#include "session.hpp"

#include "device/environment.hpp"
#include "device/files.hpp"
#include "intake/instrument.hpp"
#include "plan_page.hpp"
#include "screen/format.hpp"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <algorithm>
#include <cstdlib>

namespace graftside {
namespace {

constexpr auto typed_too =
    " is typed at the Desk too, and a pedal cannot be told from a keyboard. Let the pedal type F1 to F24, PageUp, PageDown, Home, End or "
    "Insert, or open no Desk and set the screen up draped.";

/// Sizes of the shipped profiles, as they are chosen from.
screen::SizesInStock sizes_in_stock(const Stock& stock) {
    screen::SizesInStock sizes{};
    const auto trephine_text = read_text(stock.assets + "/instruments/suction-trephine.toml");
    const auto punch_text = read_text(stock.assets + "/instruments/vacuum-punch.toml");
    if (!trephine_text || !punch_text) return sizes;
    const auto trephine = intake::read_trephine(*trephine_text, "suction-trephine.toml");
    const auto punch = intake::read_punch(*punch_text, "vacuum-punch.toml");
    if (!trephine || !punch) return sizes;
    for (const measure::Length size : trephine->diameters) sizes.host.push_back(fmt::format("{:.2f}", size.mm()));
    for (const measure::Length size : punch->diameters) sizes.donor.push_back(fmt::format("{:.2f}", size.mm()));
    return sizes;
}

std::string file_name(const std::string& path) { return path.substr(path.find_last_of('/') + 1); }

}  // namespace

Try<Session> Session::start(const Options& options, Stock stock, const std::string& case_path, const measure::Instant& now) {
    auto opened = ledger::Ledger::open(ledger_path(options));
    if (!opened) return stop(opened.error());
    Session session(options, std::move(stock), *std::move(opened));
    session.screen_.page = "cases";
    if (intake::also_typed(session.stock_.unit.foot_switch) && (session.has_desk() || session.alone_))
        return stop(Exit::Wrong, "foot_switch.key: " + session.stock_.unit.foot_switch.key + typed_too);
    if (!case_path.empty()) {
        const auto brief = load_brief(session.stock_, case_path);
        if (!brief) return brief.error();
        auto open = OpenCase::take_up(*session.ledger_, *brief, session.stock_.unit.holder, now);
        if (!open) return open.error();
        session.begin(std::move(open));
    }
    session.refresh_list();
    if (session.open_ && options.on_plan) session.show({.page = "plan"}, now);
    return session;
}

screen::Around Session::around(const measure::Instant& now) const {
    screen::Around around{.now = now, .clock_jumped = clock_jumped_, .refusal = refusal_, .bounced = bounced_};
    around.notice = notice_;
    around.no_sound = no_sound_;
    around.size_unknown = size_unknown_;
    around.screens_lost = screens_lost_;
    around.muted = muted_;
    around.dimmed = dimmed_;
    around.alone = alone_;
    around.beat = beat_;
    around.foot_switch = stock_.unit.foot_switch.key;
    around.has_desk = has_desk();
    if (stock_.unit.sound.on) around.volume = volume_;
    if (!open_) return around;
    const ledger::Health& health = open_->health();
    around.not_on_disk = health.held;
    if (health.trouble) around.trouble = on_screen(health.trouble->what, stock_.words);
    around.file_changed = open_->file_changed();
    if (!open_->state().plan) around.proposed = proposed_;
    around.seal = open_->seal();
    around.own_past = own_past_;
    return around;
}

screen::View Session::view(const measure::Instant& now) const {
    const screen::Around now_around = around(now);
    return screen::told(page(now_around), now_around, stock_.words);
}

screen::View Session::page(const screen::Around& around) const {
    if (plan_seen_) return plan_view(around);
    if (screen_.page == "new") return screen::new_case(screen_, sizes_in_stock(stock_), problems_, stock_.words);
    if (past_seen_) return screen::past_view(*past_seen_, screen_.past, stock_.words);
    if (open_ && screen_.page != "cases") return screen::view(open_->state(), screen_, around, stock_.words);
    screen::CaseList list = list_;
    list.dimmed = dimmed_;
    list.alone = alone_;
    list.may_be_alone = may_be_alone();
    list.has_desk = has_desk();
    list.under_way = under_way();
    return screen::cases(list, screen_, stock_.words);
}

screen::View Session::plan_view(const screen::Around& around) const {
    if (screen_.page == "plan-reading") return screen::plan_reading(screen::wanted(plan_seen_->base, screen_.plan), screen_, stock_.words);
    screen::PlanSeen seen = *plan_seen_;
    seen.strip = drafted_ ? strip_of(drafted_->inputs, around, stock_.words) : screen::strip(open_->state(), around, stock_.words);
    seen.banner = screen::banner(around, stock_.words);
    if (screen_.page == "plan-why") return screen::plan_why(seen, stock_.words);
    return screen::plan_view(seen, screen_, stock_.words);
}

void Session::touched(const screen::Target& target, const measure::Instant& at) {
    refusal_.reset();
    bounced_.reset();
    notice_.clear();
    if (const auto* intents = std::get_if<std::vector<guide::Intent>>(&target.act)) {
        act(*intents, at);
    } else {
        show(std::get<screen::Show>(target.act), at);
    }
}

void Session::bounced(const screen::Target& target) {
    bounced_ = target.id;
    if (target.weight != screen::Weight::Spoke) refusal_ = stock_.words("banner.left_out");
}

std::optional<std::string> Session::act(guide::Who who, const std::vector<guide::Intent>& intents, const measure::Instant& at) {
    if (!open_) return stock_.words("desk.no_case");
    for (const guide::Intent& intent : intents) {
        const auto before = stock_.unit.sound.on ? std::optional(open_->state()) : std::nullopt;
        const auto refused = open_->act(who, intent, at);
        if (refused) return screen::refusal_text(*refused, open_->state(), stock_.words);
        if (std::holds_alternative<guide::CountSpoke>(intent) || std::holds_alternative<guide::HoldCount>(intent)) bounced_.reset();
        if (!before) continue;
        // The newest words count: an old figure is not said after a new one.
        const auto said = screen::call_outs(*before, open_->newest(), voice_wish());
        if (!said.empty()) to_say_ = said;
    }
    if (screen_.page == "wipe" && !screen::may_wipe(open_->state())) screen_.page.clear();
    return std::nullopt;
}

void Session::act(const std::vector<guide::Intent>& intents, const measure::Instant& at) {
    if (!open_) return;
    refusal_ = act(toucher(), intents, at);
    if (refusal_) return;
    screen_.page.clear();
    screen_.argument.clear();
    look_at_plan();
}

std::optional<std::string> Session::scanned(const std::string& bytes, const measure::Instant& at) {
    return act(guide::Who::Circulating, {guide::Scan{.bytes = bytes}}, at);
}

void Session::pedal(Pedal::Press press, const measure::Instant& at) {
    if (!open_ || press == Pedal::Press::HeldDown) return;
    if (press == Pedal::Press::Counts) {
        bounced_.reset();
        refusal_ = act(guide::Who::Scrub, {guide::CountSpoke{.source = guide::Source::FootSwitch}}, at);
    } else if (guide::cutting(open_->state()) && open_->state().holder == std::optional(guide::Source::FootSwitch)) {
        bounced_ = "spoke";
    }
}

screen::FarModel Session::far(const measure::Instant& now) const {
    if (!open_) return {};
    return screen::far(open_->state(), around(now), stock_.words);
}

void Session::show(const screen::Show& show, const measure::Instant& at) {
    if (show.page == "quit") {
        quit_ = true;
    } else if (show.page == "dim" || show.page == "wipe" || show.page == "draped" || show.page == "undraped") {
        turn_screen(show);
    } else if (show.page == "take-up") {
        begin(OpenCase::take_up(*ledger_, show.argument, at));
    } else if (show.page == "open-file") {
        open_file(show.argument, at);
    } else if (show.page == "make") {
        make_case(at);
    } else if (show.page == "make-planned") {
        begin_looked_at(at);
    } else if (show.page == "look-at-new") {
        drafted_ = drafted(at);
        if (drafted_) screen_.page = "plan";
    } else if (screen::of_plan_view(show) && (plan_seen_ || open_)) {
        const plan::Inputs& base = plan_seen_ ? plan_seen_->base : open_->state().inputs;
        screen_ = screen::after_plan(screen_, show, base);
    } else if (screen::of_past_view(show)) {
        look_back(show, at);
    } else {
        if (show.page == "new" && screen_.page != "new") problems_.clear();
        if (show.page == "new") screen_.habits = habits();
        screen_ = screen::after(screen_, show);
        if (show.page == "cases") refresh_list();
    }
    if (screen_.page != "past") past_seen_.reset();
    look_at_plan();
}

/// While a page of the Plan view stands, what it shows; nothing once it is left.
void Session::look_at_plan() {
    const bool stands = screen_.page.starts_with("plan") && (drafted_ || open_);
    if (!stands) {
        plan_seen_.reset();
        drafted_.reset();
        screen_.plan = {};
        return;
    }
    plan_seen_ = drafted_ ? plan_of(drafted_->inputs, screen_.plan) : plan_of(open_->state(), screen_.plan);
}

void Session::begin_looked_at(const measure::Instant& at) {
    if (!drafted_) return;
    guide::Brief brief = *drafted_;
    brief.inputs = screen::wanted(brief.inputs, screen_.plan);
    begin(OpenCase::take_up(*ledger_, brief, stock_.unit.holder, at));
}

void Session::begin(Try<OpenCase> open) {
    if (!open) {
        list_.problems = on_screen(open.error(), stock_.words);
        return;
    }
    list_.problems.clear();
    open_.reset();
    open_.emplace(*std::move(open));
    proposed_ = plan::make(open_->state().inputs);
    screen_ = {};
    look_at_past();
}

void Session::open_file(const std::string& path, const measure::Instant& at) {
    const auto brief = load_brief(stock_, path);
    if (!brief) {
        list_.problems = brief.error().lines;
        return;
    }
    begin(OpenCase::take_up(*ledger_, *brief, stock_.unit.holder, at));
}

std::optional<guide::Brief> Session::drafted(const measure::Instant& at) {
    problems_.clear();
    const auto document = intake::read_case(screen::case_text(screen_, measure::iso(options_.on.value_or(measure::day_of(at)))), "new");
    if (!document) {
        for (const measure::Problem& problem : document.error()) problems_.emplace(problem.key, "");
        return std::nullopt;
    }
    const auto known = ledger_->load(document->file.reference);
    if (known && !known->empty()) {
        problems_.emplace("case.reference", stock_.words("form.known"));
        return std::nullopt;
    }
    const auto brief = brief_of(stock_, *document);
    if (brief) return *brief;
    list_.problems = brief.error().lines;
    screen_ = {.page = "cases"};
    return std::nullopt;
}

void Session::make_case(const measure::Instant& at) {
    if (const auto brief = drafted(at)) begin(OpenCase::take_up(*ledger_, *brief, stock_.unit.holder, at));
}

void Session::refresh_list() {
    list_.cases.clear();
    list_.files.clear();
    const auto cases = ledger_->cases();
    for (const ledger::Summary& one : cases ? *cases : std::vector<ledger::Summary>{}) {
        const std::string when = measure::iso(measure::day_of(one.last)) + " " + measure::hour_minute(one.last);
        list_.cases.push_back({.reference = one.reference, .when = when, .closed = one.closed, .sealed = one.sealed});
    }
    list_.folder = beside_ledger(options_, "case-files");
    for (const std::string& path : device::files_in(list_.folder, ".case.toml"))
        list_.files.push_back({.path = path, .name = file_name(path)});
    for (const std::string& path : device::files_in(stock_.assets + "/rehearsal", ".case.toml")) {
        list_.files.push_back({.path = path, .name = file_name(path), .invented = true});
    }
}

}  // namespace graftside
