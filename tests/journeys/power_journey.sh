#!/bin/sh
# The power goes in the cut and in the sutures: the case is taken up at the same spoke and the same suture, and its clocks ran on.
set -eu
# shellcheck source-path=SCRIPTDIR source=journey.sh
. "$(dirname -- "$0")/journey.sh"
case_file=$root/demo-data/demo.case.toml
reference=$(sed -n 's/^reference *= *"\([^"]*\)".*/\1/p' "$case_file")

# play_to PATTERN: the script from where it was left to the first line that says so, that line included.
played=0
play_to() {
    to=$(awk -v from="$played" -v what="$1" 'NR > from && index($0, what) { print NR; exit }' "$here/demo.jsonl")
    sed -n "$((played + 1)),${to}p" "$here/demo.jsonl" >"$out/part.jsonl"
    "$program" --quiet --ledger "$out/demo.ledger" play "$out/part.jsonl" --case "$case_file" || fail "the script was refused"
    played=$to
}

# ran_on CLOCK FROM TO: the kept state says that the clock ran for the seconds from FROM to TO, give or take 3: a kill costs none.
ran_on() {
    seconds=$(tr -d ' \n' <"$out/state.json" | sed -n "s/.*\"$1\":{\"seconds\":\([0-9]*\).*/\1/p")
    should=$(($3 - $2))
    if [ -z "$seconds" ] || [ "$seconds" -lt $((should - 3)) ] || [ "$seconds" -gt $((should + 3)) ]; then
        fail "clock $1 says ${seconds:-nothing}, should say $should"
    fi
}

# played_at: when the last line that was played says it was, in seconds.
played_at() { date -d "$(sed -n "${played}s/.*\"at\": \"\([^\"]*\)\".*/\1/p" "$here/demo.jsonl")" +%s; }

play_to '"turn-suction", "to": "on"'
suction_on=$(played_at)
start_display
start_program open "$case_file"
spokes 6
crash_program
keep_state "$reference"
state_has '"spokes_turned":6'
state_has '"position":3'
state_has '"to_go":5'
start_program open "$case_file"
within 20 has_target spoke || fail "not at the spokes again"
keep_frame cut-taken-up
spokes 5
use cut-done
pause
use suction-off
suction_off=$(date +%s)
crash_program
keep_state "$reference"
state_has '"position":8'
state_has '"suction":{"seconds":'
state_has '"running":false,"exact":false'
ran_on suction "$suction_on" "$suction_off"

played=$(awk '/"to": "off"/ { print NR; exit }' "$here/demo.jsonl")
play_to '"step": "donor-on"'
entered_suturing=$(played_at)
play_to '"tie-suture", "n": 4'
start_program open "$case_file"
use tied-5
tied=$(date +%s)
crash_program
keep_state "$reference"
ran_on suturing "$entered_suturing" "$tied"
start_program open "$case_file"
within 20 has_target tied-6 || fail "not at suture 6 again"
keep_frame suture-taken-up
end_program
keep_state "$reference"
state_has '"step":"next-four"'
"$program" --ledger "$out/demo.ledger" verify "$reference" || fail "verify says no"
say "came to its end"
