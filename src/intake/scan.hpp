// A scanned or typed symbol to what it says: ISBT 128, Single European Code, GS1 element strings. Pure and by structure alone.
// Nothing is guessed: what is not certain is guide::Unread.
//
// ISBT 128 begins with '=' or '&'; one structure, two set side by side, or a compound message with its count. The donation number
// is checked by ISO/IEC 7064 MOD 37-2 where its flags carry the check (60 to 96).
// Typed by hand: the 13 characters of a donation number and the check character in its box, blanks as one likes; or the 40
// characters of a Single European Code, with "SEC:" before and blanks or not.
// GS1: with the reader's symbology identifier (]C1, ]d2, ]Q3, ]e0, ]J1), or without it when it begins with 01 and splits to the
// end. Element strings of variable length end at GS (0x1D) or at the end. Years: 50 ahead to 49 back of `today`.
#pragma once

#include "guide/label.hpp"

#include <string_view>

namespace intake {

guide::Label read_scan(std::string_view bytes, const measure::Day& today);

}  // namespace intake
