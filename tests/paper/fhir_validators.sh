#!/bin/sh
# sh fhir_validators.sh GRAFTSIDE OUT: plays the demo case, hands it over as FHIR, and holds the bundle to two independent validators from
# npm, fetched into OUT by the lock file. Without node or npm it says SKIP and exits 77; nothing else lets it off.
set -eu
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
program=$1
out=$2
if ! command -v node >/dev/null || ! command -v npm >/dev/null; then
    echo "SKIP: node and npm are not here"
    exit 77
fi
mkdir -p "$out"
rm -f "$out"/case.ledger* "$out/case.fhir.json"
"$program" --ledger "$out/case.ledger" --quiet play "$here/../journeys/demo.jsonl" --case "$here/../../demo-data/demo.case.toml"
"$program" --ledger "$out/case.ledger" handover DEMO-1 --as fhir -o "$out/case.fhir.json"
cp "$here/fhir/package.json" "$here/fhir/package-lock.json" "$here/fhir/validate.js" "$out/"
(cd "$out" && npm ci --silent --no-audit --no-fund && node validate.js case.fhir.json)
