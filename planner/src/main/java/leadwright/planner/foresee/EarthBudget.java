package leadwright.planner.foresee;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.table.Conductors;
import leadwright.planner.Plan;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/**
 * What lies in the path of an earth reading.
 *
 * @param entries along the path
 * @param nulled whether the tester nulls the leads
 * @param nullUpTo most that it nulls, Ω
 */
public record EarthBudget(String reading, List<Entry> entries, boolean nulled, Optional<Double> nullUpTo) {
    public EarthBudget {
        entries = List.copyOf(entries);
    }

    /**
     * A piece of the path; Ω at the stated temperature.
     *
     * @param leads whether it belongs to the leads, which nulling removes
     */
    public record Entry(String words, double low, double nominal, double high, boolean leads, Basis basis) {}

    private static final String CORD = "supply cord with its contacts";

    /** The budget of an earth reading; empty for others, and where an installation's own conductor is in the path. */
    public static Optional<EarthBudget> of(Plan plan, Reading reading, Situation situation) {
        Obligation what = reading.obligation();
        if (what.quantity() != QuantityKind.EARTH_RESISTANCE
                || what.earthSubject().isEmpty()) {
            return Optional.empty();
        }
        double warming = Conductors.builtIn().warming(20, situation.celsius());
        Device device = plan.device();
        List<Entry> entries = new ArrayList<>();
        switch (what.earthSubject().get()) {
            case PLUG_TO_PART -> {
                entries.add(entry(CORD, Assumed.CORD, warming));
                entries.add(path(device));
            }
            case INLET_TO_PART -> entries.add(path(device));
            case CORD -> entries.add(entry(CORD, Assumed.CORD, warming));
            // The installation's own conductor is not known to anybody here.
            case REFERENCE_TO_PART -> {
                return Optional.empty();
            }
        }
        entries.add(entry("the clip or tip on the part", Assumed.CONTACT, 1));
        reading.hookup()
                .flatMap(plan::hookup)
                .map(Hookup::earth)
                .orElse(List.of())
                .forEach(path -> entries.addAll(leads(plan.kit(), path, warming)));
        Optional<EarthTest> test = plan.kit().tester().earthTest();
        boolean nulled = test.filter(each ->
                        each.wiring().equals("two-wire") && each.nullUpTo().isPresent())
                .isPresent();
        boolean four = test.filter(each -> each.wiring().equals("four-wire")).isPresent();
        List<Entry> counted =
                four ? entries.stream().filter(each -> !each.leads()).toList() : entries;
        return Optional.of(new EarthBudget(
                reading.id(), counted, nulled, test.flatMap(EarthTest::nullUpTo).map(Quantity::inSi)));
    }

    private static Entry entry(String words, Assumed assumed, double factor) {
        return new Entry(
                words,
                assumed.low() * factor,
                assumed.nominal() * factor,
                assumed.high() * factor,
                false,
                Basis.ASSUMED);
    }

    private static Entry path(Device device) {
        Parameter path = DeviceBranches.earthPath(device);
        return new Entry(
                "inside the device, earth terminal to the part",
                path.low(),
                path.nominal(),
                path.high(),
                false,
                path.basis());
    }

    private static List<Entry> leads(Kit kit, EarthPath path, double warming) {
        List<Entry> entries = new ArrayList<>();
        for (String instance : path.items()) {
            Optional<KitItem> item = HookupBranches.item(kit, instance);
            List<Template.Term> conductor =
                    item.map(each -> HookupBranches.conductor(each, warming)).orElse(List.of());
            double low = conductor.stream()
                    .mapToDouble(term -> term.times() * term.parameter().low())
                    .sum();
            double nominal = conductor.stream()
                    .mapToDouble(term -> term.times() * term.parameter().nominal())
                    .sum();
            double high = conductor.stream()
                    .mapToDouble(term -> term.times() * term.parameter().high())
                    .sum();
            Basis basis = conductor.stream().allMatch(term -> term.parameter().basis() == Basis.KIT)
                    ? Basis.KIT
                    : Basis.ASSUMED;
            entries.add(new Entry(
                    instance,
                    low + Assumed.CONTACT.low(),
                    nominal + Assumed.CONTACT.nominal(),
                    high + Assumed.CONTACT.high(),
                    true,
                    basis));
        }
        return entries;
    }

    /** Resistance of the leads alone, Ω, nominal. */
    public double leadsNominal() {
        return entries.stream().filter(Entry::leads).mapToDouble(Entry::nominal).sum();
    }

    /** Whether the leads may have more than the tester nulls. */
    public boolean beyondNull() {
        double high =
                entries.stream().filter(Entry::leads).mapToDouble(Entry::high).sum();
        return nulled && nullUpTo.filter(most -> high > most).isPresent();
    }

    /** What the reading shows, Ω. */
    public double nominal() {
        return sum(Entry::nominal);
    }

    /** Least that the reading shows with all values within their spans, Ω. */
    public double least() {
        return sum(Entry::low);
    }

    /** The supply cord's share of it, Ω. */
    public double cordNominal() {
        return entries.stream()
                .filter(each -> each.words().equals(CORD))
                .mapToDouble(Entry::nominal)
                .sum();
    }

    private double sum(java.util.function.ToDoubleFunction<Entry> of) {
        return entries.stream()
                .filter(each -> !(nulled && each.leads()))
                .mapToDouble(of)
                .sum();
    }

    Foreseen foreseen(Kit kit) {
        Accuracy accuracy = Amounts.accuracy(kit, "earth");
        double share = accuracy.reading().inSi();
        double floor = accuracy.floor().inSi();
        return new Foreseen(
                reading,
                Optional.of(Amounts.rounded(Dimension.RESISTANCE, sum(Entry::nominal), 0)),
                Amounts.rounded(Dimension.RESISTANCE, Math.max(0, sum(Entry::low) * (1 - share) - floor), -1),
                Optional.of(Amounts.rounded(Dimension.RESISTANCE, sum(Entry::high) * (1 + share) + floor, 1)),
                entries.stream().filter(each -> !each.leads()).allMatch(each -> each.basis() == Basis.DEVICE_FILE)
                        ? Basis.DEVICE_FILE
                        : Basis.ASSUMED,
                Optional.empty(),
                nulled ? "the leads are nulled" : "the leads count in it");
    }
}
