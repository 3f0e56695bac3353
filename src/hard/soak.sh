# Part of run.sh: the window, whose layout changes again and again, and a long sweep beside it, watched for what grows: reachable objects, threads and open
# files after a sixth of the time, at half of it and at the end. What the end has more than the middle is growth.

# Kilobytes of objects that are reachable, threads, open files. What was allocated since a collection is not counted: on a busy machine that is much. Of
# six moments the least counts, for a check or a point that is under way holds its own. The classes of the last moment stay in the file of the second word.
held() {
    local least
    least=$(for _ in 1 2 3 4 5 6; do
        jcmd "$1" GC.class_histogram 2>/dev/null >"$2"
        awk '/^Total/ { printf "%d\n", $3 / 1024 }' "$2"
        sleep 2
    done | sort -n | head -1)
    echo "${least:-0} $(ls "/proc/$1/task" 2>/dev/null | wc -l) $(ls "/proc/$1/fd" 2>/dev/null | wc -l)"
}

# Another height of the lid: the window reads the layout again and checks it.
another_height() {
    height=$(awk -v h="${height:-1.5}" 'BEGIN { print (h > 1.69 ? 1.5 : h + 0.01) }')
    sed "s/^  lid_height:.*/  lid_height: {value: $height mm, tolerance: 0.05}/" geometries/nightglow-b.yaml >"$work/soak.next" &&
        mv "$work/soak.next" "$work/soak.yaml"
    changes=$((changes + 1))
    sleep 5
}

# Says what one of the processes held at the three moments and counts growth: a tenth and 8 MB more than in the middle, and so many kB of results that were
# asked for in between, or two threads or files more; nothing at all is a process that has ended.
judged() {
    local name=$1 results=$2 moment
    echo "$name, kB of objects, threads, files: $(paste -sd ';' "$work/$name.held" | sed 's/;/; /g')"
    awk -v r="$results" 'NR == 2 { split($0, m) } NR == 3 { split($0, e) }
        END { exit !(e[1] > 0 && e[1] < 1.1 * m[1] + 8192 + r && e[2] <= m[2] + 2 && e[3] <= m[3] + 2) }' \
        "$work/$name.held" && return
    echo "$name grew, or ended; its largest classes then (number, bytes, name), in the middle and at the end:"
    for moment in 2 3; do
        awk '/^ +[0-9]+:/ && ++n <= 10 { print "  " $2, $3, $4 }' "$work/$name.classes.$moment"
        echo
    done
    bad=$((bad + 1))
}

# Points that the sweep has finished.
points() {
    cat "$work/soak.csv.part" 2>/dev/null | wc -l
}

part_soak() {
    jar
    local bad=0 number display view sweep height=1.5 changes=0 start moment share name
    # Far more points than any soak reaches.
    java -Xmx512m -XX:+UseSerialGC -jar $jar sweep geometries/nightglow-b.yaml --vary 'opening = 37 to 37.8 step 0.00001' --many-points \
        --samples 2e4 --margins none --threads 1 --csv "$work/soak.csv" >"$work/sweep.out" 2>&1 &
    sweep=$!
    if command -v Xvfb >/dev/null; then
        Xvfb -displayfd 3 -screen 0 1280x1024x24 -nolisten tcp 3>"$work/display" 2>/dev/null &
        display=$!
        sleep 5
        number=$(cat "$work/display")
        another_height
        DISPLAY=:$number java -Xmx512m -XX:+UseSerialGC -Dprism.order=es2 -Dprism.forceGPU=true -jar $jar view "$work/soak.yaml" --threads 1 \
            >"$work/view.out" 2>&1 &
        view=$!
    else
        echo "soak: no Xvfb, so no window"
    fi
    start=$SECONDS
    moment=0
    for share in 6 2 1; do
        moment=$((moment + 1))
        # At least one change, however short the time is.
        while :; do
            if [ -n "${view:-}" ]; then another_height; else sleep 5; fi
            [ $((SECONDS - start)) -lt $((minutes * 60 / share)) ] || break
        done
        # A window at rest holds no pixels in work: the last of them are given back 20 s after the last change.
        [ -z "${view:-}" ] || { sleep 40; held "$view" "$work/window.classes.$moment" >>"$work/window.held"; }
        held "$sweep" "$work/sweep.classes.$moment" >>"$work/sweep.held"
        points >>"$work/points"
    done
    if [ -n "${view:-}" ]; then
        kill "$view" && wait "$view"
        judged window 0
    fi
    # Until it ends a sweep keeps what its report tells: of each point eight requirements, 2 kB with their words.
    judged sweep "$(awk 'NR == 2 { m = $1 } END { print 3 * ($1 - m) }' "$work/points")"
    grep -hE '^\s+at |Exception' "$work/view.out" "$work/sweep.out" 2>/dev/null && bad=$((bad + 1))
    name="$minutes minutes, $changes changes of the layout, $(tail -1 "$work/points") points of the sweep"
    kill -9 "$sweep" ${display:-} 2>/dev/null
    wait 2>/dev/null
    line soak "$name" $bad
}
