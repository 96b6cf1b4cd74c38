package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.EarthPoint;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.kit.TouchThrough;
import leadwright.catalog.table.ElectrodeSet;
import leadwright.catalog.table.ElectrodeSets;
import leadwright.catalog.table.ElectrodeWire;
import leadwright.catalog.table.WireMarking;
import leadwright.planner.Plan;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/**
 * Phase 1: the rows of the device, the same on every sheet of a plan.
 *
 * @param groups applied parts in panel order, then one group for housing, earth and mains
 */
record Panel(List<Group> groups) {
    static final String PROBE = Device.TOUCH_PROBE;
    static final String INLET = "inlet";
    static final String EARTH = "earth.";
    static final String TOUCH = "touch.";

    Panel {
        groups = List.copyOf(groups);
    }

    /** What a row is for. */
    enum Kind {
        PATIENT,
        HOUSING,
        PORT,
        PROBE,
        TOUCH,
        EARTH,
        INLET
    }

    /**
     * Pins under one name.
     *
     * @param type type of the applied part; empty, as its mark, for the group of housing, earth and mains
     */
    record Group(String id, String name, Optional<PartType> type, Optional<Marks.Mark> mark, List<Pin> pins) {
        Group {
            pins = List.copyOf(pins);
        }

        boolean below() {
            return type.isEmpty();
        }

        Group with(List<Pin> others) {
            return new Group(id, name, type, mark, others);
        }
    }

    /**
     * One terminal or place of the device.
     *
     * @param id full connection name, or {@code earth.}, {@code touch.} and a place, or {@code inlet}
     * @param place touch point, port or earth point concerned; empty for patient connections
     */
    record Pin(String id, Kind kind, String label, Optional<WireMarking> marking, String place) {
        String colourWords() {
            return marking.flatMap(WireMarking::colour)
                    .map(main -> main
                            + marking.flatMap(WireMarking::second)
                                    .map(other -> "/" + other)
                                    .orElse(""))
                    .orElse("");
        }
    }

    List<Pin> pins() {
        return groups.stream().flatMap(group -> group.pins().stream()).toList();
    }

    static Panel of(Plan plan) {
        List<Group> groups = new ArrayList<>();
        for (String id : plan.device().panel()) {
            plan.device()
                    .part(id)
                    .filter(part -> !part.connections().isEmpty())
                    .ifPresent(part -> groups.add(part(plan, part)));
        }
        List<Pin> below = below(plan);
        if (!below.isEmpty()) {
            groups.add(new Group("", "Housing and mains", Optional.empty(), Optional.empty(), below));
        }
        return new Panel(groups);
    }

    private static Group part(Plan plan, AppliedPart part) {
        Map<String, WireMarking> markings = new LinkedHashMap<>();
        Optional<ElectrodeSet> set = part.set().flatMap(ElectrodeSets.builtIn()::find);
        for (ElectrodeWire wire : set.map(ElectrodeSet::wires).orElse(List.of())) {
            markings.put(wire.id(), wire.marking(plan.house().labels()));
        }
        List<Pin> pins = new ArrayList<>();
        for (Connection each : part.connections()) {
            String end = each.name().substring(each.name().lastIndexOf('.') + 1);
            Optional<WireMarking> marking = Optional.ofNullable(markings.get(end));
            String label = marking.map(WireMarking::label).or(each::label).orElse(end);
            pins.add(new Pin(each.name(), Kind.PATIENT, label, marking, ""));
        }
        Marks.Mark mark = Marks.of(part.type(), part.defibrillationProof());
        return new Group(part.id(), part.name(), Optional.of(part.type()), Optional.of(mark), pins);
    }

    /** Housing and ports that are wired, touched places, earth points, own touch probe, inlet: the order of the sockets. */
    private static List<Pin> below(Plan plan) {
        Device device = plan.device();
        Set<String> wired = new LinkedHashSet<>();
        Set<String> earth = new LinkedHashSet<>();
        for (Hookup hookup : plan.hookups()) {
            hookup.chains().forEach(chain -> wired.add(chain.connection()));
            hookup.earth().stream()
                    .filter(path -> path.pole().equals("part"))
                    .map(EarthPath::point)
                    .forEach(earth::add);
        }
        Set<String> touched = new LinkedHashSet<>();
        for (Reading reading : plan.readings()) {
            Obligation due = reading.obligation();
            boolean earthReading = due.phase() == Obligation.Phase.EARTH;
            if (earthReading || due.isTouch()) {
                due.place().ifPresent(place -> (earthReading ? earth : touched).add(place));
            }
        }
        Set<String> reference = new TreeSet<>();
        for (Hookup hookup : plan.hookups()) {
            hookup.earth().stream()
                    .map(EarthPath::point)
                    .filter(point -> !earth.contains(point))
                    .forEach(reference::add);
        }
        // The second lead's end moves too: to the plug of a cord that is read alone.
        plan.steps().stream()
                .filter(step -> step.does() == Step.Act.CLIP)
                .flatMap(step -> step.place().stream())
                .filter(place -> !earth.contains(place) && !wired.contains("housing." + place))
                .filter(place -> !wired.contains("port." + place))
                .forEach(reference::add);
        List<Pin> pins = new ArrayList<>();
        for (TouchPoint point : device.touchPoints()) {
            if (wired.contains("housing." + point.id())) {
                pins.add(new Pin("housing." + point.id(), Kind.HOUSING, point.name(), Optional.empty(), point.id()));
            }
        }
        for (Port port : device.ports()) {
            if (wired.contains("port." + port.id())) {
                pins.add(new Pin("port." + port.id(), Kind.PORT, port.name(), Optional.empty(), port.id()));
            }
        }
        if (wired.contains(PROBE)) {
            pins.add(new Pin(PROBE, Kind.PROBE, "Touch probe", Optional.empty(), ""));
        }
        // A wired place has its row already; it needs another one only where the earth lead itself is drawn to it.
        Set<String> drawnTo = new LinkedHashSet<>();
        plan.hookups().forEach(hookup -> hookup.earth().forEach(path -> drawnTo.add(path.point())));
        earth.removeIf(place -> !drawnTo.contains(place)
                && pins.stream().anyMatch(pin -> pin.place().equals(place)));
        Set<String> placed = new LinkedHashSet<>(earth);
        pins.forEach(pin -> placed.add(pin.place()));
        for (String place : inFileOrder(device, touched)) {
            if (placed.add(place)) {
                pins.add(new Pin(TOUCH + place, Kind.TOUCH, name(plan, place), Optional.empty(), place));
            }
        }
        for (Set<String> points : List.of(earth, reference)) {
            for (String place : inFileOrder(device, points)) {
                pins.add(new Pin(EARTH + place, Kind.EARTH, name(plan, place), Optional.empty(), place));
            }
        }
        boolean own = plan.kit().tester().touchThrough().equals(Optional.of(TouchThrough.OWN));
        if (own && !touched.isEmpty()) {
            pins.add(new Pin(PROBE, Kind.PROBE, "Touch probe", Optional.empty(), ""));
        }
        if (Socket.outlet(plan)) {
            pins.add(new Pin(INLET, Kind.INLET, inletName(device), Optional.empty(), INLET));
        }
        return pins;
    }

    private static String inletName(Device device) {
        return switch (device.supply().connection()) {
            case FIXED_CORD -> "Mains cord";
            case EXTERNAL_ADAPTER -> "Supply adapter";
            default -> "Mains inlet";
        };
    }

    private static List<String> inFileOrder(Device device, Set<String> places) {
        List<String> all = new ArrayList<>();
        device.touchPoints().forEach(point -> all.add(point.id()));
        device.ports().forEach(port -> all.add(port.id()));
        device.earthPoints().forEach(point -> all.add(point.id()));
        List<String> ordered =
                new ArrayList<>(all.stream().filter(places::contains).distinct().toList());
        places.stream().filter(place -> !ordered.contains(place)).forEach(ordered::add);
        return ordered;
    }

    /** A place's name in the device file; the implied earth pins in our words. */
    static String name(Plan plan, String place) {
        Device device = plan.device();
        Optional<String> named = device.touchPoints().stream()
                .filter(point -> point.id().equals(place))
                .map(TouchPoint::name)
                .findFirst()
                .or(() -> device.ports().stream()
                        .filter(port -> port.id().equals(place))
                        .map(Port::name)
                        .findFirst())
                .or(() -> device.earthPoints().stream()
                        .filter(point -> point.id().equals(place))
                        .map(EarthPoint::name)
                        .findFirst());
        return named.orElseGet(() -> switch (place) {
            case "inlet-earth" -> say(plan, "Inlet, earth pin");
            case "cord-earth" -> say(plan, "Cord, earth contact");
            case "cord-plug-earth" -> say(plan, "Cord's plug, earth pin");
            case "reference-earth" -> say(plan, "Reference earth");
            default -> place;
        });
    }

    /** Our own phrase in the department's word for earth; never used on text from a file. */
    static String say(Plan plan, String phrase) {
        return switch (plan.house().words()) {
            case EARTH -> phrase;
            case GROUND -> phrase.replace("earth", "ground").replace("Earth", "Ground");
        };
    }

    /** The mark of the device's protection class; none for an internally powered one. */
    static Optional<Marks.Mark> classMark(Device device) {
        Protection protection = device.protection();
        return switch (protection) {
            case CLASS_1 -> Optional.of(Marks.Mark.PROTECTIVE_EARTH);
            case CLASS_2 -> Optional.of(Marks.Mark.CLASS_II);
            case INTERNALLY_POWERED -> Optional.empty();
        };
    }
}
