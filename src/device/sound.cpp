#include "device/sound.hpp"

#include <AL/al.h>
#include <AL/alc.h>

#include <algorithm>
#include <cmath>

namespace device {
namespace {

class Silence final : public Speaker {
public:
    void say(const std::vector<Clip>&, double) override {}
    void hush() override {}
};

class Recorder final : public Speaker {
public:
    explicit Recorder(std::string path) : path_(std::move(path)) {}
    void say(const std::vector<Clip>& clips, double volume) override {
        for (const Clip& clip : clips) {
            if (said_.rate == 0) said_.rate = clip.rate;
            std::transform(clip.samples.begin(), clip.samples.end(), std::back_inserter(said_.samples),
                           [volume](std::int16_t sample) { return static_cast<std::int16_t>(std::lround(sample * volume)); });
        }
        said_.samples.resize(said_.samples.size() + static_cast<std::size_t>(said_.rate) / 4);
        const auto written = write_wav(path_, said_);
        if (!written) said_ = {};  // the test that reads the file finds it missing
    }
    void hush() override {}

private:
    std::string path_;
    Clip said_{};
};

class Loudspeaker final : public Speaker {
public:
    Loudspeaker(ALCdevice* device, ALCcontext* context) : device_(device), context_(context) { ::alGenSources(1, &source_); }
    ~Loudspeaker() override {
        hush();
        ::alDeleteSources(1, &source_);
        ::alcMakeContextCurrent(nullptr);
        ::alcDestroyContext(context_);
        ::alcCloseDevice(device_);
    }
    void say(const std::vector<Clip>& clips, double volume) override {
        hush();
        buffers_.resize(clips.size());
        ::alGenBuffers(static_cast<ALsizei>(buffers_.size()), buffers_.data());
        for (std::size_t i = 0; i < clips.size(); ++i) {
            const auto bytes = static_cast<ALsizei>(clips[i].samples.size() * sizeof(std::int16_t));
            ::alBufferData(buffers_[i], AL_FORMAT_MONO16, clips[i].samples.data(), bytes, clips[i].rate);
        }
        ::alSourceQueueBuffers(source_, static_cast<ALsizei>(buffers_.size()), buffers_.data());
        ::alSourcef(source_, AL_GAIN, static_cast<ALfloat>(volume));
        ::alSourcePlay(source_);
    }
    void hush() override {
        ::alSourceStop(source_);
        ::alSourcei(source_, AL_BUFFER, 0);
        if (!buffers_.empty()) ::alDeleteBuffers(static_cast<ALsizei>(buffers_.size()), buffers_.data());
        buffers_.clear();
    }

private:
    ALCdevice* device_;
    ALCcontext* context_;
    ALuint source_ = 0;
    std::vector<ALuint> buffers_{};
};

}  // namespace

std::unique_ptr<Speaker> silence() { return std::make_unique<Silence>(); }

std::unique_ptr<Speaker> recorder(const std::string& path) { return std::make_unique<Recorder>(path); }

Result<std::unique_ptr<Speaker>> loudspeaker() {
    ALCdevice* const device = ::alcOpenDevice(nullptr);
    if (device == nullptr) return Failure{Failure::What::NoSound, "no device opens"};
    ALCcontext* const context = ::alcCreateContext(device, nullptr);
    if (context == nullptr || ::alcMakeContextCurrent(context) == ALC_FALSE) {
        if (context != nullptr) ::alcDestroyContext(context);
        ::alcCloseDevice(device);
        return Failure{Failure::What::NoSound, "the device takes no sound"};
    }
    return std::unique_ptr<Speaker>(std::make_unique<Loudspeaker>(device, context));
}

}  // namespace device
