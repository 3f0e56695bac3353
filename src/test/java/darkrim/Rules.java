package darkrim;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;

/** Rules that hold for the classes of the program. */
final class Rules {
    static final JavaClasses MAIN = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("darkrim");

    /** A rule about no classes holds; {@link ArchitectureTest} sees to it that there are enough of them. */
    static void check(ArchRule rule) {
        rule.allowEmptyShould(true).check(MAIN);
    }

    static DescribedPredicate<JavaClass> in(String name) {
        return resideInAPackage(inside(name));
    }

    static DescribedPredicate<JavaClass> outside(String name) {
        return DescribedPredicate.not(in(name));
    }

    static String inside(String name) {
        return "darkrim." + name + "..";
    }

    static String[] packages(String... names) {
        return packages(List.of(names));
    }

    static String[] packages(List<String> names) {
        return names.stream().map(Rules::inside).toArray(String[]::new);
    }

    private Rules() {}
}
