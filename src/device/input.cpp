#include "device/input.hpp"

#include "device/clocks.hpp"

#include <GLFW/glfw3.h>

#include <algorithm>
#include <iterator>
#include <utility>

namespace device {
namespace {

constexpr std::pair<int, KeyName> named[] = {
    {GLFW_KEY_ENTER, KeyName::Enter},    {GLFW_KEY_KP_ENTER, KeyName::Enter},
    {GLFW_KEY_ESCAPE, KeyName::Escape},  {GLFW_KEY_BACKSPACE, KeyName::Backspace},
    {GLFW_KEY_DELETE, KeyName::Delete},  {GLFW_KEY_INSERT, KeyName::Insert},
    {GLFW_KEY_TAB, KeyName::Tab},        {GLFW_KEY_SPACE, KeyName::Space},
    {GLFW_KEY_LEFT, KeyName::Left},      {GLFW_KEY_RIGHT, KeyName::Right},
    {GLFW_KEY_UP, KeyName::Up},          {GLFW_KEY_DOWN, KeyName::Down},
    {GLFW_KEY_HOME, KeyName::Home},      {GLFW_KEY_END, KeyName::End},
    {GLFW_KEY_PAGE_UP, KeyName::PageUp}, {GLFW_KEY_PAGE_DOWN, KeyName::PageDown},
};

/// The letter of a key in the keyboard's layout; GLFW's own numbers are those of a US keyboard's places.
char letter(int key, int scancode) {
    if (key >= GLFW_KEY_KP_0 && key <= GLFW_KEY_KP_9) return static_cast<char>('0' + key - GLFW_KEY_KP_0);
    const char* const name = ::glfwGetKeyName(key, scancode);
    if (name == nullptr || name[1] != '\0') return 0;
    if (*name >= 'a' && *name <= 'z') return static_cast<char>(*name - 'a' + 'A');
    return (*name >= 'A' && *name <= 'Z') || (*name >= '0' && *name <= '9') ? *name : char{0};
}

}  // namespace

Input::Input(GLFWwindow* window, double px_per_mm) : px_per_mm_(px_per_mm) {
    ::glfwSetWindowUserPointer(window, this);
    int width = 0, height = 0, width_px = 0, height_px = 0;
    ::glfwGetWindowSize(window, &width, &height);
    ::glfwGetFramebufferSize(window, &width_px, &height_px);
    if (width > 0) scale_ = static_cast<double>(width_px) / width;
    ::glfwSetMouseButtonCallback(window, on_button);
    ::glfwSetCursorPosCallback(window, on_cursor);
    ::glfwSetKeyCallback(window, on_key);
    ::glfwSetCharCallback(window, on_character);
    ::glfwSetFramebufferSizeCallback(window, on_size);
    ::glfwSetWindowRefreshCallback(window, on_refresh);
    ::glfwSetWindowCloseCallback(window, on_close);
    if (!x11::here()) return;
    number_ = x11::number(window);
    joined_server_ms_ = x11::server_ms(window);
    joined_ms_ = monotonic_ms();
}

Input& Input::of(GLFWwindow* window) { return *static_cast<Input*>(::glfwGetWindowUserPointer(window)); }

void Input::expect(const x11::Seen& seen) {
    if (number_ != 0 && seen.window == number_) (seen.key == 0 ? expected_ : expected_keys_).push_back(seen);
}

void Input::end_of_batch() {
    expected_.clear();
    expected_keys_.clear();
    if (std::exchange(exposed_, false)) events_.push_back(Exposed{});  // once, however many pieces
    if (std::exchange(moved_, false) && down_) events_.push_back(Moved{x_px_ / px_per_mm_, y_px_ / px_per_mm_});
}

Events Input::drain() {
    const std::int64_t now_ms = monotonic_ms();
    for (Event& event : events_)
        if (auto* const pressed = std::get_if<Pressed>(&event)) pressed->age_ms = std::max<std::int64_t>(0, now_ms - pressed->time_ms);
    return std::exchange(events_, {});
}

std::int64_t Input::from_server(std::uint32_t server_ms) const {
    return joined_ms_ + static_cast<std::int32_t>(server_ms - joined_server_ms_);  // right across the wrap
}

/// A key that an input method held back, or that came late, is not the next expected one: it is as fresh as we can tell.
std::int64_t Input::key_time(int code) {
    if (expected_keys_.empty() || static_cast<int>(expected_keys_.front().key) != code) return monotonic_ms();
    const x11::Seen seen = expected_keys_.front();
    expected_keys_.pop_front();
    return from_server(seen.server_ms);
}

Input::When Input::when(bool down) {
    // An event that came after the queue was looked through is not among the expected ones: it is fresh.
    if (expected_.empty() || expected_.front().down != down) return {x_px_, y_px_, monotonic_ms(), false};
    const x11::Seen seen = expected_.front();
    expected_.pop_front();
    return {seen.x_px, seen.y_px, from_server(seen.server_ms), true};
}

void Input::button(bool down) {
    const When at = when(down);
    if (!down && !down_) return;  // GLFW lets go once more when the window had lost its focus
    if (down)
        events_.push_back(Pressed{
            .x_mm = at.x_px / px_per_mm_, .y_mm = at.y_px / px_per_mm_, .time_ms = at.time_ms, .age_ms = 0, .time_exact = at.exact});
    else
        events_.push_back(Released{at.x_px / px_per_mm_, at.y_px / px_per_mm_, at.time_ms});
    down_ = down;
    moved_ = false;
}

void Input::on_button(GLFWwindow* window, int button, int action, int) {
    if (button == GLFW_MOUSE_BUTTON_LEFT) of(window).button(action == GLFW_PRESS);
}

void Input::on_cursor(GLFWwindow* window, double x, double y) {
    Input& input = of(window);
    input.x_px_ = x * input.scale_;
    input.y_px_ = y * input.scale_;
    input.moved_ = input.down_;
}

void Input::on_key(GLFWwindow* window, int key, int scancode, int action, int mods) {
    if (action == GLFW_RELEASE) {
        of(window).events_.push_back(KeyUp{});
        return;
    }
    Input& input = of(window);
    input.repeating_ = action == GLFW_REPEAT;
    input.key_ms_ = input.key_time(scancode);
    Key out{.control = (mods & GLFW_MOD_CONTROL) != 0,
            .shift = (mods & GLFW_MOD_SHIFT) != 0,
            .alt = (mods & GLFW_MOD_ALT) != 0,
            .repeated = action == GLFW_REPEAT,
            .time_ms = input.key_ms_};
    Events& events = input.events_;
    if (out.control && key == GLFW_KEY_RIGHT_BRACKET) {
        events.push_back(Character{U'\x1d', input.key_ms_, out.repeated});
        return;
    }
    const auto* const found = std::find_if(std::begin(named), std::end(named), [&](const auto& pair) { return pair.first == key; });
    if (found != std::end(named)) {
        out.name = found->second;
    } else if (key >= GLFW_KEY_F1 && key <= GLFW_KEY_F24) {
        out.name = KeyName::Function;
        out.function = key - GLFW_KEY_F1 + 1;
    } else if (out.letter = letter(key, scancode); out.letter == 0) {
        return;
    }
    events.push_back(out);
}

void Input::on_character(GLFWwindow* window, unsigned code) {
    Input& input = of(window);
    input.events_.push_back(Character{char32_t{code}, input.key_ms_, input.repeating_});
}

void Input::on_size(GLFWwindow* window, int width, int height) { of(window).events_.push_back(Resized{width, height}); }

void Input::on_refresh(GLFWwindow* window) { of(window).exposed_ = true; }

void Input::on_close(GLFWwindow* window) {
    ::glfwSetWindowShouldClose(window, GLFW_FALSE);  // the caller decides
    of(window).events_.push_back(Closed{});
}

}  // namespace device
