#!/bin/sh
# Three readers of one case: the Table view counts, the Desk takes the count over by a hold of its key, counts by the space bar, writes
# a note, takes a scan; the Far view shows the same figure; what is said is kept in a file and measured. A pedal is the last to count.
# Each window is 344 by 194 mm on a display of four pixels a millimetre.
set -eu
# shellcheck source-path=SCRIPTDIR source=journey.sh
. "$(dirname -- "$0")/journey.sh"
display_size=2816x1600x24
glass_mm=704x400
case_file=$root/demo-data/demo.case.toml
reference=$(sed -n 's/^reference *= *"\([^"]*\)".*/\1/p' "$case_file")

# The unit's settings with a voice and a pedal.
sed -e 's/^on = false/on = true/' -e 's/^volume = 70/volume = 100/' "$root/assets/unit/unit.toml" >"$out/unit.toml"
printf '[foot_switch]\nkey = "F9"\n' >>"$out/unit.toml"
"$program" check "$out/unit.toml" >/dev/null || fail "the unit's settings are not valid"

# Up to the cut by script.
sed '/"count-spoke"/,$d' "$root/tests/journeys/demo.jsonl" >"$out/before.jsonl"
"$program" --ledger "$out/demo.ledger" --quiet play "$out/before.jsonl" --case "$case_file" || fail "the script was refused"

place() { xdotool search --name "^$1\$" windowmove --sync "$2" "$3"; }
start_display
start_program --view table,desk,far --window 1376x776 --unit "$out/unit.toml" --voice "$out/said.wav" open "$case_file"
place "graftside desk" 1400 0
place "graftside far" 0 800
sleep 2
picture three-readers

use spoke; sleep 0.3
use spoke; sleep 0.3
use spoke; sleep 0.3
picture at-zero

xdotool search --name "^graftside desk\$" windowfocus --sync
xdotool keydown h; sleep 1.5; xdotool keyup h
sleep 1
key space; sleep 0.5
key space; sleep 0.5
picture desk-counts
has_target take-count || fail "the Table view does not offer to take the count back"
grep -q '^spoke .* dead' "$frames/targets.txt" || fail "the Table view's spoke is not dead while the desk counts"

key n; sleep 0.5
xdotool type --delay 120 "second "; sleep 0.5
xdotool type --delay 2 "=NCKXH1234567
"
sleep 1
xdotool type --delay 120 "pack"; sleep 0.5
picture note-and-scan
key Return; sleep 1

# The pedal, in whatever window: it counts only once it holds the count.
key F9; sleep 0.5
xdotool keydown j; sleep 1.5; xdotool keyup j
sleep 1
key F9; sleep 0.5
picture pedal-counts
end_program

keep_state "$reference"
state_has '"holder":"foot-switch"'
state_has '"spokes_turned":6'
state_has '"position":3'
state_has '"to_go":5'
grep -q 'second pack' "$out/demo.ledger.txt" || fail "the note is not on the record"
grep -q '=NCKXH1234567' "$out/demo.ledger.txt" || fail "the scan is not on the record"
if grep 'second' "$out/demo.ledger.txt" | grep -q NCKXH; then fail "a scan ended up in the note"; fi

# Six figures were said: each between 0.4 and 3 seconds, together well over two seconds of sound.
bytes=$(wc -c <"$out/said.wav")
[ "$bytes" -gt 150000 ] || fail "little or nothing was said: $bytes bytes"
say "came to its end"
