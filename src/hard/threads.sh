# Part of run.sh: the results of every study for 1 to 8 threads, each a process of its own, and of the checks of all shipped layouts for 1, 2, 5 and 8,
# one process for all, and both with the vector kernel, byte for byte but for the times that they took. --minutes bounds the checks, of each kernel.

# Runs a command that writes a file, and prints what it wrote without times.
written() {
    local options=$1
    shift
    java $options -jar $jar "$@" --overwrite >/dev/null 2>&1
    grep -vE '"(proofs|margins|whole|all)_s"' "$work/r" | sha256sum
    rm -f "$work/r"
}

# Holds a sum against the first one.
compare_sum() {
    compared=$((compared + 1))
    if [ -z "$first" ]; then first=$sum; elif [ "$sum" != "$first" ]; then
        echo "${*:2}: other bits with $1"
        bad=$((bad + 1))
    fi
}

# A command of which --threads changes nothing; its words but that.
same_bits() {
    local first="" sum threads
    for threads in 1 2 3 4 5 6 7 8; do
        sum=$(written "" "$@" --threads "$threads")
        compare_sum "$threads threads" "$@"
    done
    for threads in 1 8; do
        sum=$(written --add-modules=jdk.incubator.vector "$@" --threads "$threads")
        compare_sum "$threads threads and vectors" "$@"
    done
    [ "$first" != "$(printf '' | sha256sum)" ] || { echo "$*: nothing was written"; bad=$((bad + 1)); }
}

part_threads() {
    jar
    local compared=0 bad=0
    sed 's/slit: {value: 4 mm/slit: {value: 3 mm/' $here/slit.yaml >"$work/narrow.yaml"
    same_bits sweep $here/slit.yaml --vary 'slit = 1 to 4 step 0.25' --samples 2e4 --json "$work/r"
    same_bits tolerance $here/slit.yaml --builds 12 --samples 2e4 --yield 0.5 --json "$work/r"
    same_bits compare $here/slit.yaml "$work/narrow.yaml" --samples 2e5 --json "$work/r"
    same_bits advise $here/slit.yaml --samples 2e5 --json "$work/r"
    written "" place-vanes --wall-diameter 80 --edge-diameter 60 --length 300 --detector-diameter 20 --entrance-diameter 60 --off-axis 20 \
        --json "$work/r" >"$work/vanes"
    for kernel in "" "--add-modules=jdk.incubator.vector" "-XX:ActiveProcessorCount=1" "-XX:ActiveProcessorCount=7"; do
        compared=$((compared + 1))
        written "$kernel" place-vanes --wall-diameter 80 --edge-diameter 60 --length 300 --detector-diameter 20 --entrance-diameter 60 \
            --off-axis 20 --json "$work/r" | cmp -s - "$work/vanes" || { echo "place-vanes: other bits $kernel"; bad=$((bad + 1)); }
    done
    line "threads of studies" "$compared results" $bad
    local layouts=(geometries/*.yaml)
    harness darkrim.hard.CheckSums 50000 "$minutes" 1,2,5,8 "${layouts[@]}" >"$work/sums"
    options=--add-modules=jdk.incubator.vector harness darkrim.hard.CheckSums 50000 "$minutes" 1,8 "${layouts[@]}" >"$work/sums-vectors"
    awk '$1 in sum && sum[$1] != $3 { print $1 ": other bits with " $2 " threads" (FILENAME ~ /vectors/ ? " and vectors" : "") } !($1 in sum) { sum[$1] = $3 }' \
        "$work/sums" "$work/sums-vectors" | tee "$work/other"
    bad=$(wc -l <"$work/other")
    # A layout that the kernel of vectors did not come to is not tried in full.
    local reached
    reached=$(cut -d' ' -f1 "$work/sums-vectors" | sort -u | wc -l)
    [ "$reached" -gt 0 ] || bad=$((bad + 1))
    line "threads of checks" "$(cat "$work/sums" "$work/sums-vectors" | wc -l) results of $reached of ${#layouts[@]} layouts" "$bad"
}
