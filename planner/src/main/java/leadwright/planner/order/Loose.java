package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Obligation.Phase;

/**
 * What {@link Stay} leaves out of the bound: readings that several hookups may take, and changes of the operating mode.
 *
 * <p>A state in which only such readings are left must be come to and visited once more. A mode is come to once in every
 * powered stretch that has readings in it; without a battery each hookup and polarity has a stretch of its own.
 */
final class Loose {
    private final Problem problem;
    private final List<Stay> stays;
    private final boolean cutStops;

    /** Ordinary readings that several hookups may take. */
    private final List<Unit> shared;

    /** Mains on a part that several hookups may take: a tour counts it. */
    private final List<Unit> last;

    /** Readings in another mode than the device starts in. */
    private final List<Unit> moded;

    Loose(Problem problem, List<Stay> stays) {
        this.problem = problem;
        this.stays = stays;
        this.cutStops = !problem.poses().onUnderSupplyOpen() && problem.scene().toleratesPowerCut();
        this.shared = problem.units().stream()
                .filter(unit -> !unit.bound() && unit.ordinary())
                .toList();
        this.last = problem.units().stream()
                .filter(unit -> !unit.bound() && unit.phase() == Phase.MAINS_ON_PART)
                .toList();
        this.moded = problem.units().stream()
                .filter(unit -> unit.stand().on() && unit.stand().mode() != 0)
                .toList();
    }

    int rest(int hookup, int pose, BitSet done, int[] left) {
        Pose at = problem.poses().get(pose);
        int least = states(at, done, left);
        if (problem.poses().modes().size() > 1) {
            least += modes(hookup, at, done)
                    + stays.stream().mapToInt(stay -> stay.further(done)).sum();
        }
        return least;
    }

    private int states(Pose at, BitSet done, int[] left) {
        List<Stand> counted = new ArrayList<>();
        Set<Polarity> entered = new HashSet<>();
        BenchTimes times = problem.scene().times();
        int least = 0;
        for (Unit unit : shared) {
            Stand stand = unit.stand();
            boolean more = !done.get(unit.index()) && !counted.contains(stand) && !visited(stand, left, done);
            if (!more) {
                continue;
            }
            counted.add(stand);
            least += Math.max(0, times.settling() - times.select());
            if (at.state() == stand.state()) {
                continue;
            }
            // Where opening the supply stops the device, it may be opened for that alone: it is not counted again.
            boolean cut = stand.state().fault() == Fault.SUPPLY_OPEN && cutStops;
            if (stand.state().fault() != Fault.NONE && !cut) {
                least += 2 * times.conductor();
            }
            Polarity polarity = stand.state().polarity();
            boolean anew = polarity != Polarity.NONE
                    && at.selector() != polarity
                    && !problem.scene().mayReplugUnderPower()
                    && !polarityVisited(polarity, left, done)
                    && entered.add(polarity);
            if (anew) {
                least += Math.min(2 * times.outlet(), times.polarity());
                least += problem.scene().battery() || !stand.on() ? 0 : times.startUp();
            }
        }
        return least;
    }

    /** Whether some hookup's own readings lead to this state. */
    private boolean visited(Stand stand, int[] left, BitSet done) {
        for (Unit unit : last) {
            if (!done.get(unit.index()) && unit.stand().state() == stand.state()) {
                return true;
            }
        }
        for (int h = 0; h < left.length; h++) {
            List<Stay.Item> items = stays.get(h).items();
            for (int i = 0; i < items.size(); i++) {
                if ((left[h] >> i & 1) == 1 && items.get(i).state() == stand.state()) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean polarityVisited(Polarity polarity, int[] left, BitSet done) {
        for (Unit unit : last) {
            if (!done.get(unit.index()) && unit.stand().state().polarity() == polarity) {
                return true;
            }
        }
        for (int h = 0; h < left.length; h++) {
            List<Stay.Item> items = stays.get(h).items();
            for (int i = 0; i < items.size(); i++) {
                if ((left[h] >> i & 1) == 1 && items.get(i).state().polarity() == polarity) {
                    return true;
                }
            }
        }
        return false;
    }

    /** A powered stretch: any hookup or polarity where these make no difference. */
    private record Stretch(int hookup, Polarity polarity, int mode) {}

    private int modes(int hookup, Pose at, BitSet done) {
        boolean keeps = problem.scene().battery() || !problem.scene().device().runsOnMains();
        boolean roams = keeps || problem.scene().mayReplugUnderPower();
        Set<Stretch> stretches = new HashSet<>();
        for (Unit unit : moded) {
            Stand stand = unit.stand();
            if (done.get(unit.index()) || !roams && !unit.bound()) {
                continue;
            }
            stretches.add(new Stretch(
                    roams ? -1 : unit.hookups().nextSetBit(0),
                    keeps ? Polarity.NONE : stand.state().polarity(),
                    stand.mode()));
        }
        stretches.remove(new Stretch(
                roams ? -1 : hookup, keeps ? Polarity.NONE : at.state().polarity(), at.on() ? at.mode() : 0));
        return stretches.stream()
                .mapToInt(each -> problem.poses().reach(each.mode()))
                .sum();
    }
}
