package leadwright.planner.order;

import java.util.List;
import leadwright.planner.plan.Joint;

/**
 * A mated joint of a hookup, with its bench times.
 *
 * @param from the end nearer the device: a connection's full name or an item instance
 * @param to the end nearer the tester: an item instance, {@code jack-1}, {@code earth-jack} or {@code second-jack}
 * @param branch whether {@code to} is taken at one of its branches
 * @param rear whether it goes into the back of the plug that stands in {@code to}
 * @param insulated whether a hand may move it under power, where the house allows that
 * @param connections connections whose chains run through it
 */
record Contact(
        String from,
        String to,
        boolean branch,
        boolean rear,
        int join,
        int part,
        boolean insulated,
        List<String> connections) {
    /** Worth of one second saved: more than all contacts of a hookup together are worth apart from their seconds. */
    static final int SECOND = 1000;

    Contact {
        connections = List.copyOf(connections);
    }

    /** What keeping it is worth: seconds first, then that it is one which a hand may not always move. */
    int worth() {
        return (join + part) * SECOND + (insulated ? 0 : 1);
    }

    /** The joint without the branch that it takes. */
    Joint plain() {
        return new Joint(from, to);
    }

    Contact renamed(java.util.function.UnaryOperator<String> names) {
        return new Contact(names.apply(from), names.apply(to), branch, rear, join, part, insulated, connections);
    }
}
