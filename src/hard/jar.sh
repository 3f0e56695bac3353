# Part of run.sh: every broken, placed and shipped layout, and layouts by chance, through the jar as a process. Each must end by itself
# with an exit code from 0 to 3, without a stack trace and without a control character on the terminal. --minutes bounds the written ones, in an order by
# chance, and those by chance.

# One layout, and how it is checked.
one_file() {
    # The first compiler alone: most end before the second has begun.
    timeout 600 java -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -jar $jar check "$1" --samples 1e4 --margins none </dev/null >"$work/out" 2>"$work/err"
    local code=$?
    tried=$((tried + 1))
    codes="$codes $code"
    if [ $code -gt 3 ] || grep -qE '^\s+at |Exception' "$work/err" || grep -qP '[\x00-\x08\x0b-\x1f\x7f]' "$work/err" "$work/out"; then
        echo "$1: exit code $code: $(head -1 "$work/err" | tr -d '\000-\037')"
        cp "$1" "target/jar-$(basename "$1")"
        bad=$((bad + 1))
    fi
}

part_jar() {
    jar
    local tried=0 bad=0 codes="" end written=(src/test/resources/broken/*.yaml src/test/resources/placed/*.yaml geometries/*.yaml geometries/step/*.yaml)
    end=$(($(date +%s) + minutes * 60))
    while read -r file; do
        [ "$(date +%s)" -lt $end ] || break
        one_file "$file"
    done < <(printf '%s\n' "${written[@]}" | shuf --random-source=<(yes "$seed"))
    local of_written=$tried
    # Beside the shipped ones, for they name meshes and tables there.
    harness darkrim.hard.LayoutFiles "$work/chance" 300 "$seed" || bad=$((bad + 1))
    end=$(($(date +%s) + minutes * 60))
    for file in "$work"/chance/*.yaml; do
        [ "$(date +%s)" -lt $end ] || break
        one_file "$file"
    done
    line jar "$of_written of ${#written[@]} written and $((tried - of_written)) layouts by chance, exit codes$(tr ' ' '\n' <<<"$codes" | sort -n | uniq -c | awk 'NF == 2 { printf " %s: %d times", $2, $1 }')" $bad
}
