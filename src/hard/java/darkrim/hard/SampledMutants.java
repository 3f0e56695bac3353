package darkrim.hard;

import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.List;
import java.util.zip.CRC32C;
import org.pitest.bytecode.analysis.ClassTree;
import org.pitest.mutationtest.build.InterceptorParameters;
import org.pitest.mutationtest.build.InterceptorType;
import org.pitest.mutationtest.build.MutationInterceptor;
import org.pitest.mutationtest.build.MutationInterceptorFactory;
import org.pitest.mutationtest.engine.Mutater;
import org.pitest.mutationtest.engine.MutationDetails;
import org.pitest.plugin.Feature;
import org.pitest.plugin.FeatureParameter;

/**
 * Keeps each mutant with the same chance, whatever its class, so that what comes of the sample is an estimate for all: {@code +SAMPLE(share[0.1] seed[1])}.
 * Whether one is kept depends on the seed and on the mutant alone.
 */
public final class SampledMutants implements MutationInterceptorFactory {
    private static final FeatureParameter SHARE =
            FeatureParameter.named("share").withDescription("Share of the mutants to be kept, 0 to 1");
    private static final FeatureParameter SEED =
            FeatureParameter.named("seed").withDescription("Another, other mutants");

    @Override
    public Feature provides() {
        return Feature.named("SAMPLE")
                .withOnByDefault(false)
                .withDescription(description())
                .withParameter(SHARE)
                .withParameter(SEED);
    }

    @Override
    public String description() {
        return "Mutants by chance";
    }

    @Override
    public MutationInterceptor createInterceptor(InterceptorParameters given) {
        double share = given.getString(SHARE).map(Double::parseDouble).orElse(1.0);
        String seed = given.getString(SEED).orElse("1");
        return new Sample(share, seed);
    }

    /** Keeps a share of the mutants of each class. */
    private record Sample(double share, String seed) implements MutationInterceptor {
        private static final double ALL = 1L << 32;

        @Override
        public InterceptorType type() {
            return InterceptorType.REPORT;
        }

        @Override
        public void begin(ClassTree mutated) {}

        @Override
        public Collection<MutationDetails> intercept(Collection<MutationDetails> mutants, Mutater mutater) {
            List<MutationDetails> kept = mutants.stream().filter(this::keeps).toList();
            System.out.println("mutants of a class: " + mutants.size() + ", kept: " + kept.size());
            return kept;
        }

        private boolean keeps(MutationDetails mutant) {
            CRC32C chance = new CRC32C();
            chance.update((seed + " " + mutant.getId()).getBytes(StandardCharsets.UTF_8));
            // Neighbouring texts have similar sums; a second turn mixes them.
            long mixed = chance.getValue() * 0x9E3779B97F4A7C15L;
            return (mixed >>> 32) / ALL < share;
        }

        @Override
        public void end() {}
    }
}
