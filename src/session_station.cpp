// What a session does for the station it runs on: sound, light, who touches the glass, and what is done once a second.
#include "session.hpp"

#include "device/files.hpp"
#include "eye/frame.hpp"
#include "handover.hpp"
#include "measure/expect.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <spdlog/spdlog.h>

#include <algorithm>
#include <cstdlib>

namespace graftside {
namespace {

constexpr std::int64_t jump_ms = 2000;

/// As the form has it: "0.80", "spokes-8", "to-entry".
std::string aim_choice(const plan::Aim& aim) {
    switch (aim.goal) {
        case plan::Goal::Share:
            return aim.share_permille % 10 == 0 ? fmt::format("0.{:02}", aim.share_permille / 10)
                                                : fmt::format("0.{:03}", aim.share_permille);
        case plan::Goal::Spokes:
            return "spokes-" + std::to_string(aim.spokes);
        case plan::Goal::ToEntry:
            return "to-entry";
    }
    measure::expect(false);
    return {};
}

}  // namespace

std::map<std::string, std::string> Session::habits() const {
    std::map<std::string, std::string> made{};
    if (!stock_.surgeon) return made;
    const intake::SurgeonFile& surgeon = *stock_.surgeon;
    made["surgeon"] = surgeon.surgeon;
    if (surgeon.seat) made["seat"] = *surgeon.seat == eye::Seat::Temporal ? "temporal" : "head";
    if (surgeon.pattern) made["pattern"] = intake::text(*surgeon.pattern);
    if (surgeon.first) made["first"] = eye::clock_text(*surgeon.first);
    if (surgeon.aim) made["aim"] = aim_choice(*surgeon.aim);
    return made;
}

bool Session::has_desk() const {
    return std::find(options_.views.begin(), options_.views.end(), screen::Reader::Desk) != options_.views.end();
}

void Session::turn_sound(const screen::Show& show) {
    if (show.page == "mute") muted_ = !muted_;
    if (show.page == "volume") volume_ = std::clamp(volume_ + std::atoi(show.argument.c_str()), 0, 100);
}

void Session::turn_screen(const screen::Show& show) {
    if (show.page == "dim") dimmed_ = !dimmed_;
    if (show.page == "draped") alone_ = false;
    if (show.page == "undraped") alone_ = may_be_alone();
    if (show.page == "wipe" && open_ && screen::may_wipe(open_->state())) screen_ = {.page = "wipe"};
}

std::string Session::handover_folder() const { return beside_ledger(options_, "handover"); }

std::optional<std::string> Session::hand_over(const std::string& format) const {
    if (!open_) return stock_.words("desk.no_case");
    if (open_->health().held > 0) return stock_.words("papers.held");
    const auto record = record_of(*ledger_, open_->reference());
    if (!record) return on_screen(record.error(), stock_.words).front();
    const auto bytes = handover_bytes(*record, stock_, {.format = format, .paper = options_.paper});
    if (!bytes) return bytes.error().lines.front();
    const std::string folder = handover_folder();
    auto written = device::make_folder(folder);
    if (written) written = device::write_file(folder + "/" + open_->reference() + handover_ending(format), *bytes);
    if (written) return std::nullopt;
    spdlog::warn("{}", device::text(written.error()));
    return stock_.words("papers.not_written", {folder});
}

void Session::screens_lost(const std::vector<std::string>& views) {
    if (std::exchange(screens_lost_, views) == views) return;
    spdlog::warn("views without a screen of their own: {}", views.empty() ? "none" : fmt::format("{}", fmt::join(views, ", ")));
}

screen::VoiceWish Session::voice_wish() const {
    const intake::Sound& sound = stock_.unit.sound;
    using Asked = intake::Sound::Sutures;
    using Said = screen::VoiceWish::Sutures;
    const Said sutures = sound.sutures == Asked::FromFifth ? Said::FromFifth : (sound.sutures == Asked::Every ? Said::Every : Said::None);
    return {.sutures = sutures, .suction_every_s = sound.suction_every_s, .awake = sound.awake};
}

/// The banner names the kind of it; what exactly, once each time that it changes.
void Session::log_trouble() {
    const auto& trouble = open_->health().trouble;
    if (trouble && trouble != logged_) spdlog::warn("{}", stop(*trouble).lines.front());
    logged_ = trouble;
}

void Session::tick(const measure::Instant& now) {
    const std::int64_t difference = now.utc_ms - now.boottime_ms;
    if (wall_over_boot_ms_ && std::llabs(difference - *wall_over_boot_ms_) > jump_ms && !clock_jumped_) {
        spdlog::warn("the wall clock jumped by {} ms", difference - *wall_over_boot_ms_);
        clock_jumped_ = true;
    }
    if (!wall_over_boot_ms_) wall_over_boot_ms_ = difference;
    if (open_) {
        log_trouble();
        open_->retry(now);
    }
    if (open_ && ticked_ && stock_.unit.sound.on) {
        const auto said = screen::suction_call_out(open_->state(), *ticked_, now, voice_wish());
        if (!said.empty() && to_say_.empty()) to_say_ = said;
    }
    // The heart beats once a second, after session and ledger have answered: a picture or a record that stands still has none.
    const bool next_second = !ticked_ || now.utc_ms / 1000 != ticked_->utc_ms / 1000;
    if (next_second && (!open_ || open_->answers())) beat_ = !beat_;
    ticked_ = now;
}

}  // namespace graftside
