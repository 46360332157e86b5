// Places the box of one shape. Lengths in pixels, y down from the upper left corner of the glass.
// The layout is that of device/instances.hpp; `#version` is put in front by device/renderer.cpp.

layout(location = 0) in vec4 place;   // centre, first axis of the shape's own frame
layout(location = 1) in vec4 form;    // half box, kind, spare
layout(location = 2) in vec4 figure;  // by kind, see shape.frag
layout(location = 3) in vec4 more;
layout(location = 4) in vec4 fill;
layout(location = 5) in vec4 edge;

uniform vec2 glass;

out vec2 at;        // in the shape's own frame
out vec2 half_box;
flat out int kind;
flat out vec4 of;
flat out vec4 of_more;
flat out vec4 ink;
flat out vec4 edge_ink;

void main() {
    vec2 corner = vec2(gl_VertexID & 1, gl_VertexID >> 1) * 2.0 - 1.0;
    at = corner * form.xy;
    half_box = form.xy;
    kind = int(form.z);
    of = figure;
    of_more = more;
    ink = fill;
    edge_ink = edge;
    vec2 px = place.xy + place.zw * at.x + vec2(-place.w, place.z) * at.y;
    gl_Position = vec4(px.x / glass.x * 2.0 - 1.0, 1.0 - px.y / glass.y * 2.0, 0.0, 1.0);
}
