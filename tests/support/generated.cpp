#include "support/generated.hpp"

#include "support/sample.hpp"

namespace sample {
namespace {

using namespace guide;

/// Whole numbers that look scattered, by the multiplier of Lehmer's generator (modulus 2^31 - 1).
class Scatter {
public:
    explicit Scatter(int start) : state_(1 + static_cast<std::uint64_t>(start)) {}
    /// From 0 to `below` - 1.
    int next(int below) {
        state_ = state_ * 48271 % 2147483647;
        return static_cast<int>(state_ % static_cast<std::uint64_t>(below));
    }

private:
    std::uint64_t state_;
};

/// Facts with the seconds that pass before each.
class Record {
public:
    explicit Record(std::int64_t start_ms) : now_{.utc_ms = start_ms, .offset_min = 60, .boottime_ms = 1'000'000, .boot = 7} {}
    void add(Fact fact, int seconds = 1) {
        now_.utc_ms += seconds * std::int64_t{1000};
        now_.boottime_ms += seconds * std::int64_t{1000};
        events_.push_back({.seq = events_.size() + 1, .at = now_, .who = Who::Scrub, .fact = std::move(fact)});
    }
    std::vector<Event> done() && { return std::move(events_); }

private:
    measure::Instant now_;
    std::vector<Event> events_{};
};

Brief brief_of(int number) {
    Brief made = brief();
    plan::CaseFile& file = made.inputs.file;
    file.reference = generated_reference(number);
    file.date = {2016 + number % 10, 1 + number % 12, 1 + number % 28};
    file.side = number % 2 == 0 ? eye::Side::Right : eye::Side::Left;
    file.invented = false;
    return made;
}

}  // namespace

std::string generated_reference(int number) {
    constexpr int digits = 5;
    const std::string text = std::to_string(number);
    return "G-" + std::string(text.size() < digits ? digits - text.size() : 0, '0') + text;
}

std::vector<Event> generated_case(int number) {
    constexpr std::int64_t start_ms = 1'451'606'400'000, hour_ms = 3'600'000;  // 2016-01-01
    Scatter scatter(number);
    Record record(start_ms + number * hour_ms);
    const Brief made = brief_of(number);
    record.add(CaseOpened{.brief = made, .program = "generated"});
    record.add(PlanAccepted{.inputs = made.inputs, .shown = plan()});
    record.add(SuctionTurned{.to = Suction::On}, 60 + scatter.next(60));
    const int spokes = 9 + scatter.next(4);
    for (int i = 0; i < spokes; ++i) record.add(SpokeTurned{.by = 1}, 2);
    record.add(CutEnded{.how = number % 50 == 0 ? CutEnd::Entered : CutEnd::AtPlan, .position = spokes - 3});
    record.add(SuctionTurned{.to = Suction::Off}, 3);
    record.add(ClockMarked{.clock = "open-sky", .start = true}, 120);
    record.add(ClockMarked{.clock = "open-sky", .start = false}, 240 + scatter.next(600));
    if (scatter.next(20) == 0) record.add(Departed{.what = "patient-moved"});
    record.add(CaseClosed{.how = number % 100 == 0 ? CaseEnd::Abandoned : CaseEnd::Done, .why = "generated"}, 1800);
    return std::move(record).done();
}

}  // namespace sample
