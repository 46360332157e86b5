#include "device/failure.hpp"

namespace device {
namespace {

std::string sentence(Failure::What what) {
    switch (what) {
        case Failure::What::NoDisplay:
            return "No display can be opened";
        case Failure::What::NoOpenGl:
            return "The display does not offer OpenGL 3.3";
        case Failure::What::NoSound:
            return "No sound can be made";
        case Failure::What::NoFont:
            return "A font of the program is missing or damaged";
        case Failure::What::NoFile:
            return "There is no such file";
        case Failure::What::CannotRead:
            return "A file cannot be read";
        case Failure::What::CannotWrite:
            return "A file cannot be written";
        case Failure::What::TooLarge:
            return "A file is larger than allowed";
    }
    measure::expect(false);
    return {};
}

}  // namespace

std::string text(const Failure& failure) {
    return failure.detail.empty() ? sentence(failure.what) + "." : sentence(failure.what) + ": " + failure.detail;
}

}  // namespace device
