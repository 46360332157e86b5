#!/bin/sh
# The program killed at random moments: what it had acknowledged is on the ledger each time, and the ledger is whole.
# Run as: sh kill_campaign.sh PROGRAM OUT-FOLDER ACKNOWLEDGE LINE-KILLS WINDOW-KILLS
# ACKNOWLEDGE (tests/app/acknowledge.cpp) prints the last saved event after each line of the script. With a window, a spoke
# counts as acknowledged when a frame was written after its tap was answered. Both start from a new ledger each time.
set -eu
acknowledge=${3:?usage: sh kill_campaign.sh PROGRAM OUT-FOLDER ACKNOWLEDGE LINE-KILLS WINDOW-KILLS}
line_kills=${4:?how many kills without a window}
window_kills=${5:?how many kills with a window}
# shellcheck source-path=SCRIPTDIR source=journey.sh
. "$(dirname -- "$0")/journey.sh"
case_file=$root/demo-data/demo.case.toml
reference=$(sed -n 's/^reference *= *"\([^"]*\)".*/\1/p' "$case_file")

# random_below N: a whole number from 0 up.
random_below() { od -An -N4 -tu4 /dev/urandom | awk -v n="$1" '{ print $1 % n }'; }
milliseconds() { awk -v ms="$1" 'BEGIN { printf "%.3f", ms / 1000 }'; }
remove_ledger() { rm -f "$out/acknowledged.txt" "$out/demo.ledger" "$out/demo.ledger.txt" "$out/demo.ledger.key" "$out/demo.ledger-journal"; }
whole() { "$program" --ledger "$out/demo.ledger" verify "$reference" >"$out/verdict.txt" 2>&1; }
events_whole() { sed -n 's/^.*, \([0-9]*\) events whole.*/\1/p' "$out/verdict.txt"; }
# number NAME: the first figure of that name in state.json.
number() { tr -d ' \n' <"$out/state.json" | sed -n "s/.*\"$1\":\([0-9]*\).*/\1/p"; }

# kill_a_line_run MS: killed within that time of its start. False when it came to its end before.
kill_a_line_run() {
    remove_ledger
    "$acknowledge" "$root/assets" "$out/demo.ledger" "$case_file" "$here/demo.jsonl" >"$out/acknowledged.txt" 2>"$out/program.log" &
    program_pid=$!
    sleep "$(milliseconds "$(random_below "$1")")"
    kill -KILL "$program_pid" 2>/dev/null || true
    ended=0
    wait "$program_pid" 2>/dev/null || ended=$?
    program_pid=
    [ "$ended" -eq 137 ] || return 1
    saved=$(tail -n 1 "$out/acknowledged.txt")
    saved=${saved:-0}
    if [ "$saved" -gt 0 ]; then
        # Killed between the last event and the seal: whole, and locked when it is taken up.
        whole || grep -q "CLOSED, NOT LOCKED" "$out/verdict.txt" || { cat "$out/verdict.txt" >&2; fail "the ledger is not whole"; }
        [ "$(events_whole)" -ge "$saved" ] || fail "event $saved was called saved, the ledger ends at $(events_whole)"
    fi
    : >"$out/nothing.jsonl"
    "$program" --quiet --ledger "$out/demo.ledger" play "$out/nothing.jsonl" --case "$case_file" || fail "not taken up again"
    whole || { cat "$out/verdict.txt" >&2; fail "the ledger is not whole after it was taken up"; }
}

# How long the script takes when nobody ends it, so that kills fall anywhere in it.
line_run_ms() {
    remove_ledger
    began=$(date +%s%N)
    "$acknowledge" "$root/assets" "$out/demo.ledger" "$case_file" "$here/demo.jsonl" >"$out/acknowledged.txt" || fail "the script is refused"
    echo $((($(date +%s%N) - began) / 1000000))
}

# One tap on the spoke's place; counted as acknowledged when a newer frame is written once the press is long past.
tap_spoke() {
    place=$(grep '^spoke ' "$frames/targets.txt") || return 1
    # shellcheck disable=SC2086  # the line is: id x y press
    set -- $place
    xdotool mousemove "$(to_px "$2")" "$(to_px "$3")" mousedown 1
    taps=$((taps + 1))
    sleep 0.05
    xdotool mouseup 1
    sleep 0.25
    before=$(newest_frame)
    within 3 frame_after || return 1
    acknowledged=$((acknowledged + 1))
}
frame_after() { gone || [ "$(newest_frame)" != "$before" ]; }

kill_a_window() {
    remove_ledger
    cp "$out/start.ledger" "$out/demo.ledger"
    taps=0
    acknowledged=0
    start_program open "$case_file"
    within 20 has_target spoke || fail "not at the spokes"
    (sleep "$(milliseconds $((200 + $(random_below 3800))))" && kill -KILL "$program_pid") &
    while ! gone 2>/dev/null; do
        tap_spoke || break
        ! gone 2>/dev/null || acknowledged=$((acknowledged - 1)) # the last one may have had no answer
    done
    wait "$program_pid" 2>/dev/null || true
    program_pid=
    whole || { cat "$out/verdict.txt" >&2; fail "the ledger is not whole"; }
    keep_state "$reference"
    turned=$(number spokes_turned)
    [ "$turned" -ge "$acknowledged" ] || fail "$acknowledged spokes were acknowledged, the ledger has $turned"
    [ "$turned" -le "$taps" ] || fail "$taps taps became $turned spokes"
}

if [ "$line_kills" -gt 0 ]; then
    takes=$(line_run_ms)
    : >"$out/line-kills.txt"
    while [ "$(wc -l <"$out/line-kills.txt")" -lt "$line_kills" ]; do
        if kill_a_line_run "$takes"; then echo "$saved $(events_whole)" >>"$out/line-kills.txt"; fi
    done
    say "$line_kills kills at a line, nothing lost; last saved event from $(sort -n "$out/line-kills.txt" | head -n 1 | cut -d ' ' -f 1)" \
        "to $(sort -n "$out/line-kills.txt" | tail -n 1 | cut -d ' ' -f 1)"
fi
if [ "$window_kills" -gt 0 ]; then
    awk '{ print } /"turn-suction", "to": "on"/ { exit }' "$here/demo.jsonl" >"$out/start.jsonl"
    rm -f "$out"/start.ledger*
    "$program" --quiet --ledger "$out/start.ledger" play "$out/start.jsonl" --case "$case_file" || fail "the script was refused"
    : >"$out/window-kills.txt"
    start_display
    while [ "$(wc -l <"$out/window-kills.txt")" -lt "$window_kills" ]; do
        kill_a_window
        echo "$acknowledged $turned $taps" >>"$out/window-kills.txt"
    done
    say "$window_kills kills with a window, nothing lost; spokes acknowledged, on the ledger, tapped:" \
        "$(awk '{ a += $1; t += $2; s += $3 } END { print a, t, s }' "$out/window-kills.txt")"
fi
say "came to its end"
