package leadwright.planner.oblige;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.ExternalAdapter;
import leadwright.catalog.device.FunctionalEarth;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.rules.Trait;
import leadwright.catalog.table.MainsCouplers;

/**
 * What follows from a device's description.
 *
 * @param protection class that counts at the mains: an external adapter's own class where there is one
 * @param supply how it is supplied; three-phase equipment counts as permanent, since no bench outlet opens its conductors
 * @param functionalEarth the functional earth, the adapter's included; none where the cord's earth is a protective earth
 */
record DeviceFacts(
        Device device,
        Protection protection,
        SupplyConnection supply,
        FunctionalEarth functionalEarth,
        Therapy therapy) {

    static DeviceFacts of(Device device) {
        Protection protection = protection(device);
        SupplyConnection connection = device.supply().connection();
        boolean threePhase =
                connection != SupplyConnection.NONE && device.supply().system() == SupplySystem.THREE_PHASE;
        FunctionalEarth functional = device.functionalEarth() != FunctionalEarth.NONE
                ? device.functionalEarth()
                : device.adapter().map(ExternalAdapter::functionalEarth).orElse(FunctionalEarth.NONE);
        return new DeviceFacts(
                device,
                protection,
                threePhase ? SupplyConnection.PERMANENT : connection,
                protection == Protection.CLASS_2 ? functional : FunctionalEarth.NONE,
                Therapy.of(device));
    }

    private static Protection protection(Device device) {
        if (device.supply().connection() == SupplyConnection.NONE) {
            return Protection.INTERNALLY_POWERED;
        }
        Protection own = device.adapter().map(ExternalAdapter::protection).orElse(device.protection());
        // On the mains nothing is internally powered; class II has the stricter limits.
        return own == Protection.INTERNALLY_POWERED ? Protection.CLASS_2 : own;
    }

    /** Neither its earth nor its supply can be opened from the bench, and a licensed person isolates it. */
    boolean fixedPlant() {
        return supply == SupplyConnection.PERMANENT;
    }

    /** Plugged into the tester's outlet. */
    boolean onOutlet() {
        return supply != SupplyConnection.PERMANENT && supply != SupplyConnection.NONE;
    }

    /** Whether the plug of its cord goes in either way round; one that is not stated may. */
    boolean eitherWayRound() {
        return device.supply()
                .cordPlug()
                .flatMap(MainsCouplers.builtIn()::plug)
                .map(plug -> !plug.polarised())
                .orElse(true);
    }

    /** A part tested by itself, such as a probe parted from its host: no mains, no battery, never switched on. */
    boolean passive() {
        return supply == SupplyConnection.NONE && device.battery() == Battery.NONE;
    }

    boolean hasProtectiveEarth() {
        return protection == Protection.CLASS_1;
    }

    boolean functionalEarthInCord() {
        return functionalEarth == FunctionalEarth.VIA_CORD;
    }

    /** A cord that comes off at the device or at its adapter. */
    boolean detachableCord() {
        return supply == SupplyConnection.DETACHABLE_CORD
                || supply == SupplyConnection.EXTERNAL_ADAPTER
                        && device.supply().inlet().isPresent();
    }

    /** Accessible parts that are, or may be, unearthed. */
    List<TouchPoint> unearthed() {
        return device.touchPoints().stream().filter(point -> !earthed(point)).toList();
    }

    private boolean earthed(TouchPoint point) {
        return point.earthed() == Earthed.YES;
    }

    List<TouchPoint> earthed() {
        return device.touchPoints().stream().filter(this::earthed).toList();
    }

    /** Bare metal that is known not to be protectively earthed. */
    List<TouchPoint> unearthedMetal() {
        return device.touchPoints().stream()
                .filter(point -> point.earthed() == Earthed.NO || !hasProtectiveEarth() && !earthed(point))
                .filter(point -> point.surface() == Surface.METAL)
                .toList();
    }

    boolean nothingEarthed() {
        return !hasProtectiveEarth() || earthed().isEmpty();
    }

    List<Connection> housing() {
        return unearthed().stream().map(TouchPoint::connection).toList();
    }

    List<Connection> ports() {
        return device.ports().stream().map(Port::connection).toList();
    }

    /** Applied parts in panel order. */
    List<AppliedPart> parts() {
        return device.panel().stream().flatMap(id -> device.part(id).stream()).toList();
    }

    List<AppliedPart> parts(PartType type) {
        return parts().stream().filter(part -> part.type() == type).toList();
    }

    Set<Trait> traits() {
        Set<Trait> traits = EnumSet.of(Trait.ANY);
        supplyTraits(traits);
        housingTraits(traits);
        partTraits(traits);
        return traits;
    }

    private static void add(Set<Trait> traits, Trait trait, boolean holds) {
        if (holds) {
            traits.add(trait);
        }
    }

    private void supplyTraits(Set<Trait> traits) {
        add(traits, Trait.MAINS, supply != SupplyConnection.NONE);
        add(traits, Trait.CORD, onOutlet());
        add(traits, Trait.PERMANENT, fixedPlant());
        add(traits, Trait.CLASS_1, protection == Protection.CLASS_1);
        add(traits, Trait.CLASS_2, protection == Protection.CLASS_2);
        add(traits, Trait.INTERNALLY_POWERED, protection == Protection.INTERNALLY_POWERED);
        add(
                traits,
                Trait.BATTERY_AND_MAINS,
                supply != SupplyConnection.NONE
                        && (device.battery() != Battery.NONE || device.protection() == Protection.INTERNALLY_POWERED));
        add(traits, Trait.FUNCTIONAL_EARTH, functionalEarth != FunctionalEarth.NONE);
        add(traits, Trait.NO_FUNCTIONAL_EARTH, functionalEarth == FunctionalEarth.NONE);
    }

    private void housingTraits(Set<Trait> traits) {
        boolean unknown = device.touchPoints().stream().anyMatch(point -> point.earthed() == Earthed.UNKNOWN);
        add(traits, Trait.EARTHED_PART, !earthed().isEmpty());
        add(traits, Trait.NO_EARTHED_PART, earthed().isEmpty() && !unknown);
        add(
                traits,
                Trait.NO_UNEARTHED_PART,
                unearthed().isEmpty() && device.ports().isEmpty());
        add(
                traits,
                Trait.FEWER_THAN_TWO_UNEARTHED_PARTS,
                unearthed().size() + device.ports().size() < 2);
        add(traits, Trait.NO_UNEARTHED_METAL, unearthedMetal().isEmpty());
        add(traits, Trait.PORT, !device.ports().isEmpty());
    }

    private void partTraits(Set<Trait> traits) {
        boolean anyB = !parts(PartType.B).isEmpty();
        boolean anyBf = !parts(PartType.BF).isEmpty();
        boolean anyCf = !parts(PartType.CF).isEmpty();
        add(traits, Trait.PART, anyB || anyBf || anyCf);
        add(traits, Trait.NO_PART, !(anyB || anyBf || anyCf));
        add(traits, Trait.TYPE_B_PART, anyB);
        add(traits, Trait.F_TYPE_PART, anyBf || anyCf);
        add(traits, Trait.NO_F_TYPE_PART, !(anyBf || anyCf));
        add(traits, Trait.TYPE_CF_PART, anyCf);
        add(traits, Trait.B_OR_BF_PART, anyB || anyBf);
        add(
                traits,
                Trait.NO_TYPE_TWICE,
                List.of(PartType.values()).stream()
                        .noneMatch(type -> parts(type).size() > 1));
        add(traits, Trait.ONE_PATIENT_CONNECTION, device.patientConnections().size() == 1);
    }
}
