// What goes on between the glass and the cases: which view stands open, what a touched target does, what is retried each
// second. Knows no window: tests and journeys act on it as the loop does.
#pragma once

#include "open_case.hpp"
#include "pedal.hpp"
#include "screen/callouts.hpp"
#include "screen/cases.hpp"
#include "screen/frame.hpp"
#include "screen/new_case.hpp"
#include "screen/pages.hpp"
#include "screen/past_view.hpp"
#include "screen/plan_view.hpp"

#include <memory>
#include <optional>
#include <string>

namespace graftside {

class Session {
public:
    /// Opens the ledger; with a case file, begins or takes up that case, else shows the list.
    static Try<Session> start(const Options& options, Stock stock, const std::string& case_path, const measure::Instant& now);

    screen::View view(const measure::Instant& now) const;
    /// What the surgeon sees of the same state.
    screen::FarModel far(const measure::Instant& now) const;
    screen::Around around(const measure::Instant& now) const;

    /// What somebody asks for; the words of the refusal if it is refused.
    std::optional<std::string> act(guide::Who who, const std::vector<guide::Intent>& intents, const measure::Instant& at);
    /// A scan, as it came.
    std::optional<std::string> scanned(const std::string& bytes, const measure::Instant& at);
    /// Where the handover files go: a folder beside the ledger.
    std::string handover_folder() const;
    /// Writes the open case as a file there, as "pdf", "fhir", "csv" or "json"; why not if it cannot be.
    std::optional<std::string> hand_over(const std::string& format) const;
    /// A foot on the pedal: it counts a spoke where the pedal holds the count. Too soon, it is shown there and can be counted.
    void pedal(Pedal::Press press, const measure::Instant& at);
    /// "mute", or "volume" by so many per cent.
    void turn_sound(const screen::Show& show);
    /// "dim", there and back; "wipe": the Table view is locked for wiping.
    void turn_screen(const screen::Show& show);
    bool dimmed() const { return dimmed_; }
    /// One undraped screen for two readers (set-up B): the circulating nurse alone touches it.
    bool alone() const { return alone_; }

    /// What a target that was touched at `at` does.
    void touched(const screen::Target& target, const measure::Instant& at);
    /// A touch so soon after the last that it was taken for the same finger: it is shown, and can be counted.
    void bounced(const screen::Target& target);
    /// Once a second, whatever happens.
    void tick(const measure::Instant& now);
    /// What a touch on the machine itself came to, for the banner until the next touch.
    void notice(std::string text) { notice_ = std::move(text); }
    /// There is no loudspeaker; the size of a screen is not known.
    void no_sound() { no_sound_ = true; }
    void size_unknown(bool unknown) { size_unknown_ = unknown; }
    /// The views, as the command line names them, whose screens are not found; none: all are there.
    void screens_lost(const std::vector<std::string>& views);
    /// What is to be said since this was last asked, by phrase; and how loud, 0 to 1.
    screen::PhraseIds to_say() { return std::exchange(to_say_, {}); }
    double loudness() const { return muted_ ? 0 : volume_ / 100.0; }

    bool wants_to_quit() const { return quit_; }
    /// A case stands open and is not locked yet.
    bool under_way() const { return open_ && !open_->state().closed; }
    const OpenCase* open() const { return open_ ? &*open_ : nullptr; }
    const Stock& stock() const { return stock_; }

private:
    Session(const Options& options, Stock stock, ledger::Ledger ledger)
        : options_(options),
          stock_(std::move(stock)),
          ledger_(std::make_unique<ledger::Ledger>(std::move(ledger))),
          volume_(stock_.unit.sound.volume),
          alone_(options_.set_up.empty() ? stock_.unit.set_up == intake::SetUp::Undraped : options_.set_up == "undraped") {
        alone_ = alone_ && !has_desk();
    }
    /// What a new case begins with, field by field, by the surgeon's habits.
    std::map<std::string, std::string> habits() const;
    /// A Desk of its own needs no drawer.
    bool has_desk() const;
    /// One undraped screen cannot be worked beside a pedal that types what its keyboard types.
    bool may_be_alone() const { return !has_desk() && !intake::also_typed(stock_.unit.foot_switch); }
    screen::VoiceWish voice_wish() const;
    guide::Who toucher() const { return alone_ ? guide::Who::Circulating : guide::Who::Scrub; }
    void act(const std::vector<guide::Intent>& intents, const measure::Instant& at);
    void show(const screen::Show& show, const measure::Instant& at);
    void begin(Try<OpenCase> open);
    void open_file(const std::string& path, const measure::Instant& at);
    void make_case(const measure::Instant& at);
    /// The case that the form describes; what is wrong with it is kept beside its fields.
    std::optional<guide::Brief> drafted(const measure::Instant& at);
    /// The view without what every view says.
    screen::View page(const screen::Around& around) const;
    screen::View plan_view(const screen::Around& around) const;
    void look_at_plan();
    void begin_looked_at(const measure::Instant& at);
    void refresh_list();
    /// Turns to or within the pages over past cases; not while a case is under way.
    void look_back(const screen::Show& show, const measure::Instant& at);
    bool open_past();
    void look_at_past();
    void log_trouble();

    Options options_;
    Stock stock_;
    std::unique_ptr<ledger::Ledger> ledger_;
    std::optional<OpenCase> open_{};
    screen::ScreenState screen_{};
    screen::CaseList list_{};
    screen::FieldProblems problems_{};
    std::optional<plan::Plan> proposed_{};
    std::shared_ptr<const past::Figures> own_past_{};  // over the cases like the one that stands open
    std::optional<guide::Brief> drafted_{};            // of the form, while its plan is looked at before the case begins
    std::optional<screen::PlanSeen> plan_seen_{};      // while a page of the Plan view stands
    std::optional<screen::PastSeen> past_seen_{};      // while a page over past cases stands
    std::vector<past::Summary> past_cases_{};          // as they were when it was turned to
    std::optional<std::string> refusal_{}, bounced_{};
    std::string notice_{};
    std::vector<std::string> screens_lost_{};
    std::optional<ledger::Failure> logged_{};
    screen::PhraseIds to_say_{};
    std::optional<measure::Instant> ticked_{};
    int volume_ = 0;
    bool muted_ = false, dimmed_ = false, beat_ = false, alone_ = false, no_sound_ = false, size_unknown_ = false;
    std::optional<std::int64_t> wall_over_boot_ms_{};
    bool clock_jumped_ = false, quit_ = false;
};

}  // namespace graftside
