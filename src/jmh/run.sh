#!/bin/sh
# Every figure about the ray core in docs/speed.md, by processor time. Run from the top folder after `mvn -Pbenchmarks package`:
#   src/jmh/run.sh FOLDER [PART...]
# Parts: kernels (ours and a native one on the same files, taking turns, the best of ROUNDS, 3), rays, scaling, build, cores. All of them
# take about half an hour; `cores` alone says how many times faster two threads are, and wants a machine with nothing else to do.
# JAVA25 may name a second java, NATIVE the program made of src/jmh/native/trace.cpp.
set -eu
folder=${1:?expected a folder for the files}
shift
jar=${JAR:-target/darkrim.jar}
vectors="--add-modules jdk.incubator.vector"
mkdir -p "$folder"
[ $# -gt 0 ] || set -- kernels rays scaling build cores

note() { # scene, rays, kernel: the rates of what stands on standard input
    sed -n "s/.*nearest \([0-9.]*\) million rays\/s, blocked \([0-9.]*\) .*/$1 $2 $3 \1 \2/p" >>"$folder/rates"
}
trace() { # scene, rays, kernel, java and its options
    scene=$1 rays=$2 kernel=$3
    shift 3
    "$@" -Xmx3g -XX:+UseSerialGC -jar "$jar" bench-trace "$folder/$scene.facets" "$folder/$scene-$rays.rays" "$folder/met" --overwrite \
        2>/dev/null | note "$scene" "$rays" "$kernel"
}
kernels() {
    java src/jmh/java/darkrim/trace/KernelFiles.java "$folder"
    : >"$folder/rates"
    round=0
    while [ $round -lt "${ROUNDS:-3}" ]; do
        round=$((round + 1))
        for scene in ${SCENES:-small middle large slivers}; do
            for rays in coherent incoherent; do
                trace "$scene" "$rays" scalar java -Ddarkrim.kernel=scalar
                trace "$scene" "$rays" vectors java $vectors
                [ -z "${JAVA25:-}" ] || trace "$scene" "$rays" vectors-other "$JAVA25" $vectors
                [ -z "${NATIVE:-}" ] || "$NATIVE" "$folder/$scene.facets" "$folder/$scene-$rays.rays" | note "$scene" "$rays" native
            done
        done
    done
    echo '| scene | rays | kernel | nearest, million rays/s | blocked |'
    echo '|---|---|---|---|---|'
    awk '{ k = $1 " | " $2 " | " $3; if (!(k in n)) order[++m] = k; if ($4 > n[k]) n[k] = $4; if ($5 > b[k]) b[k] = $5 }
        END { for (i = 1; i <= m; i++) print "| " order[i] " | " n[order[i]] " | " b[order[i]] " |" }' "$folder/rates"
}

classes() {
    [ -s "$folder/classpath" ] ||
        mvn -q -B -Pbenchmarks dependency:build-classpath -Dmdep.outputFile="$folder/classpath" -Dmdep.includeScope=test >&2
    echo "target/classes:target/test-classes:$(cat "$folder/classpath")"
}
measure() { # benchmark, lines of awk that print a row: JMH, processor time of a call in ns as `cost`
    java -cp "$(classes)" org.openjdk.jmh.Main "darkrim.trace.$1\\." -prof darkrim.trace.ProcessorTime -jvmArgsPrepend "$vectors" \
        -rf csv -rff "$folder/$1.csv" ${JMH:-} >"$folder/$1.log" 2>&1 || { cat "$folder/$1.log" >&2; exit 1; }
    # What JMH says of processor time; the name of the question without its class; then the parameters, which follow the unit.
    sed -n 's/"//g; s/^[a-z.]*\.[A-Za-z]*\.\([a-z]*\):[^,]*processor,/\1,/p' "$folder/$1.csv" | awk -F, "$2"
}
rays() {
    echo '| scene | question | million rays/s |'
    echo '|---|---|---|'
    measure TraceBenchmark '{ printf "| %s | %s | %.2f |\n", $8, $1, 1e3 / $5 }'
}
scaling() {
    echo '| facets, about | rays | question | million rays/s |'
    echo '|---|---|---|---|'
    measure ScalingBenchmark '{ printf "| %s | %s | %s | %.2f |\n", $8, $9, $1, 1e3 / $5 }'
}
build() {
    echo '| facets, about | threads | what | processor time, ms | million facets/s of it |'
    echo '|---|---|---|---|---|'
    measure BuildBenchmark '{ printf "| %s | %s | %s | %.3f | %.2f |\n", $8, $9, $1, $5 / 1e6, 1e3 * $8 / $5 }'
}
cores() {
    java $vectors -Xmx3g -XX:+UseSerialGC -cp "$(classes)" darkrim.study.TwoCoresBenchmark geometries/nightglow-b.yaml \
        geometries/nightglow-b-mesh.yaml 2>/dev/null
}

for part; do
    "$part"
    echo
done
grep -m1 'model name' /proc/cpuinfo || true
java -version 2>&1 | head -1
uptime
