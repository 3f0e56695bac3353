package darkrim.study.spark;

import darkrim.diagnostic.UnusableInput;
import darkrim.layout.SideFiles;
import darkrim.layout.mesh.MeshFiles;
import darkrim.study.LayoutFamily;
import darkrim.study.PointCheck;
import darkrim.study.PointSettings;
import java.io.Serializable;
import java.util.HashMap;
import java.util.Optional;

/** How points are checked, as it travels to each executor once: the bytes of the layout, its meshes, the seed and how points are checked. */
final class SentStudy implements Serializable {
    private static final long serialVersionUID = 1L;

    private final String name;
    private final byte[] layout;
    private final MeshFiles meshes;
    private final HashMap<String, byte[]> files;
    private final Long seed;
    private final boolean warm;
    private final PointSettings settings;
    /** Made where it arrives, for all points that are worked out there. */
    private transient PointCheck check;

    SentStudy(PointCheck check) {
        this.name = check.family().name();
        this.layout = check.family().content();
        this.meshes = check.family().meshes();
        this.files = new HashMap<>(check.family().sideFiles());
        this.warm = check.family().isWarm();
        this.seed = check.seed().orElse(null);
        this.settings = check.settings();
    }

    /** The check that was sent. */
    synchronized PointCheck check() {
        if (check == null) {
            try {
                LayoutFamily family = LayoutFamily.of(name, layout, SideFiles.known(name, files, meshes));
                check = new PointCheck(warm ? family.warm() : family, Optional.ofNullable(seed), settings);
            } catch (UnusableInput changed) {
                throw new IllegalStateException("a layout that could be used here cannot be used there", changed);
            }
        }
        return check;
    }
}
