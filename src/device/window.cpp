#include "device/window.hpp"

#include "device/input.hpp"
#include "device/session.hpp"

#include <glad/gl.h>
// after glad, which brings the OpenGL names
#include <GLFW/glfw3.h>

#include <algorithm>

namespace device {

struct Window::Core {
    std::shared_ptr<Session> session{};
    GLFWwindow* handle = nullptr;
    std::optional<GlassSize> told{};
    std::optional<std::size_t> on{};  // which screen
    std::optional<double> px_per_mm{};
    std::unique_ptr<Input> input{};
    ~Core() {
        if (input) session->remove(*input);
        if (handle != nullptr) ::glfwDestroyWindow(handle);
    }
};

namespace {

GLFWmonitor* monitor(std::optional<std::size_t> wished) {
    int count = 0;
    GLFWmonitor** const all = ::glfwGetMonitors(&count);
    return wished && *wished < static_cast<std::size_t>(count) ? all[*wished] : nullptr;
}

void hint(const WindowWish& wish) {
    ::glfwDefaultWindowHints();
    ::glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    ::glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    ::glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    ::glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
    ::glfwWindowHint(GLFW_DEPTH_BITS, 0);
    ::glfwWindowHint(GLFW_STENCIL_BITS, 0);
    ::glfwWindowHint(GLFW_AUTO_ICONIFY, GLFW_FALSE);  // a full screen stays when another window takes the keyboard
    ::glfwWindowHint(GLFW_RESIZABLE, wish.full_screen ? GLFW_FALSE : GLFW_TRUE);
    ::glfwWindowHint(GLFW_VISIBLE, wish.full_screen && !wish.screen ? GLFW_FALSE : GLFW_TRUE);
    ::glfwWindowHint(GLFW_FOCUSED, wish.takes_keyboard ? GLFW_TRUE : GLFW_FALSE);
    ::glfwWindowHint(GLFW_FOCUS_ON_SHOW, wish.takes_keyboard ? GLFW_TRUE : GLFW_FALSE);
}

GLFWwindow* create(const WindowWish& wish) {
    hint(wish);
    GLFWmonitor* const on = wish.full_screen ? monitor(wish.screen) : nullptr;
    const GLFWvidmode* const mode = on == nullptr ? nullptr : ::glfwGetVideoMode(on);
    if (mode == nullptr) return ::glfwCreateWindow(wish.width_px, wish.height_px, wish.title.c_str(), nullptr, nullptr);
    ::glfwWindowHint(GLFW_RED_BITS, mode->redBits);
    ::glfwWindowHint(GLFW_GREEN_BITS, mode->greenBits);
    ::glfwWindowHint(GLFW_BLUE_BITS, mode->blueBits);
    ::glfwWindowHint(GLFW_REFRESH_RATE, mode->refreshRate);
    return ::glfwCreateWindow(mode->width, mode->height, wish.title.c_str(), on, nullptr);
}

std::optional<double> scale_of(std::optional<std::size_t> on, const std::optional<GlassSize>& told) {
    const auto all = screens();
    if (!all || all->empty()) return std::nullopt;
    const Screen& screen = (*all)[on && *on < all->size() ? *on : 0];
    return told ? px_per_mm(screen.report, *told) : screen.px_per_mm;
}

}  // namespace

Result<Window> Window::open(const WindowWish& wish) {
    auto session = Session::join();
    if (!session) return session.error();
    auto core = std::make_unique<Core>();
    core->session = *session;
    core->handle = create(wish);
    if (core->handle == nullptr) return Failure{Failure::What::NoOpenGl, core->session->complaint()};
    ::glfwMakeContextCurrent(core->handle);
    if (::gladLoadGL(::glfwGetProcAddress) < GLAD_MAKE_VERSION(3, 3)) return Failure{Failure::What::NoOpenGl, "its functions are missing"};
    ::glfwSwapInterval(wish.wait_for_refresh ? 1 : 0);
    if (!wish.pointer_shown) ::glfwSetInputMode(core->handle, GLFW_CURSOR, GLFW_CURSOR_HIDDEN);
    core->told = wish.told;
    core->on = wish.screen;
    core->px_per_mm = scale_of(wish.screen, wish.told);
    core->input = std::make_unique<Input>(core->handle, core->px_per_mm.value_or(1.0));
    core->session->add(*core->input);
    return Window(std::move(core));
}

Window::Window(std::unique_ptr<Core> core) : core_(std::move(core)) {}
Window::Window(Window&&) noexcept = default;
Window& Window::operator=(Window&&) noexcept = default;
Window::~Window() = default;

int Window::width_px() const {
    int width = 0;
    ::glfwGetFramebufferSize(core_->handle, &width, nullptr);
    return width;
}

int Window::height_px() const {
    int height = 0;
    ::glfwGetFramebufferSize(core_->handle, nullptr, &height);
    return height;
}

std::optional<double> Window::px_per_mm() const { return core_->px_per_mm; }

void Window::tell(const std::optional<GlassSize>& told) {
    core_->told = told;
    core_->px_per_mm = scale_of(core_->on, told);
}

void Window::measure_by(double px_per_mm) { core_->input->measure_by(px_per_mm); }

void Window::seat(std::optional<std::size_t> screen) {
    GLFWmonitor* const on = monitor(screen);
    const GLFWvidmode* const mode = on == nullptr ? nullptr : ::glfwGetVideoMode(on);
    if (mode == nullptr) {
        // GLFW hides no window that fills a screen.
        if (::glfwGetWindowMonitor(core_->handle) != nullptr)
            ::glfwSetWindowMonitor(core_->handle, nullptr, 0, 0, width_px(), height_px(), 0);
        ::glfwHideWindow(core_->handle);
        return;
    }
    ::glfwSetWindowMonitor(core_->handle, on, 0, 0, mode->width, mode->height, mode->refreshRate);
    ::glfwShowWindow(core_->handle);
    core_->on = screen;
    core_->px_per_mm = scale_of(screen, core_->told);
}

bool Window::hidden() const { return ::glfwGetWindowAttrib(core_->handle, GLFW_VISIBLE) == GLFW_FALSE; }

void Window::wait(double seconds) { core_->session->wait(seconds); }

Events Window::poll() {
    core_->session->take();
    return core_->input->drain();
}

void Window::make_current() {
    if (::glfwGetCurrentContext() != core_->handle) ::glfwMakeContextCurrent(core_->handle);
}

void Window::present() {
    make_current();
    ::glfwSwapBuffers(core_->handle);
}

Pixels Window::pixels() {
    make_current();
    Pixels out{.width = width_px(), .height = height_px()};
    const auto row = static_cast<std::size_t>(out.width) * 3;
    out.rgb.resize(row * static_cast<std::size_t>(out.height));
    ::glPixelStorei(GL_PACK_ALIGNMENT, 1);
    ::glReadBuffer(GL_BACK);
    ::glReadPixels(0, 0, out.width, out.height, GL_RGB, GL_UNSIGNED_BYTE, out.rgb.data());
    for (int low = 0, high = out.height - 1; low < high; ++low, --high)  // OpenGL's rows go up
        std::swap_ranges(out.rgb.begin() + static_cast<std::ptrdiff_t>(row) * low,
                         out.rgb.begin() + static_cast<std::ptrdiff_t>(row) * (low + 1),
                         out.rgb.begin() + static_cast<std::ptrdiff_t>(row) * high);
    return out;
}

}  // namespace device
