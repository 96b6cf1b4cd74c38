package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import leadwright.catalog.device.OperatingMode;
import leadwright.planner.order.Move.Act;
import leadwright.planner.order.Move.Kind;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;

/**
 * Phase 4: the poses of device and mains, and the moves between them.
 *
 * <p>Needs the mains states and modes that readings ask for. Gives a graph in which every move is allowed by the table of
 * what may be handled when: two conductors are never open together; polarity turns through off with the conductors closed;
 * no device starts, is shut down or changes its mode while a conductor is open; a device that was off while the supply was
 * open comes back through an outlet that is off.
 */
final class Poses {
    private final Scene scene;
    private final List<String> modes;
    private final List<Pose> poses = new ArrayList<>();
    private final Map<Pose, Integer> index = new LinkedHashMap<>();
    private final List<Move> moves = new ArrayList<>();
    private final List<List<Move>> from = new ArrayList<>();
    private final Set<MainsState> wanted;
    private final boolean foundOn;

    /**
     * @param wanted mains states of the readings
     * @param modes ids of the operating modes, the one that the device starts in first
     * @param foundOn permanent plant that is never isolated: it is found running and left so
     */
    Poses(Scene scene, Set<MainsState> wanted, List<String> modes, boolean foundOn) {
        this.scene = scene;
        this.wanted = wanted;
        this.modes = modes;
        this.foundOn = foundOn;
        if (scene.permanent()) {
            permanentPlant();
        } else {
            switchedByTester();
        }
        poses.forEach(pose -> from.add(new ArrayList<>()));
        moves.forEach(move -> from.get(move.from()).add(move));
    }

    List<Pose> all() {
        return poses;
    }

    Pose get(int pose) {
        return poses.get(pose);
    }

    /** Least seconds from this pose to each one without going through a fault; {@link Stay#FAR} where there is no way. */
    int[] around(int pose) {
        int[] least = new int[poses.size()];
        Arrays.fill(least, Stay.FAR);
        least[pose] = 0;
        boolean better = true;
        while (better) {
            better = false;
            for (Move move : moves) {
                int by = least[move.from()] + move.seconds();
                if (!get(move.to()).fault() && by < least[move.to()]) {
                    least[move.to()] = by;
                    better = true;
                }
            }
        }
        return least;
    }

    List<Move> from(int pose) {
        return from.get(pose);
    }

    List<String> modes() {
        return modes;
    }

    int indexOf(Pose pose) {
        return index.get(pose);
    }

    /** The pose in which the bench is found. */
    int start() {
        return 0;
    }

    /** Whether a plan may end in it. */
    boolean end(int pose) {
        Pose at = poses.get(pose);
        return foundOn || !at.on() && at.dead();
    }

    /** Whether supply-open readings find the device on. */
    boolean onUnderSupplyOpen() {
        return scene.battery() && scene.toleratesPowerCut();
    }

    private int add(Pose pose) {
        Integer known = index.putIfAbsent(pose, poses.size());
        if (known != null) {
            return known;
        }
        poses.add(pose);
        return poses.size() - 1;
    }

    private void move(Pose a, Pose b, Act... acts) {
        moves.add(Move.of(add(a), add(b), acts));
    }

    private Act act(Kind kind) {
        BenchTimes times = scene.times();
        int seconds = switch (kind) {
            case OUTLET_ON, OUTLET_OFF -> times.outlet();
            case TURN -> times.polarity();
            case SELECT_POLARITY -> times.selector();
            case OPEN_SUPPLY, CLOSE_SUPPLY, OPEN_EARTH, CLOSE_EARTH -> times.conductor();
            case ON_WITH_SUPPLY_OPEN, OFF_FROM_SUPPLY_OPEN -> times.outlet() + times.conductor();
            case START -> times.startUp();
            case SHUT_DOWN -> times.shutDown();
            case MODE, ENERGISED, ISOLATED -> 0;
        };
        return new Act(kind, seconds);
    }

    private void permanentPlant() {
        Pose on = new Pose(MainsState.INSTALLED_ON, Polarity.NONE, true, 0);
        if (foundOn) {
            add(on);
        } else {
            Pose isolated = new Pose(MainsState.ISOLATED, Polarity.NONE, false, 0);
            add(isolated);
            if (wanted.contains(MainsState.INSTALLED_ON)) {
                move(isolated, on, act(Kind.ENERGISED), act(Kind.START));
                for (int mode = 0; mode < modes.size(); mode++) {
                    Pose running = new Pose(MainsState.INSTALLED_ON, Polarity.NONE, true, mode);
                    move(running, isolated, act(Kind.SHUT_DOWN), act(Kind.ISOLATED));
                }
            }
        }
        modeChanges();
    }

    private void switchedByTester() {
        List<Polarity> polarities = new ArrayList<>();
        for (Polarity polarity : List.of(Polarity.NORMAL, Polarity.REVERSED)) {
            if (wanted.stream().anyMatch(state -> state.polarity() == polarity)) {
                polarities.add(polarity);
            }
        }
        add(new Pose(MainsState.OFF, Polarity.NONE, false, 0));
        for (Polarity selector : Polarity.values()) {
            if (selector == Polarity.NONE || polarities.contains(selector)) {
                inOff(selector, polarities);
            }
        }
        for (Polarity polarity : polarities) {
            inPolarity(polarity, polarities);
        }
        modeChanges();
    }

    private Pose off(Polarity selector, boolean on, int mode) {
        return new Pose(MainsState.OFF, selector, on, mode);
    }

    private static Pose at(Polarity polarity, Fault fault, boolean on, int mode) {
        return new Pose(MainsState.of(polarity, fault), polarity, on, mode);
    }

    /** Battery, or a device that needs no mains: it can be on while the outlet is off. */
    private boolean runsUnplugged() {
        return scene.battery() || !scene.device().runsOnMains();
    }

    private void inOff(Polarity selector, List<Polarity> polarities) {
        if (runsUnplugged()) {
            move(off(selector, false, 0), off(selector, true, 0), act(Kind.START));
            for (int mode = 0; mode < modes.size(); mode++) {
                move(off(selector, true, mode), off(selector, false, 0), act(Kind.SHUT_DOWN));
            }
        }
        for (Polarity polarity : polarities) {
            List<Act> before =
                    selector == Polarity.NONE || selector == polarity ? List.of() : List.of(act(Kind.SELECT_POLARITY));
            move(
                    off(selector, false, 0),
                    at(polarity, Fault.NONE, true, 0),
                    acts(before, act(Kind.OUTLET_ON), act(Kind.START)));
            boolean supplyOpen = wanted.contains(MainsState.of(polarity, Fault.SUPPLY_OPEN));
            if (supplyOpen && !onUnderSupplyOpen()) {
                move(
                        off(selector, false, 0),
                        at(polarity, Fault.SUPPLY_OPEN, false, 0),
                        acts(before, act(Kind.ON_WITH_SUPPLY_OPEN)));
            }
            for (int mode = 0; mode < modes.size() && runsUnplugged(); mode++) {
                move(
                        off(selector, true, mode),
                        at(polarity, Fault.NONE, true, mode),
                        acts(before, act(Kind.OUTLET_ON)));
                if (supplyOpen && onUnderSupplyOpen()) {
                    move(
                            off(selector, true, mode),
                            at(polarity, Fault.SUPPLY_OPEN, true, mode),
                            acts(before, act(Kind.ON_WITH_SUPPLY_OPEN)));
                }
            }
        }
    }

    private static Act[] acts(List<Act> before, Act... after) {
        List<Act> all = new ArrayList<>(before);
        all.addAll(List.of(after));
        return all.toArray(new Act[0]);
    }

    private void inPolarity(Polarity polarity, List<Polarity> polarities) {
        for (int mode = 0; mode < modes.size(); mode++) {
            Pose live = at(polarity, Fault.NONE, true, mode);
            for (Polarity other : polarities) {
                if (other != polarity) {
                    turn(live, other, mode);
                }
            }
            if (runsUnplugged()) {
                move(live, off(polarity, true, mode), act(Kind.OUTLET_OFF));
            } else {
                move(live, off(polarity, false, 0), act(Kind.SHUT_DOWN), act(Kind.OUTLET_OFF));
            }
            if (wanted.contains(MainsState.of(polarity, Fault.SUPPLY_OPEN))) {
                supplyOpen(live, mode);
            }
            if (wanted.contains(MainsState.of(polarity, Fault.EARTH_OPEN))) {
                Pose open = at(polarity, Fault.EARTH_OPEN, true, mode);
                move(live, open, act(Kind.OPEN_EARTH));
                move(open, live, act(Kind.CLOSE_EARTH));
            }
        }
    }

    private void turn(Pose live, Polarity other, int mode) {
        if (runsUnplugged()) {
            move(live, at(other, Fault.NONE, true, mode), act(Kind.TURN));
        } else {
            move(live, at(other, Fault.NONE, true, 0), act(Kind.SHUT_DOWN), act(Kind.TURN), act(Kind.START));
        }
    }

    private void supplyOpen(Pose live, int mode) {
        Polarity polarity = live.selector();
        boolean on = onUnderSupplyOpen();
        Pose open = at(polarity, Fault.SUPPLY_OPEN, on, on ? mode : 0);
        if (scene.toleratesPowerCut()) {
            move(live, open, act(Kind.OPEN_SUPPLY));
        } else {
            move(live, open, act(Kind.SHUT_DOWN), act(Kind.OPEN_SUPPLY));
        }
        if (on) {
            move(open, live, act(Kind.CLOSE_SUPPLY));
            move(open, off(polarity, true, mode), act(Kind.OFF_FROM_SUPPLY_OPEN));
        } else if (mode == 0) {
            move(open, live, act(Kind.CLOSE_SUPPLY), act(Kind.START));
            move(open, off(polarity, false, 0), act(Kind.OFF_FROM_SUPPLY_OPEN));
        }
    }

    /** Keys are pressed only with no fault. */
    private void modeChanges() {
        for (int i = 0; i < poses.size(); i++) {
            Pose pose = poses.get(i);
            if (!pose.on() || pose.fault()) {
                continue;
            }
            for (int mode = 0; mode < modes.size(); mode++) {
                if (mode != pose.mode()) {
                    Pose other = new Pose(pose.state(), pose.selector(), true, mode);
                    move(pose, other, new Act(Kind.MODE, reach(mode)));
                }
            }
        }
    }

    /** Seconds to bring the device into a mode. */
    int reach(int mode) {
        return scene.device().modes().stream()
                .filter(each -> each.id().equals(modes.get(mode)))
                .map(OperatingMode::reach)
                .mapToInt(BenchTimes::seconds)
                .findFirst()
                .orElse(0);
    }
}
