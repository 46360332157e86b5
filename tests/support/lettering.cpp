#include "support/lettering.hpp"

#include "measure/expect.hpp"

#include <array>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wall"
#pragma GCC diagnostic ignored "-Wextra"
#pragma GCC diagnostic ignored "-Wconversion"
#pragma GCC diagnostic ignored "-Wsign-conversion"
#pragma GCC diagnostic ignored "-Wold-style-cast"
#pragma GCC diagnostic ignored "-Wdouble-promotion"
#pragma GCC diagnostic ignored "-Wshadow"
#pragma GCC diagnostic ignored "-Wunused-function"
#define STBTT_STATIC
#define STB_TRUETYPE_IMPLEMENTATION
#include <stb/stb_truetype.h>
#pragma GCC diagnostic pop

namespace support {

namespace {

class Face {
public:
    explicit Face(const std::string& path) {
        std::ifstream in(path, std::ios::binary);
        bytes_.assign(std::istreambuf_iterator<char>(in), {});
        measure::expect(!bytes_.empty());
        measure::expect(stbtt_InitFont(&info_, reinterpret_cast<const unsigned char*>(bytes_.data()), 0) != 0);
        int x0 = 0, y0 = 0, x1 = 0;
        stbtt_GetCodepointBox(&info_, 'H', &x0, &y0, &x1, &cap_);
        for (std::size_t code = 0; code < kept_.size(); ++code) kept_[code] = read(static_cast<int>(code));
    }

    /// In cap heights.
    double width(std::string_view text) const {
        double units = 0;
        for (std::size_t i = 0; i < text.size();) units += advance(next(text, i));
        return units / cap_;
    }

private:
    static int next(std::string_view text, std::size_t& i) {
        const auto lead = static_cast<unsigned char>(text[i++]);
        if (lead < 0x80) return lead;
        const int more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : 1;
        int code = lead & (0x3F >> more);
        for (int k = 0; k < more && i < text.size(); ++k) code = code << 6 | (static_cast<unsigned char>(text[i++]) & 0x3F);
        return code;
    }

    int advance(int code) const {
        const auto at = static_cast<std::size_t>(code);
        return at < kept_.size() ? kept_[at] : read(code);
    }

    int read(int code) const {
        int width = 0, bearing = 0;
        stbtt_GetCodepointHMetrics(&info_, code, &width, &bearing);
        return width;
    }

    std::vector<char> bytes_{};
    stbtt_fontinfo info_{};
    int cap_ = 0;
    std::array<int, 0x2800> kept_{};  // every sign of the words files and of the pictures: the walks over all views measure millions
};

/// Read once for all: a face never changes.
const Face& face(bool bold) {
    static const std::string folder = "/usr/share/fonts/opentype/b612/";
    static const Face regular_face(folder + "B612-Regular.otf"), bold_face(folder + "B612-Bold.otf");
    return bold ? bold_face : regular_face;
}

}  // namespace

picture::Lettering lettering(const screen::Typography& type) {
    return {
        .width = [type](picture::Type role, std::string_view text) { return face(screen::bold(role)).width(text) * type.of(role); },
        .cap = [type](picture::Type role) { return type.of(role); },
    };
}

}  // namespace support
