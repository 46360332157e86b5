// Colours one pixel of one shape by how much of the pixel the shape covers, from its distance field.
// Lengths in pixels in the shape's own frame. Colours are sRGB values and are blended as they are.
// Made into one program each for fills, strokes and letters, because software renderers carry out every branch for every
// pixel: `#version` and GROUP are put in front of this text by device/renderer.cpp.

in vec2 at;
in vec2 half_box;
flat in int kind;
flat in vec4 of;
flat in vec4 of_more;
flat in vec4 ink;
flat in vec4 edge_ink;

uniform samplerBuffer corners;  // of polygons, counter-clockwise on the glass
uniform sampler2D letters;
uniform sampler2D numerals;

out vec4 colour;

const int line = 0, ring = 1, disc = 2, panel = 3, polygon = 4, letter = 5, numeral = 6;  // device/instances.hpp
const float turn = 6.28318530718;

// How much of a pixel at a signed distance outside an edge is covered.
float covered(float outside) { return clamp(0.5 - outside, 0.0, 1.0); }

// How much of the pixel around s lies within half of 0.
float within(float s, float half_width) { return clamp(min(s + 0.5, half_width) - max(s - 0.5, -half_width), 0.0, 1.0); }

// The painted length from 0 to s; a gap of 0 is a solid line.
float painted(float s, float dash, float gap) {
    if (gap <= 0.0) return s;
    float whole = floor(s / (dash + gap));
    return whole * dash + min(s - whole * (dash + gap), dash);
}

// The painted share of a stretch of the line around s.
float along(float s, float half_stretch, float end, vec2 dashes) {
    float to = painted(clamp(s + half_stretch, 0.0, end), dashes.x, dashes.y);
    float from = painted(clamp(s - half_stretch, 0.0, end), dashes.x, dashes.y);
    return (to - from) / (2.0 * half_stretch);
}

// of: half length, half width, dash, gap
float cover_line() { return along(at.x + of.x, 0.5, 2.0 * of.x, of.zw) * within(at.y, of.y); }

// of: radius, half width, start, sweep; of_more: dash, gap
float cover_ring() {
    float r = length(at);
    float across = within(r - of.x, of.y);
    if (across <= 0.0 || (of.w >= turn - 1e-4 && of_more.y <= 0.0)) return across;
    float s = mod(atan(-at.y, at.x) - of.z, turn) * of.x;
    float stretch = 0.5 * of.x / max(r, 0.5);
    float end = of.w * of.x;
    return across * min(1.0, along(s, stretch, end, of_more.xy) + along(s - turn * of.x, stretch, end, of_more.xy));
}

// of: half width, half height, corner radius, edge width
vec4 colour_panel() {
    vec2 beyond = abs(at) - of.xy + of.z;
    float outside = min(max(beyond.x, beyond.y), 0.0) + length(max(beyond, 0.0)) - of.z;
    float inner = of.w > 0.0 ? covered(outside + of.w) : 1.0;
    return vec4(mix(edge_ink.rgb, ink.rgb, inner), covered(outside));
}

// of: first corner, number of corners
float cover_polygon() {
    int first = int(of.x), count = int(of.y);
    float outside = -1e9;
    vec2 from = texelFetch(corners, first + count - 1).xy;
    for (int i = 0; i < count; ++i) {
        vec2 to = texelFetch(corners, first + i).xy;
        vec2 side = to - from;
        float size = length(side);
        if (size > 0.0) outside = max(outside, dot(at - from, vec2(-side.y, side.x)) / size);
        from = to;
    }
    return covered(outside);
}

// of: the letter's box on its sheet
vec2 on_sheet() { return mix(of.xy, of.zw, at / half_box * 0.5 + 0.5); }

#if GROUP == 0  // panels and discs
void main() {
    colour = kind == panel ? colour_panel() : vec4(ink.rgb, covered(length(at) - of.x));
}
#elif GROUP == 1  // lines, rings and polygons
void main() {
    colour = vec4(ink.rgb, kind == line ? cover_line() : kind == ring ? cover_ring() : cover_polygon());
}
#else  // letters and numerals
void main() {
    colour = vec4(ink.rgb, kind == letter ? texture(letters, on_sheet()).r : texture(numerals, on_sheet()).r);
}
#endif
