package leadwright.planner.audit;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.PartType;
import leadwright.catalog.house.FloatJoined;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Method;
import leadwright.catalog.kit.TesterSwitch;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Joined;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.rules.TestRow;
import leadwright.catalog.table.MainsCouplers;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/** Whether each reading's hookup really lets it be taken, and whether it means what its quantity says. */
final class ReadingAudit {
    private final Plan plan;
    private final RuleSet rules;
    private final Breaches breaches;

    ReadingAudit(Plan plan, RuleSet rules, Breaches breaches) {
        this.plan = plan;
        this.rules = rules;
        this.breaches = breaches;
    }

    void run() {
        Set<String> keys = new HashSet<>();
        for (Reading reading : plan.readings()) {
            Obligation what = reading.obligation();
            breaches.check(keys.add(what.key()), Invariant.READ_ONCE, reading.id(), "repeats " + what.key());
            Optional<Hookup> hookup = reading.hookup().flatMap(plan::hookup);
            breaches.check(
                    hookup.isPresent() || what.phase() == Obligation.Phase.CHECK,
                    Invariant.HOOKUP_COMPLETE,
                    reading.id(),
                    "names no hookup of the plan");
            hookup.ifPresent(each -> {
                coverage(reading.id(), what.demand(), each);
                ratings(reading.id(), what, each);
                floating(reading.id(), what, each);
            });
            meaning(reading.id(), what);
            paired(reading.id(), what);
        }
    }

    private void coverage(String id, Demand demand, Hookup hookup) {
        if (demand.isNothing()) {
            return;
        }
        for (SortedSet<String> set : List.of(demand.measured(), demand.against(), demand.earthed())) {
            TreeSet<Integer> jacks = new TreeSet<>();
            Set<String> found = new HashSet<>();
            for (Bundle bundle : hookup.bundles()) {
                List<String> inside =
                        bundle.connections().stream().filter(set::contains).toList();
                if (inside.isEmpty()) {
                    continue;
                }
                breaches.check(
                        inside.size() == bundle.connections().size(),
                        Invariant.COVERAGE,
                        id,
                        bundle.id() + " joins " + inside.get(0) + " with connections that are not of its set");
                found.addAll(inside);
                jacks.addAll(bundle.jacks());
            }
            Set<String> missing = new TreeSet<>(set);
            missing.removeAll(found);
            breaches.check(missing.isEmpty(), Invariant.COVERAGE, id, missing + " not present in " + hookup.id());
            boolean any = plan.kit().tester().jacks().map(Jacks::ties).equals(Optional.of(Ties.ANY));
            breaches.check(any || aRun(hookup, set), Invariant.TIES, id, "the tester cannot tie jacks " + jacks);
        }
        idle(id, demand, hookup);
    }

    /** Whether some run of neighbouring jacks holds one jack at least of each bundle of the set, and no other jack. */
    private static boolean aRun(Hookup hookup, SortedSet<String> set) {
        List<Bundle> bundles = hookup.bundles().stream()
                .filter(bundle -> bundle.connections().stream().anyMatch(set::contains))
                .toList();
        if (bundles.size() < 2) {
            return true;
        }
        TreeSet<Integer> own = new TreeSet<>();
        bundles.forEach(bundle -> own.addAll(bundle.jacks()));
        for (int first : own) {
            int last = first;
            while (own.contains(last + 1)) {
                last++;
            }
            int end = last;
            if (bundles.stream()
                    .allMatch(bundle -> bundle.jacks().stream().anyMatch(jack -> jack >= first && jack <= end))) {
                return true;
            }
        }
        return false;
    }

    private void idle(String id, Demand demand, Hookup hookup) {
        if (!plan.kit().tester().jacks().map(Jacks::atRest).equals(Optional.of(AtRest.EARTHED))) {
            return;
        }
        SortedSet<String> all = demand.all();
        List<String> others = hookup.chains().stream()
                .map(Chain::connection)
                .filter(name -> !all.contains(name) && !name.equals(Device.TOUCH_PROBE))
                .toList();
        breaches.check(
                others.isEmpty(), Invariant.IDLE_JACKS, id, others + " must float and sit on jacks that rest earthed");
    }

    /**
     * What the reading leaves floating while the wiring joins it is noted on it, bundle by bundle, and nothing else is. A
     * reading that asks nothing of the wiring leaves nothing floating.
     */
    private void floating(String id, Obligation what, Hookup hookup) {
        if (what.phase() == Obligation.Phase.CHECK || what.phase() == Obligation.Phase.EARTH) {
            return;
        }
        List<String> due = new ArrayList<>();
        for (Bundle bundle : hookup.bundles()) {
            List<String> named = new ArrayList<>(bundle.connections());
            named.retainAll(what.demand().all());
            if (named.isEmpty()
                    && bundle.connections().size() >= 2
                    && !what.demand().isNothing()) {
                List<String> jacks =
                        bundle.jacks().stream().map(String::valueOf).toList();
                due.add(bundle.connections().size() + " connections on jack " + String.join("+", jacks));
            }
        }
        breaches.check(
                due.isEmpty() || plan.house().floatJoined() == FloatJoined.NOTED,
                Invariant.FLOATING_JOINED,
                id,
                "leaves " + due + " floating joined, which the house does not allow");
        String note = what.note().orElse("");
        String said = note.contains("joined while they float: ")
                ? note.substring(note.indexOf("joined while they float: ") + "joined while they float: ".length())
                : "";
        breaches.check(
                said.equals(String.join(", ", due)),
                Invariant.FLOATING_JOINED,
                id,
                "says that this floats joined: '" + said + "', which is " + due);
    }

    /** Items under the limited source or the insulation voltage must be rated and shrouded for it. */
    private void ratings(String id, Obligation what, Hookup hookup) {
        Optional<Quantity> voltage = appliedVoltage(what);
        if (voltage.isEmpty()) {
            return;
        }
        Set<String> instances = new TreeSet<>();
        hookup.chains().forEach(chain -> instances.addAll(chain.items()));
        hookup.bundles().forEach(bundle -> instances.addAll(bundle.links()));
        for (String instance : instances) {
            KitItem item = plan.kit()
                    .item(instance.substring(0, instance.lastIndexOf('/')))
                    .orElse(null);
            if (item == null) {
                continue;
            }
            boolean rated = item.voltage().isPresent() && item.voltage().get().atLeast(voltage.get());
            breaches.check(
                    rated,
                    Invariant.RATING,
                    id,
                    instance + " is not rated for " + voltage.get().text());
            boolean unshrouded = item.ends().stream()
                    .anyMatch(end -> end.equals("lab-4mm-plug") || end.equals("lab-4mm-plug-stackable"));
            boolean limited = what.phase() == Obligation.Phase.MAINS_ON_PART
                    && plan.kit()
                            .tester()
                            .partSource()
                            .map(source -> source.shortCircuit().atMost(Quantity.microAmperes(3500)))
                            .orElse(false);
            breaches.check(
                    !unshrouded || (limited && full(item, instance, hookup)),
                    Invariant.UNSHROUDED,
                    id,
                    instance + " has a bare plug that could be touched");
        }
    }

    private boolean full(KitItem item, String instance, Hookup hookup) {
        if (item.kind() != ItemKind.FAN_OUT) {
            return true;
        }
        long used = Joints.ofLeads(hookup, plan.kit()).stream()
                .filter(joint -> joint.to().equals(instance))
                .count();
        return used == item.branches();
    }

    private Optional<Quantity> appliedVoltage(Obligation what) {
        if (what.phase() == Obligation.Phase.MAINS_ON_PART) {
            return plan.kit().tester().partSource().map(source -> source.voltage());
        }
        if (what.phase() == Obligation.Phase.INSULATION && !what.demand().isNothing()) {
            return Optional.of(Quantity.volts(500));
        }
        return Optional.empty();
    }

    private void meaning(String id, Obligation what) {
        Device device = plan.device();
        Demand demand = what.demand();
        if (what.phase() == Obligation.Phase.MAINS_ON_PART) {
            breaches.check(
                    what.state().fault() == MainsState.Fault.NONE,
                    Invariant.DOUBLE_FAULT,
                    id,
                    "a source on a part under a fault");
            for (String name : demand.measured()) {
                boolean typeB = part(name).map(AppliedPart::type).equals(Optional.of(PartType.B));
                boolean metalOnly = demand.against().stream().anyMatch(each -> each.startsWith("housing."));
                breaches.check(!typeB || metalOnly, Invariant.MAINS_ON_B, id, name + " is of type B");
            }
        }
        switch (what.quantity()) {
            case APPLIED_PART_LEAKAGE ->
                breaches.check(
                        wholeFunction(device, demand.measured()) || stricter(demand),
                        Invariant.MEANING,
                        id,
                        "is not of one whole function");
            case PATIENT_AUXILIARY, LEAD_TO_LEAD ->
                breaches.check(
                        demand.measured().size() == 1 && !demand.against().isEmpty(),
                        Invariant.MEANING,
                        id,
                        "is not one connection against others");
            case TOTAL_PATIENT_LEAKAGE, TOTAL_MAINS_ON_APPLIED_PART ->
                breaches.check(oneType(demand.measured()), Invariant.MEANING, id, "joins parts of different types");
            case PATIENT_LEAKAGE, MAINS_ON_APPLIED_PART ->
                breaches.check(
                        onePart(demand.measured()) || allLeads(what),
                        Invariant.MEANING,
                        id,
                        "joins different applied parts");
            default -> {}
        }
    }

    private Optional<AppliedPart> part(String connection) {
        return plan.device().appliedParts().stream()
                .filter(part ->
                        part.connections().stream().anyMatch(each -> each.name().equals(connection)))
                .findFirst();
    }

    /** A house may ask for each connection on its own. */
    private boolean stricter(Demand demand) {
        return demand.measured().size() == 1 && !plan.house().joinStricter().isEmpty();
    }

    private boolean wholeFunction(Device device, SortedSet<String> measured) {
        return device.appliedParts().stream()
                .flatMap(part -> part.functions().stream().map(function -> {
                    Set<String> names = new HashSet<>();
                    part.connections().stream()
                            .filter(each -> each.function().equals(part.functionName(function)))
                            .map(Connection::name)
                            .forEach(names::add);
                    return names;
                }))
                .anyMatch(names -> names.equals(new HashSet<>(measured)));
    }

    private boolean oneType(SortedSet<String> measured) {
        return measured.stream()
                        .map(name -> part(name).map(AppliedPart::type))
                        .distinct()
                        .count()
                == 1;
    }

    private boolean onePart(SortedSet<String> measured) {
        return measured.stream()
                        .map(name -> part(name).map(AppliedPart::id))
                        .distinct()
                        .count()
                == 1;
    }

    /** Every lead of the device that no therapy output keeps to itself, where the rule set joins them all. */
    private boolean allLeads(Obligation what) {
        boolean asked = rules.joinings().stream()
                .anyMatch(row -> row.quantity() == what.quantity() && row.joined() == Joined.DEVICE);
        Set<String> free = new HashSet<>();
        plan.device().patientConnections().forEach(connection -> free.add(connection.name()));
        plan.device().outputs().stream()
                .filter(output -> output.mayShare().isEmpty())
                .forEach(output -> free.removeAll(Therapy.connections(plan.device(), output)));
        return asked && free.equals(new HashSet<>(what.demand().measured()));
    }

    /** Both polarities of the supply and of the source belong together: one without the other proves nothing. */
    private void paired(String id, Obligation what) {
        boolean turns = plan.kit().tester().switches().contains(TesterSwitch.POLARITY);
        if (turns && what.state().polarity() != MainsState.Polarity.NONE && !onePolarity(what)) {
            breaches.check(
                    exists(what, true, false),
                    Invariant.PAIRED,
                    id,
                    "is not also taken in the other polarity of the supply");
        }
        // The alternative method feeds both conductors of the mains part at once: its source has one polarity.
        boolean alternative = what.method().equals(Optional.of(Method.ALTERNATIVE));
        if (what.sourcePolarity().isPresent() && !alternative) {
            breaches.check(
                    exists(what, false, true),
                    Invariant.PAIRED,
                    id,
                    "is not also taken in the other polarity of the source");
        }
    }

    /** Some rule sets ask for one polarity; a plug that goes in either way round, or may, is read both ways all the same. */
    private boolean onePolarity(Obligation what) {
        List<TestRow> rows = rules.tests(what.quantity());
        boolean polarised = plan.device()
                .supply()
                .cordPlug()
                .flatMap(MainsCouplers.builtIn()::plug)
                .filter(plug -> plug.polarised())
                .isPresent();
        return polarised
                && !rows.isEmpty()
                && rows.stream().allMatch(row -> row.polarities().size() < 2);
    }

    private boolean exists(Obligation what, boolean otherSupply, boolean otherSource) {
        return plan.readings().stream()
                .map(Reading::obligation)
                .anyMatch(each -> each.quantity() == what.quantity()
                        && each.state().fault() == what.state().fault()
                        && (each.state().polarity() != what.state().polarity()) == otherSupply
                        && each.place().equals(what.place())
                        && each.component().equals(what.component())
                        && each.mode().equals(what.mode())
                        && each.demand().equals(what.demand())
                        && each.sourcePolarity().equals(what.sourcePolarity()) != otherSource);
    }
}
