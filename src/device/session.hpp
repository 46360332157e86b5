// The one connection to the window system, shared by all windows: GLFW is opened with the first of them and closed with
// the last. Events are taken for all windows at once.
#pragma once

#include "device/failure.hpp"

#include <memory>
#include <string>
#include <vector>

struct GLFWmonitor;

namespace device {

class Input;

class Session {
public:
    /// The running session, or a new one; fails with NoDisplay.
    static Result<std::shared_ptr<Session>> join();
    Session() = default;
    Session(const Session&) = delete;
    Session& operator=(const Session&) = delete;
    ~Session();

    void add(Input& input);
    void remove(Input& input);
    /// Takes what waits and sorts it into the inputs of the windows.
    void take();
    /// Waits for an event of any window, at most so long.
    void wait(double seconds);
    /// What the window system last complained of.
    const std::string& complaint() const { return complaint_; }

private:
    std::vector<Input*> inputs_{};
    std::string complaint_{};
    static void complain(int code, const char* words);
    static void screens_changed(GLFWmonitor* monitor, int event);
};

}  // namespace device
