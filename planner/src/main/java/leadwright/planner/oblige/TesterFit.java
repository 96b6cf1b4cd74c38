package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.device.Surface;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.SourceReading;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.kit.TesterSwitch;
import leadwright.catalog.kit.TouchThrough;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.NaturalOrder;
import leadwright.planner.plan.Obligation.EarthSubject;
import leadwright.planner.plan.Shortfall;

/** Which readings the tester can take, and what it lacks for the others. */
final class TesterFit {
    private static final Quantity INSULATION_VOLTS = Quantity.volts(500);
    private static final Set<QuantityKind> ON_FIXED_PLANT = Set.of(
            QuantityKind.EARTH_RESISTANCE,
            QuantityKind.BONDING_RESISTANCE,
            QuantityKind.BONDING_VOLTAGE,
            QuantityKind.TOUCH_CURRENT,
            QuantityKind.TESTER_CHECK);

    private final Asking asking;
    private final Tester tester;
    private final Optional<Outlet> outlet;

    TesterFit(Asking asking, Optional<Outlet> outlet) {
        this.asking = asking;
        this.tester = asking.tester();
        this.outlet = outlet;
    }

    /** What is missing for a reading. */
    private record Lack(String about, String because, String addition) {}

    /** The readings that can be taken; a shortfall for each thing that is missing for others. */
    List<Draft> takeable(List<Draft> due, Remarks remarks) {
        List<Draft> taken = new ArrayList<>();
        Map<Lack, List<Draft>> lacking = new LinkedHashMap<>();
        for (Draft draft : due) {
            Optional<Lack> lack = lack(draft);
            if (lack.isPresent()) {
                lacking.computeIfAbsent(lack.get(), each -> new ArrayList<>()).add(draft);
            } else {
                taken.add(draft);
            }
        }
        lacking.forEach((lack, drafts) -> remarks.shortfall(shortfall(lack, drafts)));
        return taken;
    }

    private static Shortfall shortfall(Lack lack, List<Draft> drafts) {
        SortedSet<String> connections = new TreeSet<>(NaturalOrder.IDS);
        drafts.forEach(draft -> connections.addAll(draft.demand().all()));
        Map<String, Long> counts = drafts.stream()
                .collect(Collectors.groupingBy(TesterFit::inWords, LinkedHashMap::new, Collectors.counting()));
        String what = counts.entrySet().stream()
                .map(each ->
                        each.getKey() + " (" + each.getValue() + (each.getValue() == 1 ? " reading)" : " readings)"))
                .collect(Collectors.joining(", "));
        return new Shortfall(
                lack.about(),
                List.copyOf(connections),
                lack.because() + "; not measured: " + what,
                lack.addition().isEmpty() ? List.of() : List.of(lack.addition()),
                List.of(),
                drafts.stream().map(Draft::key).distinct().toList());
    }

    private static String inWords(Draft draft) {
        return draft.quantity().word()
                + draft.component()
                        .filter(Component.DC::equals)
                        .map(dc -> " d.c.")
                        .orElse("");
    }

    private Optional<Lack> lack(Draft draft) {
        return first(
                fixedPlant(draft),
                earthReference(draft),
                network(draft),
                component(draft),
                state(draft),
                source(draft),
                earth(draft),
                insulation(draft),
                touch(draft),
                jacks(draft));
    }

    @SafeVarargs
    private static Optional<Lack> first(Optional<Lack>... lacks) {
        for (Optional<Lack> lack : lacks) {
            if (lack.isPresent()) {
                return lack;
            }
        }
        return Optional.empty();
    }

    private static Optional<Lack> when(boolean lacking, String about, String because, String addition) {
        return lacking ? Optional.of(new Lack(about, because, addition)) : Optional.empty();
    }

    private Optional<Lack> fixedPlant(Draft draft) {
        return when(
                asking.facts().fixedPlant() && !ON_FIXED_PLANT.contains(draft.quantity()),
                "fixed plant",
                "on fixed or three-phase plant only point-to-point readings on the isolated, and touch readings on the"
                        + " running installation are planned",
                "a licensed person with the means that the device's instructions ask for");
    }

    private Optional<Lack> earthReference(Draft draft) {
        return when(
                draft.isLeakage() && CheckReadings.withoutEarthReference(outlet),
                "tester outlet",
                "the outlet's supply is isolated, not earth-referenced: every leakage would read low",
                "an outlet on an earth-referenced supply");
    }

    private Optional<Lack> network(Draft draft) {
        Optional<MeasuringNetwork> network = asking.rules().network();
        return when(
                draft.throughNetwork()
                        && network.isPresent()
                        && !tester.networks().contains(network.get()),
                "measuring network",
                "the tester has no " + network.map(MeasuringNetwork::word).orElse("")
                        + " measuring network, and a reading"
                        + " through another is not to be compared with these limits",
                "a tester with the " + network.map(MeasuringNetwork::word).orElse("") + " network");
    }

    private Optional<Lack> component(Draft draft) {
        return draft.component()
                .filter(component ->
                        draft.throughNetwork() && !tester.components().contains(component))
                .map(component -> new Lack(
                        "tester component " + component.word(),
                        "the tester does not read the " + component.word() + " component by itself",
                        "a tester that reads " + component.word()));
    }

    private Optional<Lack> state(Draft draft) {
        MainsState state = draft.state();
        return first(
                switchLack(
                        TesterSwitch.SUPPLY, state.fault() == MainsState.Fault.SUPPLY_OPEN, "open a supply conductor"),
                switchLack(
                        TesterSwitch.EARTH, state.fault() == MainsState.Fault.EARTH_OPEN, "open the earth conductor"),
                switchLack(
                        TesterSwitch.POLARITY,
                        state.polarity() == MainsState.Polarity.REVERSED,
                        "reverse the polarity"));
    }

    private Optional<Lack> switchLack(TesterSwitch needed, boolean asked, String does) {
        return when(
                asked && !tester.switches().contains(needed),
                "tester switch " + needed.word(),
                "the tester cannot " + does,
                "a tester that can " + does);
    }

    private Optional<Lack> source(Draft draft) {
        boolean alternative = draft.method().equals(Optional.of(leadwright.catalog.kit.Method.ALTERNATIVE));
        if (draft.sourcePolarity().isEmpty() || alternative) {
            return Optional.empty();
        }
        Optional<PartSource> source = tester.partSource();
        if (source.isEmpty()) {
            return Optional.of(new Lack(
                    "mains-on-applied-part",
                    "the tester has no source that puts mains on an applied part",
                    "a tester with such a source"));
        }
        Optional<Quantity> mains = outlet.map(Outlet::voltage);
        boolean low = mains.filter(volts -> source.get().voltage().amount() * 10 < volts.amount() * 9)
                .isPresent();
        return when(
                low && source.get().reading() == SourceReading.RAW,
                "mains-on-applied-part",
                "the source's " + source.get().voltage().text()
                        + " is below the device's mains voltage, and its readings are" + " not corrected to it",
                "a source of the mains voltage, or one with corrected readings");
    }

    private Optional<Lack> earth(Draft draft) {
        if (draft.earthSubject().isEmpty()) {
            return Optional.empty();
        }
        Optional<EarthTest> test = tester.earthTest();
        if (test.isEmpty()) {
            return Optional.of(new Lack("earth-test", "the tester has no earth-resistance test", "a tester with one"));
        }
        if (EarthCurrent.set(asking).isEmpty()) {
            String needed = EarthCurrent.needed(asking).map(Quantity::text).orElse("a current");
            String has = test.get().currents().stream().map(Quantity::text).collect(Collectors.joining(", "));
            return Optional.of(new Lack(
                    "earth-test currents",
                    "the rule set asks for an earth test with at least " + needed + ", and tester '" + tester.name()
                            + "' has " + (has.isEmpty() ? "none" : has),
                    "a tester whose earth test has " + needed + " or more"));
        }
        List<String> sockets = test.get().sockets();
        if (draft.earthSubject().get() == EarthSubject.PLUG_TO_PART) {
            return when(
                    !sockets.containsAll(List.of("earth-jack", "outlet-earth")),
                    "earth-test sockets",
                    "the earth test does not measure between the earth of its outlet and its earth jack",
                    "a tester whose earth test has the sockets earth-jack and outlet-earth");
        }
        return when(
                !sockets.containsAll(List.of("earth-jack", "second-jack")),
                "earth-test sockets",
                "the earth test takes one lead, and these readings need two",
                "a tester whose earth test has the sockets earth-jack and second-jack");
    }

    private Optional<Lack> insulation(Draft draft) {
        return when(
                draft.quantity() == QuantityKind.INSULATION_RESISTANCE
                        && !tester.insulation().contains(INSULATION_VOLTS),
                "insulation",
                "the tester has no insulation test with 500 V",
                "a tester with 500 V d.c.");
    }

    private Optional<Lack> touch(Draft draft) {
        boolean probed =
                Set.of(QuantityKind.TOUCH_CURRENT, QuantityKind.BONDING_VOLTAGE).contains(draft.quantity())
                        && draft.place().isPresent();
        boolean throughLead = tester.touchThrough().equals(Optional.of(TouchThrough.EARTH_LEAD));
        boolean staysOn = tester.earthJack()
                .flatMap(jack -> jack.atRest())
                .filter(rest -> rest == AtRest.OPEN)
                .isPresent();
        if (probed && throughLead && tester.earthJack().isPresent() && !staysOn) {
            return Optional.of(new Lack(
                    "earth jack at rest",
                    "touch current is read through the earth lead, and the lead may not stay on a jack that is not stated"
                            + " to rest open",
                    "a tester whose earth-jack rests open, or with a place of its own for the touch probe"));
        }
        return when(
                probed
                        && (tester.touchThrough().isEmpty()
                                || tester.touchThrough().get() == TouchThrough.EARTH_LEAD
                                        && tester.earthJack().isEmpty()),
                "touch probe",
                "the tester has no place for a touch probe, which bare " + Surface.METAL.word() + " is touched with",
                "a tester with touch-through: own, jack or earth-lead");
    }

    private Optional<Lack> jacks(Draft draft) {
        return when(
                !draft.demand().isNothing() && tester.jacks().isEmpty(),
                "jacks",
                "the tester has no jacks for patient connections",
                "a tester with jacks");
    }
}
