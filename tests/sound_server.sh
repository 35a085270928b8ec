#!/usr/bin/env bash
# Starts a real sound server with a sink that leads nowhere, and runs a test against it (`tests/sound_server.sh COMMAND`), which
# plays through our player and records what arrives at the sink. Then it mutes the sink and runs the test again: now it has
# to fail, or it would not notice silence. Needs pulseaudio and pulseaudio-utils; sends nothing to any loudspeaker.
set -euo pipefail

work=$(mktemp -d)
trap 'kill "${pid:-}" 2> /dev/null || true; rm -rf "$work"' EXIT
fail() {
    echo "sound_server: $1" >&2
    cat "$work/said" "$work/server" >&2 2> /dev/null || true
    exit 1
}

export PULSE_SERVER=unix:$work/native PULSE_COOKIE=$work/cookie
mkdir -m 700 "$work/home" "$work/run"

start_server() {
    HOME=$work/home XDG_RUNTIME_DIR=$work/run pulseaudio -n --daemonize=no --use-pid-file=no --exit-idle-time=-1 \
        -L "module-native-protocol-unix socket=$work/native auth-cookie=$work/cookie" \
        -L "module-null-sink sink_name=faultwright format=float32le rate=48000 channels=1" > "$work/server" 2>&1 &
    pid=$!
    # Every wait has an end that is far beyond what a slow machine needs: it is a limit, not a measurement.
    for _ in $(seq 240); do
        kill -0 "$pid" 2> /dev/null || fail "the sound server ended"
        pactl get-sink-mute faultwright > /dev/null 2>&1 && return 0
        sleep 0.25
    done
    fail "the sound server does not answer"
}

start_server
"$@" > "$work/said" 2>&1 || fail "the test failed"
grep -q 'test result: ok. [1-9]' "$work/said" || fail "no test was run"
cat "$work/said"

# The test ends the server, so there is a new one for silence.
wait "$pid" || true
start_server
pactl set-sink-mute faultwright 1
"$@" > "$work/said" 2>&1 && fail "the test does not notice a sink that stays silent"
grep -q 'nothing arrives at the sink' "$work/said" || fail "with a silent sink the test fails for another reason"
echo "sound_server: what was played arrived, and silence is noticed"
