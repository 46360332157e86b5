#include "desk.hpp"

#include "device/clocks.hpp"
#include "device/fonts.hpp"

#include <algorithm>

namespace graftside {
namespace {

constexpr std::int64_t late_enter_ms = 500;

/// What the surgeon alone decides comes by the circulating nurse's hand and is recorded as the surgeon's.
guide::Who who_says(const guide::Intent& intent) {
    const auto* tissue = std::get_if<guide::TellTissue>(&intent);
    const bool judged = tissue != nullptr && (tissue->what == guide::TissueWord::Accepted || tissue->what == guide::TissueWord::Unfit);
    return judged || std::holds_alternative<guide::Overrule>(intent) ? guide::Who::Surgeon : guide::Who::Circulating;
}

/// Where the Desk stands after an act: a count goes on at its item, specimens at their list, all else is done with.
screen::DeskState after(const screen::DeskState& before, const guide::Intent& intent) {
    const bool counts = std::holds_alternative<guide::MoveItems>(intent) || std::holds_alternative<guide::CheckCount>(intent);
    if (counts) return {.page = "count", .argument = before.argument.substr(0, before.argument.find('='))};
    if (std::holds_alternative<guide::TellSpecimen>(intent)) return {.page = "specimens"};
    return {};
}

std::string key_name(char32_t letter, const screen::Words& words) {
    if (letter == U'\n') return "Enter";
    if (letter == U' ') return words("drawer.space");
    if (letter >= U'a' && letter <= U'z') return std::string(1, static_cast<char>(letter - U'a' + U'A'));
    return letter > U' ' && letter < 0x7f ? std::string(1, static_cast<char>(letter)) : std::string();
}

/// What the test of a reader came to, in words. The first few characters that came wrong say which keyboard it types for.
std::string reader_verdict(const std::string& came, const screen::Words& words) {
    constexpr std::size_t told = 4;
    const auto verdict = intake::judge_layout(came);
    if (!verdict) return words("reader.other");
    if (verdict->right) return words("reader.right");
    if (verdict->wrong.empty()) return words("reader.gs_lost");
    std::string all{};
    for (std::size_t i = 0; i < std::min(told, verdict->wrong.size()); ++i) {
        const auto& [wanted, got] = verdict->wrong[i];
        all += (all.empty() ? "" : ", ") + words("reader.as", {wanted == "\x1d" ? "GS" : wanted, got});
    }
    return words("reader.wrong", {all});
}

}  // namespace

screen::DeskModel Desk::view(const measure::Instant& now) const {
    screen::Around around = session_->around(now);
    around.here = guide::Source::Desk;
    around.refusal = refusal_;
    const OpenCase* open = session_->open();
    const bool pedal_counts = open != nullptr && open->state().holder == std::optional(guide::Source::FootSwitch);
    if (!pedal_counts) around.bounced = bounced_;  // a press of the pedal that was left out is shown on every view
    if (open == nullptr) return screen::empty_desk(state_, around, session_->stock().words);
    return screen::desk(open->state(), state_, around, session_->stock().words);
}

screen::Drawer Desk::drawer(const measure::Instant& now) const {
    const OpenCase* open = session_->open();
    const bool narrow = open != nullptr && screen::narrow_drawer(open->state());
    return screen::drawer(view(now), drawer_open_, narrow, session_->stock().words);
}

std::optional<screen::FormModel> Desk::typing_page(const measure::Instant& now) const {
    if (!drawer_open_) return std::nullopt;
    return screen::typing_page(view(now), session_->stock().words);
}

void Desk::act(const std::vector<guide::Intent>& intents, const measure::Instant& at) {
    refusal_ = session_->act(who_says(intents.front()), intents, at);
    if (!refusal_) state_ = after(state_, intents.front());
}

void Desk::touched(const screen::Target& target, const measure::Instant& at) {
    refusal_.reset();
    bounced_.reset();
    session_->notice({});
    if (const auto* intents = std::get_if<std::vector<guide::Intent>>(&target.act)) return act(*intents, at);
    const auto& show = std::get<screen::Show>(target.act);
    if (show.page == "mute" || show.page == "volume") {
        session_->turn_sound(show);
    } else if (show.page == "dim" || show.page == "wipe") {
        session_->turn_screen(show);
        state_ = {};
    } else if (show.page == "measure") {
        measure_ = true;
    } else if (show.page == "drawer") {
        drawer_open_ = !drawer_open_;
        state_ = {};
    } else if (show.page == "turn") {
        ++state_.turned;
    } else if (show.page == "key" || show.page == "erase" || show.page == "put") {
        state_ = screen::keyed_in(std::move(state_), show);
    } else if (show.page == "typed-label") {
        refusal_ = session_->scanned(show.argument, at);
        if (!refusal_) state_ = {.page = "tissue"};
    } else if (show.page == "hand-over") {
        hand_over(show.argument, at);
    } else {
        state_ = screen::turned_to(show);
        if (show.page == "papers") state_.argument = session_->handover_folder();
    }
}

void Desk::hand_over(const std::string& format, const measure::Instant& at) {
    refusal_ = session_->hand_over(format);
    std::erase_if(state_.told, [&](const auto& one) { return one.first == format; });
    if (!refusal_) state_.told.emplace_back(format, session_->stock().words("papers.written", {measure::hour_minute(at)}));
}

void Desk::take(const screen::Outcome& outcome, const measure::Instant& at) {
    if (const auto* counted = std::get_if<screen::Counted>(&outcome)) touched(counted->target, at);
    if (const auto* bounced = std::get_if<screen::Bounced>(&outcome)) bounced_ = bounced->target.id;
}

void Desk::character(const device::Character& character, screen::Touch& touch) {
    if (character.repeated) return;  // a key held down is not a scan
    const bool gs = character.code == U'\x1d';
    const intake::Key key{
        .is = gs ? intake::Key::Is::Gs : intake::Key::Is::Character, .character = character.code, .at_ms = character.time_ms};
    hear(key, touch);
}

void Desk::key(const device::Key& key, screen::Touch& touch) {
    down_ = true;
    if (key.name == device::KeyName::Backspace && screen::has_field(state_)) {
        state_ = screen::typed(state_, U'\b');
    } else if (key.repeated) {
        return;
    } else if (key.name == device::KeyName::Enter) {
        hear({.is = intake::Key::Is::Enter, .at_ms = key.time_ms}, touch);
    } else if (key.name == device::KeyName::Escape && !(session_->alone() && !drawer_open_)) {
        press("Esc", touch, key.time_ms);
    }
}

void Desk::key_up(screen::Touch& touch, std::int64_t time_ms) {
    down_ = false;
    take(touch.release(time_ms), device::now());
}

void Desk::tick(screen::Touch& touch, std::int64_t time_ms) {
    const std::int64_t last_ms = burst_.last_ms;  // when the key was pressed, not when it was told from a scan
    if (const auto ended = intake::hear_silence(burst_, time_ms)) {
        if (ended->is == intake::Heard::Is::Scan) scanned_ms_ = last_ms;
        heard(*ended, touch, last_ms);
    }
    take(touch.tick(time_ms), device::now());
}

void Desk::hear(const intake::Key& key, screen::Touch& touch) {
    // A slow reader's Enter comes after its scan was heard: it is the scan's, and sends off nothing that was being typed.
    const bool late = scanned_ms_ && key.is == intake::Key::Is::Enter && key.at_ms - *scanned_ms_ < late_enter_ms;
    if (std::exchange(scanned_ms_, std::nullopt) && late) return;
    const std::int64_t last_ms = burst_.keys > 0 ? burst_.last_ms : key.at_ms;
    for (const intake::Heard& one : intake::hear(burst_, key)) heard(one, touch, last_ms);
}

void Desk::heard(const intake::Heard& heard, screen::Touch& touch, std::int64_t time_ms) {
    if (heard.is == intake::Heard::Is::Scan) {
        if (state_.page == "reader")
            state_.argument = reader_verdict(heard.text, session_->stock().words);
        else
            refusal_ = session_->scanned(heard.text, device::now());
        return;
    }
    if (session_->alone() && !drawer_open_) return;  // nobody sees what it would do
    for (const char32_t letter : device::letters(heard.text)) {
        if (screen::has_field(state_) && letter != U'\n')
            state_ = screen::typed(state_, letter);
        else
            press(key_name(letter, session_->stock().words), touch, time_ms);
    }
}

void Desk::press(const std::string& key, screen::Touch& touch, std::int64_t time_ms) {
    const auto actions = view(device::now()).actions;
    const auto found = std::find_if(actions.begin(), actions.end(), [&](const screen::Target& one) { return one.key == key; });
    if (key.empty() || found == actions.end()) return;
    if (found->press == screen::Press::Hold && !down_) return;  // let go before it was told from a scan: no hold
    take(touch.press(*found, time_ms), measure::earlier(device::now(), device::monotonic_ms() - time_ms));
}

}  // namespace graftside
