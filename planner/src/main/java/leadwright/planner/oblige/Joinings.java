package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.PartFunction;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.House;
import leadwright.catalog.rules.Against;
import leadwright.catalog.rules.Joined;
import leadwright.catalog.rules.JoiningRow;
import leadwright.planner.plan.Demand;

/** From a joining row to demands: what is measured as one, against what, with what tied to earth. */
final class Joinings {
    private final Asking asking;
    private final JoiningRow row;
    private final Remarks remarks;

    private Joinings(Asking asking, JoiningRow row, Remarks remarks) {
        this.asking = asking;
        this.row = row;
        this.remarks = remarks;
    }

    /** Demands of one applied part: by part, function or connection. */
    static List<Asked> ofPart(Asking asking, JoiningRow row, AppliedPart part, Remarks remarks) {
        return new Joinings(asking, row, remarks).ofPart(part);
    }

    /** Demands of all parts of one type joined; none where the type has one part only. */
    static List<Asked> ofType(Asking asking, JoiningRow row, PartType type, Remarks remarks) {
        List<AppliedPart> parts = asking.facts().parts(type);
        return parts.size() < 2 ? List.of() : new Joinings(asking, row, remarks).ofType(type, parts);
    }

    /** All leads of the device as one, and what the house joins finer. */
    static List<Asked> ofDevice(Asking asking, JoiningRow row, List<PartType> types, Remarks remarks) {
        return new Joinings(asking, row, remarks).ofDevice(types);
    }

    /** Demands of the housing with applied parts joined to it. */
    static List<Asked> ofHousing(Asking asking, JoiningRow row, Remarks remarks) {
        return new Joinings(asking, row, remarks).ofHousing();
    }

    /** What the rule set joins; and, where the house joins finer, that too: a sum may be above what each shows alone. */
    private List<Asked> ofPart(AppliedPart part) {
        List<Asked> all = new ArrayList<>(ofPart(part, row.joined()));
        Joined finer = finer(part);
        if (finer != row.joined()) {
            for (Asked each : ofPart(part, finer)) {
                if (all.stream().noneMatch(other -> other.demand().equals(each.demand()))) {
                    all.add(each);
                }
            }
        }
        return all;
    }

    private List<Asked> ofPart(AppliedPart part, Joined joined) {
        List<Asked> all = new ArrayList<>();
        switch (joined) {
            case CONNECTION ->
                part.connections()
                        .forEach(connection -> all.addAll(
                                split(connection.name(), List.of(connection.name()), List.of(connection), part)));
            case FUNCTION -> part.functions().forEach(function -> all.addAll(ofFunction(part, function)));
            case PART -> all.addAll(split(part.id(), List.of(part.id()), part.connections(), part));
            default ->
                throw new IllegalStateException(
                        asking.rules().id() + ": " + row.quantity().word() + " joins "
                                + row.joined().word() + ", which is no joining of one part");
        }
        return all;
    }

    private List<Asked> ofFunction(AppliedPart part, PartFunction function) {
        String name = part.functionName(function);
        List<Connection> connections = part.connections().stream()
                .filter(connection -> connection.function().equals(name))
                .toList();
        return split(name, List.of(name), connections, part);
    }

    /** The house's joining where that is finer than the rule set's, else the rule set's. */
    private Joined finer(AppliedPart part) {
        Joined joined = row.joined();
        for (House.JoinStricter stricter : asking.house().joinStricter()) {
            if (stricter.type().equals(part.type().word())) {
                if (stricter.each().equals("connection")) {
                    joined = Joined.CONNECTION;
                } else if (joined == Joined.PART || joined == Joined.DEVICE) {
                    joined = Joined.FUNCTION;
                }
            }
        }
        return joined;
    }

    private List<Asked> split(String subject, List<String> of, List<Connection> measured, AppliedPart part) {
        Map<Optional<String>, List<Connection>> groups =
                asking.facts().therapy().split(measured);
        List<Asked> all = new ArrayList<>();
        groups.forEach((output, connections) -> {
            List<Connection> others = asking.facts().parts().stream()
                    .filter(other -> !other.id().equals(part.id()))
                    .flatMap(other -> other.connections().stream())
                    .toList();
            demand(connections, part.connections(), others)
                    .ifPresent(demand -> all.add(new Asked(
                            groups.size() > 1 ? suffixed(subject, output) : subject,
                            of,
                            demand,
                            Optional.of(part.type()),
                            false)));
        });
        if (groups.size() > 1) {
            splitOff(subject, groups.keySet());
        }
        return all;
    }

    private List<Asked> ofType(PartType type, List<AppliedPart> parts) {
        List<Connection> measured =
                parts.stream().flatMap(part -> part.connections().stream()).toList();
        List<Connection> others = asking.facts().parts().stream()
                .filter(part -> part.type() != type)
                .flatMap(part -> part.connections().stream())
                .toList();
        String subject = "total-" + type.word();
        Map<Optional<String>, List<Connection>> groups =
                asking.facts().therapy().split(measured);
        List<Asked> all = new ArrayList<>();
        groups.forEach((output, connections) -> demand(connections, measured, others)
                .ifPresent(demand -> all.add(new Asked(
                        groups.size() > 1 ? suffixed(subject, output) : subject,
                        connections.stream().map(Connection::part).distinct().toList(),
                        demand,
                        Optional.of(type),
                        true))));
        if (groups.size() > 1) {
            splitOff(subject, groups.keySet());
        }
        return all;
    }

    private List<Asked> ofDevice(List<PartType> types) {
        List<AppliedPart> parts = asking.facts().parts().stream()
                .filter(part -> types.contains(part.type()))
                .toList();
        List<Connection> measured =
                parts.stream().flatMap(part -> part.connections().stream()).toList();
        String subject = "leads";
        Map<Optional<String>, List<Connection>> groups =
                asking.facts().therapy().split(measured);
        List<Asked> all = new ArrayList<>();
        groups.forEach((output, connections) -> demand(connections, measured, List.of())
                .ifPresent(demand -> all.add(new Asked(
                        groups.size() > 1 ? suffixed(subject, output) : subject,
                        connections.stream().map(Connection::part).distinct().toList(),
                        demand,
                        Optional.empty(),
                        false))));
        if (groups.size() > 1) {
            splitOff(subject, groups.keySet());
        }
        for (AppliedPart part : parts) {
            Joined finer = finer(part);
            if (finer != Joined.DEVICE) {
                for (Asked each : ofPart(part, finer)) {
                    if (all.stream().noneMatch(other -> other.demand().equals(each.demand()))) {
                        all.add(each);
                    }
                }
            }
        }
        return all;
    }

    private List<Asked> ofHousing() {
        List<Connection> measured = new ArrayList<>(asking.facts().housing());
        asking.facts().parts().stream()
                .filter(part -> row.joined() == Joined.HOUSING_AND_PARTS || part.type() == PartType.B)
                .forEach(part -> measured.addAll(part.connections()));
        String subject = "equipment";
        if (measured.isEmpty()) {
            // The protective earth alone; a device without one has nothing to be measured at.
            return asking.facts().hasProtectiveEarth()
                    ? List.of(new Asked(subject, List.of(subject), Demand.NOTHING, Optional.empty(), false))
                    : List.of();
        }
        Map<Optional<String>, List<Connection>> groups =
                asking.facts().therapy().split(measured);
        List<Asked> all = new ArrayList<>();
        groups.forEach((output, connections) -> all.add(new Asked(
                groups.size() > 1 ? suffixed(subject, output) : subject,
                connections.stream().map(Connection::part).distinct().toList(),
                Demand.of(Asked.names(connections)),
                Optional.empty(),
                false)));
        if (groups.size() > 1) {
            splitOff(subject, groups.keySet());
        }
        return all;
    }

    private static String suffixed(String subject, Optional<String> output) {
        return output.map(id -> subject + "-" + id).orElse(subject);
    }

    private void splitOff(String subject, Collection<Optional<String>> groups) {
        List<String> outputs = groups.stream().flatMap(Optional::stream).toList();
        remarks.notApplicable(
                row.quantity().word() + " of " + subject + " joined with therapy output " + String.join(", ", outputs),
                "a therapy output has a hookup of its own: it is read alone, and the joined value is not taken",
                row.basis().clause());
    }

    /**
     * The demand, or none where the other pole would be empty.
     *
     * @param measured in one therapy group
     * @param own connections of the same applied part or type, the measured ones included
     * @param others connections of other applied parts
     */
    private Optional<Demand> demand(List<Connection> measured, List<Connection> own, List<Connection> others) {
        Set<Connection> against = new LinkedHashSet<>();
        switch (row.against()) {
            case EARTH -> {}
            case OTHER_CONNECTIONS_OF_DEVICE -> {
                against.addAll(own);
                against.addAll(others);
            }
            case OTHER_CONNECTIONS_OF_PART -> against.addAll(own);
            case UNEARTHED_METAL ->
                asking.facts().unearthedMetal().stream()
                        .map(TouchPoint::connection)
                        .forEach(against::add);
        }
        measured.forEach(against::remove);
        if (row.against() != Against.EARTH && against.isEmpty()) {
            return Optional.empty();
        }
        Therapy therapy = asking.facts().therapy();
        List<Connection> pole = therapy.companions(measured.get(0), against);
        List<Connection> earthed = therapy.companions(measured.get(0), earthed(others));
        if (pole.size() < against.size()) {
            apart("tied in as the other pole");
        }
        if (earthed.size() < earthed(others).size()) {
            apart("tied to earth");
        }
        if (row.against() != Against.EARTH && pole.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Demand.of(Asked.names(measured), Asked.names(pole), Asked.names(earthed)));
    }

    private void apart(String how) {
        remarks.notApplicable(
                row.quantity().word() + " with other parts and a therapy output " + how,
                "a therapy output has a hookup of its own, so that it is in no demand with other parts",
                row.basis().clause());
    }

    private List<Connection> earthed(List<Connection> others) {
        List<Connection> earthed = new ArrayList<>();
        switch (row.earthed()) {
            case NOTHING -> {}
            case OTHER_PARTS_METAL_AND_PORTS -> {
                earthed.addAll(others);
                asking.facts().unearthed().stream()
                        .filter(point -> asking.facts().nothingEarthed() || point.surface() != Surface.INSULATING)
                        .map(TouchPoint::connection)
                        .forEach(earthed::add);
                earthed.addAll(asking.facts().ports());
            }
            case HOUSING_WHERE_NOTHING_IS_EARTHED -> {
                if (asking.facts().nothingEarthed()) {
                    earthed.addAll(asking.facts().housing());
                }
                if (asking.facts().nothingEarthed() && asking.facts().housing().isEmpty()) {
                    remarks.warn(
                            row.quantity().word() + ": the device has no earthed metal and states no accessible part,"
                                    + " so the current has no way back and the reading may be low");
                }
            }
        }
        return earthed;
    }
}
