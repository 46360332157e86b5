#!/bin/sh
# The demo case from its file to the locked record, by touch, in a real window; one picture a step. The tissue's label and the packs
# are scanned at the Desk beside it, and what is told of knots, sutures, specimens and tissue is typed there. Then the same case by a script: both ledgers hold the same events.
# Each window is 344 by 194 mm on a display of four pixels a millimetre.
set -eu
# shellcheck source-path=SCRIPTDIR source=journey.sh
. "$(dirname -- "$0")/journey.sh"
display_size=2816x800x24
glass_mm=704x200
case_file=$root/demo-data/demo.case.toml
reference=$(sed -n 's/^reference *= *"\([^"]*\)".*/\1/p' "$case_file")
side=$(sed -n 's/^eye *= *"\([^"]*\)".*/\1/p' "$case_file")

start_display
start_program --view table,desk --window 1376x776 open "$case_file"
xdotool search --name "^graftside desk\$" windowmove --sync 1400 0
sleep 2

# at_desk KEYS…: typed at the Desk, one after the other as a person does; "Enter" is that key.
at_desk() {
    xdotool search --name "^graftside desk\$" windowfocus --sync
    for keys in "$@"; do
        if [ "$keys" = Enter ]; then key Return; else alive; xdotool type --delay 120 "$keys"; fi
        sleep 0.4
    done
}

# scanned SYMBOL…: as a barcode reader types them.
scanned() {
    xdotool search --name "^graftside desk\$" windowfocus --sync
    for symbol in "$@"; do
        alive
        xdotool type --delay 2 "$symbol
"
        sleep 1
    done
}

go_to finish-tissue-number
scanned "=A99992600017700" "=>026336"
picture desk-tissue
go_to finish-instruments
scanned "01095060001343521728013110T-0418" "01095060001343451728022910P-0093"
picture desk-packs
go_to finish-viscoelastic-out
at_desk tk1
at_desk tst "nylon 10-0" Enter N10 Enter
picture desk-sutures
go_to finish-sign-out
at_desk tg11r 22r 33
picture desk-specimens
key Escape
at_desk tag tb "bank, invented" Enter t "grafted, rim to culture" Enter
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
