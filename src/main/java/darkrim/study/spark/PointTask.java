package darkrim.study.spark;

import java.io.Serializable;
import java.util.Map;
import org.apache.spark.broadcast.Broadcast;
import scala.collection.Iterator;
import scala.runtime.AbstractFunction1;

/** Works out, on an executor, the one point of a partition. */
final class PointTask extends AbstractFunction1<Iterator<Map<String, Double>>, SentResult> implements Serializable {
    private static final long serialVersionUID = 1L;

    private final Broadcast<SentStudy> study;

    PointTask(Broadcast<SentStudy> study) {
        this.study = study;
    }

    @Override
    public SentResult apply(Iterator<Map<String, Double>> partition) {
        Map<String, Double> point = partition.next();
        try {
            return SentResult.of(study.value().check().at(point));
        } catch (RuntimeException broken) {
            return SentResult.broken(point, broken);
        }
    }
}
