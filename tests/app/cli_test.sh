#!/bin/sh
# The command line from outside: for each command, the exit code its users' scripts rely on (0 fine, 1 the answer is no, 2 wrong
# use or input, 3 the machine cannot), and that the words say where. Run as: sh cli_test.sh PROGRAM SOURCE-DIR. Does not check
# figures: the cases beside their expected.json do that elsewhere.
set -u
program=${1:?usage: sh cli_test.sh PROGRAM SOURCE-DIR}
source_dir=${2:?usage: sh cli_test.sh PROGRAM SOURCE-DIR}
place=$(mktemp -d)
display_pid=
window_pid=
holder_pid=
mounted=no
failures=0

# Ends only what this script started.
end_all() {
    for pid in $window_pid $holder_pid $display_pid; do kill "$pid" 2>/dev/null; done
    wait 2>/dev/null
    [ "$mounted" = no ] || umount "$place/small"
    rm -rf "$place"
}
trap end_all EXIT
trap 'exit 1' INT TERM
export HOME="$place" XDG_DATA_HOME="$place/data" XDG_CONFIG_HOME="$place/config"
unset DISPLAY WAYLAND_DISPLAY

wrong() {
    echo "FAILED: $*" >&2
    sed 's/^/  out: /' "$place/out" | head -n 5 >&2
    sed 's/^/  err: /' "$place/err" | head -n 5 >&2
    failures=$((failures + 1))
}
skip() { echo "skipped: $*"; }

# gives CODE WHAT ARGUMENT…: the program ends with that code.
gives() {
    wanted=$1
    what=$2
    shift 2
    timeout 60 "$program" "$@" >"$place/out" 2>"$place/err"
    code=$?
    [ "$code" -eq "$wanted" ] || wrong "$what: exit $code, not $wanted"
}
# says TEXT: the last command said so on stderr. prints TEXT: on stdout.
says() { grep -qF -- "$1" "$place/err" || wrong "stderr does not say: $1"; }
prints() { grep -qF -- "$1" "$place/out" || wrong "stdout does not say: $1"; }
one_line() { [ "$(grep -c . "$place/err")" -eq 1 ] || wrong "stderr is not one line"; }
silent() { [ ! -s "$place/out" ] || wrong "something on stdout"; }

good=$source_dir/demo-data/demo.case.toml
reference=$(sed -n 's/^reference *= *"\([^"]*\)".*/\1/p' "$good")
demo=$source_dir/tests/journeys/demo.jsonl

# ---- wrong use ----
gives 0 "help" --help
gives 0 "version" --version
gives 2 "an unknown command" stitch
gives 2 "an unknown option" --sharp plan "$good"
gives 2 "plan without a file" plan
gives 2 "play without a case" play "$demo"

# ---- plan: every case ends as the expectation beside it says ----
for case_file in "$source_dir"/tests/cases/*.case.toml; do
    expected=$(sed -n 's/.*"exit": *\([0-9]\).*/\1/p' "${case_file%.case.toml}.expected.json" | head -n 1)
    gives "${expected:-9}" "plan $(basename "$case_file")" plan "$case_file" --json
    prints '"formula"'
done

# ---- input that cannot be read or is not valid: where it stands ----
bad=$place/bad.case.toml
# changed EXPRESSION: the good case with that change.
changed() { sed "$1" "$good" >"$bad"; ! cmp -s "$good" "$bad" || wrong "the change did nothing: $1"; }
line_of() { grep -n "$1" "$bad" | head -n 1 | cut -d : -f 1; }
gives 2 "no such file" plan "$place/none.case.toml"
says "none.case.toml"
changed 's/^diameter_mm *=.*/diameter_mm = nan/'
gives 2 "nan" plan "$bad"
says "$bad:$(line_of '^diameter_mm'):15: host.diameter_mm"
silent
changed 's/^eye *=.*/eye = "middle"/'
gives 2 "an eye that is none" plan "$bad"
says "$bad:$(line_of '^eye'):7: case.eye"
gives 1 "check finds it too" check "$bad"
says "$bad:$(line_of '^eye'):7: case.eye"
gives 1 "check as JSON" check "$bad" --json
prints '"fine": false'
gives 0 "check of a good case" check "$good"
changed 's/^reference *=.*/reference = "no end/'
gives 2 "broken TOML" plan "$bad"
says "$bad:$(line_of '^reference'):"
changed 's/^trephine *=.*/trephine = "no-such-trephine"/'
gives 2 "a profile that is not there" plan "$bad"
says "$bad:$(line_of '^trephine'):12: host.trephine: found \"no-such-trephine\"; allowed hand-trephine, suction-trephine"
changed 's/^punch *=.*/punch = "suction-trephine"/'
gives 2 "a trephine where a punch is asked for" plan "$bad"
says "$bad:$(line_of '^punch'):9: donor.punch: found \"suction-trephine\"; allowed vacuum-punch"
{ cat "$good"; head -c 1048577 /dev/zero | tr '\0' '#'; } >"$bad"
gives 2 "over 1 MiB" plan "$bad"
says "$bad"

# ---- the card replaces nothing but a plain file of its own ----
cp "$good" "$place/own.case.toml"
gives 2 "a card over the case itself" plan "$place/own.case.toml" --card "$place/own.case.toml"
cmp -s "$good" "$place/own.case.toml" || wrong "the case file was replaced"
ln -s "$place/own.case.toml" "$place/link"
gives 2 "a card over a link" plan "$good" --card "$place/link"
gives 0 "a card" plan "$good" --card "$place/card.pdf"
gives 0 "a card anew" plan "$good" --card "$place/card.pdf"

# ---- play, state, verify ----
ledger=$place/a.ledger
head -n 43 "$demo" >"$place/head.jsonl"
gives 0 "play" --ledger "$ledger" play "$place/head.jsonl" --case "$good"
gives 0 "state" --ledger "$ledger" state "$reference" --json
prints "\"case\": \"$reference\""
gives 0 "verify" --ledger "$ledger" verify
gives 2 "state of an unknown case" --ledger "$ledger" state NO-SUCH
gives 2 "verify of an unknown case" --ledger "$ledger" verify NO-SUCH
gives 2 "a handover over the ledger" --ledger "$ledger" handover "$reference" --as json -o "$ledger"
gives 0 "the ledger is still there" --ledger "$ledger" verify
gives 1 "nothing to recover" --ledger "$ledger" recover "$reference"
head -n 30 "$demo" >"$place/shorter.jsonl"
gives 0 "a copy made earlier" --ledger "$place/older.ledger" play "$place/shorter.jsonl" --case "$good"
cp "$place/older.ledger" "$place/copy"
sed -n '31,43p' "$demo" >"$place/later.jsonl"
gives 0 "the case went on" --ledger "$place/older.ledger" play "$place/later.jsonl" --case "$good"
cp "$place/copy" "$place/older.ledger"
gives 0 "verify of an older copy beside its mirror" --ledger "$place/older.ledger" verify
prints "graftside recover $reference"
gives 0 "recover what the copy lacks" --ledger "$place/older.ledger" recover "$reference"
cp "$ledger.txt" "$place/lost.ledger.txt"
gives 0 "recover where only the mirror is left" --ledger "$place/lost.ledger" recover "$reference"
gives 0 "a recovered case" --ledger "$place/lost.ledger" state "$reference" --json
cp "$place/out" "$place/recovered.json"
gives 0 "the case as it was" --ledger "$ledger" state "$reference" --json
cmp -s "$place/out" "$place/recovered.json" || wrong "a recovered case is not the case as it was"
echo '{"at": "2026-11-25T08:00:20.000Z", "who": "scrub", "do": "tie-suture", "n": 1, "expect": "refused"}' >"$place/expected.jsonl"
gives 0 "a refusal that was expected" --ledger "$place/b.ledger" play "$place/expected.jsonl" --case "$good"
{ head -n 1 "$demo"; sed 's/08:00:20/08:00:30/; s/, "expect": "refused"//' "$place/expected.jsonl"; } >"$place/refused.jsonl"
gives 1 "a refusal that was not" --ledger "$place/c.ledger" play "$place/refused.jsonl" --case "$good"
says "$place/refused.jsonl:2:"
head -n 1 "$demo" | sed 's/}/, "expect": "refused"}/' >"$place/taken.jsonl"
gives 1 "no refusal where one was expected" --ledger "$place/d.ledger" play "$place/taken.jsonl" --case "$good"
says "$place/taken.jsonl:1:"
# ---- scans and past cases ----
# What a scan says is read from its bytes; =G1234…70 is the example of ST-001, with a wrong check it is unread.
{
    echo '{"at": "2026-11-25T08:00:10.000Z", "who": "circulating", "do": "scan", "bytes": "=G12341765432171"}'
    echo '{"at": "2026-11-25T08:00:11.000Z", "who": "circulating", "do": "scan", "bytes": "=G12341765432170"}'
    echo '{"at": "2026-11-25T08:00:12.000Z", "who": "circulating", "do": "scan", "bytes": "=>026300"}'
    head -n 1 "$demo" | sed 's/}/, "expect": "refused"}/'
    echo '{"at": "2026-11-25T08:00:30.000Z", "who": "surgeon", "do": "overrule", "event": 7, "why": "asked", "expect": "refused"}'
    echo '{"at": "2026-11-25T08:00:31.000Z", "who": "surgeon", "do": "overrule", "event": 7, "why": "asked", "contact": "invented bank"}'
    echo '{"at": "2026-11-25T08:00:32.000Z", "who": "scrub", "do": "finish-step", "step": "tissue-here"}'
    echo '{"at": "2026-11-25T08:00:33.000Z", "who": "surgeon", "do": "close-case", "how": "abandoned", "why": "for the test"}'
} >"$place/scans.jsonl"
gives 0 "scans, and expired tissue overruled with the bank's contact" --ledger "$place/s.ledger" play "$place/scans.jsonl" --case "$good"
gives 0 "the scans of a case" --ledger "$place/s.ledger" state "$reference" --json
prints '"kind": "unread"'
prints '"donation": "G123417654321"'
prints '"what": "expired"'
sed -n 1,3p "$place/scans.jsonl" >"$place/standing.jsonl"
gives 0 "expired tissue read in" --ledger "$place/standing.ledger" play "$place/standing.jsonl" --case "$good"
gives 0 "a scan that stands" --ledger "$place/standing.ledger" state "$reference"
prints "Scan 7 stands: Expired on 2026-10-27."
gives 0 "past cases" --ledger "$place/s.ledger" past
prints "Cases that are over: 0"
gives 0 "rehearsals that are over" --ledger "$place/s.ledger" past --invented --json
prints '"cases":1'
prints '"abandoned":{"events":1,"of":1'
[ -f "$place/s.ledger.past" ] || wrong "no side file"
gives 0 "the same from the side file" --ledger "$place/s.ledger" past --invented --json
gives 0 "a filter that leaves all out" --ledger "$place/s.ledger" past --invented --from 2027-01-01 --json
prints '"filtered":1'
gives 0 "a trephine that cut none of them" --ledger "$place/s.ledger" past --invented --trephine another-one --json
prints '"filtered":1'
gives 0 "the trephine that cut" --ledger "$place/s.ledger" past --invented --trephine suction-trephine --json
prints '"filtered":0'
gives 2 "a day that is none" --ledger "$place/s.ledger" past --from 2027-02-30
gives 3 "past cases of no ledger" --ledger "$place/none.ledger" past

{ sed -n 2p "$demo"; sed -n 1p "$demo"; } >"$place/back.jsonl"
gives 2 "a time that goes back" --ledger "$place/e.ledger" play "$place/back.jsonl" --case "$good"
says "$place/back.jsonl:2:1: at:"
echo 'count three' >"$place/none.jsonl"
gives 2 "a script that is no JSON" --ledger "$place/e.ledger" play "$place/none.jsonl" --case "$good"
says "$place/none.jsonl:1"

# ---- the ledger ----
: >"$place/file"
gives 3 "a place under a file" --ledger "$place/file/a.ledger" play "$demo" --case "$good"
says "$place/file"
head -c 8192 /dev/urandom >"$place/damaged.ledger"
gives 3 "a damaged ledger" --ledger "$place/damaged.ledger" state "$reference"
says "damaged"
sql() { python3 -c 'import sqlite3, sys
with sqlite3.connect(sys.argv[1]) as db: db.executescript(sys.argv[2])' "$@"; }
if python3 -c 'import sqlite3' 2>/dev/null; then
    cp "$ledger" "$place/newer.ledger"
    sql "$place/newer.ledger" 'PRAGMA user_version = 99'
    gives 3 "a newer ledger" --ledger "$place/newer.ledger" state "$reference"
    says "newer"
    cp "$ledger" "$place/spoilt.ledger"
    sql "$place/spoilt.ledger" 'DROP TRIGGER events_stay; UPDATE events SET utc_ms = utc_ms + 1 WHERE seq = 20'
    gives 1 "an event that was changed" --ledger "$place/spoilt.ledger" verify
    prints "first bad event 20"
    python3 -c 'import sqlite3, sys, time
db = sqlite3.connect(sys.argv[1]); db.execute("BEGIN EXCLUSIVE"); print("held", flush=True); time.sleep(60)' "$ledger" >"$place/held" &
    holder_pid=$!
    tries=50
    while [ ! -s "$place/held" ] && [ "$tries" -gt 0 ]; do sleep 0.1; tries=$((tries - 1)); done
    gives 3 "a ledger in use" --ledger "$ledger" play "$demo" --case "$good"
    says "in use"
    kill "$holder_pid"
    holder_pid=
else
    skip "newer, changed and held ledgers: no python3 with sqlite3"
fi

# ---- a full disk ----
mkdir "$place/small"
if [ "$(id -u)" -eq 0 ] && mount -t tmpfs -o size=64k tmpfs "$place/small" 2>/dev/null; then
    mounted=yes
    gives 3 "a full disk" --ledger "$place/small/a.ledger" play "$demo" --case "$good"
    grep -qE '^[1-9][0-9]* events are not on disk' "$place/err" || wrong "how many events are not on disk"
else
    skip "a full disk: no small file system may be mounted here"
fi

# ---- no display, no OpenGL, a second window ----
gives 3 "no display" --ledger "$place/w.ledger" open "$good"
one_line
if command -v Xvfb >/dev/null; then
    : >"$place/display"
    Xvfb -noreset -displayfd 3 -screen 0 800x600x24 -nolisten tcp 3>"$place/display" 2>/dev/null &
    display_pid=$!
    tries=200
    while [ ! -s "$place/display" ] && [ "$tries" -gt 0 ]; do sleep 0.1; tries=$((tries - 1)); done
    DISPLAY=:$(cat "$place/display")
    export DISPLAY LIBGL_ALWAYS_SOFTWARE=1
    MESA_GL_VERSION_OVERRIDE=2.1
    export MESA_GL_VERSION_OVERRIDE
    gives 3 "no OpenGL 3.3" --ledger "$place/w.ledger" open "$good"
    says "OpenGL"
    unset MESA_GL_VERSION_OVERRIDE
    "$program" --ledger "$place/w.ledger" open "$good" >/dev/null 2>&1 &
    window_pid=$!
    sleep 5 # the first window holds the ledger well before that
    gives 3 "a second window on one ledger" --ledger "$place/w.ledger" open "$good"
    says "in use"
else
    skip "windows: no Xvfb"
fi

[ "$failures" -eq 0 ] || { echo "$failures failures" >&2; exit 1; }
echo "the command line keeps its contract"
