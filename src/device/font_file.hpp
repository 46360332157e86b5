// A font file held in memory, measured by stb_truetype.
#pragma once

#include "device/failure.hpp"

#include <stb_truetype.h>

#include <memory>
#include <string>

namespace device {

class FontFile {
public:
    static Result<std::shared_ptr<const FontFile>> load(const std::string& path);
    explicit FontFile(std::string bytes) : bytes_(std::move(bytes)) {}
    FontFile(const FontFile&) = delete;
    FontFile& operator=(const FontFile&) = delete;

    bool has(char32_t letter) const;
    /// All in font units.
    int step(char32_t letter) const;
    int cap() const { return cap_; }
    int line() const { return line_; }
    const std::string& bytes() const { return bytes_; }

private:
    bool measure();
    std::string bytes_;
    stbtt_fontinfo info_{};
    int cap_ = 0, line_ = 0;
};

}  // namespace device
