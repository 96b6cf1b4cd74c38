package leadwright.planner.measure;

import java.util.Locale;
import leadwright.planner.wire.Rig;
import leadwright.planner.wire.Wiring;

/** Prints, for every instance: hookups, bound, proof, and milliseconds in a warmed machine. */
public final class WiringFigures {
    private WiringFigures() {}

    private static long cpu() {
        return java.lang.management.ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    public static void main(String[] args) {
        for (Instance instance : Families.all()) {
            if (instance.kinds().size() <= 24) {
                Rig.wire(instance.device(), instance.kit(), instance.obligations());
            }
        }
        for (Instance instance : Families.all()) {
            if (args.length > 0 && !instance.toString().contains(args[0])) {
                continue;
            }
            System.out.flush();
            long start = cpu();
            Wiring wiring = Rig.wire(instance.device(), instance.kit(), instance.obligations());
            double millis = (cpu() - start) / 1e6;
            System.out.printf(
                    Locale.ROOT,
                    "%-70s %4d >= %4d %-8s %9.1f ms  unc %d%n",
                    instance,
                    wiring.proof().answer(),
                    wiring.proof().lowerBound(),
                    wiring.proof().optimal() ? "proven" : "open",
                    millis,
                    wiring.uncovered().size());
        }
    }
}
