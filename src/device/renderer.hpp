// Paints a list of shapes into a window in painting order: distance fields for the shapes, the font's pictures for the
// letters, one draw call a run of the same group. Colours are put on the glass as they are in the palette.
#pragma once

#include "device/fonts.hpp"
#include "device/instances.hpp"
#include "device/window.hpp"

#include <memory>

namespace device {

class Renderer {
public:
    /// For one window and one set of sizes; make a new one when either changes.
    static Result<Renderer> make(Window& window, const Fonts& fonts);
    Renderer(Renderer&&) noexcept;
    Renderer& operator=(Renderer&&) noexcept;
    ~Renderer();

    /// Fills the window with Ink::Ground and paints the shapes. Nothing is seen until Window::present.
    void draw(Window& window, const picture::Shapes& shapes, const Palette& palette);

private:
    struct Card;
    explicit Renderer(std::unique_ptr<Card> card);
    std::unique_ptr<Card> card_;
};

}  // namespace device
