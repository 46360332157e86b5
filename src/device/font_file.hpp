// A font file held in memory, measured by stb_truetype.
#pragma once

#include "device/failure.hpp"

#include <stb_truetype.h>

#include <memory>
#include <string>
#include <vector>

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
    static constexpr std::size_t kept_letters = 0x2300;  // every letter that is ever shown: see ranges()
    std::string bytes_;
    std::vector<int> steps_{};  // of those letters, -1 where the font lacks one: looked up once, a view measures thousands
    stbtt_fontinfo info_{};
    int cap_ = 0, line_ = 0;
};

}  // namespace device
