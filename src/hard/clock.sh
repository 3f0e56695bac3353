# Part of run.sh: checks and a sweep while the date jumps by hours to and fro, as a clock does that is set right: the same bits, and times that are sane.
# Takes libfaketime (Debian: apt-get install faketime), of which the clock that does not jump is left as it is.

# Another date every tenth of a second, moved there whole.
jump() {
    while true; do
        for offset in +5h -7h +400d -1d; do
            echo "$offset" >"$work/next" && mv "$work/next" "$work/offset"
            sleep 0.1
        done
    done
}

part_clock() {
    jar
    local bad=0 library jumper still sum sweep=(sweep $here/slit.yaml --vary 'slit = 1 to 4 step 0.25' --samples 2e4 --json "$work/r")
    library=$(ls /usr/lib/*/faketime/libfaketimeMT.so.1 2>/dev/null | head -1)
    [ -n "$library" ] || { line clock "no libfaketime, so not tried" 0; return; }
    echo +0 >"$work/offset"
    export FAKETIME_TIMESTAMP_FILE=$work/offset FAKETIME_NO_CACHE=1 FAKETIME_DONT_FAKE_MONOTONIC=1 DONT_FAKE_MONOTONIC=1
    before="env LD_PRELOAD=$library" harness darkrim.hard.ClockJumps "$work/offset" geometries/nightglow-a.yaml geometries/part-vanes.yaml \
        geometries/part-window.yaml 2>&1 | tee "$work/clock" || bad=1
    still=$(written "" "${sweep[@]}")
    jump &
    jumper=$!
    sum=$(LD_PRELOAD=$library written "" "${sweep[@]}")
    kill $jumper
    wait $jumper 2>/dev/null
    [ "$sum" = "$still" ] && [ "$sum" != "$(printf '' | sha256sum)" ] || { echo "sweep: other bits while the date jumps"; bad=$((bad + 1)); }
    line clock "a sweep, and $(tail -1 "$work/clock")" $bad
}
