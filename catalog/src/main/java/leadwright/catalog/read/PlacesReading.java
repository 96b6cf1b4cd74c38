package leadwright.catalog.read;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.EarthPoint;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Findings;
import leadwright.catalog.text.Located;

/**
 * Places of the housing that a person, a clip or a probe reaches.
 *
 * @param ids ids of all of them: each place has one name
 */
record PlacesReading(List<Port> ports, List<TouchPoint> touchPoints, List<EarthPoint> earthPoints, Ids ids) {

    static PlacesReading of(Fields top, ConnectorWords connectors) {
        Findings findings = top.findings();
        Ids ids = new Ids("touch point, earth point or port", findings);
        top.assumed("ports", Optional.of(true), true, "taken as none");
        List<Port> ports = new ArrayList<>();
        for (Fields row : top.rows("ports")) {
            ports.add(port(row, ids, connectors));
        }
        Distances distances = new Distances(findings);
        top.assumed("touch-points", Optional.of(true), true, "taken as none");
        List<TouchPoint> touchPoints = new ArrayList<>();
        for (Fields row : top.rows("touch-points")) {
            String id = ids.claim(row);
            touchPoints.add(new TouchPoint(
                    id,
                    row.optionalText("name").orElse(id),
                    row.assumed(
                            "earthed",
                            row.optionalWord("earthed", Earthed.values(), Earthed::word),
                            Earthed.UNKNOWN,
                            "taken as unknown"),
                    row.assumed(
                            "surface",
                            row.optionalWord("surface", Surface.values(), Surface::word),
                            Surface.METAL,
                            "taken as metal"),
                    distances.distance(row),
                    distances.from(row, id)));
        }
        List<EarthPoint> earthPoints = new ArrayList<>();
        for (Fields row : top.rows("earth-points")) {
            String id = ids.claim(row);
            earthPoints.add(new EarthPoint(
                    id,
                    row.optionalText("name").orElse(id),
                    row.oneOf("terminal", connectors.words()),
                    distances.distance(row),
                    distances.from(row, id)));
        }
        distances.check(touchPoints, earthPoints);
        return new PlacesReading(List.copyOf(ports), List.copyOf(touchPoints), List.copyOf(earthPoints), ids);
    }

    private static Port port(Fields row, Ids ids, ConnectorWords connectors) {
        String id = ids.claim(row);
        Optional<String> terminal = row.optionalOneOf("terminal", connectors.words());
        Optional<Surface> surface = row.optionalWord("surface", Surface.values(), Surface::word);
        if (row.has("terminal") && row.has("surface")) {
            row.findings()
                    .problem(row.at("surface"), "'surface' does not go with 'terminal'; keep the one that is touched");
        }
        if (!row.has("terminal")) {
            row.assumed("surface", surface, Surface.METAL, "taken as metal");
        }
        return new Port(
                id,
                row.optionalText("name").orElse(id),
                terminal.or(() -> surface.map(Surface::word)).orElse(Surface.METAL.word()));
    }

    /** Routed distances, some of which count from another point. */
    private static final class Distances {
        private final Findings findings;
        private final Map<String, Located<String>> from = new LinkedHashMap<>();

        Distances(Findings findings) {
            this.findings = findings;
        }

        Optional<Quantity> distance(Fields row) {
            return row.optionalQuantity("distance", Dimension.LENGTH);
        }

        Optional<String> from(Fields row, String id) {
            Optional<String> other = row.optionalText("from");
            if (other.isPresent()) {
                from.putIfAbsent(id, new Located<>(other.get(), row.at("from")));
                if (!row.has("distance")) {
                    findings.problem(row.at("from"), "'from' needs 'distance', the length from there such as '0.5 m'");
                }
            }
            return other;
        }

        void check(List<TouchPoint> touchPoints, List<EarthPoint> earthPoints) {
            Ids points = new Ids("touch point or earth point", findings);
            points.adopt(touchPoints.stream().map(TouchPoint::id).toList());
            points.adopt(earthPoints.stream().map(EarthPoint::id).toList());
            for (Map.Entry<String, Located<String>> entry : from.entrySet()) {
                Located<String> other = entry.getValue();
                if (points.refers(other.value(), other.at()) && comesBack(entry.getKey())) {
                    findings.problem(other.at(), "the distances from point to point run in a circle");
                }
            }
        }

        private boolean comesBack(String start) {
            Set<String> seen = new HashSet<>();
            String at = start;
            while (from.containsKey(at) && seen.add(at)) {
                at = from.get(at).value();
            }
            return at.equals(start);
        }
    }
}
