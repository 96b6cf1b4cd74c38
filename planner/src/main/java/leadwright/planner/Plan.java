package leadwright.planner;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Remedy;
import leadwright.planner.plan.Shortfall;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.TimeSplit;

/**
 * A finished, audited plan.
 *
 * @param fingerprint SHA-256 of the canonical content of device, kit, rules, house, the options that matter and the
 *     program's version, in lower-case hexadecimal
 * @param partial whether something due cannot be measured with this kit; {@code shortfalls} says what
 * @param remedy what items would make all of it possible that items can; empty where none would
 * @param trainingCopy whether the plan may only be used for training (tester past due, downgraded by the house)
 * @param on the date it was planned for, where given
 */
public record Plan(
        String fingerprint,
        boolean partial,
        boolean trainingCopy,
        Device device,
        Kit kit,
        House house,
        RulesInfo rules,
        String occasion,
        Optional<LocalDate> on,
        List<Hookup> hookups,
        List<Reading> readings,
        List<Step> steps,
        List<NotApplicable> notApplicable,
        List<Shortfall> shortfalls,
        Optional<Remedy> remedy,
        List<String> warnings,
        TimeSplit time,
        Proof hookupsProof,
        Proof timeProof,
        Foresight foresight) {
    public Plan {
        hookups = List.copyOf(hookups);
        readings = List.copyOf(readings);
        steps = List.copyOf(steps);
        notApplicable = List.copyOf(notApplicable);
        shortfalls = List.copyOf(shortfalls);
        warnings = List.copyOf(warnings);
    }

    /** The same with what it foresees, the proof steps among its steps. */
    Plan foreseeing(Foresight other) {
        return new Plan(
                fingerprint,
                partial,
                trainingCopy,
                device,
                kit,
                house,
                rules,
                occasion,
                on,
                hookups,
                readings,
                other.watch().among(steps),
                notApplicable,
                shortfalls,
                remedy,
                warnings,
                other.watch().added(time),
                hookupsProof,
                other.watch().added(timeProof),
                other);
    }

    /** The rule set as documents name it. */
    public record RulesInfo(String id, String name, String edition) {}

    /** Ids of the unconfirmed limits that the plan uses, each once, in the order of first use. */
    public List<String> unconfirmedLimits() {
        return readings.stream()
                .flatMap(reading -> reading.obligation().limit().stream())
                .filter(limit -> limit.unconfirmed())
                .map(limit -> limit.id())
                .distinct()
                .toList();
    }

    /** Whether the device has a protective earth of which this plan reads nothing: it must be read otherwise before power. */
    public boolean earthUnread() {
        return shortfalls.stream().anyMatch(each -> each.because().startsWith(Shortfall.EARTH_NOT_KNOWN));
    }

    public Optional<Hookup> hookup(String id) {
        return hookups.stream().filter(hookup -> hookup.id().equals(id)).findFirst();
    }
}
