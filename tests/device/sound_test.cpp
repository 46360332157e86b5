// Sound without a loudspeaker: WAV files come back as they were written, and the recorder's file is what was said, as loud as asked.
// The layout of the file: Multimedia Programming Interface and Data Specifications 1.0 (1991), RIFF WAVE, PCM.
#include "device/sound.hpp"
#include "device/files.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <numbers>

namespace {

std::string folder() {
    char name[] = "/tmp/graftside-sound-XXXXXX";
    REQUIRE(::mkdtemp(name) != nullptr);
    return name;
}

/// A tone of 440 Hz.
device::Clip tone(double seconds, double height) {
    device::Clip clip{.rate = 22050};
    for (int i = 0; i < static_cast<int>(seconds * clip.rate); ++i)
        clip.samples.push_back(static_cast<std::int16_t>(std::lround(height * std::sin(2 * std::numbers::pi * 440 * i / clip.rate))));
    return clip;
}

double rms(const std::vector<std::int16_t>& samples, std::size_t from, std::size_t to) {
    double sum = 0;
    for (std::size_t i = from; i < to; ++i) sum += static_cast<double>(samples[i]) * samples[i];
    return std::sqrt(sum / static_cast<double>(to - from));
}

}  // namespace

TEST_CASE("a clip comes back from its WAV file as it was, and the header says what it is") {
    const std::string path = folder() + "/a.wav";
    const device::Clip clip = tone(0.1, 12000);
    REQUIRE(device::write_wav(path, clip));
    const auto back = device::read_wav(path);
    REQUIRE(back);
    CHECK(*back == clip);
    const auto bytes = device::read_file(path);
    REQUIRE(bytes);
    CHECK(bytes->size() == 44 + clip.samples.size() * 2);
    CHECK(bytes->substr(0, 4) == "RIFF");
    CHECK(bytes->substr(8, 8) == "WAVEfmt ");
    CHECK(static_cast<unsigned char>((*bytes)[24]) + 256 * static_cast<unsigned char>((*bytes)[25]) == 22050);
}

TEST_CASE("what is no WAV file, or of two channels, is refused") {
    const std::string path = folder() + "/b.wav";
    REQUIRE(device::write_file(path, "not a sound"));
    CHECK_FALSE(device::read_wav(path));
    REQUIRE(device::write_wav(path, tone(0.1, 1000)));
    std::string bytes = *device::read_file(path);
    bytes[22] = 2;
    REQUIRE(device::write_file(path, bytes));
    CHECK_FALSE(device::read_wav(path));
}

TEST_CASE("the recorder keeps what is said, as loud as asked, with silence after each") {
    const std::string path = folder() + "/said.wav";
    const auto speaker = device::recorder(path);
    const device::Clip clip = tone(0.5, 20000);
    speaker->say({clip}, 1.0);
    speaker->say({clip}, 0.5);
    const auto said = device::read_wav(path);
    REQUIRE(said);
    const std::size_t one = clip.samples.size(), gap = 22050 / 4;
    REQUIRE(said->samples.size() == 2 * (one + gap));
    const double loud = rms(said->samples, 0, one), soft = rms(said->samples, one + gap, 2 * one + gap);
    CHECK(loud == doctest::Approx(20000 / std::sqrt(2.0)).epsilon(0.01));
    CHECK(soft == doctest::Approx(loud / 2).epsilon(0.01));
    CHECK(rms(said->samples, one, one + gap) == 0);
}
