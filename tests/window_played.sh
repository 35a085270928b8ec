#!/usr/bin/env bash
# Plays a short case in the real window, with keys that this process sends through the display's own protocol, and saves
# a picture of every page: `xvfb-run -a -s "-screen 0 1280x720x24" tests/window_played.sh PROGRAM FOLDER`.
# What the window wrote down must be what the same lines lead to without a window. Needs xdotool and imagemagick.
set -euo pipefail

program=$1 pictures=$2
work=$(mktemp -d)
mkdir -p "$pictures" "$work/home"
rm -f "$pictures"/*.png
trap 'kill "${pid:-}" 2> /dev/null || true; rm -rf "$work"' EXIT
# Sessions, worlds and settings of this run alone, and sentences in English.
export HOME=$work/home XDG_DATA_HOME=$work/home/data XDG_CACHE_HOME=$work/home/cache XDG_CONFIG_HOME=$work/home/config LC_ALL=C.UTF-8
fail() {
    echo "window_played: $1" >&2
    cat "$work/said" >&2
    import -window root "$pictures/failed.png" 2> /dev/null || true
    exit 1
}
# Every wait has an end that is far beyond what a slow machine needs: it is a limit, not a measurement.
await() {
    local what=$1
    shift
    for _ in $(seq 1200); do
        kill -0 "$pid" 2> /dev/null || fail "it ended while waiting for $what"
        "$@" && return 0
        sleep 0.25
    done
    fail "waited in vain for $what"
}

lines=(
    "dipstick" "key on" "read codes" "key off" "remove engine-cover" "remove duct-clamp" "remove air-duct"
    "unplug exhaust-connector" "measure ohms exhaust-valve-feed exhaust-valve-control"
    "suspect broken-wire exhaust-control-wire 60%" "plug exhaust-connector" "refit air-duct" "refit duct-clamp"
    "refit engine-cover" "hand over referred"
)

# A shell gives its background programs no Ctrl+C; this hands it back.
python3 -c 'import os, signal, sys; signal.signal(signal.SIGINT, signal.default_int_handler); os.execv(sys.argv[1], sys.argv[1:])' \
    "$program" workshop --frame-times > "$work/said" 2>&1 &
pid=$!
window=
there() { window=$(xdotool search --onlyvisible --name '^Faultwright$' 2> /dev/null | head -n 1) && [ -n "$window" ]; }
await "the window" there
xdotool windowfocus --sync "$window"

# A page is drawn when two looks at it, some seconds apart, are the same, show more than a handful of shades, and differ in
# so many pixels from the page before: few are a word that came, a third of the window is another page.
before=
other_page=300000
drawn() {
    import -window root "$work/one.png"
    sleep "${1:-0.5}"
    import -window root "$work/two.png"
    [ "$(identify -format %k "$work/two.png")" -gt 500 ] && same "$work/one.png" "$work/two.png" && differs "${2:-1}"
}
differs() {
    local pixels
    [ -z "$before" ] && return 0
    # It also says by its code that they differ, and ten million in another notation.
    pixels=$(compare -metric AE "$before" "$work/two.png" null: 2>&1 || true)
    printf '%.0f' "$pixels" | awk -v least="$1" '{ exit !($1 >= least) }'
}
same() { [ -s "$1" ] && [ -s "$2" ] && cmp -s <(convert "$1" rgb:-) <(convert "$2" rgb:-); }
picture() {
    await "a whole picture of $1" drawn "${2:-0.5}" "${3:-1}"
    cp "$work/two.png" "$pictures/$1.png"
    before=$pictures/$1.png
}
press() { xdotool key --delay 120 "$@"; }
type_line() { xdotool type --delay 40 "$1" && press Return; }

picture 1-front
# The field for the seed has the focus from the start.
type_line 2
session() { file=$(find "$XDG_DATA_HOME" -name '*.session' | head -n 1) && [ -n "$file" ]; }
await "a session file" session
picture 2-case 0.5 "$other_page"
taken() { [ "$(grep -c '^{"entry":' "$file" || true)" -ge "$1" ]; }
count=0
for line in "${lines[@]}"; do
    type_line "$line"
    count=$((count + 1))
    await "step $count, $line" taken "$count"
    case $line in suspect*) picture 3-at-work ;; esac
done
# What has to be worked out takes a while, and says how far it is.
picture 4-debrief 5 "$other_page"

kill -INT "$pid"
ended() { ! kill -0 "$pid" 2> /dev/null; }
for _ in $(seq 240); do
    ended && break
    sleep 0.25
done
ended || fail "Ctrl+C did not end it"
code=0
wait "$pid" || code=$?
[ "$code" = 0 ] || fail "ended with $code"
grep -Eiq 'panicked|validation error|device lost' "$work/said" && fail "something went wrong"

# The same lines without a window lead to the same events.
printf '%s\n' "${lines[@]}" > "$work/steps"
"$program" bench --seed 2 --steps "$work/steps" --session "$work/bench.session" > /dev/null
entries() { grep '^{"entry":' "$1"; }
cmp -s <(entries "$file") <(entries "$work/bench.session") || fail "the window wrote down something else than the bench"
for one in "$pictures"/*.png; do
    for other in "$pictures"/*.png; do
        [ "$one" = "$other" ] || ! same "$one" "$other" || fail "$one and $other show the same"
    done
done
cat "$work/said"
echo "window_played: ${#lines[@]} steps by key, the same events as without a window, pictures in $pictures"
