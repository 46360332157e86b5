// The yardstick of window_bench.cpp: a window of GLFW and Dear ImGui with ImGui's own back ends and its own font, first empty,
// then with ImGui's own demonstration window.
#include "stopwatch.hpp"

#include <GLFW/glfw3.h>
#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

#include <cstdio>

namespace {

void frame(GLFWwindow* window, bool demo) {
    ::ImGui_ImplOpenGL3_NewFrame();
    ::ImGui_ImplGlfw_NewFrame();
    ImGui::NewFrame();
    if (demo) ImGui::ShowDemoWindow();
    ImGui::Render();
    ::glClearColor(0, 0, 0, 1);
    ::glClear(GL_COLOR_BUFFER_BIT);
    ::ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    ::glfwSwapBuffers(window);
    ::glFinish();
}

}  // namespace

int main() {
    if (::glfwInit() != GLFW_TRUE) return 3;
    ::glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    ::glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    ::glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    GLFWwindow* const window = ::glfwCreateWindow(1920, 1080, "bare", nullptr, nullptr);
    if (window == nullptr) return 3;
    ::glfwMakeContextCurrent(window);
    ::glfwSwapInterval(0);
    ImGui::CreateContext();
    ImGui::GetIO().IniFilename = nullptr;
    ::ImGui_ImplGlfw_InitForOpenGL(window, true);
    ::ImGui_ImplOpenGL3_Init("#version 330 core");
    frame(window, false);
    std::printf("bare_window_first_frame %.1f\nbare_window_resident_mb %.1f\n", bench::ms_since_start(), bench::resident_mb());
    constexpr int frames = 50;
    for (int i = 0; i < frames; ++i) frame(window, true);  // the demonstration lays itself out in its first frames
    const double start = bench::ms_since_start();
    for (int i = 0; i < frames; ++i) frame(window, true);
    std::printf("imgui_demo_frame %.2f\n", (bench::ms_since_start() - start) / frames);
    ::ImGui_ImplOpenGL3_Shutdown();
    ::ImGui_ImplGlfw_Shutdown();
    ImGui::DestroyContext();
    ::glfwTerminate();
}
