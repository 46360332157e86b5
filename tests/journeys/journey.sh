# shellcheck shell=sh
# Sourced by the journeys (tests/journeys/*_journey.sh): starts the real program on a virtual display and works it as a finger does.
# POSIX sh. A journey is run as: sh X_journey.sh PROGRAM OUT-FOLDER. It exits 0 when it came to its end, and leaves in the folder
# numbered pictures, the ledger with its text mirror, and what `state --json` says of the case.
#
# Places are in millimetres from the top left of the glass, as screen::Frame gives them. The virtual glass is 1920 by 1080 pixels
# on 480 by 270 mm: four pixels a millimetre, so a journey reads the same as a frame in a test.

program=${1:?usage: sh JOURNEY PROGRAM OUT-FOLDER}
out=${2:?usage: sh JOURNEY PROGRAM OUT-FOLDER}
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
# shellcheck disable=SC2034  # for the journeys
root=$(CDPATH='' cd -- "$here/../.." && pwd)
mkdir -p "$out"
out=$(CDPATH='' cd -- "$out" && pwd)
px_per_mm=4
frames=$out/frames
opened=no
side=right
glass_mm=480x270
display_size=1920x1080x24
display_pid=
program_pid=
window=
pictures=0

say()  { echo "journey: $*"; }
fail() { say "FAILED: $*" >&2; picture_if_up failed; exit 1; }

# Ends only what this journey started.
end_all() {
    [ -z "$program_pid" ] || kill -KILL "$program_pid" 2>/dev/null || true
    [ -z "$display_pid" ] || kill "$display_pid" 2>/dev/null || true
    wait 2>/dev/null || true
}
trap end_all EXIT
trap 'exit 1' INT TERM

# within SECONDS COMMAND…: repeats the command ten times a second until it succeeds.
within() {
    tries=$(($1 * 10))
    shift
    while [ "$tries" -gt 0 ]; do
        if "$@" >/dev/null 2>&1; then return 0; fi
        tries=$((tries - 1))
        sleep 0.1
    done
    return 1
}

# Xvfb takes the first free display number by itself and writes it down.
start_display() {
    unset WAYLAND_DISPLAY XAUTHORITY
    : >"$out/display"
    Xvfb -displayfd 3 -screen 0 "$display_size" -noreset -nolisten tcp 3>"$out/display" 2>"$out/display.log" &
    display_pid=$!
    within 20 test -s "$out/display" || { cat "$out/display.log" >&2; fail "no virtual display"; }
    DISPLAY=:$(cat "$out/display")
    export DISPLAY LIBGL_ALWAYS_SOFTWARE=1
    rm -f "$out/display"
}

# start_program ARGUMENT…: starts the program on that glass and waits for its first window.
start_program() {
    mkdir -p "$frames"
    rm -f "$frames/targets.txt"
    "$program" --ledger "$out/demo.ledger" --screen-mm "$glass_mm" --pictures "$frames" "$@" >"$out/program.log" 2>&1 &
    program_pid=$!
    window=
    within 60 find_window || { cat "$out/program.log" >&2; fail "no window within a minute"; }
    sleep 1
}
find_window() {
    kill -0 "$program_pid" || return 0 # it is gone: stop waiting, the next step tells
    window=$(xdotool search --onlyvisible --name graftside | head -n 1)
    [ -n "$window" ]
}
alive() { kill -0 "$program_pid" 2>/dev/null || { cat "$out/program.log" >&2; fail "the program ended by itself"; }; }

to_px() { awk -v mm="$1" -v scale="$px_per_mm" 'BEGIN { printf "%d", mm * scale + 0.5 }'; }

# tap X Y: one press and release at that place. hold X Y SECONDS: a press that stays.
tap() { hold "$1" "$2" 0.05; sleep 0.25; }
hold() {
    alive
    xdotool mousemove "$(to_px "$1")" "$(to_px "$2")" mousedown 1
    sleep "$3"
    xdotool mouseup 1
}
key()  { alive; xdotool key "$@"; }
type_text() { alive; xdotool type --delay 20 "$1"; }

# picture NAME: what is on the glass now, as NN-NAME.png. It must show something within 20 seconds: a blank glass fails the journey.
picture() {
    alive
    pictures=$((pictures + 1))
    file=$out/$(printf '%02d' "$pictures")-$1.png
    within 20 drawn "$file" || fail "picture $1 shows a blank glass"
    say "picture $(basename "$file")"
}
drawn() {
    import -window root "$1"
    [ "$(identify -format '%k' "$1")" -gt 8 ]
}
picture_if_up() { [ -z "$display_pid" ] || import -window root "$out/$1.png" 2>/dev/null || true; }

# end_program: asks the program to end, as a window manager does when the window is closed, and waits for it.
end_program() {
    kill -TERM "$program_pid" 2>/dev/null || true
    within 10 gone || fail "the program did not end when asked"
    program_pid=
}
gone() { ! kill -0 "$program_pid"; }

# crash_program: takes the power away, as far as the program can tell.
crash_program() {
    kill -KILL "$program_pid"
    wait "$program_pid" 2>/dev/null || true
    program_pid=
}

# keep_state REFERENCE: folds the ledger of a program that has ended, into state.json.
keep_state() { "$program" --ledger "$out/demo.ledger" state "$1" --json >"$out/state.json" || fail "state says no: exit $?"; }

# state_has TEXT: the kept state says so (text as it stands in the JSON, spaces left out).
state_has() {
    tr -d ' \n' <"$out/state.json" | grep -qF -- "$1" || { cat "$out/state.json" >&2; fail "state.json does not say $1"; }
}

# ---- by the program's own word of what stands on the glass: `targets.txt` lists the newest frame's targets, the biggest first ----
shown() { test -s "$frames/targets.txt"; }
newest_frame() { sed 's/ .*//;q' "$frames/targets.txt"; }
presses_met()  { sed 's/.* //;q' "$frames/targets.txt"; }
first_target() { sed -n '2s/ .*//p' "$frames/targets.txt"; }
has_target()   { grep -q "^$1 " "$frames/targets.txt"; }

# use TARGET: taps it, or holds it where it asks for a hold, and waits for a frame that came after that: a clock draws frames too.
use() {
    within 20 has_target "$1" || { cat "$frames/targets.txt" >&2; fail "no target $1 on the glass"; }
    place=$(grep "^$1 " "$frames/targets.txt")
    before=$(presses_met)
    # shellcheck disable=SC2086  # the line is: id x y press
    set -- $place
    case $4 in
        hold) hold "$2" "$3" 1.2 ;;
        tap) hold "$2" "$3" 0.05 ;;
        *) fail "target $1 is dead" ;;
    esac
    within 10 answered "$before" || fail "no answer to $1"
}
answered() { [ "$(presses_met)" != "$1" ]; }

# keep_frame NAME: the newest frame as NN-NAME.png.
keep_frame() {
    pictures=$((pictures + 1))
    cp "$frames/$(newest_frame).png" "$out/$(printf '%02d' "$pictures")-$1.png"
}

# A second touch at the same place within two seconds is taken for the same finger: a person waits for the next words too.
pause() { sleep 2.1; }

# spokes COUNT: as many spokes as the surgeon says, two a second.
spokes() {
    left=$1
    while [ "$left" -gt 0 ]; do
        use spoke
        sleep 0.3
        left=$((left - 1))
    done
}

# Two people count aloud: what is opened at the first gate, then what is on the table.
counts() {
    if [ "$opened" = no ]; then
        sed -n 's/^\(more-[^ ]*\) .*/\1/p' "$frames/targets.txt" >"$out/items.txt"
        while read -r more; do
            use "$more"; sleep 0.4
            use "$more"; sleep 0.4
        done <"$out/items.txt"
        rm "$out/items.txt"
        opened=yes
    fi
    keep_frame counts
    use check-scrub
    pause
    use check-circulating
}

# go_to STEP: goes through the guide as the team does, one picture a step, until the step of that name or the end.
# Steps are named by their biggest target: finish-zero, spoke, tied-5, lock.
go_to() {
    while within 20 shown; do
        now=$(first_target)
        [ "$now" != "$1" ] || return 0
        case $now in
            check-scrub) counts ;;
            side-right) keep_frame side; use "side-$side" ;;
            spoke)
                keep_frame cut-raised
                spokes 3; keep_frame cut-zero
                spokes 5; keep_frame cut-three-to-go
                spokes 3; keep_frame cut-reached
                use cut-done ;;
            to-list) keep_frame locked; return 0 ;;
            *) keep_frame "$now"; use "$now" ;;
        esac
        pause
    done
    fail "nothing on the glass"
}
