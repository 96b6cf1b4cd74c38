package leadwright.planner.plan;

import java.util.Arrays;
import java.util.Optional;

/** Why the device is on the bench; sets the extent of the test. */
public enum Occasion {
    ACCEPTANCE,
    AFTER_REPAIR,
    RECURRENT,
    AFTER_LOAN,
    INCIDENT;

    /** As written in files and on the command line. */
    public String word() {
        return leadwright.catalog.device.Words.of(this);
    }

    public static Optional<Occasion> of(String word) {
        return Arrays.stream(values()).filter(each -> each.word().equals(word)).findFirst();
    }
}
