package leadwright.render.sheet;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;

/** The words of one row of the readings table, and of the state bars above the rows. */
final class RowWords {

    private final Names names;
    private final Terms terms;

    RowWords(Names names, Terms terms) {
        this.names = names;
        this.terms = terms;
    }

    /** What is measured on and at which jacks: the first line of a row. */
    String what(Obligation reading, Optional<Hookup> hookup) {
        String jacks = hookup.map(each -> jacks(reading.demand(), each)).orElse("");
        String against = reading.insulatedFrom()
                .map(each -> " against the " + terms.say(each))
                .orElse("");
        return subject(reading) + against + (jacks.isEmpty() ? "" : ": " + jacks);
    }

    private String subject(Obligation reading) {
        if (reading.phase() == Obligation.Phase.CHECK) {
            return check(reading);
        }
        Demand demand = reading.demand();
        if (reading.earthSubject().isPresent()) {
            return earthSubject(reading);
        }
        if (!demand.isNothing()) {
            boolean probed = demand.measured().contains("touch-probe");
            return probed && reading.place().isPresent()
                    ? "touch probe on " + names.place(reading.place().get()) + otherEnd(reading)
                    : names.subject(demand.measured()) + otherEnd(reading);
        }
        boolean touched = switch (reading.quantity()) {
            case TOUCH_CURRENT, MAINS_ON_UNEARTHED_METAL, MAINS_ON_PORT -> true;
            default -> false;
        };
        return reading.place()
                .map(place -> (touched ? "touch probe on " : "") + names.place(place))
                .orElseGet(() -> named(reading));
    }

    /** The other end of a reading between two places: of the many other ends of a patient current the jacks say enough. */
    private String otherEnd(Obligation reading) {
        boolean between = reading.quantity() == QuantityKind.TOUCH_CURRENT_BETWEEN
                && !reading.demand().against().isEmpty();
        return between ? " to " + names.subject(reading.demand().against()) : "";
    }

    /** The subject as the key names it: {@code line-to-earth}, {@code known-resistor/start}. */
    private String check(Obligation reading) {
        String key = reading.key();
        int from = key.indexOf('/') + 1;
        int to = key.indexOf("/" + reading.state().word(), from);
        String subject = (to < 0 ? key.substring(from) : key.substring(from, to))
                .replace('-', ' ')
                .replace("/", ", ");
        String words = reading.quantity() == QuantityKind.SUPPLY_VOLTAGE ? terms.say(subject) : subject;
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private String named(Obligation reading) {
        boolean mains = reading.insulatedFrom().isPresent() && reading.of().equals(List.of("mains"));
        return mains ? "Mains part" : named(reading.of());
    }

    private String named(Collection<String> of) {
        return of.stream().map(names::place).collect(Collectors.joining(", "));
    }

    private String earthSubject(Obligation reading) {
        String place = reading.place().map(names::place).orElseGet(() -> named(reading.of()));
        return switch (reading.earthSubject().get()) {
            case PLUG_TO_PART -> terms.say("Plug earth to ") + place;
            case INLET_TO_PART -> terms.say("Inlet earth to ") + place;
            case CORD -> terms.say("Cord alone, earth end to end");
            case REFERENCE_TO_PART -> terms.say("Reference earth to ") + place;
        };
    }

    /** The quantity with its method, and with its component where asked. */
    String quantity(Obligation reading, boolean withComponent) {
        StringBuilder line = new StringBuilder(terms.say(named(reading.quantity())));
        reading.method().map(Method::word).ifPresent(method -> line.append(", ").append(method));
        if (withComponent) {
            reading.component()
                    .map(RowWords::component)
                    .ifPresent(word -> line.append(", ").append(word));
        }
        return line.toString();
    }

    /** What a row under a heading still has to say. */
    static String rest(Obligation reading, boolean withComponent) {
        String component =
                withComponent ? reading.component().map(RowWords::component).orElse("") : "";
        String source = source(reading);
        return component.isEmpty() || source.isEmpty() ? component + source : component + ", " + source;
    }

    /** Polarity of the source that puts mains on the part; empty for other readings. */
    static String source(Obligation reading) {
        return reading.sourcePolarity()
                .map(source -> "source\u00a0" + source.word())
                .orElse("");
    }

    private static String component(Component component) {
        return component == Component.AC ? "a.c." : "d.c.";
    }

    /** Which jacks the reading selects: {@code jack 1+2 to 3; jack 4 to earth}. */
    String jacks(Demand demand, Hookup hookup) {
        if (demand.isNothing()) {
            return "";
        }
        StringBuilder words = new StringBuilder(jackNumbers(demand.measured(), hookup, "jack\u00a0"));
        if (!demand.against().isEmpty()) {
            TreeSet<String> others = new TreeSet<>(demand.measured());
            others.addAll(demand.against());
            boolean rest = hookup.chains().stream().allMatch(chain -> others.contains(chain.connection()));
            words.append(rest ? " to the rest" : " to " + jackNumbers(demand.against(), hookup, ""));
        }
        if (!demand.earthed().isEmpty()) {
            words.append("; ")
                    .append(jackNumbers(demand.earthed(), hookup, "jack\u00a0"))
                    .append(terms.say(" to earth"));
        }
        return words.toString();
    }

    private static String jackNumbers(Collection<String> connections, Hookup hookup, String before) {
        TreeSet<Integer> numbers = new TreeSet<>();
        for (String each : connections) {
            hookup.bundleOf(each).map(Bundle::jacks).ifPresent(numbers::addAll);
        }
        return before + numbers.stream().map(String::valueOf).collect(Collectors.joining("+"));
    }

    /** The quantity in the trade's words. */
    static String named(QuantityKind quantity) {
        return switch (quantity) {
            case EARTH_RESISTANCE -> "Earth resistance";
            case BONDING_RESISTANCE -> "Bonding resistance";
            case BONDING_VOLTAGE -> "Voltage between bonded parts";
            case INSULATION_RESISTANCE -> "Insulation resistance";
            case SUPPLY_VOLTAGE -> "Voltage at the tester's outlet";
            case SUPPLY_CURRENT -> "Supply current";
            case EARTH_LEAKAGE -> "Earth leakage";
            case FUNCTIONAL_EARTH_LEAKAGE -> "Functional earth leakage";
            case TOUCH_CURRENT -> "Touch current";
            case TOUCH_CURRENT_BETWEEN -> "Touch current between";
            case EQUIPMENT_LEAKAGE -> "Equipment leakage";
            case APPLIED_PART_LEAKAGE -> "Applied part leakage";
            case PATIENT_LEAKAGE -> "Patient leakage";
            case TOTAL_PATIENT_LEAKAGE -> "Total patient leakage";
            case PATIENT_AUXILIARY -> "Patient auxiliary current";
            case LEAD_TO_LEAD -> "Lead to lead";
            case MAINS_ON_APPLIED_PART -> "Mains on applied part";
            case TOTAL_MAINS_ON_APPLIED_PART -> "Total, mains on applied parts";
            case MAINS_ON_UNEARTHED_METAL -> "Mains on unearthed metal";
            case MAINS_ON_PORT -> "Mains on socket";
            case TESTER_CHECK -> "Tester check, known resistor";
            case PROOF -> "Proof";
        };
    }

    /** A state as it stands on a bar: what a person sets, in words, with the operating mode where it matters. */
    String state(MainsState state, Optional<String> mode) {
        String words = terms.say(
                switch (state) {
                    case OFF -> off(mode);
                    case NORMAL -> "NORMAL, no fault";
                    case NORMAL_SUPPLY_OPEN -> "NORMAL, SUPPLY OPEN";
                    case NORMAL_EARTH_OPEN -> "NORMAL, EARTH OPEN";
                    case REVERSED -> "REVERSED, no fault";
                    case REVERSED_SUPPLY_OPEN -> "REVERSED, SUPPLY OPEN";
                    case REVERSED_EARTH_OPEN -> "REVERSED, EARTH OPEN";
                    case INSTALLED_ON -> "INSTALLED AND ON";
                    case ISOLATED -> "ISOLATED by a licensed person";
                });
        return words + mode.flatMap(names::mode).map(name -> ", " + name).orElse("");
    }

    private String off(Optional<String> mode) {
        if (names.runsOnMains()) {
            return "OUTLET OFF";
        }
        return mode.map(each -> each.equals("off") ? "DEVICE OFF" : "DEVICE ON, no mains")
                .orElse("NO MAINS");
    }

    /** What the hands must know in a state; empty where nothing out of the ordinary. */
    static String caution(MainsState state) {
        return switch (state.fault()) {
            case SUPPLY_OPEN ->
                "STILL LIVE: one conductor. Nothing is plugged, opened or touched; insulated probe only.";
            case EARTH_OPEN -> "The housing may be live. Insulated probe only, no other contact with metal.";
            case NONE -> "";
        };
    }
}
