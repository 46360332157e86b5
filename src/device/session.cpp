#include "device/session.hpp"

#include "device/input.hpp"
#include "device/x11_peek.hpp"

#include <GLFW/glfw3.h>

#include <algorithm>

namespace device {
namespace {

std::weak_ptr<Session> running;  // GLFW is one for the whole program

}  // namespace

void Session::complain(int, const char* words) {
    if (const auto session = running.lock()) session->complaint_ = words;
}

void Session::screens_changed(GLFWmonitor*, int) {
    const auto session = running.lock();
    if (!session) return;
    for (Input* const input : session->inputs_) input->screens_changed();
}

Result<std::shared_ptr<Session>> Session::join() {
    if (auto session = running.lock()) return session;
    auto session = std::make_shared<Session>();
    running = session;
    ::glfwSetErrorCallback(complain);
    ::glfwInitHint(GLFW_JOYSTICK_HAT_BUTTONS, GLFW_FALSE);
    if (::glfwInit() == GLFW_TRUE) {
        ::glfwSetMonitorCallback(screens_changed);
        return session;
    }
    return Failure{Failure::What::NoDisplay, session->complaint_};
}

Session::~Session() {
    ::glfwSetErrorCallback(nullptr);
    ::glfwTerminate();
}

void Session::add(Input& input) { inputs_.push_back(&input); }
void Session::remove(Input& input) { std::erase(inputs_, &input); }

void Session::take() {
    if (x11::here()) {
        for (const x11::Seen& seen : x11::waiting())
            for (Input* const input : inputs_) input->expect(seen);
    }
    ::glfwPollEvents();
    for (Input* const input : inputs_) input->end_of_batch();
}

void Session::wait(double seconds) {
    if (x11::here())
        x11::wait(seconds);
    else
        ::glfwWaitEventsTimeout(std::max(seconds, 0.001));
}

}  // namespace device
