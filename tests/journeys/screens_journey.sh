#!/bin/sh
# Screens pulled out and plugged in again, on an X server with outputs that can be switched (the "dummy" driver): the Far view's screen,
# then the Table view's own. The case goes on. Exit 77 where there is no such server.
set -eu
# shellcheck source-path=SCRIPTDIR source=journey.sh
. "$(dirname -- "$0")/journey.sh"
case_file=$root/demo-data/demo.case.toml
if ! command -v Xorg >/dev/null 2>&1 || ! command -v xrandr >/dev/null 2>&1 || [ "$(id -u)" -ne 0 ] ||
    [ ! -e /usr/lib/xorg/modules/drivers/dummy_drv.so ]; then
    say "skipped: no X server with outputs to switch"
    exit 77
fi

cat >"$out/xorg.conf" <<'CONF'
Section "Device"
  Identifier "dummy"
  Driver "dummy"
  VideoRam 256000
EndSection
Section "Screen"
  Identifier "screen"
  Device "dummy"
  DefaultDepth 24
EndSection
CONF
unset WAYLAND_DISPLAY XAUTHORITY
# A high number: this server is slow to end, and takes the socket of its number with it.
DISPLAY=:$((200 + $$ % 100))
export DISPLAY LIBGL_ALWAYS_SOFTWARE=1
Xorg "$DISPLAY" -config "$out/xorg.conf" -logfile "$out/xorg.log" -noreset -nolisten tcp >"$out/display.log" 2>&1 &
display_pid=$!
within 30 xrandr || { say "skipped: the server does not start"; exit 77; }
xrandr --newmode full 173 1920 2048 2248 2576 1080 1083 1088 1120
for output in DUMMY0 DUMMY1; do xrandr --addmode "$output" full; done
# The server looks at its outputs anew when it is asked to list them.
both() { xrandr --fb 3840x1080 --output DUMMY0 --mode full --pos 0x0 --output DUMMY1 --mode full --pos 1920x0; xrandr >/dev/null; }
pull() { xrandr --output "$1" --off; xrandr >/dev/null; }
both

lit() { import -window root -crop "1920x1080+$1+0" +repage "$out/crop.png" && [ "$(identify -format '%k' "$out/crop.png")" -gt 8 ]; }
# The banner's amber edge, at the foot of the card: nothing else is amber in the middle of this step.
says_lost() { import -window root -crop 700x200+440+880 +repage "$out/crop.png" && convert "$out/crop.png" txt:- | grep -qi '#FFC24B'; }
# The last views that were said to have no screen of their own.
without() { [ "$(sed -n 's/.*views without a screen of their own: //p' "$out/program.log" | tail -n 1)" = "$1" ]; }
start_program --view table,far --monitor 0,1 open "$case_file"
picture both
within 10 lit 0 || fail "no Table view on the first screen"
within 10 lit 1920 || fail "no Far view on the second screen"

pull DUMMY1
sleep 3
picture far-gone
says_lost || fail "the Table view does not say that the Far view's screen is gone"
without far || fail "another view's screen is said to be gone than the Far view's"
use finish-tissue-here
both
sleep 3
picture far-back
without none || fail "a screen is said to be gone when both are there"
within 10 lit 1920 || fail "the Far view did not come back"

pull DUMMY0
sleep 3
picture table-on-the-other
says_lost || fail "the Table view does not say that a screen is gone"
without table || fail "another view's screen is said to be gone than the Table view's"
use finish-tissue-number
both
sleep 3
picture table-home
within 10 lit 0 || fail "the Table view did not go home"
end_program
say "came to its end"
