package leadwright.planner.plan;

/**
 * A mated joint.
 *
 * @param from the end nearer the device: a connection's full name or an item instance, {@code #} and the end where it
 *     matters ({@code spread/1#branch-3})
 * @param to the end nearer the tester: an item instance or {@code jack-1}
 */
public record Joint(String from, String to) {}
