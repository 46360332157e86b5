#include "device/pixels.hpp"

#include "device/files.hpp"

#include <stb_image_write.h>

namespace device {

Rgb Pixels::at(int x, int y) const {
    measure::expect(x >= 0 && y >= 0 && x < width && y < height);
    const auto first = (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)) * 3;
    return {rgb[first], rgb[first + 1], rgb[first + 2]};
}

Result<measure::Done> save_png(const std::string& path, const Pixels& pixels) {
    std::string bytes;
    const auto keep = [](void* to, void* data, int size) {
        static_cast<std::string*>(to)->append(static_cast<const char*>(data), static_cast<std::size_t>(size));
    };
    if (::stbi_write_png_to_func(keep, &bytes, pixels.width, pixels.height, 3, pixels.rgb.data(), pixels.width * 3) == 0)
        return Failure{Failure::What::CannotWrite, path};
    return write_file(path, bytes);
}

}  // namespace device
