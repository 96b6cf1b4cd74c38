package leadwright.catalog.device;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * A device under test, as described by a {@code device/1} file with its electrode sets expanded and its defaults filled
 * in.
 *
 * @param startUp time from switching on to ready; zero where not stated
 * @param shutDown time of an ordered shut-down; zero where not stated
 * @param startUpStated whether the file states the start-up time
 * @param toleratesPowerCut empty where the file does not say, which counts as no
 * @param builtTo rule-set id of the edition it was built to
 * @param panel ids of applied parts from left to right; every applied part exactly once (parts the file leaves out follow
 *     in the order of their ids)
 * @param system what makes it a whole of several devices; empty for a device
 * @param electrical optional values of the {@code electrical:} section, by key
 */
public record Device(
        String name,
        Supply supply,
        Protection protection,
        FunctionalEarth functionalEarth,
        Battery battery,
        MainsSwitch mainsSwitch,
        Quantity startUp,
        Quantity shutDown,
        boolean startUpStated,
        Optional<Boolean> toleratesPowerCut,
        Optional<String> builtTo,
        List<Forbidden> forbids,
        List<AppliedPart> appliedParts,
        List<Port> ports,
        List<Output> outputs,
        List<TouchPoint> touchPoints,
        List<EarthPoint> earthPoints,
        List<String> panel,
        List<ParticularLimit> limits,
        Map<String, Quantity> electrical,
        List<OperatingMode> modes,
        Optional<ExternalAdapter> adapter,
        List<ConnectorDefinition> connectors,
        Optional<SystemInfo> system) {
    public Device {
        forbids = List.copyOf(forbids);
        appliedParts = List.copyOf(appliedParts);
        ports = List.copyOf(ports);
        outputs = List.copyOf(outputs);
        touchPoints = List.copyOf(touchPoints);
        earthPoints = List.copyOf(earthPoints);
        panel = List.copyOf(panel);
        limits = List.copyOf(limits);
        electrical = Map.copyOf(electrical);
        modes = List.copyOf(modes);
        connectors = List.copyOf(connectors);
    }

    /** A device by itself. */
    public Device(
            String name,
            Supply supply,
            Protection protection,
            FunctionalEarth functionalEarth,
            Battery battery,
            MainsSwitch mainsSwitch,
            Quantity startUp,
            Quantity shutDown,
            boolean startUpStated,
            Optional<Boolean> toleratesPowerCut,
            Optional<String> builtTo,
            List<Forbidden> forbids,
            List<AppliedPart> appliedParts,
            List<Port> ports,
            List<Output> outputs,
            List<TouchPoint> touchPoints,
            List<EarthPoint> earthPoints,
            List<String> panel,
            List<ParticularLimit> limits,
            Map<String, Quantity> electrical,
            List<OperatingMode> modes,
            Optional<ExternalAdapter> adapter,
            List<ConnectorDefinition> connectors) {
        this(
                name,
                supply,
                protection,
                functionalEarth,
                battery,
                mainsSwitch,
                startUp,
                shutDown,
                startUpStated,
                toleratesPowerCut,
                builtTo,
                forbids,
                appliedParts,
                ports,
                outputs,
                touchPoints,
                earthPoints,
                panel,
                limits,
                electrical,
                modes,
                adapter,
                connectors,
                Optional.empty());
    }

    /** The same with other operating modes. */
    public Device inModes(List<OperatingMode> others) {
        return new Device(
                name,
                supply,
                protection,
                functionalEarth,
                battery,
                mainsSwitch,
                startUp,
                shutDown,
                startUpStated,
                toleratesPowerCut,
                builtTo,
                forbids,
                appliedParts,
                ports,
                outputs,
                touchPoints,
                earthPoints,
                panel,
                limits,
                electrical,
                others,
                adapter,
                connectors,
                system);
    }

    /** Name of the connection that the tester's touch probe is. */
    public static final String TOUCH_PROBE = "touch-probe";

    /** Patient connections with full names, parts in panel order. */
    public List<Connection> patientConnections() {
        List<Connection> all = new ArrayList<>();
        for (String id : panel) {
            part(id).ifPresent(part -> all.addAll(part.connections()));
        }
        return List.copyOf(all);
    }

    /** Every connection the bench may have to wire: patient, then unearthed or unknown housing parts, then ports. */
    public List<Connection> connections() {
        List<Connection> all = new ArrayList<>(patientConnections());
        touchPoints.stream()
                .filter(point -> point.earthed() != Earthed.YES)
                .map(TouchPoint::connection)
                .forEach(all::add);
        ports.stream().map(Port::connection).forEach(all::add);
        return List.copyOf(all);
    }

    public Optional<AppliedPart> part(String id) {
        return appliedParts.stream().filter(part -> part.id().equals(id)).findFirst();
    }

    /** Whether a mains supply can be present at all. */
    public boolean runsOnMains() {
        return supply.connection() != SupplyConnection.NONE;
    }

    public boolean staysOnWithoutMains() {
        return battery != Battery.NONE;
    }
}
