package darkrim.trace;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/**
 * Adds to every figure of JMH the processor time of one call, of all threads of the process together: on a machine that others use, too, it is
 * off by far less than the time on the wall. Switched on by {@code -prof darkrim.trace.ProcessorTime}.
 */
public final class ProcessorTime implements InternalProfiler {
    private final OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private long begun;

    @Override
    public String getDescription() {
        return "processor time a call, ns";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
        begun = system.getProcessCpuTime();
    }

    @Override
    public Collection<? extends Result> afterIteration(
            BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
        double spent = system.getProcessCpuTime() - begun;
        double calls = Math.max(1, result.getMetadata().getAllOps());
        return List.of(new ScalarResult("processor", spent / calls, "ns/op", AggregationPolicy.MIN));
    }
}
