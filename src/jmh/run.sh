#!/bin/sh
# Ray kernels on the same files, taking turns, million rays a second by processor time: the best of ROUNDS (3).
# Run from the top folder after `mvn package`: src/jmh/run.sh FOLDER. JAVA25 may name a second java, NATIVE the program made of src/jmh/native/trace.cpp.
set -eu
folder=${1:?expected a folder for the files}
jar=${JAR:-target/darkrim.jar}
mkdir -p "$folder"
java src/jmh/java/darkrim/trace/KernelFiles.java "$folder"
: >"$folder/rates"
note() { # scene, rays, kernel: the rates of what stands on standard input
    sed -n "s/.*nearest \([0-9.]*\) million rays\/s, blocked \([0-9.]*\) .*/$1 $2 $3 \1 \2/p" >>"$folder/rates"
}
trace() { # scene, rays, kernel, java and its options
    scene=$1 rays=$2 kernel=$3
    shift 3
    "$@" -Xmx3g -XX:+UseSerialGC -jar "$jar" bench-trace "$folder/$scene.facets" "$folder/$scene-$rays.rays" "$folder/met" --overwrite \
        2>/dev/null | note "$scene" "$rays" "$kernel"
}
round=0
while [ $round -lt "${ROUNDS:-3}" ]; do
    round=$((round + 1))
    for scene in ${SCENES:-small middle large}; do
        for rays in coherent incoherent; do
            trace "$scene" "$rays" scalar java -Ddarkrim.kernel=scalar
            trace "$scene" "$rays" vectors java --add-modules jdk.incubator.vector
            [ -z "${JAVA25:-}" ] || trace "$scene" "$rays" vectors-other "$JAVA25" --add-modules jdk.incubator.vector
            [ -z "${NATIVE:-}" ] || "$NATIVE" "$folder/$scene.facets" "$folder/$scene-$rays.rays" | note "$scene" "$rays" native
        done
    done
done
grep -m1 'model name' /proc/cpuinfo || true
java -version 2>&1 | head -1
uptime
echo '| scene | rays | kernel | nearest | blocked |'
echo '|---|---|---|---|---|'
awk '{ k = $1 " | " $2 " | " $3; if (!(k in n)) order[++m] = k; if ($4 > n[k]) n[k] = $4; if ($5 > b[k]) b[k] = $5 }
    END { for (i = 1; i <= m; i++) print "| " order[i] " | " n[order[i]] " | " b[order[i]] " |" }' "$folder/rates"
