#!/bin/sh
# German from outside: every command in it, figures with a comma where people read and with a point where programs do, and files that
# are the same bytes whatever the language. Run as: sh language_test.sh PROGRAM SOURCE-DIR. The words beside the checks are those of
# assets/words/de.toml; the figures (8 spokes of 60 um in a 7.5 mm host) are the demo case's.
set -u
program=${1:?usage: sh language_test.sh PROGRAM SOURCE-DIR}
source_dir=${2:?usage: sh language_test.sh PROGRAM SOURCE-DIR}
place=$(mktemp -d)
failures=0
trap 'rm -rf "$place"' EXIT
trap 'exit 1' INT TERM
export HOME="$place" XDG_DATA_HOME="$place/data" XDG_CONFIG_HOME="$place/config"
unset DISPLAY WAYLAND_DISPLAY

wrong() {
    echo "FAILED: $*" >&2
    failures=$((failures + 1))
}
# gives CODE FILE ARGUMENT…: the program ends with that code; what it says goes into FILE, its errors into FILE.err.
gives() {
    wanted=$1
    into=$place/$2
    shift 2
    timeout 60 "$program" "$@" >"$into" 2>"$into.err"
    code=$?
    [ "$code" -eq "$wanted" ] || wrong "$*: exit $code, not $wanted: $(head -n 3 "$into.err")"
}
has() { grep -qF -- "$2" "$place/$1" || wrong "$1 does not say: $2"; }
has_not() { ! grep -qE -- "$2" "$place/$1" || wrong "$1 says: $(grep -E -- "$2" "$place/$1" | head -n 2)"; }
same() { cmp -s "$place/$1" "$place/$2" || wrong "$1 and $2 differ"; }

good=$source_dir/demo-data/demo.case.toml
reference=$(sed -n 's/^reference *= *"\([^"]*\)".*/\1/p' "$good")
demo=$source_dir/tests/journeys/demo.jsonl

# ---- a language that nobody wrote ----
gives 2 unknown --language tlh plan "$good"
has unknown.err 'there are no words in the language "tlh"; there are de, en.'
[ "$(grep -c . "$place/unknown.err")" -eq 1 ] || wrong "an unknown language is not told in one line"

# ---- the plan ----
gives 0 plan --language de plan "$good"
has plan "Empfänger 7,50 mm"
has plan "Speichentabelle"
has_not plan '<[a-z]+[.]'                                   # an id that has no words
has_not plan '^[^(]*[0-9][.][0-9]+ (mm|µm|%|Speichen)'      # a point before a unit; sources in brackets keep theirs
gives 0 plan.json --language de plan "$good" --json
gives 0 plan.en.json plan "$good" --json
same plan.json plan.en.json
gives 0 check --language de check "$good" "$source_dir/assets/words/de.toml" "$source_dir/assets/unit/unit.de.toml" \
    "$source_dir/assets/procedures/suction-trephine-graft.de.toml"
gives 0 card --language de plan "$good" --card "$place/card.pdf"
pdftotext -layout "$place/card.pdf" "$place/card.txt"
has card.txt "Ersatzkarte"
has card.txt "7,50 mm"

# ---- a case that is opened in German has the German guide for good; one opened in English keeps the English one ----
gives 0 play --language de --ledger "$place/de.ledger" play "$demo" --case "$good"
gives 0 play.en --ledger "$place/en.ledger" play "$demo" --case "$good"
gives 0 state --language de --ledger "$place/de.ledger" state "$reference"
has state "Protokoll ist gesperrt"
has_not state '<[a-z]+[.]'
gives 0 german.json --ledger "$place/de.ledger" handover "$reference" --as json -o "$place/german-record.json"
has german-record.json "Klinge senken"
has german-record.json "Nadeln"
for way in fhir csv json; do
    gives 0 written --ledger "$place/en.ledger" handover "$reference" --as "$way" -o "$place/en.$way"
    gives 0 written --language de --ledger "$place/en.ledger" handover "$reference" --as "$way" -o "$place/de.$way"
    same "en.$way" "de.$way"
done
has en.json "Lower the blade"
gives 0 written --language de --ledger "$place/de.ledger" handover "$reference" --as pdf -o "$place/sheet.pdf"
pdftotext -layout "$place/sheet.pdf" "$place/sheet.txt"
has sheet.txt "Übergabebogen"
has sheet.txt "7,50 mm"
has sheet.txt "RECHTES AUGE"
has_not sheet.txt '<[a-z]+[.]'
gives 0 past --language de --ledger "$place/de.ledger" past --invented
has past "Beendete Fälle: "
has_not past '<[a-z]+[.]'

# ---- the unit's own settings come before the shipped German ones ----
mkdir -p "$place/config/graftside"
sed 's/^title = "Needles"/title = "Pins"/' "$source_dir/assets/unit/unit.toml" >"$place/config/graftside/unit.toml"
gives 0 play.own --language de --ledger "$place/own.ledger" play "$demo" --case "$good"
gives 0 own.json --ledger "$place/own.ledger" handover "$reference" --as json -o "$place/own-record.json"
has own-record.json '"Pins"'

# ---- what can be said ----
voice=$(dirname "$program")/../share/graftside/voice/de
[ -s "$voice/to-go-3.wav" ] || wrong "no German voice: $voice/to-go-3.wav"
# What is a part of something stands by itself: a number is said after other words alone.
grep -v '^number-' "$voice/phrases.txt" >"$place/phrases"
has phrases "noch 3"
has_not phrases "	[0-9]+$" # a bare number

[ "$failures" -eq 0 ] || { echo "$failures failures" >&2; exit 1; }
echo "German is German, and files are the same in every language"
