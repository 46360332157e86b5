// The Desk at work for tests: keys as the keyboard sends them, scans as a reader types them. A reader types a character in a few
// milliseconds, a person in tens (our own figures, no source).
#pragma once

#include "app/demo.hpp"
#include "desk.hpp"

#include <utility>

namespace demo {

inline measure::Instant at(std::int64_t s) { return later(script().front().at, s * 1000); }

struct AtDesk {
    graftside::Session session;
    graftside::Desk desk{session};
    screen::Touch touch{};
    std::int64_t ms = 100'000;

    explicit AtDesk(graftside::Session started) : session(std::move(started)) {}
    /// Keys one after the other, `apart` ms apart, each let go after it; then a pause.
    void keys(const std::u32string& text, std::int64_t apart) {
        for (const char32_t letter : text) {
            if (letter == U'\n') {
                desk.key({.name = device::KeyName::Enter, .time_ms = ms}, touch);
            } else {
                desk.key({.name = device::KeyName::Letter, .time_ms = ms}, touch);
                desk.character({.code = letter, .time_ms = ms}, touch);
            }
            if (apart >= 60) desk.tick(touch, ms + 55);
            desk.key_up(touch, ms + apart / 2);
            ms += apart;
        }
        ms += 500;
        desk.tick(touch, ms);
    }
    void types(const std::u32string& text) { keys(text, 120); }
    void scans(const std::u32string& text) { keys(text + U"\n", 4); }
    void escape() {
        desk.key({.name = device::KeyName::Escape, .time_ms = ms}, touch);
        desk.key_up(touch, ms + 60);
        ms += 500;
    }
    void holds(char32_t letter, std::int64_t for_ms) {
        desk.key({.name = device::KeyName::Letter, .time_ms = ms}, touch);
        desk.character({.code = letter, .time_ms = ms}, touch);
        desk.tick(touch, ms + 60);
        desk.tick(touch, ms + for_ms);
        desk.key_up(touch, ms + for_ms);
        ms += for_ms + 500;
    }
    const guide::CaseState& state() const { return session.open()->state(); }
};

inline AtDesk started(const testplace::Folder& folder, const Script& before = {}, const graftside::Stock& from = stock()) {
    const std::string ledger = folder.file("a.ledger");
    if (!before.empty()) play(ledger, before);
    auto session = graftside::Session::start(options(ledger), from, case_path(), at(0));
    REQUIRE(session);
    return AtDesk(*std::move(session));
}

inline const guide::Event& newest(const AtDesk& desk) { return desk.session.open()->newest().back(); }

}  // namespace demo
