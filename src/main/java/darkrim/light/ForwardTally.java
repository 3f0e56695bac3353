package darkrim.light;

import darkrim.scene.Surface;

/**
 * What forward tracing found: flux by surface and order, and the books on energy. Flux is in mm2 of relative irradiance: divided by an
 * area it is relative irradiance. Filled by {@link ForwardTracer}; read only afterwards.
 */
public final class ForwardTally {
    private final int hits;
    private final long packets;
    private final double[] sum;
    private final double[] squares;
    /** What the packet in work brought to a surface and order: the same one may be met again after a reflection elsewhere. */
    private final double[] packet;

    private final int[] packetAt;
    private int packetCount;
    private double emitted;
    private double absorbed;
    private double escaped;
    private double travelling;

    ForwardTally(int surfaces, int hits, long packets) {
        this.hits = hits;
        this.packets = packets;
        this.sum = new double[surfaces * hits];
        this.squares = new double[surfaces * hits];
        this.packet = new double[hits];
        this.packetAt = new int[hits];
    }

    int hits() {
        return hits;
    }

    void emit(double flux) {
        emitted += flux;
    }

    void absorb(double flux) {
        absorbed += flux;
    }

    void escape(double flux) {
        escaped += flux;
    }

    void goOn(double flux) {
        travelling += flux;
    }

    void arrive(int surface, int order, double flux) {
        packetAt[packetCount] = surface * hits + order;
        packet[packetCount] = flux;
        packetCount++;
    }

    void endPacket() {
        for (int i = 0; i < packetCount; i++) {
            sum[packetAt[i]] += packet[i];
            squares[packetAt[i]] += packet[i] * packet[i];
        }
        packetCount = 0;
    }

    /**
     * Mean relative irradiance of a surface.
     *
     * @param surface the surface
     * @param reflections after how many reflections the light arrives, from 0, less than the number of hits followed
     */
    public Estimate irradiance(Surface surface, int reflections) {
        int at = surface.index() * hits + reflections;
        return Estimate.ofSums(packets, sum[at], squares[at], Double.POSITIVE_INFINITY)
                .times(1 / surface.area());
    }

    /** Flux that left the pupil toward the scene, mean over the packets. */
    public double emitted() {
        return emitted / packets;
    }

    /** Flux that was absorbed. */
    public double absorbed() {
        return absorbed / packets;
    }

    /** Flux that met nothing more. */
    public double escaped() {
        return escaped / packets;
    }

    /** Flux that was reflected at the last hit followed. */
    public double travelling() {
        return travelling / packets;
    }
}
