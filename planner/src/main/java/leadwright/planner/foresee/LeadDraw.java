package leadwright.planner.foresee;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.planner.Plan;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/**
 * What the leads alone draw in a reading with mains on a part: the background, read with the leads hooked up and the device's end
 * free. It is written down beside the result and never taken off it.
 *
 * @param low least that they draw, by the spans of the leads' and jacks' capacitances; the tester's accuracy is not in it
 * @param nominal what the tester shows
 * @param high most that they draw
 * @param share of the reading's limit that the nominal value makes; empty where there is no limit
 * @param basis what it rests on
 */
public record LeadDraw(
        String reading, Quantity low, Quantity nominal, Quantity high, Optional<Double> share, Basis basis) {

    /** Share of a limit above which a plan speaks of it; common practice, no source. */
    public static final double NOTEWORTHY = 0.1;

    /** By solving the reading's circuit with every patient lead parted at the device; empty for other readings. */
    public static Optional<LeadDraw> of(Plan plan, Reading reading, Situation situation) {
        Obligation what = reading.obligation();
        Optional<Hookup> hookup = reading.hookup().flatMap(plan::hookup);
        if (what.phase() != Obligation.Phase.MAINS_ON_PART || hookup.isEmpty()) {
            return Optional.empty();
        }
        return new Setups(plan.device(), plan.kit(), situation).of(what, hookup).map(setup -> {
            Bands.Band band = Bands.of(free(setup, hookup.get()));
            Optional<Double> share = what.limit()
                    .filter(limit -> limit.bound() == Limit.Bound.AT_MOST)
                    .map(limit -> band.nominal() / limit.value().inSi());
            return new LeadDraw(
                    reading.id(),
                    Amounts.rounded(Dimension.CURRENT, band.low(), -1),
                    Amounts.rounded(Dimension.CURRENT, band.nominal()),
                    Amounts.rounded(Dimension.CURRENT, band.high(), 1),
                    share,
                    basis(plan, hookup.get()));
        });
    }

    /** The circuit with every lead that is plugged at the device parted there. */
    static Setup free(Setup setup, Hookup hookup) {
        Set<String> ends = new HashSet<>();
        hookup.chains().forEach(chain -> ends.add(chain.connection()));
        Set<String> parted = new HashSet<>();
        Stretch.of(hookup).stream()
                .filter(stretch -> ends.contains(stretch.from()))
                .forEach(stretch -> parted.add(stretch.resistance()));
        List<Template.Branch> left = setup.template().branches().stream()
                .filter(branch -> !parted.contains(branch.name()))
                .toList();
        return new Setup(new Template(left, setup.template().fixed()), setup.meter(), setup.hertz(), setup.ties());
    }

    private static Basis basis(Plan plan, Hookup hookup) {
        boolean stated = hookup.chains().stream()
                .map(Chain::items)
                .flatMap(List::stream)
                .flatMap(instance -> HookupBranches.item(plan.kit(), instance).stream())
                .allMatch(item -> item.length().isEmpty() || item.capacitance().isPresent());
        return stated ? Basis.KIT : Basis.ASSUMED;
    }

    /** Whether it makes so much of the limit that it must be known at the bench. */
    public boolean noteworthy() {
        return share.filter(each -> each > NOTEWORTHY).isPresent();
    }
}
