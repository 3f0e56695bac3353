# Part of run.sh: the window, whose layout changes again and again, and a long sweep, watched for what grows: heap after a collection, threads and open
# files at the beginning, in the middle and at the end. What the end has more than the middle is growth.

# Kilobytes of heap after a collection, threads, open files.
held() {
    jcmd "$1" GC.run >/dev/null 2>&1
    echo "$(jcmd "$1" GC.heap_info | grep -oE 'used [0-9]+K' | grep -oE '[0-9]+' | head -2 | awk '{ sum += $1 } END { print sum }')" \
        "$(ls "/proc/$1/task" | wc -l) $(ls "/proc/$1/fd" | wc -l)"
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
    echo "$name, kB of heap, threads, files: $begin; $middle; $end"
    # A tenth and 8 MB more heap than in the middle, or two threads or files, are growth; nothing at all is a process that has ended.
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
