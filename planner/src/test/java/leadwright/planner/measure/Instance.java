package leadwright.planner.measure;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Ties;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Obligation;
import leadwright.planner.wire.Rig;

/**
 * A wiring problem of the benchmark: as device, kit and readings for the planner, and in bare numbers for a general solver.
 *
 * @param kinds terminal of each connection, by connection number
 * @param adapters pieces of the adapter of each terminal
 * @param fans fan-outs with ordinary branches
 * @param combs fan-outs whose branches are touch-proof pins
 */
public record Instance(
        Family family,
        String name,
        Device device,
        List<String> kinds,
        int jacks,
        Ties ties,
        Map<String, Integer> adapters,
        List<Fan> fans,
        List<Fan> combs,
        List<Demand> demands) {

    /** The five families. */
    public enum Family {
        JOINED,
        ALONE,
        AGAINST_REST,
        REALISTIC,
        CROSSING
    }

    /** So many fan-outs with so many branches. */
    public record Fan(int branches, int stock) {}

    public Kit kit() {
        return Kits.of(this);
    }

    public List<Obligation> obligations() {
        return IntStream.range(0, demands.size())
                .mapToObj(i -> Rig.reading("d" + i, demands.get(i)))
                .toList();
    }

    public List<String> names() {
        return Rig.names(device);
    }

    @Override
    public String toString() {
        return family + " " + name + " (" + kinds.size() + " connections, " + demands.size() + " demands, " + jacks
                + " jacks, " + ties + ")";
    }
}
