// Colours one pixel of a field of values in bands, with a line between bands: the thickness map and its legend.
// The field's numbers stand on a grid over the box (picture::Contours); bands and lines are worked out a pixel at a time, so
// that both are smooth at any size. Colours are sRGB values and are blended as they are.
// `#version` and GROUP are put in front of this text by device/renderer.cpp.

in vec2 at;
in vec2 half_box;
flat in vec4 of;       // first number, columns, rows
flat in vec4 of_more;  // low, high, step, half width of a line in pixels
flat in vec4 ink;      // of the lines

uniform samplerBuffer fields;  // value, pixels to the edge of what is known
uniform vec3 relief[5];        // lowest first

out vec4 colour;

vec2 number(ivec2 place) {
    ivec2 last = ivec2(of.yz) - 1;
    ivec2 near = clamp(place, ivec2(0), last);
    return texelFetch(fields, int(of.x) + near.y * int(of.y) + near.x).xy;
}

// Straight between the four neighbours on the grid.
vec2 field() {
    vec2 place = clamp(at / half_box * 0.5 + 0.5, 0.0, 1.0) * (of.yz - 1.0);
    ivec2 corner = min(ivec2(place), ivec2(of.yz) - 2);
    vec2 share = place - vec2(corner);
    vec2 upper = mix(number(corner), number(corner + ivec2(1, 0)), share.x);
    vec2 lower = mix(number(corner + ivec2(0, 1)), number(corner + ivec2(1, 1)), share.x);
    return mix(upper, lower, share.y);
}

// A band has one colour: the lowest that of the first ink, the highest that of the last.
vec3 band(float value) {
    float last = max(ceil((of_more.y - of_more.x) / of_more.z - 1e-3) - 1.0, 0.0);
    float place = clamp(floor((value - of_more.x) / of_more.z), 0.0, last) / max(last, 1.0) * 4.0;
    int from = int(min(place, 3.0));
    return mix(relief[from], relief[from + 1], place - float(from));
}

// How much of the pixel is covered by the nearest line between bands; none at the ends of the scale or where the field is level.
float line(float value, float slope) {
    float nearest = round((value - of_more.x) / of_more.z) * of_more.z + of_more.x;
    if (nearest <= of_more.x || nearest >= of_more.y || slope <= 0.0) return 0.0;
    return clamp(of_more.w + 0.5 - abs(value - nearest) / slope, 0.0, 1.0);
}

void main() {
    vec2 here = field();
    float slope = length(vec2(dFdx(here.x), dFdy(here.x)));
    colour = vec4(mix(band(here.x), ink.rgb, line(here.x, slope)), clamp(here.y + 0.5, 0.0, 1.0));
}
