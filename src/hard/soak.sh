# Part of run.sh: the window, whose layout changes again and again, and a long sweep, watched for what grows: reachable objects, threads and open
# files at the beginning, in the middle and at the end. What the end has more than the middle is growth.

# Kilobytes of objects that are reachable, threads, open files. What was allocated since a collection is not counted: on a busy machine that is much. Of
# three moments the least counts, for a check that is under way holds its own.
held() {
    local least
    # A window at rest holds no pixels in work.
    sleep 20
    least=$(for _ in 1 2 3; do
        jcmd "$1" GC.class_histogram 2>/dev/null | awk '/^Total/ { printf "%d\n", $3 / 1024 }'
        sleep 2
    done | sort -n | head -1)
    echo "${least:-0} $(ls "/proc/$1/task" 2>/dev/null | wc -l) $(ls "/proc/$1/fd" 2>/dev/null | wc -l)"
}

# Watches a process for some seconds after its beginning; the rest are words that are run again and again.
watched() {
    local name=$1 pid=$2 seconds=$3 begin middle end start
    shift 3
    start=$SECONDS
    until [ $((SECONDS - start)) -ge $((seconds / 6)) ]; do "$@"; done
    begin=$(held "$pid")
    until [ $((SECONDS - start)) -ge $((seconds / 2)) ]; do "$@"; done
    middle=$(held "$pid")
    until [ $((SECONDS - start)) -ge "$seconds" ]; do "$@"; done
    end=$(held "$pid")
    echo "$name, kB of objects, threads, files: $begin; $middle; $end"
    # A tenth and 8 MB more than in the middle, or two threads or files, are growth; nothing at all is a process that has ended.
    awk -v m="$middle" -v e="$end" 'BEGIN { split(m, a); split(e, b); exit !(b[1] > 0 && b[1] < 1.1 * a[1] + 8192 && b[2] <= a[2] + 2 && b[3] <= a[3] + 2) }' ||
        { echo "$name grew, or ended"; bad=$((bad + 1)); }
}

# Another height of the lid: the window reads the layout again and checks it.
another_height() {
    height=$(awk -v h="${height:-1.5}" 'BEGIN { print (h > 1.69 ? 1.5 : h + 0.01) }')
    sed "s/^  lid_height:.*/  lid_height: {value: $height mm, tolerance: 0.05}/" geometries/nightglow-b.yaml >"$work/soak.next" &&
        mv "$work/soak.next" "$work/soak.yaml"
    sleep 5
}

part_soak() {
    jar
    local bad=0 number display view sweep height=1.5
    another_height
    java -Xmx512m -XX:+UseSerialGC -jar $jar sweep geometries/nightglow-b.yaml --vary 'opening = 37 to 37.8 step 0.0001' --samples 2e4 --margins none \
        --threads 1 --csv "$work/soak.csv" >"$work/sweep.out" 2>&1 &
    sweep=$!
    if command -v Xvfb >/dev/null; then
        Xvfb -displayfd 3 -screen 0 1280x1024x24 -nolisten tcp 3>"$work/display" 2>/dev/null &
        display=$!
        sleep 5
        number=$(cat "$work/display")
        DISPLAY=:$number java -Xmx512m -XX:+UseSerialGC -Dprism.order=es2 -Dprism.forceGPU=true -jar $jar view "$work/soak.yaml" --threads 1 \
            >"$work/view.out" 2>&1 &
        view=$!
        watched "window" $view $((minutes * 30)) another_height
        kill $view && wait $view
    else
        echo "soak: no Xvfb, so no window"
    fi
    watched "sweep" $sweep $((minutes * 30)) sleep 5
    grep -hE '^\s+at |Exception' "$work/view.out" "$work/sweep.out" && bad=$((bad + 1))
    kill -9 $sweep ${display:-}
    wait 2>/dev/null
    line soak "$minutes minutes" $bad
}
