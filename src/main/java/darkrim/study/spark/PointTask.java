package darkrim.study.spark;

import darkrim.study.Point;
import java.io.Serializable;
import org.apache.spark.broadcast.Broadcast;
import scala.collection.Iterator;
import scala.runtime.AbstractFunction1;

/** Works out, on an executor, the one point of a partition. */
final class PointTask extends AbstractFunction1<Iterator<Point>, SentResult> implements Serializable {
    private static final long serialVersionUID = 1L;

    private final Broadcast<SentStudy> study;

    PointTask(Broadcast<SentStudy> study) {
        this.study = study;
    }

    @Override
    public SentResult apply(Iterator<Point> partition) {
        Point point = partition.next();
        try {
            return SentResult.of(study.value().check().at(point));
        } catch (RuntimeException broken) {
            return SentResult.broken(broken);
        }
    }
}
