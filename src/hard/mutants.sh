# Part of run.sh: changes to the code of verdict, shadow and light, one at a time, of which a test must notice 80 %. A sample by chance, the same for a seed, and
# tests that take a second or so: more of either only costs time.

# Counts of a package with the 95 % interval (Wilson 1927) of the share killed; a mutant that made a test run out of time is not counted as killed.
mutant_line() {
    awk -F, -v name="$1" '
        NF > 5 { n++; count[$6]++ }
        END {
            if (n == 0) { print name ": none tried"; exit 1 }
            p = count["KILLED"] / n; z = 1.96; d = 1 + z * z / n
            middle = (p + z * z / (2 * n)) / d; half = z * sqrt(p * (1 - p) / n + z * z / (4 * n * n)) / d
            printf "%s: %d tried, %d killed, %d survived, %d not reached, %d out of time, %d otherwise; killed %.0f %% (95 %%: %.0f to %.0f)\n", name, n,
                count["KILLED"], count["SURVIVED"], count["NO_COVERAGE"], count["TIMED_OUT"],
                n - count["KILLED"] - count["SURVIVED"] - count["NO_COVERAGE"] - count["TIMED_OUT"], 100 * p, 100 * (middle - half), 100 * (middle + half)
            exit 100 * p < 80
        }' "target/mutants/$1/mutations.csv"
}

# The tests of a package that reach its lines fast. Long ones look for rare faults in scenes by chance: those tagged so are left out, and with
# -Dscenes others look at a few scenes only.
mutant_tests() {
    case "$1" in
        verdict)
            printf 'darkrim.verdict.%s,' ConfidenceSequenceTest EvidenceToldTest JudgeByToldProofsTest JudgeRiskTest LooksAtSamplesTest SettledByProofTest SteeringOrderTest \
                SteeringTest VerdictAtLimitTest WorkersTest
            ;;
        shadow)
            printf 'darkrim.shadow.%s,' PlanarPolygonsTest PlanarCoverTest CrossingTest CrossingHullTest ShaftBoxesTest ShaftTest PairTest \
                FieldExclusionTest FieldProjectionTest SpaceTriangleTest FlatPieceTest GrowthTest LimitBracketTest LightScanTest IsDarkBeyondTest \
                PieceFluxTest PupilPiecesTest PupilViewTest CutsTest LinesOfLightTest FacetEdgesTest SolidsAndPiecesTest OpeningMarginsTest MovedSidesTest LeastMarginsTest ReflectedFluxTest \
                AtTheToleranceTest BlockedLineTest ClearLineTest FaceMergeTest IsFullyLitTest LimitingEdgeTest PieceOutlineTest ShadowCutTest ShaftNearTest \
                LitAndSeenTest DarknessProofTest FullyLitProofTest LeastShareTest MarginsTest MosaicMarginsTest NoReflectionTest ReflectedBoundTest ThinGapTest \
                VisiblePupilTest VisibleAreaTest VaneSightTest WindowProofTest AttackPairTest AttackSurfaceTest StoppedProofTest AttackDirectedTest MosaicTest
            ;;
        light)
            printf 'darkrim.light.%s,' CornerLightTest CornerPartsTest CornerWarmthTest DrawnDirectionsTest FieldAndFacingTest FrontSearchTest LargestByHandTest \
                LinksOfPiecesTest MirrorsTwiceTest PointSamplerTest StarReachTest SumsByHandTest TiltedLightTest TransportTest WindowSumsTest
            ;;
    esac
}

part_mutants() {
    local name of code
    for name in verdict shadow light; do
        code=0
        of=${share:-0.06}
        # Those of verdict are few: all of them, unless a share is asked for.
        [ $name != verdict ] || of=${share:-1}
        rm -f "target/mutants/$name/mutations.csv"
        harness -Dmutant.seconds=60 org.pitest.mutationtest.commandline.MutationCoverageReport \
            --targetClasses "darkrim.$name.*" --targetTests "$(mutant_tests $name | sed 's/,$//')" --excludedGroups chance \
            --features "+SAMPLE(share[$of] seed[$seed])" --mutableCodePaths "$PWD/target/classes" --sourceDirs src/main/java \
            --reportDir "target/mutants/$name" --outputFormats CSV,HTML --timestampedReports=false \
            --threads 1 --timeoutConst 20000 --timeoutFactor 2.5 --jvmArgs "-Xmx2g,-Djava.awt.headless=true,-Dscenes=12" >"$work/$name" 2>&1 || code=1
        [ $code -eq 0 ] || tail -20 "$work/$name"
        echo "$name: none tried" >"$work/line"
        [ ! -f "target/mutants/$name/mutations.csv" ] || mutant_line $name >"$work/line" || code=1
        line mutants "$(cat "$work/line")" $code
    done
}
