#include "device/renderer.hpp"

#include "embedded/shaders.hpp"

#include <glad/gl.h>

#include <array>
#include <cstddef>

namespace device {

/// What lies on the graphics card, and the lettering it was made for.
struct Renderer::Card {
    Fonts fonts;
    Atlas atlas;
    std::array<GLuint, groups> programs{};  // by Group
    GLuint layout = 0, instances = 0, corners = 0;
    GLuint corner_view = 0, letters = 0, numerals = 0;
    Card(const Fonts& given) : fonts(given), atlas(given) {}
    Card(const Card&) = delete;
    Card& operator=(const Card&) = delete;
};

namespace {

constexpr GLint corner_unit = 0, letter_unit = 1, numeral_unit = 2;

/// The compiler's complaint, empty when there is none.
std::string compile(GLuint program, GLenum stage, Group group, const char* source) {
    const GLuint shader = ::glCreateShader(stage);
    const std::string start = "#version 330 core\n#define GROUP " + std::to_string(static_cast<int>(group)) + "\n#line 1\n";
    const std::array<const char*, 2> whole = {start.c_str(), source};
    ::glShaderSource(shader, static_cast<GLsizei>(whole.size()), whole.data(), nullptr);
    ::glCompileShader(shader);
    GLint fine = GL_FALSE;
    ::glGetShaderiv(shader, GL_COMPILE_STATUS, &fine);
    char log[1024] = "";
    if (fine != GL_TRUE) ::glGetShaderInfoLog(shader, sizeof log, nullptr, log);
    ::glAttachShader(program, shader);
    ::glDeleteShader(shader);  // lives on with the program
    return fine == GL_TRUE ? std::string() : std::string("shader: ") + log;
}

std::string link(GLuint program) {
    ::glLinkProgram(program);
    GLint fine = GL_FALSE;
    ::glGetProgramiv(program, GL_LINK_STATUS, &fine);
    if (fine == GL_TRUE) return {};
    char log[1024] = "";
    ::glGetProgramInfoLog(program, sizeof log, nullptr, log);
    return std::string("shader program: ") + log;
}

std::string build(GLuint program, Group group) {
    std::string complaint = compile(program, GL_VERTEX_SHADER, group, shaders::shape_vert);
    if (complaint.empty()) complaint = compile(program, GL_FRAGMENT_SHADER, group, shaders::shape_frag);
    return complaint.empty() ? link(program) : complaint;
}

GLuint texture(const Sheet& sheet) {
    GLuint name = 0;
    ::glGenTextures(1, &name);
    ::glBindTexture(GL_TEXTURE_2D, name);
    ::glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
    ::glTexImage2D(GL_TEXTURE_2D, 0, GL_R8, sheet.width, sheet.height, 0, GL_RED, GL_UNSIGNED_BYTE, sheet.alpha);
    ::glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    ::glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    ::glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    ::glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    return name;
}

void attribute(GLuint place, GLenum type, std::size_t offset) {
    const GLboolean to_one = type == GL_UNSIGNED_BYTE ? GL_TRUE : GL_FALSE;
    ::glEnableVertexAttribArray(place);
    ::glVertexAttribPointer(place, 4, type, to_one, sizeof(Instance), reinterpret_cast<const void*>(offset));
    ::glVertexAttribDivisor(place, 1);
}

/// The layout of Instance, one step an instance, beginning with one of them.
void describe(std::size_t first) {
    const std::size_t start = first * sizeof(Instance);
    attribute(0, GL_FLOAT, start + offsetof(Instance, centre_x));
    attribute(1, GL_FLOAT, start + offsetof(Instance, half_x));
    attribute(2, GL_FLOAT, start + offsetof(Instance, figure));
    attribute(3, GL_FLOAT, start + offsetof(Instance, more));
    attribute(4, GL_UNSIGNED_BYTE, start + offsetof(Instance, fill));
    attribute(5, GL_UNSIGNED_BYTE, start + offsetof(Instance, edge));
}

template <class T>
void fill(GLenum target, GLuint buffer, const std::vector<T>& with) {
    ::glBindBuffer(target, buffer);
    ::glBufferData(target, static_cast<GLsizeiptr>(with.size() * sizeof(T)), with.data(), GL_STREAM_DRAW);
}

void bind(GLint unit, GLenum target, GLuint name) {
    ::glActiveTexture(GL_TEXTURE0 + static_cast<GLenum>(unit));
    ::glBindTexture(target, name);
}

void name_units(GLuint program) {
    ::glUseProgram(program);
    ::glUniform1i(::glGetUniformLocation(program, "corners"), corner_unit);
    ::glUniform1i(::glGetUniformLocation(program, "letters"), letter_unit);
    ::glUniform1i(::glGetUniformLocation(program, "numerals"), numeral_unit);
}

}  // namespace

Result<Renderer> Renderer::make(Window& window, const Fonts& fonts) {
    window.make_current();
    auto card = std::make_unique<Card>(fonts);
    for (std::size_t i = 0; i < groups; ++i) {
        card->programs[i] = ::glCreateProgram();
        if (std::string complaint = build(card->programs[i], static_cast<Group>(i)); !complaint.empty())
            return Failure{Failure::What::NoOpenGl, complaint};
        name_units(card->programs[i]);
    }
    card->letters = texture(card->atlas.sheet(Atlas::Which::Reading));
    card->numerals = texture(card->atlas.sheet(Atlas::Which::Figures));
    card->atlas.forget_pictures();

    ::glGenVertexArrays(1, &card->layout);
    ::glGenBuffers(1, &card->instances);
    ::glGenBuffers(1, &card->corners);
    ::glBindBuffer(GL_TEXTURE_BUFFER, card->corners);
    ::glGenTextures(1, &card->corner_view);
    ::glBindTexture(GL_TEXTURE_BUFFER, card->corner_view);
    ::glTexBuffer(GL_TEXTURE_BUFFER, GL_RG32F, card->corners);
    return Renderer(std::move(card));
}

Renderer::Renderer(std::unique_ptr<Card> card) : card_(std::move(card)) {}
Renderer::Renderer(Renderer&&) noexcept = default;
Renderer& Renderer::operator=(Renderer&&) noexcept = default;
Renderer::~Renderer() = default;

void Renderer::draw(Window& window, const picture::Shapes& shapes, const Palette& palette) {
    window.make_current();
    const Drawing out = drawing(shapes, palette, card_->fonts, card_->atlas);
    const Rgb ground = palette[static_cast<std::size_t>(picture::Ink::Ground)];
    ::glViewport(0, 0, window.width_px(), window.height_px());
    ::glClearColor(static_cast<float>(ground.r) / 255, static_cast<float>(ground.g) / 255, static_cast<float>(ground.b) / 255, 1);
    ::glClear(GL_COLOR_BUFFER_BIT);
    ::glEnable(GL_BLEND);
    ::glBlendFunc(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA);
    ::glBindVertexArray(card_->layout);
    fill(GL_ARRAY_BUFFER, card_->instances, out.instances);
    fill(GL_TEXTURE_BUFFER, card_->corners, out.corners);
    bind(corner_unit, GL_TEXTURE_BUFFER, card_->corner_view);
    bind(letter_unit, GL_TEXTURE_2D, card_->letters);
    bind(numeral_unit, GL_TEXTURE_2D, card_->numerals);
    ::glBindBuffer(GL_ARRAY_BUFFER, card_->instances);
    for (const GLuint program : card_->programs) {
        ::glUseProgram(program);
        ::glUniform2f(::glGetUniformLocation(program, "glass"), static_cast<float>(window.width_px()),
                      static_cast<float>(window.height_px()));
    }
    for (const Run& run : out.runs) {
        ::glUseProgram(card_->programs[static_cast<std::size_t>(run.group)]);
        describe(run.first);
        ::glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, static_cast<GLsizei>(run.count));
    }
}

}  // namespace device
