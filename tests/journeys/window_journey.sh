#!/bin/sh
# The program opens the demo case in a window, loses its power, and is taken up again; the ledger is whole after both.
set -eu
# shellcheck source-path=SCRIPTDIR source=journey.sh
. "$(dirname -- "$0")/journey.sh"
case_file=$root/demo-data/demo.case.toml
reference=$(sed -n 's/^reference *= *"\([^"]*\)".*/\1/p' "$case_file")

start_display
start_program open "$case_file"
picture opened
crash_program
start_program open "$case_file"
picture taken-up-again
end_program
keep_state "$reference"
state_has "\"case\":\"$reference\""
"$program" --ledger "$out/demo.ledger" verify "$reference" >/dev/null || fail "verify says no"
say "came to its end"
