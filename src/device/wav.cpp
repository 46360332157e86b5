// RIFF WAVE files, as far as they are needed: chunks "fmt " and "data", little-endian (Multimedia Programming Interface and Data
// Specifications 1.0, 1991).
#include "device/files.hpp"
#include "device/sound.hpp"

#include <cstring>
#include <string_view>

namespace device {
namespace {

constexpr std::size_t largest_wav = std::size_t{4} << 20, header = 44;

std::uint32_t little(std::string_view bytes) {
    std::uint32_t value = 0;
    for (std::size_t i = bytes.size(); i-- > 0;) value = value << 8 | static_cast<unsigned char>(bytes[i]);
    return value;
}

void put(std::string& out, std::uint32_t value, int bytes) {
    for (int i = 0; i < bytes; ++i) out.push_back(static_cast<char>(value >> 8 * i & 0xff));
}

/// The bytes of a chunk; one that says more than there is ends where the file ends.
std::string_view chunk(std::string_view file, std::string_view name) {
    for (std::size_t at = 12; at + 8 <= file.size();) {
        const std::size_t size = little(file.substr(at + 4, 4));
        if (file.substr(at, 4) == name) return file.substr(at + 8, size);
        at += 8 + size + size % 2;
    }
    return {};
}

}  // namespace

Result<Clip> read_wav(const std::string& path) {
    const auto bytes = read_file(path, largest_wav);
    if (!bytes) return bytes.error();
    const std::string_view file = *bytes, form = chunk(file, "fmt "), data = chunk(file, "data");
    const bool fits = file.substr(0, 4) == "RIFF" && file.substr(8, 4) == "WAVE" && form.size() >= 16 && little(form.substr(0, 2)) == 1 &&
                      little(form.substr(2, 2)) == 1 && little(form.substr(14, 2)) == 16;
    const std::uint32_t rate = fits ? little(form.substr(4, 4)) : 0;
    if (rate < 4000 || rate > 192'000) return Failure{Failure::What::CannotRead, path + ": not a WAV file of one channel and 16 bits"};
    Clip clip{.rate = static_cast<int>(rate)};
    clip.samples.resize(data.size() / 2);
    for (std::size_t i = 0; i < clip.samples.size(); ++i) clip.samples[i] = static_cast<std::int16_t>(little(data.substr(2 * i, 2)));
    return clip;
}

Result<measure::Done> write_wav(const std::string& path, const Clip& clip) {
    const auto rate = static_cast<std::uint32_t>(clip.rate), size = static_cast<std::uint32_t>(clip.samples.size() * 2);
    std::string out = "RIFF";
    put(out, size + header - 8, 4);
    out += "WAVEfmt ";
    for (const auto& [value, bytes] : {std::pair(16U, 4), std::pair(1U, 2), std::pair(1U, 2), std::pair(rate, 4), std::pair(rate * 2, 4),
                                       std::pair(2U, 2), std::pair(16U, 2)})
        put(out, value, bytes);
    out += "data";
    put(out, size, 4);
    for (const std::int16_t sample : clip.samples) put(out, static_cast<std::uint16_t>(sample), 2);
    return write_file(path, out);
}

}  // namespace device
