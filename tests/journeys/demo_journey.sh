#!/bin/sh
# The demo case from its file to the locked record, by touch, in a real window; one picture a step. Then the same case by a
# script: both ledgers hold the same events.
set -eu
# shellcheck source-path=SCRIPTDIR source=journey.sh
. "$(dirname -- "$0")/journey.sh"
case_file=$root/demo-data/demo.case.toml
reference=$(sed -n 's/^reference *= *"\([^"]*\)".*/\1/p' "$case_file")
side=$(sed -n 's/^eye *= *"\([^"]*\)".*/\1/p' "$case_file")

start_display
start_program open "$case_file"
go_to the-end
end_program
rm -rf "$frames"

keep_state "$reference"
state_has "\"case\":\"$reference\""
state_has '"closed":true'
state_has '"sealed":true'
state_has '"position":8'
state_has '"reasons_owed":[]'
"$program" --ledger "$out/demo.ledger" verify "$reference" || fail "verify says no"

# What was done, without when: case, sequence number, who, what, with its figures.
deeds() { cut -f 2,3,7,8,9 "$1"; }
"$program" --quiet --ledger "$out/played.ledger" play "$here/demo.jsonl" --case "$case_file" || fail "the script was refused"
deeds "$out/demo.ledger.txt" >"$out/deeds-by-touch.txt"
deeds "$out/played.ledger.txt" >"$out/deeds-by-script.txt"
diff "$out/deeds-by-script.txt" "$out/deeds-by-touch.txt" >"$out/difference.txt" || { head -n 20 "$out/difference.txt" >&2; fail "touch and script differ"; }
say "came to its end: $(wc -l <"$out/deeds-by-touch.txt") events, the same by touch and by script"
