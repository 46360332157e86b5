#include "paper/printed.hpp"

#include <doctest/doctest.h>

namespace {

paper::Page page_saying(const std::string& text) {
    paper::Page page{.title = "A title", .program = "a program", .at = *measure::instant_from_rfc3339("2026-11-25T08:36:33.250+01:00")};
    page.caps.fill(3);
    page.shapes = {picture::Line{.a = {20, 20}, .b = {100, 20}, .width = 0.4, .ink = picture::Ink::Text},
                   picture::Text{.at = {20, 40}, .text = text, .type = picture::Type::Text}};
    return page;
}

}  // namespace

TEST_CASE("a page is one page of its size, in B612 alone, embedded") {
    // ISO 216: A4 is 210 x 297 mm. Letter: 8.5 x 11 inches. A point is 1/72 inch.
    paper::Page page = page_saying("Ω µ ± °");
    CHECK(printed::says(printed::info_of(printed::press().pdf(page)), "595.276 x 841.89 pts (A4)"));
    page.size = paper::Size::Letter;
    const std::string pdf = printed::press().pdf(page);
    CHECK(printed::says(printed::info_of(pdf), "612 x 792 pts (letter)"));
    CHECK(printed::pages_of(pdf) == 1);
    const std::string fonts = printed::fonts_of(pdf);
    CHECK(printed::says(fonts, "+B612"));
    CHECK_FALSE(printed::says(fonts, "DejaVu"));
    CHECK_FALSE(printed::says(fonts, " no "));  // every font embedded, a subset, with its letters named: three times yes
}

TEST_CASE("text comes out of the file as it went in") {
    CHECK(printed::says(printed::text_of(printed::press().pdf(page_saying("Façade cornéenne: 618 ± 12 µm, Ω, 90°"))),
                        "Façade cornéenne: 618 ± 12 µm, Ω, 90°"));
}

TEST_CASE("a letter that B612 lacks comes from the font that stands in, and can still be searched") {
    // Polish and Czech letters, and the Cyrillic alphabet: names as they are typed into a note. B612 has none of these.
    const std::string pdf = printed::press().pdf(page_saying("Łukasz Dvořák Жуков"));
    CHECK(printed::says(printed::text_of(pdf), "Łukasz Dvořák Жуков"));
    CHECK(printed::says(printed::fonts_of(pdf), "+DejaVuSans"));
    CHECK(printed::says(printed::fonts_of(pdf), "+B612"));
}

TEST_CASE("a line break or a control character in a text is a blank") {
    CHECK(printed::says(printed::text_of(printed::press().pdf(page_saying("one\ntwo\x01three"))), "one two three"));
}

TEST_CASE("the same page gives the same bytes, and the file's date is the page's") {
    const paper::Page page = page_saying("the same");
    const std::string pdf = printed::press().pdf(page);
    CHECK(pdf == printed::press().pdf(page));
    const std::string info = printed::info_of(pdf);
    CHECK(printed::says(info, "Title:           A title"));
    CHECK(printed::says(info, "CreationDate:    Wed Nov 25 07:36:33 2026"));  // poppler tells it in UTC: 08:36:33 at +01:00
    CHECK(printed::says(info, "ModDate:         Wed Nov 25 07:36:33 2026"));
}

TEST_CASE("a font that is not there is named") {
    const auto press = paper::Press::load("/nowhere");
    REQUIRE_FALSE(press);
    CHECK(printed::says(press.error(), "/nowhere/"));
}
