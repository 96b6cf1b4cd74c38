package leadwright.render.edition;

import leadwright.planner.plan.MainsState;

/** The states of the mains: the risk of each in a sentence, and why it is set. */
final class States {

    private States() {}

    static String risk(MainsState state) {
        return switch (state) {
            case OFF ->
                "No mains reaches the device, but a battery may still run it and a charged therapy output may still strike.";
            case ISOLATED ->
                "Dead only because a licensed person has isolated, locked and proved it: another's lock is not yours to open.";
            case INSTALLED_ON -> "The plant is at full mains, and no switch of the tester takes it off.";
            case NORMAL, REVERSED ->
                "Mains is inside the device, and a fault that nobody knows of yet would stand on what you touch.";
            case NORMAL_SUPPLY_OPEN, REVERSED_SUPPLY_OPEN ->
                "STILL LIVE: one conductor is at mains, and the device only looks dead.";
            case NORMAL_EARTH_OPEN, REVERSED_EARTH_OPEN ->
                "With its earth broken, a fault in the device stands on its housing: the first hand that touches it is the earth.";
        };
    }

    static String why(MainsState state) {
        return switch (state) {
            case OFF -> "Wires are changed, and earth and insulation are read, only here.";
            case ISOLATED -> "Earth readings and all wiring of permanent plant are done here.";
            case INSTALLED_ON -> "Leakage of permanent plant can only be read as it stands.";
            case NORMAL -> "The device as it is used.";
            case REVERSED -> "Plugs and sockets may be wired either way: the other conductor now drives the current.";
            case NORMAL_SUPPLY_OPEN, REVERSED_SUPPLY_OPEN ->
                "A broken supply conductor lifts the whole mains part to the live one, and currents that had cancelled no longer"
                        + " do.";
            case NORMAL_EARTH_OPEN, REVERSED_EARTH_OPEN ->
                "What the earth conductor carried away must find another way: through whoever touches the device.";
        };
    }
}
