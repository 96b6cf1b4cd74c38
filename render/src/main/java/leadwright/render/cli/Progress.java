package leadwright.render.cli;

import java.io.PrintWriter;
import java.util.Timer;
import java.util.TimerTask;

/** Says on standard error what is being done, once it has taken longer than a second. */
final class Progress implements AutoCloseable {

    private static final long PATIENCE_MS = 1_000;

    private final PrintWriter err;
    private final Timer timer = new Timer("progress", true);
    private TimerTask waiting;

    Progress(PrintWriter err) {
        this.err = err;
    }

    /** The stage that begins, in a word or two: {@code planning}. */
    void stage(String doing) {
        stop();
        TimerTask task = new TimerTask() {
            @Override
            public void run() {
                err.println("leadwright: " + doing + " …");
                err.flush();
            }
        };
        waiting = task;
        timer.schedule(task, PATIENCE_MS);
    }

    private void stop() {
        if (waiting != null) {
            waiting.cancel();
        }
    }

    @Override
    public void close() {
        stop();
        timer.cancel();
    }
}
