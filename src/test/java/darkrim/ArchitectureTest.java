package darkrim;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static darkrim.Rules.MAIN;
import static darkrim.Rules.check;
import static darkrim.Rules.in;
import static darkrim.Rules.inside;
import static darkrim.Rules.outside;
import static darkrim.Rules.packages;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The way of the data: each package may use those before it and the leaves, and little else. All packages are on the list, and all that are on
 * the list exist.
 */
class ArchitectureTest {
    /** In the order of the data. */
    private static final List<String> WAY = List.of(
            "layout", "assembly", "scene", "trace", "light", "shadow", "verdict", "study", "present", "view", "cli");

    private static final List<String> LEAVES =
            List.of("diagnostic", "geom", "sampling", "reflection", "material", "emission");

    /** Classes read at the least. Grows with the program. */
    private static final int FLOOR = 200;

    /** The way of the data, then the leaves. */
    static Stream<String> everyPackage() {
        return Stream.concat(WAY.stream(), LEAVES.stream());
    }

    @Test
    void enoughClassesAreReadForTheRulesToMeanAnything() {
        assertThat(MAIN.size()).isGreaterThanOrEqualTo(FLOOR);
        assertThat(existingPackages()).containsAll(everyPackage().toList());
    }

    @Test
    void theRulesSeeWhatThereIsToSee() {
        assertThat(noClasses()
                        .that()
                        .resideInAPackage(inside("scene"))
                        .should()
                        .dependOnClassesThat(in("geom"))
                        .evaluate(MAIN)
                        .hasViolation())
                .isTrue();
        assertThat(fields().that()
                        .areDeclaredInClassesThat()
                        .resideInAPackage(inside("trace"))
                        .should()
                        .beFinal()
                        .evaluate(MAIN)
                        .hasViolation())
                .isTrue();
    }

    @Test
    void noPackageIsMissingFromTheWay() {
        assertThat(everyPackage()).containsAll(existingPackages());
        assertThat(MAIN.stream().filter(each -> each.getPackageName().equals("darkrim")))
                .isEmpty();
    }

    @ParameterizedTest
    @MethodSource("everyPackage")
    void aPackageUsesOnlyThoseBeforeItAndTheLeaves(String name) {
        List<String> allowed = new ArrayList<>(List.of(name));
        if (!LEAVES.contains(name)) {
            allowed.addAll(WAY.subList(0, WAY.indexOf(name)));
            allowed.addAll(LEAVES);
        }
        if (name.equals("reflection")) {
            // Points of the unit circle with the same bits everywhere.
            allowed.add("geom");
        }
        if (name.equals("trace")) {
            // It knows triangles only.
            allowed.removeAll(WAY.subList(0, WAY.indexOf("trace")));
        }
        DescribedPredicate<JavaClass> others =
                resideInAPackage("darkrim..").and(DescribedPredicate.not(resideInAnyPackage(packages(allowed))));
        check(noClasses().that().resideInAPackage(inside(name)).should().dependOnClassesThat(others));
    }

    @Test
    void sceneAndTraceDoNotKnowEachOther() {
        check(noClasses().that().resideInAPackage(inside("scene")).should().dependOnClassesThat(in("trace")));
        check(noClasses().that().resideInAPackage(inside("trace")).should().dependOnClassesThat(in("scene")));
    }

    @Test
    void theTwoWaysToTheSameNumberStayApart() {
        // Exact shadows are the test of sampled light, and hold no random numbers.
        check(noClasses().that().resideInAPackage(inside("light")).should().dependOnClassesThat(in("shadow")));
        check(noClasses().that().resideInAPackage(inside("shadow")).should().dependOnClassesThat(in("light")));
        check(noClasses()
                .that()
                .resideInAPackage(inside("shadow"))
                .should()
                .dependOnClassesThat(resideInAnyPackage("darkrim.sampling..", "org.apache.commons.rng..")));
    }

    @Test
    void noPackagesFormACycle() {
        slices().matching("darkrim.(**)").should().beFreeOfCycles().check(MAIN);
    }

    @Test
    void windowsAreOnlyInViewAndTheCommandLineOnlyInCli() {
        check(noClasses().that(outside("view")).should().dependOnClassesThat(resideInAPackage("javafx..")));
        check(noClasses().that(outside("view")).should().dependOnClassesThat(resideInAPackage("com.sun.jna..")));
        check(noClasses().that(outside("cli")).should().dependOnClassesThat(resideInAPackage("picocli..")));
    }

    /** Whoever has no Spark runs everything but this. */
    @Test
    void sparkIsOnlyInItsPackageAndOnlyTheOptionForItNamesThat() {
        check(noClasses()
                .that()
                .resideOutsideOfPackage(inside("study.spark"))
                .should()
                .dependOnClassesThat(resideInAnyPackage("org.apache.spark..", "scala..")));
        check(noClasses()
                .that()
                .resideOutsideOfPackage(inside("study.spark"))
                .and()
                .haveSimpleNameNotStartingWith("WorkersOption")
                .and()
                .doNotHaveFullyQualifiedName("darkrim.cli.WorkersOption$Address")
                .should()
                .dependOnClassesThat(in("study.spark")));
        assertThat(MAIN.stream().filter(each -> each.getPackageName().equals("darkrim.study.spark")))
                .isNotEmpty();
    }

    @Test
    void withinTheCommandLineOnlyTheViewCommandNamesTheView() {
        check(noClasses()
                .that()
                .resideInAPackage(inside("cli"))
                .and()
                .haveSimpleNameNotStartingWith("View")
                .should()
                .dependOnClassesThat(in("view")));
    }

    @Test
    void onlyTheCommandLineTouchesTheStandardStreamsOrEndsTheProgram() {
        for (String stream : List.of("in", "out", "err")) {
            check(noClasses().that(outside("cli")).should().accessField(System.class, stream));
        }
        check(noClasses().that(outside("cli")).should().callMethod(System.class, "exit", int.class));
        check(noClasses().that(outside("cli")).should().callMethod(Throwable.class, "printStackTrace"));
        check(noClasses().that(outside("cli")).should().callMethod(Runtime.class, "exit", int.class));
        check(noClasses().that(outside("cli")).should().callMethod(Runtime.class, "halt", int.class));
    }

    private static Set<String> existingPackages() {
        Set<String> names = new TreeSet<>();
        for (JavaClass each : MAIN) {
            String[] parts = each.getPackageName().split("\\.", -1);
            if (parts.length > 1) {
                names.add(parts[1]);
            }
        }
        return names;
    }
}
