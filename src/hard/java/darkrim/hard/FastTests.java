package darkrim.hard;

import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import org.pitest.classpath.CodeSource;
import org.pitest.coverage.CoverageDatabase;
import org.pitest.coverage.TestInfo;
import org.pitest.mutationtest.build.DefaultTestPrioritiser;
import org.pitest.mutationtest.build.TestPrioritiser;
import org.pitest.mutationtest.build.TestPrioritiserFactory;

/**
 * Gives each mutant those of the tests that reach its line which together take at most {@code -Dmutant.seconds}, as measured without it: a survivor
 * costs all of its tests. Fewer tests kill fewer mutants, so that a share of killed ones can only be too low.
 */
public final class FastTests implements TestPrioritiserFactory {
    @Override
    public String description() {
        return "Tests within a time";
    }

    @Override
    public TestPrioritiser makeTestPrioritiser(Properties properties, CodeSource code, CoverageDatabase coverage) {
        TestPrioritiser all = new DefaultTestPrioritiser(coverage);
        long most = 1000L * Integer.getInteger("mutant.seconds", 20);
        return mutant -> within(most, all.assignTests(mutant));
    }

    /** The first of the tests, in the order in which they promise most, those left out that would take too long. */
    private static List<TestInfo> within(long most, List<TestInfo> tests) {
        List<TestInfo> chosen = new ArrayList<>();
        long taken = 0;
        for (TestInfo test : tests) {
            if (taken + test.getTime() <= most) {
                taken += test.getTime();
                chosen.add(test);
            }
        }
        return chosen;
    }
}
