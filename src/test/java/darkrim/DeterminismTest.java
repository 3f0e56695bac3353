package darkrim;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static darkrim.Rules.MAIN;
import static darkrim.Rules.check;
import static darkrim.Rules.outside;
import static darkrim.Rules.packages;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import java.time.Clock;
import java.util.Date;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a number may depend on: the layout and the seed, and nothing that changes from run to run or from machine to machine. */
class DeterminismTest {
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
}
