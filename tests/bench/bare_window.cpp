// The yardstick of window_bench.cpp: an empty window of GLFW and Dear ImGui with ImGui's own back ends and its own font.
#include "stopwatch.hpp"

#include <GLFW/glfw3.h>
#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

#include <cstdio>

namespace {

void frame(GLFWwindow* window) {
    ::ImGui_ImplOpenGL3_NewFrame();
    ::ImGui_ImplGlfw_NewFrame();
    ImGui::NewFrame();
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
    frame(window);
    std::printf("bare: first frame %.0f ms after start, resident %.0f MB\n", bench::ms_since_start(), bench::resident_mb());
    constexpr int frames = 50;
    const double start = bench::ms_since_start();
    for (int i = 0; i < frames; ++i) frame(window);
    std::printf("bare: %.1f ms an empty frame\n", (bench::ms_since_start() - start) / frames);
    ::ImGui_ImplOpenGL3_Shutdown();
    ::ImGui_ImplGlfw_Shutdown();
    ImGui::DestroyContext();
    ::glfwTerminate();
}
