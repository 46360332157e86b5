// The words of a case file and the values they stand for; the reader and the writer share them.
#pragma once

#include "intake/rules.hpp"
#include "plan/inputs.hpp"

namespace intake {

inline WordsFor<eye::Side> side_words() { return {{"right", eye::Side::Right}, {"left", eye::Side::Left}}; }

inline WordsFor<eye::Seat> seat_words() { return {{"head", eye::Seat::Head}, {"temporal", eye::Seat::Temporal}}; }

inline WordsFor<plan::Reason> reason_words() {
    using plan::Reason;
    return {
        {"scar", Reason::Scar},       {"keratoconus", Reason::Keratoconus}, {"oedema", Reason::Oedema}, {"dystrophy", Reason::Dystrophy},
        {"regraft", Reason::Regraft}, {"infection", Reason::Infection},     {"trauma", Reason::Trauma}, {"other", Reason::Other}};
}

inline WordsFor<plan::Lens> lens_words() {
    using plan::Lens;
    return {{"phakic", Lens::Phakic}, {"pseudophakic", Lens::Pseudophakic}, {"aphakic", Lens::Aphakic}};
}

inline WordsFor<plan::Method> method_words() {
    using plan::Method;
    return {{"ultrasound", Method::Ultrasound},
            {"oct", Method::Oct},
            {"scheimpflug", Method::Scheimpflug},
            {"slit-scanning", Method::SlitScanning}};
}

inline WordsFor<plan::Storage> storage_words() { return {{"cold", plan::Storage::Cold}, {"culture", plan::Storage::Culture}}; }

}  // namespace intake
