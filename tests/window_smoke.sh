#!/usr/bin/env bash
# Opens the real window on the display it is started on (`xvfb-run -a -s "-screen 0 1280x720x24" tests/window_smoke.sh PROGRAM`),
# looks at what is drawn, and ends it from the keyboard's side. Needs xdotool and imagemagick, and a Vulkan driver.
set -euo pipefail

program=$1
work=$(mktemp -d)
trap 'kill "${pid:-}" 2> /dev/null || true; rm -rf "$work"' EXIT
fail() {
    echo "window_smoke: $1" >&2
    cat "$work/said" >&2
    cp "$work/shot.png" "${WINDOW_SHOT:-/dev/null}" 2> /dev/null || true
    exit 1
}

# Without a driver it must say so and leave, not crash.
code=0
VK_ICD_FILENAMES=$work/none.json VK_DRIVER_FILES=$work/none.json "$program" workshop > "$work/said" 2>&1 || code=$?
[ "$code" = 3 ] && grep -q '^faultwright: .*no graphics driver answers' "$work/said" || fail "no driver: ended with $code"

# A shell gives its background programs no Ctrl+C; this hands it back.
python3 -c 'import os, signal, sys; signal.signal(signal.SIGINT, signal.default_int_handler); os.execv(sys.argv[1], sys.argv[1:])' \
    "$program" workshop > "$work/said" 2>&1 &
pid=$!

# Every wait has an end that is far beyond what a slow machine needs: it is a limit, not a measurement.
for _ in $(seq 240); do
    kill -0 "$pid" 2> /dev/null || fail "it ended before a window was there"
    window=$(xdotool search --onlyvisible --name '^Faultwright$' | head -n 1 || true)
    [ -n "$window" ] && break
    sleep 0.25
done
[ -n "$window" ] || fail "no window called Faultwright"

# The panel and a lit scene have many shades; a window that draws nothing has one, and a flat one a handful.
for _ in $(seq 240); do
    import -window root "$work/shot.png"
    shades=$(identify -format %k "$work/shot.png")
    [ "$shades" -gt 500 ] && break
    sleep 0.25
done
[ "$shades" -gt 500 ] || fail "only $shades shades are drawn"
cp "$work/shot.png" "${WINDOW_SHOT:-/dev/null}"

# At rest it costs next to nothing, even where the processor draws.
spent() { awk '{ print $14 + $15 }' "/proc/$pid/stat"; }
for _ in $(seq 300); do
    before=$(spent)
    sleep 1
    used=$(($(spent) - before))
    [ "$used" -le 5 ] && break
done
[ "$used" -le 5 ] || fail "it draws without end: $used hundredths of a second in a second"

kill -INT "$pid"
for _ in $(seq 120); do
    kill -0 "$pid" 2> /dev/null || break
    sleep 0.25
done
kill -0 "$pid" 2> /dev/null && fail "Ctrl+C did not end it"
code=0
wait "$pid" || code=$?
[ "$code" = 0 ] || fail "ended with $code"
grep -q 'panicked' "$work/said" && fail "something panicked"
echo "window_smoke: opened, drew $shades shades, rested, ended"
