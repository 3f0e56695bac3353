package darkrim.study.rejection;

import darkrim.diagnostic.Findings;
import darkrim.layout.SamplingSpec;
import darkrim.layout.form.Wording;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.ChordDoubt;
import darkrim.study.Effort;
import darkrim.study.PlacedScene;
import darkrim.study.ReceivingSurfaces;
import darkrim.study.UnusableStudy;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds how much light of a body far away reaches the detectors, over its angle from the axis. */
public final class RejectionStudy {
    private RejectionStudy() {}

    /**
     * Finds the curve.
     *
     * @param placed the layout with its parts in place
     * @param settings what to look at
     * @param effort how hard to work; its number of samples is not used
     * @param warnings what is known to deserve attention
     * @param watch hears how far it is, and may stop it
     * @throws UnusableStudy if the study makes no sense for the layout
     */
    public static RejectionResult of(
            PlacedScene placed, RejectionSettings settings, Effort effort, Findings warnings, Watch watch)
            throws UnusableStudy {
        Scene scene = placed.scene();
        Optional<ChordDoubt> doubt = ChordDoubt.of(placed.layout(), placed.assembly(), scene);
        doubt.ifPresent(one -> one.warnOfNoProofs(warnings));
        List<Surface> receivers = ReceivingSurfaces.of(scene, settings.onto());
        for (double angle : settings.angles()) {
            if (angle < 0 || angle + settings.body().diameter() / 2 >= 90) {
                throw new UnusableStudy(
                        "at " + Wording.number(angle) + " deg off axis part of the body stands at or below the focal"
                                + " plane, expected all of it above, at less than 90 deg");
            }
        }
        SamplingSpec asked = effort.over(placed.layout().sampling());
        List<RejectionPoint> points = new ArrayList<>();
        int planned = settings.angles().size() * settings.azimuths().size();
        try (Workers workers = new Workers(effort.threads())) {
            for (double azimuth : settings.azimuths()) {
                for (double angle : settings.angles()) {
                    if (watch.stop()) {
                        break;
                    }
                    watch.progress("light from every direction", points.size(), planned);
                    DirectionLight light = new DirectionLight(
                            scene,
                            settings.body().at(angle, azimuth),
                            receivers,
                            asked.seed(),
                            settings,
                            doubt.isPresent(),
                            asked.confidence(),
                            workers,
                            watch);
                    points.add(new RejectionPoint(azimuth, angle, light.orders()));
                }
            }
        }
        return new RejectionResult(
                placed.layout(),
                settings,
                asked.seed(),
                asked.confidence(),
                receivers,
                points,
                DirectionLight.isShiny(scene),
                points.size() < planned,
                warnings.sorted());
    }
}
