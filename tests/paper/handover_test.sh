#!/bin/sh
# The files that leave the program, from outside: sh handover_test.sh GRAFTSIDE OUT. The same bytes whatever the folder, the zone and
# the language of the machine; one page; JSON and CSV as Python reads them; exit codes of the contract. Tools: poppler, python3.
set -eu
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
program=$1
out=$2
demo=$here/../../demo-data/demo.case.toml
rm -rf "$out"
mkdir -p "$out/one" "$out/two"
failures=0
fail() {
    echo "FAILED: $*"
    failures=$((failures + 1))
}
gives() {
    wanted=$1
    shift
    status=0
    "$@" >"$out/said" 2>&1 || status=$?
    [ "$status" -eq "$wanted" ] || fail "exit $status, not $wanted: $*"
}
ledger=$out/case.ledger
"$program" --ledger "$ledger" --quiet play "$here/../journeys/demo.jsonl" --case "$demo"

# hand_over FOLDER: all that can be handed over, written to it.
hand_over() {
    for format in pdf fhir csv json; do "$program" --ledger "$ledger" handover DEMO-1 --as "$format" -o "$1/case.$format"; done
    "$program" --ledger "$ledger" --paper letter handover DEMO-1 --as pdf -o "$1/letter.pdf"
    "$program" plan "$demo" --card "$1/card.pdf" >"$1/plan.txt"
}
(cd "$out/one" && TZ=UTC LANG=C LC_ALL=C hand_over "$out/one")
(cd / && TZ=Asia/Kathmandu LANG=de_DE.UTF-8 LC_ALL=tr_TR.UTF-8 LANGUAGE=ar HOME=/nowhere hand_over "$out/two")
for file in case.pdf case.fhir case.csv case.json letter.pdf card.pdf; do
    cmp "$out/one/$file" "$out/two/$file" || fail "$file differs between two runs"
done

for file in case letter card; do
    [ "$(pdfinfo "$out/one/$file.pdf" | sed -n 's/^Pages: *//p')" = 1 ] || fail "$file.pdf is not one page"
    pdffonts "$out/one/$file.pdf" | tail -n +3 | grep -v -q '+B612' && fail "$file.pdf has another font than B612"
done
pdfinfo "$out/one/letter.pdf" | grep -q '(letter)' || fail "letter.pdf is not Letter"
pdftotext "$out/one/card.pdf" - | grep -q 'RIGHT EYE' || fail "the card does not say the eye"
pdftotext "$out/one/case.pdf" - | grep -q 'RIGHT EYE' || fail "the sheet does not say the eye"

"$program" --ledger "$ledger" state DEMO-1 --json >"$out/state.json"
"$program" --ledger "$ledger" verify DEMO-1 >"$out/verify.txt"
python3 - "$out" <<'PYTHON' || fail "what Python reads"
import csv, json, sys
out = sys.argv[1]
record = json.load(open(out + "/one/case.json", encoding="utf-8"))
state = json.load(open(out + "/state.json", encoding="utf-8"))
assert record["state"] == state, "the state of the record is not that of `state`"
assert record["plan"]["planned"]["spokes"] == 8 and record["whole"] and record["sealed_by"] == state["seal"]
assert record["sealed_by"] in open(out + "/verify.txt").read()
assert len(record["hash"]) == 64 and len(record["events"]) == state["events"]
rows = list(csv.reader(open(out + "/one/case.csv", encoding="utf-8", newline=""), strict=True))
assert len(rows) == state["events"] + 1 and {len(row) for row in rows} == {7}
for row, event in zip(rows[1:], record["events"]):
    assert (row[1], row[2], row[3], row[4]) == (str(event["event"]), event["at"], event["who"], event["kind"])
    assert row[4] in ("case-opened", "plan-accepted") or json.loads(row[5]) == event["values"]
bundle = json.load(open(out + "/one/case.fhir", encoding="utf-8"))
values = {entry["resource"]["code"]["text"]: entry["resource"] for entry in bundle["entry"] if entry["resource"]["resourceType"] == "Observation"}
assert values["Planned spokes below zero"]["valueInteger"] == 8
assert values["Spokes counted below zero, seating 1"]["valueInteger"] == 8
assert values["Time: open-sky"]["valueQuantity"] == {"value": 300.0, "unit": "s", "system": "http://unitsofmeasure.org", "code": "s"}
assert values["Anterior chamber entered by the trephine"]["valueBoolean"] is False
assert values["Days in storage"]["valueQuantity"]["value"] == 3  # cold since 22 November, operated on the 25th
assert values["Depth of the cut as measured"]["dataAbsentReason"]["coding"][0]["code"] == "unknown"
assert len([code for code in values if code.startswith("Suture ") and "as placed" in code]) == 16
PYTHON

gives 2 "$program" --ledger "$ledger" handover NONE --as pdf -o "$out/none.pdf"
gives 2 "$program" --ledger "$ledger" handover DEMO-1 --as docx -o "$out/none.pdf"
gives 2 "$program" --ledger "$ledger" handover DEMO-1 --as pdf
gives 3 "$program" --ledger "$out/no.ledger" handover DEMO-1 --as pdf -o "$out/none.pdf"
gives 3 "$program" --ledger "$ledger" handover DEMO-1 --as csv -o "$out/no/folder/case.csv"
gives 1 "$program" plan "$here/../cases/centre-refused.case.toml" --card "$out/none.pdf"
[ ! -e "$out/none.pdf" ] || fail "something was written that should not have been"
[ "$failures" -eq 0 ]
