package leadwright.planner;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import leadwright.catalog.house.Aim;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Tester;
import leadwright.planner.order.Ordering;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Step;
import leadwright.planner.wire.Wiring;

/**
 * The choice among wirings where a house aims at bench time, or at the time of hands on connections, and not at the fewest
 * hookups.
 *
 * <p>Needs: the wiring with the fewest hookups, a way to wire for a kit and to order. Gives: the best of those tried.
 * Method: the kit is wired once more for every smaller number of jacks: fewer wires stand at a time, and fewer joints are
 * made for each. Cost: that of as many plans as the tester has jacks. Proof: none of being the best; {@link #least} is a
 * bound on every wiring, so the gap is stated.
 */
final class Aims {
    private Aims() {}

    /** A wiring with its order. */
    record Choice(Wiring wiring, Ordering ordering) {}

    static Choice best(
            House house, Kit kit, Wiring fewest, Function<Kit, Wiring> wire, Function<Wiring, Ordering> order) {
        Choice first = new Choice(fewest, order.apply(fewest));
        Aim aim = house.aim();
        if (aim == Aim.HOOKUPS) {
            return first;
        }
        List<Choice> tried = new ArrayList<>(List.of(first));
        int jacks = kit.tester().jacks().map(Jacks::count).orElse(0);
        for (int count = jacks - 1; count > 0; count--) {
            Wiring wiring = wire.apply(withJacks(kit, count));
            if (wiring.uncovered().equals(fewest.uncovered())) {
                tried.add(new Choice(wiring, order.apply(wiring)));
            }
        }
        Choice best = first;
        for (Choice each : tried) {
            best = seconds(aim, each) < seconds(aim, best) ? each : best;
        }
        int read = Math.toIntExact((house.times().action("read").amount() + 999) / 1000);
        return said(aim, read, best, first, tried.size());
    }

    private static int seconds(Aim aim, Choice choice) {
        return aim == Aim.TIME
                ? choice.ordering().time().total()
                : choice.ordering().time().parts().getOrDefault(Step.Account.REPLUG, 0);
    }

    private static Choice said(Aim aim, int read, Choice best, Choice first, int tried) {
        Wiring wiring = best.wiring();
        Proof fewest = first.wiring().proof();
        Proof hookups = new Proof(
                wiring.proof().answer(),
                Math.min(fewest.lowerBound(), wiring.proof().answer()),
                String.format(
                        Locale.ROOT,
                        "%s The house aims at %s: of %d wirings tried, with all jacks and with fewer, this takes %d s, the"
                                + " one with the fewest hookups %d s; that none takes less is not proven.",
                        fewest.argument(),
                        aim == Aim.TIME ? "the least bench time" : "the least time of plugging",
                        tried,
                        seconds(aim, best),
                        seconds(aim, first)));
        Wiring as = new Wiring(
                wiring.hookups(),
                wiring.takenIn(),
                hookups,
                first.wiring().shortfalls(),
                first.wiring().remedy(),
                wiring.uncovered(),
                wiring.warnings());
        return new Choice(as, aim == Aim.TIME ? jointly(best.ordering(), read) : best.ordering());
    }

    /** The proof of bench time over all wirings. */
    private static Ordering jointly(Ordering ordering, int read) {
        int least = least(ordering, read);
        int total = ordering.time().total();
        String argument = String.format(
                Locale.ROOT,
                "Whatever the hookups, looking over, each reading at its shortest and writing take %d s; the plan takes %d s."
                        + " For the hookups chosen: %s",
                least,
                total,
                ordering.proof().argument());
        return new Ordering(
                ordering.hookups(),
                ordering.readings(),
                ordering.steps(),
                ordering.time(),
                new Proof(total, least, argument));
    }

    /**
     * Seconds that no choice of hookups saves: what is done before and after all hookups, writing, and each reading as if it
     * were a later one.
     *
     * @param read seconds of a later reading
     */
    static int least(Ordering ordering, int read) {
        int least = 0;
        for (Step step : ordering.steps()) {
            if (step.reading().isPresent()) {
                least += Math.min(read, step.seconds() - step.writing()) + step.writing();
            } else if (step.account() == Step.Account.PREPARE && step.hookup().isEmpty()) {
                least += step.seconds();
            }
        }
        return least;
    }

    private static Kit withJacks(Kit kit, int count) {
        Tester tester = kit.tester();
        Optional<Jacks> jacks = tester.jacks().map(each -> new Jacks(count, each.socket(), each.ties(), each.atRest()));
        Tester fewer = new Tester(
                tester.name(),
                jacks,
                tester.earthJack(),
                tester.touchThrough(),
                tester.inlet(),
                tester.outlets(),
                tester.switches(),
                tester.networks(),
                tester.methods(),
                tester.components(),
                tester.earthTest(),
                tester.insulation(),
                tester.partSource(),
                tester.accuracy(),
                tester.calibratedUntil());
        return new Kit(kit.name(), fewer, kit.items(), kit.checks(), kit.connectors());
    }
}
