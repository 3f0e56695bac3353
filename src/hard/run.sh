#!/usr/bin/env bash
# Tries to break Darkrim: bash src/hard/run.sh [--minutes N] [--seed N] [fuzz] [jar] [faults] [threads] [ways] [bytes] [mutants]
# Without the name of a part: all but mutants, which take a night. Prints a line of figures for each part; the exit code is 0 without a loss.
# docs/robustness.md tells what is tried and what was found.
set -uo pipefail
cd "$(dirname "$0")/../.."

minutes=10
seed=1
parts=()
while [ $# -gt 0 ]; do
    case "$1" in
        --minutes) minutes=$2; shift 2 ;;
        --seed) seed=$2; shift 2 ;;
        fuzz | jar | faults | threads | ways | bytes | mutants) parts+=("$1"); shift ;;
        *) echo "run.sh: '$1' is no part; expected fuzz, jar, faults, threads, ways, bytes or mutants" >&2; exit 2 ;;
    esac
done
[ ${#parts[@]} -gt 0 ] || parts=(fuzz jar faults threads ways bytes)

lost=0
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

jar() {
    [ -f target/darkrim.jar ] || mvn -q -B -DskipTests package || exit 2
}

# Prints a part's line and counts its losses.
line() {
    echo "$1: $2, lost: $3"
    lost=$((lost + $3))
}

# Maven tests by name; further words are options.
tests() {
    local name=$1 classes=$2
    shift 2
    local code=0
    mvn -B test -Dtest="$classes" -Djacoco.skip "$@" >"$work/$name" 2>&1 || code=1
    [ $code -eq 0 ] || tail -40 "$work/$name"
    line "$name" "$(grep -oE 'Tests run: [0-9]+' "$work/$name" | tail -1)" $code
}

part_fuzz() {
    local code=0
    mvn -q -B -Phard test-compile exec:exec -Dminutes="$minutes" -Dseed="$seed" 2>&1 | tee "$work/fuzz" || code=1
    line fuzz "$(grep -oE 'inputs tried: [0-9]+' "$work/fuzz")" $code
}

# Every broken and shipped layout through the jar as a process: an exit code from 0 to 3, and no stack trace.
part_jar() {
    jar
    local tried=0 bad=0 code
    for file in src/test/resources/broken/*.yaml src/test/resources/placed/*.yaml geometries/*.yaml; do
        timeout 600 java -jar target/darkrim.jar check "$file" --samples 1e4 --margins none >"$work/out" 2>"$work/err"
        code=$?
        tried=$((tried + 1))
        if [ $code -gt 3 ] || grep -qE '^\s+at |Exception' "$work/err"; then
            echo "$file: exit code $code: $(head -1 "$work/err")"
            bad=$((bad + 1))
        fi
    done
    line jar "$tried processes" $bad
}

part_faults() {
    jar
    local code=0
    mvn -B failsafe:integration-test failsafe:verify -Dit.test='FaultIT,StudyKillIT,JarIT' >"$work/faults" 2>&1 || code=1
    [ $code -eq 0 ] || tail -40 "$work/faults"
    line faults "$(grep -oE 'Tests run: [0-9]+' "$work/faults" | tail -1)" $code
}

# The result of a check without its times, for 1 to 8 threads.
part_threads() {
    jar
    local compared=0 bad=0 first
    for file in geometries/*.yaml; do
        first=
        for threads in 1 2 3 4 5 6 7 8; do
            java -jar target/darkrim.jar check "$file" --samples 2e5 --threads $threads --json "$work/r.json" --overwrite >/dev/null 2>&1
            sum=$(grep -vE '"(proofs|margins|whole)_s"' "$work/r.json" | sha256sum)
            compared=$((compared + 1))
            if [ -z "$first" ]; then first=$sum; elif [ "$sum" != "$first" ]; then
                echo "$file: other bits with $threads threads"
                bad=$((bad + 1))
            fi
        done
    done
    line threads "$compared checks" $bad
}

# Exact against sampled, forward against backward, tree against all facets one by one.
part_ways() {
    tests ways 'NoContradictionTest,SampledAgainstExactTest,ForwardAgainstBackwardTest,NearestHitTest' -Dlong=true -Dscenes=2000
}

# Two builds from nothing give the same jar.
part_bytes() {
    local a b bad=0
    mvn -q -B -DskipTests clean package && a=$(sha256sum <target/darkrim.jar)
    mvn -q -B -DskipTests clean package && b=$(sha256sum <target/darkrim.jar)
    [ -n "$a" ] && [ "$a" = "$b" ] || bad=1
    line bytes "two builds, ${b%% *}" $bad
}

# One package after the other, each with the tests that belong to it.
part_mutants() {
    local name code
    for name in verdict shadow light; do
        code=0
        mvn -B -Phard test-compile org.pitest:pitest-maven:mutationCoverage -Dmutated="darkrim.$name.*" \
            -Dmutation.tests="darkrim.$name.*,darkrim.study.CheckTest,darkrim.study.DarkSurfaceTest" >"$work/$name" 2>&1 || code=1
        line "mutants of $name" "$(grep -oE 'Generated [0-9]+ mutations Killed [0-9]+ \([0-9]+%\)' "$work/$name" | tail -1)" $code
    done
}

for part in "${parts[@]}"; do
    "part_$part"
done
echo "lost in all: $lost"
[ $lost -eq 0 ]
