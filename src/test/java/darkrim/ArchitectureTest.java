package darkrim;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Date;
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

    /** Below the study, where a number depends on the layout and the seed alone. */
    private static final String[] PURE = packages(
            "assembly",
            "scene",
            "trace",
            "light",
            "shadow",
            "verdict",
            "emission",
            "geom",
            "material",
            "reflection",
            "sampling");

    private static final JavaClasses MAIN = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("darkrim");

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

    @Test
    void noFilesAndNoNetworkBelowTheStudyButInLayoutAndMeshReading() {
        DescribedPredicate<JavaClass> readsMeshes = describe(
                "read meshes",
                each -> each.getPackageName().startsWith("darkrim.assembly")
                        && each.getName().contains("Mesh"));
        check(noClasses()
                .that()
                .resideInAnyPackage(PURE)
                .and(DescribedPredicate.not(readsMeshes))
                .should()
                .dependOnClassesThat(resideInAnyPackage("java.io..", "java.nio..", "java.net..")));
        check(noClasses()
                .that()
                .resideInAnyPackage(packages("layout", "assembly"))
                .should()
                .dependOnClassesThat(resideInAnyPackage("java.net..")));
    }

    /** What takes a time is measured by the clock that never jumps; the date of a page or picture is all that the other one is asked for. */
    @Test
    void theClockThatMayJumpIsAskedForDatesOnly() {
        List<String> asking = MAIN.stream()
                .filter(each -> each.getMethodCallsFromSelf().stream()
                        .anyMatch(call -> call.getName().equals("currentTimeMillis")
                                || (call.getName().equals("now")
                                        && call.getTargetOwner()
                                                .getPackageName()
                                                .equals("java.time"))
                                || call.getTargetOwner().isAssignableTo(Clock.class)))
                .map(JavaClass::getSimpleName)
                .toList();
        assertThat(asking).containsExactlyInAnyOrder("ReviewDate", "PictureDialog");
        check(noClasses().should().callConstructor(Date.class));
    }

    @Test
    void noClockBelowTheStudy() {
        String[] below = packages(
                "layout",
                "assembly",
                "scene",
                "trace",
                "light",
                "shadow",
                "verdict",
                "emission",
                "geom",
                "reflection",
                "sampling");
        check(noClasses()
                .that()
                .resideInAnyPackage(below)
                .should()
                .dependOnClassesThat(resideInAPackage("java.time..")));
        check(noClasses().that().resideInAnyPackage(below).should().callMethod(System.class, "currentTimeMillis"));
        check(noClasses().that().resideInAnyPackage(below).should().callMethod(System.class, "nanoTime"));
    }

    @Test
    void randomNumbersComeFromNamedStreamsOnly() {
        check(noClasses()
                .should()
                .dependOnClassesThat()
                .haveNameMatching("java\\.util\\.(Random|SplittableRandom)|java\\.security\\.SecureRandom"
                        + "|java\\.util\\.concurrent\\.ThreadLocalRandom|java\\.util\\.random\\..*"));
        check(noClasses().should().callMethod(Math.class, "random"));
        check(noClasses().should().callMethod(java.util.UUID.class, "randomUUID"));
        check(noClasses()
                .that(outside("sampling"))
                .should()
                .dependOnClassesThat()
                .haveFullyQualifiedName("org.apache.commons.rng.simple.RandomSource"));
    }

    /** {@link Math} may give other last bits on another machine; {@link StrictMath} may not (both say so). Square roots are exact in either. */
    @Test
    void theSameBitsComeFromEveryMachine() {
        for (String function : List.of("sin", "cos", "tan", "asin", "acos", "atan", "exp", "log", "log10", "cbrt")) {
            check(noClasses().should().callMethod(Math.class, function, double.class));
        }
        for (String function : List.of("atan2", "pow")) {
            check(noClasses().should().callMethod(Math.class, function, double.class, double.class));
        }
    }

    /** Two builders that live for one call and are not public gather their result in fields; everything else is final. */
    @Test
    void whatIsKnownDoesNotChange() {
        check(fields().that()
                .areDeclaredInClassesThat()
                .resideInAnyPackage(packages("emission", "geom", "reflection", "assembly", "scene", "verdict"))
                .and()
                .areDeclaredInClassesThat()
                .doNotHaveFullyQualifiedName("darkrim.assembly.Loft")
                .and()
                .areDeclaredInClassesThat()
                .doNotHaveFullyQualifiedName("darkrim.assembly.PartPlacer")
                .should()
                .beFinal());
        check(classes()
                .that()
                .resideInAnyPackage(packages("geom", "scene"))
                .and()
                .areTopLevelClasses()
                .and()
                .areNotInterfaces()
                .should()
                .haveModifier(com.tngtech.archunit.core.domain.JavaModifier.FINAL));
    }

    /** A rule about no classes holds; the list of packages and {@link #FLOOR} see to it that rules mean something. */
    private static void check(ArchRule rule) {
        rule.allowEmptyShould(true).check(MAIN);
    }

    private static DescribedPredicate<JavaClass> in(String name) {
        return resideInAPackage(inside(name));
    }

    private static DescribedPredicate<JavaClass> outside(String name) {
        return DescribedPredicate.not(in(name));
    }

    private static String inside(String name) {
        return "darkrim." + name + "..";
    }

    private static String[] packages(String... names) {
        return packages(List.of(names));
    }

    private static String[] packages(List<String> names) {
        return names.stream().map(ArchitectureTest::inside).toArray(String[]::new);
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
