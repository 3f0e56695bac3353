#!/usr/bin/env bash
# Tries to break Darkrim: bash src/hard/run.sh [--minutes N] [--seed N] [--share S] [PART]...
# Parts: fuzz guided jar faults threads clock ways stop soak bytes mutants; without one: all but mutants. --minutes bounds each of fuzz, guided, jar (each of
# its two halves), the checks of threads, ways and soak; faults, the studies of threads, stop and bytes take what they take. --share says what share of the
# mutants is tried; without it 0.06 of those of shadow and light, and all of verdict. Prints a line of figures for each part; the exit code is 0 without a
# loss.
# docs/robustness.md tells what is tried and what was found.
set -uo pipefail
cd "$(dirname "$0")/../.."
here=src/hard

minutes=10
seed=1
share=
parts=()
while [ $# -gt 0 ]; do
    case "$1" in
        --minutes) minutes=$2; shift 2 ;;
        --seed) seed=$2; shift 2 ;;
        --share) share=$2; shift 2 ;;
        fuzz | guided | jar | faults | threads | clock | ways | stop | soak | bytes | mutants) parts+=("$1"); shift ;;
        *) echo "run.sh: '$1' is no part; expected fuzz, guided, jar, faults, threads, clock, ways, stop, soak, bytes or mutants" >&2; exit 2 ;;
    esac
done
[ ${#parts[@]} -gt 0 ] || parts=(fuzz guided jar faults threads clock ways stop soak bytes)

lost=0
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
jar=target/darkrim.jar

jar() {
    # With the classes of src/hard, which a build without them would take away.
    [ -f $jar ] || mvn -q -B -Phard -DskipTests package || exit 2
}

# Runs a class of src/hard with the tests' classes.
harness() {
    if [ ! -f "$work/classpath" ]; then
        mvn -q -B -Phard test-compile dependency:build-classpath -Dmdep.includeScope=test \
            -Dmdep.outputFile="$work/classpath" || exit 2
    fi
    ${before:-} java -Xmx2g ${options:-} -cp "target/test-classes:target/classes:$(cat "$work/classpath")" "$@"
}

# Prints a part's line and counts its losses.
line() {
    echo "$1: $2, lost: $3"
    lost=$((lost + $3))
}

part_fuzz() {
    local code=0
    harness darkrim.hard.LongFuzz "$minutes" "$seed" 2>&1 | tee "$work/fuzz" || code=1
    line fuzz "$(grep -oE 'inputs tried: [0-9]+' "$work/fuzz")" $code
}

# Layouts again, by changes that are kept where they reach new branches of the code; what is kept stays in target/guided for the next time.
part_guided() {
    local code=0 file
    mkdir -p "$work/seeds" target/guided
    # Two folders may have a file of one name.
    for file in geometries/*.yaml src/test/resources/{broken,placed}/*.yaml; do
        cp "$file" "$work/seeds/$(basename "$(dirname "$file")")-$(basename "$file")"
    done
    harness com.code_intelligence.jazzer.Jazzer --target_class=darkrim.hard.GuidedLayouts --disabled_hooks='.*' \
        --instrumentation_includes='darkrim.layout.**:darkrim.assembly.**:darkrim.diagnostic.**' --reproducer_path=target \
        -artifact_prefix=target/guided- -max_total_time=$((minutes * 60)) -seed="$seed" -max_len=20000 -timeout=100 -rss_limit_mb=6000 \
        target/guided "$work/seeds" >"$work/guided" 2>&1 || code=1
    [ $code -eq 0 ] || grep -A12 '^== ' "$work/guided"
    line guided "$(grep -oE '^#[0-9]+.*corp: [0-9]+' "$work/guided" | tail -1 | tr '\t' ' ')" $code
}

. $here/jar.sh
. $here/threads.sh
. $here/clock.sh
. $here/soak.sh
. $here/mutants.sh

part_faults() {
    jar
    local code=0
    mvn -B failsafe:integration-test failsafe:verify -Dlong=true -Dit.test='FaultIT,StudyKillIT,JarIT,EndedAtOnceIT' \
        >"$work/faults" 2>&1 || code=1
    [ $code -eq 0 ] || tail -40 "$work/faults"
    line faults "$(grep -E 'Tests run: [0-9]+' "$work/faults" | tail -1 | sed 's/^[^T]*//')" $code
}

# Exact against sampled, forward against backward, proofs against samples, the tree against all facets one by one.
part_ways() {
    local code=0
    harness darkrim.hard.Ways 2000 "$seed" "$minutes" 2>&1 | tee "$work/ways" || code=1
    line ways "$(tail -1 "$work/ways" | cut -d';' -f1)" $code
}

# How long a check goes on after it is asked to stop: less than a second of a processor.
part_stop() {
    local code=0
    harness darkrim.hard.StopDelay 3 1 $here/slow-vanes.yaml $here/wide-pupil.yaml $here/lit-vanes.yaml geometries/nightglow-a.yaml geometries/nightglow-b.yaml \
        geometries/nightglow-80k.yaml geometries/part-vanes.yaml geometries/part-sphere-cap.yaml geometries/part-bond-wires.yaml \
        2>&1 | tee "$work/stop" || code=1
    line stop "$(tail -1 "$work/stop")" $code
}

# Two builds from nothing, in two folders, give the same jar.
part_bytes() {
    local sum first="" bad=0 folder
    for folder in one another/folder; do
        mkdir -p "$work/$folder"
        tar --exclude=./target --exclude=./.git -cf - . | tar -xf - -C "$work/$folder"
        (cd "$work/$folder" && mvn -q -B -Dmaven.test.skip=true package) || bad=1
        sum=$(sha256sum <"$work/$folder/$jar") || bad=1
        [ -z "$first" ] || [ "$sum" = "$first" ] || bad=1
        first=$sum
        rm -rf "${work:?}/$folder"
    done
    line bytes "two builds, ${first%% *}" $bad
}

for part in "${parts[@]}"; do
    "part_$part"
done
echo "lost in all: $lost"
[ $lost -eq 0 ]
