// Sound: clips of speech, and something that plays them. Three of a kind: silence, a loudspeaker (OpenAL), a file to be measured by
// tests. What is said newest is said at once: what was being said stops, since an old figure is worse than none.
#pragma once

#include "device/failure.hpp"

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace device {

/// One channel, 16 bits.
struct Clip {
    int rate = 0;
    std::vector<std::int16_t> samples{};
    bool operator==(const Clip&) const = default;
};

/// A WAV file: PCM, one channel, 16 bits, at most 4 MiB.
Result<Clip> read_wav(const std::string& path);
Result<measure::Done> write_wav(const std::string& path, const Clip& clip);

class Speaker {
public:
    Speaker() = default;
    Speaker(const Speaker&) = delete;
    Speaker& operator=(const Speaker&) = delete;
    virtual ~Speaker() = default;
    /// Plays the clips one after the other, at a volume from 0 to 1, in place of what plays.
    virtual void say(const std::vector<Clip>& clips, double volume) = 0;
    virtual void hush() = 0;
};

std::unique_ptr<Speaker> silence();
Result<std::unique_ptr<Speaker>> loudspeaker();
/// Appends what is said to a WAV file, a quarter of a second of silence after each.
std::unique_ptr<Speaker> recorder(const std::string& path);

}  // namespace device
