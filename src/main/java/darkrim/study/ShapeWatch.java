package darkrim.study;

import darkrim.verdict.Watch;

/**
 * Says with every step which of two shapes is being checked, so that the time left is not taken for that of both.
 *
 * @param watch hears it
 * @param shape what is said before the step
 */
record ShapeWatch(Watch watch, String shape) implements Watch {
    @Override
    public void progress(String step, long done, long most) {
        watch.progress(shape + step, done, most);
    }

    @Override
    public boolean stop() {
        return watch.stop();
    }
}
