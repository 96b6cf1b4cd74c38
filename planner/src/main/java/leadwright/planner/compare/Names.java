package leadwright.planner.compare;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;

/** What things are called in sentences, whichever plan is the first. */
final class Names {

    private static final int SOME = 3;

    private final Map<String, String> names;

    private Names(Map<String, String> names) {
        this.names = names;
    }

    /** A name that the two plans give to different things, or differently, is not used: the id stands for it. */
    static Names of(Side a, Side b) {
        Map<String, String> names = new TreeMap<>(names(a));
        names(b).forEach((id, name) -> names.merge(id, name, (one, other) -> one.equals(other) ? one : id));
        return new Names(names);
    }

    private static Map<String, String> names(Side side) {
        Map<String, String> names = new HashMap<>(side.device().places());
        side.device().parts().forEach(part -> names.put(part.id(), part.name()));
        return names;
    }

    /** A part, touch point, port or earth point; others by their id. */
    String of(String id) {
        return names.getOrDefault(id, id);
    }

    /** The first few of a list, and how many follow. */
    static String few(Collection<String> all) {
        List<String> list = List.copyOf(all);
        return list.size() <= SOME + 1
                ? String.join(", ", list)
                : String.join(", ", list.subList(0, SOME)) + " and " + (list.size() - SOME) + " more";
    }

    /** A number of things, in words that agree with it. */
    static String count(int number, String word) {
        return number + " " + word + (number == 1 ? "" : "s");
    }

    /** Seconds as a person says them. */
    static String duration(int seconds) {
        int minutes = seconds / 60;
        String rest = seconds % 60 + " s";
        return minutes == 0 ? rest : seconds % 60 == 0 ? minutes + " min" : minutes + " min " + rest;
    }

    /** The quantity in words. */
    static String quantity(Obligation what) {
        return quantity(what.quantity());
    }

    static String quantity(QuantityKind quantity) {
        return switch (quantity) {
            case TOUCH_CURRENT_BETWEEN -> "touch current between parts";
            case PATIENT_AUXILIARY -> "patient auxiliary current";
            case LEAD_TO_LEAD -> "current from lead to lead";
            case PROOF -> "proof of an open path";
            default -> quantity.word().replace('-', ' ');
        };
    }

    /** A reading of both plans; where they word it differently, the same one of the two whichever plan is the first. */
    String reading(Pairs.Pair pair) {
        String inA = reading(pair.inA());
        String inB = reading(pair.inB());
        return inA.compareTo(inB) <= 0 ? inA : inB;
    }

    /** A reading in words: what, of what, in which state of the mains. */
    String reading(Obligation what) {
        List<String> conditions = new ArrayList<>();
        what.earthSubject()
                .filter(each -> each != Obligation.EarthSubject.CORD)
                .ifPresent(each -> conditions.add(each.word().replace('-', ' ')));
        if (what.state() != MainsState.OFF) {
            conditions.add(what.state().word().replace('-', ' ').replace("/", ", "));
        }
        what.sourcePolarity().ifPresent(each -> conditions.add("source " + each.word()));
        if (!List.of("on", "off").contains(what.mode())) {
            conditions.add("mode " + what.mode());
        }
        what.method().ifPresent(each -> conditions.add(each.word() + " method"));
        what.component().ifPresent(each -> conditions.add(each.word()));
        return quantity(what)
                + subject(what)
                + (conditions.isEmpty() ? "" : " (" + String.join(", ", conditions) + ")");
    }

    /** What it is of; the plan's key tells apart what has no subject of its own. */
    private String subject(Obligation what) {
        return switch (what.quantity()) {
            case SUPPLY_VOLTAGE, SUPPLY_CURRENT, TESTER_CHECK, PROOF ->
                keyed(what).map(each -> ", " + each).orElse("");
            default -> {
                String of = few(what.of().stream().map(this::of).toList());
                yield of.isEmpty()
                        ? ""
                        : " of " + of
                                + what.insulatedFrom()
                                        .map(each -> " to " + each)
                                        .orElse("");
            }
        };
    }

    /** The middle of a key such as {@code supply-voltage/line-to-earth/off}. */
    private static Optional<String> keyed(Obligation what) {
        List<String> words = List.of(what.key().split("/"));
        String middle = words.stream()
                .skip(1)
                .filter(word -> !word.equals(what.state().word())
                        && what.component()
                                .filter(each -> each.word().equals(word))
                                .isEmpty())
                .map(word -> word.replace('-', ' '))
                .collect(Collectors.joining(", "));
        return middle.isEmpty() ? Optional.empty() : Optional.of(middle);
    }
}
