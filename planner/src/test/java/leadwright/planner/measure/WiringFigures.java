package leadwright.planner.measure;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import leadwright.planner.plan.Demand;
import leadwright.planner.wire.Rig;
import leadwright.planner.wire.Wiring;

/**
 * Prints for every instance of the benchmark hookups, bound, proof and milliseconds of processor time in a warmed machine, and
 * beside it a general solver's in the same run.
 *
 * <p>Arguments: text that an instance's name must contain ("" for all); seconds for the general solver, 0 for none; most
 * connections that the general solver is tried with.
 */
public final class WiringFigures {
    private static final int WARM = 24;

    private WiringFigures() {}

    public static void main(String[] args) {
        String wanted = args.length > 0 ? args[0] : "";
        long seconds = args.length > 1 ? Long.parseLong(args[1]) : 0;
        int most = args.length > 2 ? Integer.parseInt(args[2]) : 64;
        Families.all().stream()
                .filter(each -> each.kinds().size() <= WARM)
                .forEach(each -> Rig.wire(each.device(), each.kit(), each.obligations()));
        System.out.println("| instance | hookups | bound | proof | ms | solver | ms |");
        System.out.println("| --- | ---: | ---: | --- | ---: | ---: | ---: |");
        for (Instance instance : Families.all()) {
            if (instance.toString().contains(wanted)) {
                System.out.println(row(instance, instance.kinds().size() <= most ? seconds : 0));
            }
        }
    }

    private static String row(Instance instance, long seconds) {
        long start = processorTime();
        Wiring wiring = Rig.wire(instance.device(), instance.kit(), instance.obligations());
        double millis = (processorTime() - start) / 1e6;
        String general = seconds > 0 ? general(instance, wiring, seconds) : "| | |";
        return String.format(
                Locale.ROOT,
                "| %s | %d | %d | %s | %.1f %s",
                instance,
                wiring.proof().answer(),
                wiring.proof().lowerBound(),
                wiring.proof().optimal() ? "proven" : "open",
                millis,
                general);
    }

    private static String general(Instance instance, Wiring wiring, long seconds) {
        List<Demand> covered = new ArrayList<>();
        for (int i = 0; i < instance.demands().size(); i++) {
            if (!wiring.uncovered().contains("d" + i)) {
                covered.add(instance.demands().get(i));
            }
        }
        long start = processorTime();
        GeneralSolver.Found found = GeneralSolver.solve(instance, covered, seconds);
        double millis = (processorTime() - start) / 1e6;
        if (found.proven()
                && wiring.proof().optimal()
                && found.hookups() != wiring.proof().answer()) {
            throw new IllegalStateException(instance + ": the solver proves " + found.hookups() + " hookups");
        }
        return String.format(
                Locale.ROOT,
                "| %s | %.0f |",
                found.proven() ? "" + found.hookups() : "more than " + found.refuted(),
                found.proven() ? millis : seconds * 1e3);
    }

    private static long processorTime() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }
}
