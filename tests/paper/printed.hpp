// Records to print: the played demo case, a case just opened, one with everything that can be too much; and what tools that know
// nothing of this program (poppler) say of a PDF.
#pragma once

#include "paper/card.hpp"
#include "paper/press.hpp"
#include "paper/sheet.hpp"

#include <string>
#include <vector>

namespace printed {

/// The shipped wording.
paper::Words words();
guide::Brief brief(const std::string& case_path);
guide::Brief demo_brief();

/// The demo script carried out on the demo case, as far as it should go; sealed with an invented hash and key.
paper::Record demo(std::size_t lines = 1000);
/// Opened, and nothing done.
paper::Record opened();
/// 24 sutures, some redone, 12 departures with long notes, many counts, two seatings, late and corrected events.
paper::Record crowded();
/// The record after more events, a second apart.
void add(paper::Record& record, const std::vector<guide::Fact>& facts);

paper::Press press();
std::string sheet_pdf(const paper::Record& record, paper::Size size = paper::Size::A4);
std::string card_pdf(const guide::Brief& brief, paper::Size size = paper::Size::A4);

/// What pdftotext reads, in the order of reading; lines joined by blanks.
std::string text_of(const std::string& pdf);
std::string info_of(const std::string& pdf);
std::string fonts_of(const std::string& pdf);
int pages_of(const std::string& pdf);
bool says(const std::string& text, const std::string& words);

/// Letterings that leave the margins, or lie on each other: what they say, a line each; empty when all is well.
std::string faults(const picture::Shapes& shapes, paper::Size size, const picture::Lettering& lettering);

}  // namespace printed
