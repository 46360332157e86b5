#!/bin/sh
# A station is set up before the case: its screen is measured against a bank card and known again at the next start; the screens are
# dimmed; one undraped screen is chosen, and a note is written in the drawer of the Table view, under the finger, between two taps.
set -eu
# shellcheck source-path=SCRIPTDIR source=journey.sh
. "$(dirname -- "$0")/journey.sh"
case_file=$root/demo-data/demo.case.toml
reference=$(sed -n 's/^reference *= *"\([^"]*\)".*/\1/p' "$case_file")
XDG_CONFIG_HOME=$out/config
export XDG_CONFIG_HOME

# ask_to_close: what a window manager sends for its cross or Alt+F4 (ICCCM, WM_DELETE_WINDOW).
ask_to_close() {
    python3 - "$(xdotool search --onlyvisible --name graftside | head -n 1)" <<'END'
import ctypes
import sys

x11 = ctypes.CDLL("libX11.so.6")
x11.XOpenDisplay.restype = ctypes.c_void_p
x11.XInternAtom.restype = ctypes.c_ulong
x11.XInternAtom.argtypes = [ctypes.c_void_p, ctypes.c_char_p, ctypes.c_int]
x11.XSendEvent.argtypes = [ctypes.c_void_p, ctypes.c_ulong, ctypes.c_int, ctypes.c_long, ctypes.c_void_p]
x11.XSync.argtypes = [ctypes.c_void_p, ctypes.c_int]


class Message(ctypes.Structure):
    _fields_ = [("type", ctypes.c_int), ("serial", ctypes.c_ulong), ("sent", ctypes.c_int), ("display", ctypes.c_void_p),
                ("window", ctypes.c_ulong), ("what", ctypes.c_ulong), ("format", ctypes.c_int), ("data", ctypes.c_long * 5),
                ("rest", ctypes.c_long * 24)]


display = x11.XOpenDisplay(None)
window = int(sys.argv[1])
message = Message(type=33, window=window, what=x11.XInternAtom(display, b"WM_PROTOCOLS", 0), format=32)
message.data[0] = x11.XInternAtom(display, b"WM_DELETE_WINDOW", 0)
x11.XSendEvent(display, window, 0, 0, ctypes.byref(message))
x11.XSync(display, 0)
END
}

start_display
start_program --set-up draped
use set-up
keep_frame set-up
use measure
sleep 1
keep_frame measure
# Four pixels a millimetre: the outline is 342 pixels wide. A card on this glass would be 372.
for _ in 1 2 3; do use measure-more-10; sleep 0.4; done
use measure-less-1; sleep 0.4
use measure-more-1; sleep 0.4
keep_frame measured
use measure-use
sleep 1
use dim
sleep 1
keep_frame dimmed
end_program
# ISO/IEC 7810 ID-1: 85.60 mm are 372 pixels, so 1920 are 441.8 and 1080 are 248.5 mm.
grep -qF 'glass_mm = [441.81, 248.52]' "$out/config/graftside/screens.toml" || fail "the measured size was not kept"
"$program" check "$out/config/graftside/screens.toml" >/dev/null || fail "the file of screens is not valid"

# The next start believes it: places on the glass are by the new scale.
px_per_mm=4.3458
rm -f "$frames/targets.txt"
"$program" --ledger "$out/demo.ledger" --pictures "$frames" --kiosk --set-up undraped open "$case_file" >"$out/program.log" 2>&1 &
program_pid=$!
within 60 shown || fail "no window within a minute"
sleep 1
keep_frame one-screen
use desk/drawer
keep_frame drawer
use desk/note
for letter in P A C K; do use "desk/key-$letter"; sleep 0.4; done
keep_frame drawer-note
use desk/write
sleep 1
use desk/drawer
use "$(first_target)"
sleep 1
# A station of its own is not closed from outside while the case stands open; any other is.
ask_to_close
sleep 1
alive
end_program
rm -f "$frames/targets.txt"
"$program" --ledger "$out/demo.ledger" --pictures "$frames" open "$case_file" >"$out/program.log" 2>&1 &
program_pid=$!
within 60 shown || fail "no window within a minute"
sleep 1
ask_to_close
within 10 gone || fail "the program did not end when its window was closed"
program_pid=
keep_state "$reference"
state_has '"step":"tissue-number"'
grep -q 'circulating.*PACK' "$out/demo.ledger.txt" || fail "the note is not on the record as the circulating nurse's"
say "came to its end"
