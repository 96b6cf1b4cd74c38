package leadwright.planner.oblige;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.ParticularLimit;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.SourceReading;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.LimitRow;
import leadwright.catalog.rules.Mark;
import leadwright.catalog.rules.RuleCase;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;

/**
 * The limit of a reading: the rule set's, tightened by the house, replaced by the device's own where that is stated, and
 * lowered for a source whose readings are raw. It is never loosened but by the device's own instructions, for the subject
 * that they name.
 */
final class Limits {
    static final String NONE = "no limit in this rule set; see the device's instructions";

    private final Asking asking;
    private final Remarks remarks;

    Limits(Asking asking, Remarks remarks) {
        this.asking = asking;
        this.remarks = remarks;
    }

    /** A limit with what is to be said of it. */
    record Found(Optional<Limit> limit, List<String> notes) {}

    /** What of the house's tightening is no tightening; a plan is refused for it. */
    static List<String> loosened(House house, RuleSet rules) {
        List<String> errors = new ArrayList<>();
        for (House.Tighter tighter : house.tighter()) {
            rules.limit(tighter.limit())
                    .flatMap(row -> loosened(tighter, row))
                    .ifPresent(error -> errors.add("house rules, tighter " + tighter.limit() + ": " + error));
        }
        return errors;
    }

    private static Optional<String> loosened(House.Tighter tighter, LimitRow row) {
        boolean ceiling = row.bound() == Limit.Bound.AT_MOST;
        Optional<Quantity> value = ceiling ? tighter.atMost() : tighter.atLeast();
        if (value.isEmpty()) {
            return Optional.of("the limit is " + row.bound().word() + " "
                    + row.value().text() + "; write " + row.bound().word());
        }
        if (value.get().dimension() != row.value().dimension()) {
            return Optional.of(value.get().text() + " cannot be compared with "
                    + row.value().text());
        }
        boolean tightens =
                ceiling ? value.get().atMost(row.value()) : value.get().atLeast(row.value());
        return tightens
                ? Optional.empty()
                : Optional.of(value.get().text() + " is looser than "
                        + row.value().text() + "; a house may tighten a limit, never loosen one");
    }

    Found of(Draft draft) {
        if (draft.limitCase().isEmpty()) {
            return new Found(Optional.empty(), List.of());
        }
        List<String> notes = new ArrayList<>();
        RuleCase asked = draft.limitCase().get();
        RuleSet stated = asking.rules();
        Optional<LimitRow> row = stated.limit(asking.here(asked));
        if (row.isEmpty() && stated.editions().isPresent()) {
            Optional<RuleSet> own = asking.device()
                    .builtTo()
                    .flatMap(RuleSets.builtIn()::find)
                    // A reading through one network is never compared with a limit for another.
                    .filter(edition -> edition.network().equals(asking.rules().network()));
            row = own.flatMap(rules -> rules.limit(asked));
            if (row.isPresent()) {
                stated = own.orElseThrow();
                notes.add("limit of the edition that the device was built to: " + stated.name());
            }
        }
        String edition = stated.edition();
        boolean ofEdition = !notes.isEmpty();
        Optional<Limit> limit = row.map(each -> tightened(each, edition, notes));
        boolean houseTightened = notes.size() > (ofEdition ? 1 : 0);
        limit = particular(draft, limit, houseTightened, notes);
        limit = limit.map(each -> raw(draft, each, notes));
        if (limit.isEmpty()) {
            notes.add(NONE);
        }
        return new Found(limit, notes);
    }

    private Limit tightened(LimitRow row, String edition, List<String> notes) {
        Limit limit = row.limit(confirmed(row, edition));
        for (House.Tighter tighter : asking.house().tighter()) {
            if (tighter.limit().equals(row.id())) {
                Quantity value = tighter.atMost().or(tighter::atLeast).orElseThrow();
                boolean stricter = row.bound() == Limit.Bound.AT_MOST
                        ? value.compareTo(limit.value()) < 0
                        : value.compareTo(limit.value()) > 0;
                if (stricter) {
                    limit = with(limit, value, limit.mark());
                    notes.add("limit tightened by the house from " + row.value().text() + ": " + tighter.because());
                }
            }
        }
        return limit;
    }

    private boolean confirmed(LimitRow row, String edition) {
        return asking.house().confirmed().stream()
                .anyMatch(
                        each -> each.limit().equals(row.id()) && each.edition().equals(edition));
    }

    private static Limit with(Limit limit, Quantity value, Mark mark) {
        return new Limit(limit.id(), limit.bound(), value, limit.clause(), mark, limit.sources(), limit.confirmed());
    }

    private Optional<Limit> particular(Draft draft, Optional<Limit> ruled, boolean houseTightened, List<String> notes) {
        Optional<Limit> limit = ruled;
        for (ParticularLimit own : asking.device().limits()) {
            if (appliesTo(own, draft) && comparable(own, limit)) {
                if (limit.isEmpty() || own.atMost().compareTo(limit.get().value()) < 0) {
                    limit = Optional.of(limit(own));
                    notes.add("limit from the device's own instructions: " + own.source());
                } else if (own.atMost().compareTo(limit.get().value()) > 0) {
                    limit = looser(own, draft, limit.get(), houseTightened, notes);
                }
            }
        }
        return limit;
    }

    private static boolean comparable(ParticularLimit own, Optional<Limit> limit) {
        return limit.isEmpty()
                || limit.get().bound() == Limit.Bound.AT_MOST
                        && limit.get().value().dimension() == own.atMost().dimension();
    }

    private Optional<Limit> looser(
            ParticularLimit own, Draft draft, Limit limit, boolean houseTightened, List<String> notes) {
        if (own.of().isEmpty() && !draft.isOfWholeDevice()) {
            remarks.warn("the device's own limit " + own.atMost().text() + " for " + own.quantity() + " ("
                    + own.source() + ") is looser than the rule set's and names no subject: it is not used");
            return Optional.of(limit);
        }
        if (houseTightened) {
            notes.add("the device's own limit " + own.atMost().text() + " (" + own.source()
                    + ") is looser than the house's and not used");
            return Optional.of(limit);
        }
        notes.add("limit from the device's own instructions, looser than "
                + limit.value().text() + " of " + limit.id() + ": " + own.source());
        return Optional.of(limit(own));
    }

    private static boolean appliesTo(ParticularLimit own, Draft draft) {
        return own.quantity().equals(draft.quantity().word())
                && own.of().map(subject -> names(subject, draft)).orElse(true);
    }

    /** The subject itself, or a part whose function or connection is read. */
    private static boolean names(String subject, Draft draft) {
        return draft.of().stream().anyMatch(of -> of.equals(subject) || of.startsWith(subject + "."));
    }

    private static Limit limit(ParticularLimit own) {
        String id = "device-" + own.quantity() + own.of().map(of -> "-" + of).orElse("");
        return new Limit(id, Limit.Bound.AT_MOST, own.atMost(), own.source(), Mark.B, List.of(), false);
    }

    /**
     * A source limited to a short-circuit current S never shows more than S: a device that lets the limit L through reads
     * between 1/(1/L + 1/S), where its path is resistive, and more. Judged is at the lowest.
     */
    private Limit raw(Draft draft, Limit limit, List<String> notes) {
        Optional<PartSource> source = asking.tester()
                .partSource()
                .filter(each -> each.reading() == SourceReading.RAW)
                .filter(each -> draft.hasLimitedSource());
        if (source.isEmpty() || limit.bound() != Limit.Bound.AT_MOST) {
            return limit;
        }
        BigInteger own = BigInteger.valueOf(limit.value().amount());
        BigInteger shortCircuit = BigInteger.valueOf(source.get().shortCircuit().amount());
        Quantity lowered = new Quantity(
                limit.value().dimension(),
                own.multiply(shortCircuit).divide(own.add(shortCircuit)).longValueExact());
        notes.add("raw reading from a source limited to "
                + source.get().shortCircuit().text() + ": judged at 1/(1/"
                + limit.value().text() + " + 1/" + source.get().shortCircuit().text() + ") instead of "
                + limit.value().text());
        return with(limit, lowered, limit.mark() == Mark.C ? Mark.C : Mark.D);
    }
}
