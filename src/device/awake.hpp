// No screensaver, no blanking and no standby of the screens while a case goes on. Asked of the X server, which forgets it when the
// program ends, however it ends. Where there is no X server, or one without the extension, nothing is done and nothing is claimed:
// the station's own settings must see to it.
#pragma once

namespace device {

class Awake {
public:
    /// Asks for it or gives it back; told the same again, it does nothing.
    void keep(bool awake);

private:
    bool kept_ = false;
};

}  // namespace device
