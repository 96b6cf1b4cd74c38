package leadwright.planner.wire;

import leadwright.catalog.house.Times;
import leadwright.catalog.house.Times.JoinPart;
import leadwright.catalog.table.Connectors;
import leadwright.catalog.table.ContactKind;

/** What it takes to put something on a patient connection and to take it off again: foil is quicker than a bath. */
record Handling(Connectors connectors, Times times) {

    /** Whole seconds for one joint, rounded up. */
    long seconds(String terminal, String end) {
        JoinPart joint = times.contact(connectors.joint(terminal, end).timed().word());
        return (joint.join().amount() + joint.part().amount() + 999) / 1000;
    }

    /** Whole seconds of joining, rounded up. */
    long join(ContactKind kind) {
        return (times.contact(kind.timed().word()).join().amount() + 999) / 1000;
    }
}
