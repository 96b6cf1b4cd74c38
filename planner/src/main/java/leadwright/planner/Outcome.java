package leadwright.planner;

import java.util.List;
import leadwright.planner.audit.Breach;

/** What comes of a request. */
public sealed interface Outcome {

    /** An audited plan; it may be partial. */
    record Planned(Plan plan) implements Outcome {}

    /** Nothing may be planned; the reason is for a person. */
    record Refused(String reason) implements Outcome {}

    /** The program's own audit refused what it had planned: a fault of the program, never of the input. */
    record Rejected(List<Breach> breaches) implements Outcome {
        public Rejected {
            breaches = List.copyOf(breaches);
        }
    }
}
