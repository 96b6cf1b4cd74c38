package leadwright.planner.mistake;

import java.util.List;
import java.util.Optional;

/** Something that makes readings other than planned: a slip at the bench, or a fault of the device. */
public sealed interface Cause permits Slip, Fault {
    /** Unique among the causes of a plan. */
    String id();

    /** In which it acts; empty where it concerns every reading. */
    Optional<String> hookup();

    /** Connections, items, jacks, places or readings that it concerns. */
    List<String> things();

    Effect effect();

    /** In a few words, for people. */
    String words();
}
