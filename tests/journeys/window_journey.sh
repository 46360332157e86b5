#!/bin/sh
# The program stands idle without drawing, opens the demo case in a window, draws once a second while only clocks run, loses its
# power, and is taken up again; the ledger is whole after all.
set -eu
# shellcheck source-path=SCRIPTDIR source=journey.sh
. "$(dirname -- "$0")/journey.sh"
case_file=$root/demo-data/demo.case.toml
reference=$(sed -n 's/^reference *= *"\([^"]*\)".*/\1/p' "$case_file")

# frames_in SECONDS: how many frames are drawn in that time.
frames_in() {
    before=$(newest_frame | tr -dc 0-9)
    sleep "$1"
    after=$(newest_frame | tr -dc 0-9)
    echo $((${after#"${after%%[!0]*}"} - ${before#"${before%%[!0]*}"}))
}

start_display
start_program
within 20 shown || fail "no list of cases"
sleep 2
drawn=$(frames_in 4)
[ "$drawn" -le 1 ] || fail "$drawn frames in 4 seconds in which nothing changes" # 1: the minute may turn
end_program
start_program open "$case_file"
picture opened
use "$(first_target)"
sleep 3
drawn=$(frames_in 5)
if [ "$drawn" -lt 3 ] || [ "$drawn" -gt 6 ]; then fail "$drawn frames in 5 seconds in which only clocks run"; fi
crash_program
start_program open "$case_file"
picture taken-up-again
end_program
keep_state "$reference"
state_has "\"case\":\"$reference\""
"$program" --ledger "$out/demo.ledger" verify "$reference" >/dev/null || fail "verify says no"
say "came to its end"
