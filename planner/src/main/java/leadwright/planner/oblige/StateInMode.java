package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.OperatingMode;
import leadwright.catalog.rules.Condition;
import leadwright.catalog.rules.Polarity;
import leadwright.catalog.rules.TestRow;
import leadwright.planner.plan.MainsState;

/**
 * A state of the mains in an operating mode.
 *
 * @param mode operating mode, {@code on} for a device without modes, {@code off} where the device is not started
 * @param condition condition that the limit is for; opening a functional earth is none
 * @param severalModes whether the key has to name the mode
 */
record StateInMode(MainsState state, String mode, Condition condition, boolean severalModes, Optional<String> note) {

    static final String ON = "on";
    static final String NOT_STARTED = "off";

    /** Device off and, where it is plugged at all, without mains. */
    static final StateInMode OFF =
            new StateInMode(MainsState.OFF, NOT_STARTED, Condition.NONE, false, Optional.empty());

    /** Permanent plant, isolated by a licensed person. */
    static final StateInMode ISOLATED =
            new StateInMode(MainsState.ISOLATED, NOT_STARTED, Condition.NONE, false, Optional.empty());

    Optional<String> keyOfMode() {
        return severalModes ? Optional.of("mode-" + mode) : Optional.empty();
    }

    /** The states in which a rule set's row is read on this device. */
    static List<StateInMode> of(TestRow row, DeviceFacts facts) {
        return inAll(row, facts).stream()
                .filter(each -> row.switchedOffToo() || !each.mode().equals(SwitchedOff.MODE))
                .toList();
    }

    private static List<StateInMode> inAll(TestRow row, DeviceFacts facts) {
        if (!row.started() || facts.passive()) {
            return List.of(facts.fixedPlant() ? ISOLATED : OFF);
        }
        List<StateInMode> all = new ArrayList<>();
        if (facts.fixedPlant()) {
            all.addAll(inModes(MainsState.INSTALLED_ON, Condition.NONE, facts.device(), Optional.empty()));
            return all;
        }
        if (row.polarities().isEmpty()) {
            all.addAll(inModes(MainsState.OFF, Condition.NONE, facts.device(), Optional.empty()));
            return all;
        }
        for (Condition condition : row.scope().conditions()) {
            for (Polarity polarity : polarities(row, facts)) {
                all.addAll(inModes(state(polarity, condition), condition, facts.device(), Optional.empty()));
            }
        }
        if (row.functionalEarthOpenToo() && facts.functionalEarthInCord()) {
            for (Polarity polarity : polarities(row, facts)) {
                all.addAll(
                        inModes(
                                state(polarity, Condition.EARTH_OPEN),
                                Condition.NONE,
                                facts.device(),
                                Optional.of(
                                        "the opened conductor is the functional earth: no fault, the limit without fault holds")));
            }
        }
        return all;
    }

    /** A plug that goes in either way round is read both ways, whatever the rule set asks. */
    private static List<Polarity> polarities(TestRow row, DeviceFacts facts) {
        return facts.eitherWayRound() ? List.of(Polarity.values()) : row.polarities();
    }

    private static MainsState state(Polarity polarity, Condition condition) {
        return MainsState.of(
                polarity == Polarity.NORMAL ? MainsState.Polarity.NORMAL : MainsState.Polarity.REVERSED,
                switch (condition) {
                    case NONE -> MainsState.Fault.NONE;
                    case SUPPLY_OPEN -> MainsState.Fault.SUPPLY_OPEN;
                    case EARTH_OPEN -> MainsState.Fault.EARTH_OPEN;
                });
    }

    private static List<StateInMode> inModes(
            MainsState state, Condition condition, Device device, Optional<String> note) {
        List<OperatingMode> modes = device.modes();
        if (modes.isEmpty()) {
            return List.of(new StateInMode(state, ON, condition, false, note));
        }
        // With the supply open a device without battery is off, and in none of its modes: it is read once.
        boolean off = state.fault() == MainsState.Fault.SUPPLY_OPEN && device.battery() == Battery.NONE;
        return modes.stream()
                .limit(off ? 1 : modes.size())
                .map(mode -> new StateInMode(
                        state,
                        mode.id(),
                        condition,
                        !off,
                        off
                                ? Optional.of(
                                        "the device is off in this state, whatever its mode was; leave its switches as they are")
                                : note))
                .toList();
    }
}
