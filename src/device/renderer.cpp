#include "device/renderer.hpp"

#include "embedded/shaders.hpp"

#include <glad/gl.h>

#include <array>
#include <cstddef>

namespace device {

/// Pairs of numbers that a shader looks up.
struct Numbers {
    GLuint buffer = 0, view = 0;
};

/// What lies on the graphics card, and the lettering it was made for.
struct Renderer::Card {
    Fonts fonts;
    Atlas atlas;
    std::array<GLuint, groups> programs{};  // by Group
    GLuint layout = 0, instances = 0;
    Numbers corners{}, fields{};
    GLuint letters = 0, numerals = 0;
    Card(const Fonts& given) : fonts(given), atlas(given) {}
    Card(const Card&) = delete;
    Card& operator=(const Card&) = delete;
};

namespace {

constexpr GLint corner_unit = 0, letter_unit = 1, numeral_unit = 2, field_unit = 3;

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
    const char* painted = group == Group::Contours ? shaders::thickness_map_frag : shaders::shape_frag;
    if (complaint.empty()) complaint = compile(program, GL_FRAGMENT_SHADER, group, painted);
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
    ::glUniform1i(::glGetUniformLocation(program, "fields"), field_unit);
}

Numbers numbers() {
    Numbers made{};
    ::glGenBuffers(1, &made.buffer);
    ::glBindBuffer(GL_TEXTURE_BUFFER, made.buffer);
    ::glGenTextures(1, &made.view);
    ::glBindTexture(GL_TEXTURE_BUFFER, made.view);
    ::glTexBuffer(GL_TEXTURE_BUFFER, GL_RG32F, made.buffer);
    return made;
}

/// Why the card cannot take a sheet of letters, or empty: it would draw none of them and say nothing.
std::string too_large(const Sheet& sheet) {
    GLint most = 0;
    ::glGetIntegerv(GL_MAX_TEXTURE_SIZE, &most);
    if (sheet.width <= most && sheet.height <= most) return "";
    return "letters take a texture of " + std::to_string(sheet.width) + " by " + std::to_string(sheet.height) + ", the card has " +
           std::to_string(most) + " at most";
}

/// The colours of the relief, thinnest first.
void name_relief(GLuint program, const Palette& palette) {
    std::array<float, 3 * picture::reliefs> colours{};
    for (std::size_t i = 0; i < picture::reliefs; ++i) {
        const Rgb one = palette[static_cast<std::size_t>(picture::Ink::Relief1) + i];
        colours[3 * i] = static_cast<float>(one.r) / 255;
        colours[3 * i + 1] = static_cast<float>(one.g) / 255;
        colours[3 * i + 2] = static_cast<float>(one.b) / 255;
    }
    ::glUniform3fv(::glGetUniformLocation(program, "relief"), picture::reliefs, colours.data());
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
    for (const auto which : {Atlas::Which::Reading, Atlas::Which::Figures})
        if (std::string complaint = too_large(card->atlas.sheet(which)); !complaint.empty())
            return Failure{Failure::What::NoOpenGl, complaint};
    card->letters = texture(card->atlas.sheet(Atlas::Which::Reading));
    card->numerals = texture(card->atlas.sheet(Atlas::Which::Figures));
    card->atlas.forget_pictures();

    ::glGenVertexArrays(1, &card->layout);
    ::glGenBuffers(1, &card->instances);
    card->corners = numbers();
    card->fields = numbers();
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
    fill(GL_TEXTURE_BUFFER, card_->corners.buffer, out.corners);
    fill(GL_TEXTURE_BUFFER, card_->fields.buffer, out.fields);
    bind(corner_unit, GL_TEXTURE_BUFFER, card_->corners.view);
    bind(field_unit, GL_TEXTURE_BUFFER, card_->fields.view);
    bind(letter_unit, GL_TEXTURE_2D, card_->letters);
    bind(numeral_unit, GL_TEXTURE_2D, card_->numerals);
    ::glBindBuffer(GL_ARRAY_BUFFER, card_->instances);
    for (const GLuint program : card_->programs) {
        ::glUseProgram(program);
        ::glUniform2f(::glGetUniformLocation(program, "glass"), static_cast<float>(window.width_px()),
                      static_cast<float>(window.height_px()));
    }
    const GLuint relief = card_->programs[static_cast<std::size_t>(Group::Contours)];
    ::glUseProgram(relief);
    name_relief(relief, palette);
    for (const Run& run : out.runs) {
        ::glUseProgram(card_->programs[static_cast<std::size_t>(run.group)]);
        describe(run.first);
        ::glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, static_cast<GLsizei>(run.count));
    }
}

}  // namespace device
