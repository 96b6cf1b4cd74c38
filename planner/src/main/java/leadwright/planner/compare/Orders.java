package leadwright.planner.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/** What changed in the order of the steps, and in the steps themselves where they are not readings or wiring. */
record Orders(Side a, Side b, Names names, Pairs readings) {

    /** Acts that a person is told in words of their own; the others are counted, for their words follow the wiring. */
    private static final Set<Step.Act> TOLD = EnumSet.of(Step.Act.LOOK, Step.Act.WAIT, Step.Act.RESTORE, Step.Act.NULL);

    /** Acts that have a change of their own elsewhere. */
    private static final Set<Step.Act> ELSEWHERE = EnumSet.of(Step.Act.READ, Step.Act.START, Step.Act.MAKE_SAFE);

    List<Change> changes() {
        List<Change> changes = new ArrayList<>();
        count(Kind.START_UPS, "start-ups", a.time().startUps(), b.time().startUps(), changes);
        moved(changes);
        instructions(changes);
        Map<Step.Act, Integer> before = acts(a);
        Map<Step.Act, Integer> after = acts(b);
        for (Step.Act each : Step.Act.values()) {
            count(Kind.ACTS, word(each), before.getOrDefault(each, 0), after.getOrDefault(each, 0), changes);
        }
        return changes;
    }

    private static void count(Kind kind, String subject, int before, int after, List<Change> changes) {
        if (before != after) {
            changes.add(
                    Change.of(kind, subject, Optional.of(String.valueOf(before)), Optional.of(String.valueOf(after))));
        }
    }

    private static String word(Step.Act act) {
        return switch (act) {
            case JOIN -> "joins";
            case PART -> "partings";
            case CLIP -> "moves of the clip";
            case SWITCH -> "switchings";
            case TIE -> "selections at the tester";
            case TOUCH -> "touches with the probe";
            case SHUT_DOWN -> "shut-downs";
            case NULL -> "nullings";
            case WAIT -> "waits";
            default -> act.word();
        };
    }

    private static Map<Step.Act, Integer> acts(Side side) {
        Map<Step.Act, Integer> acts = new EnumMap<>(Step.Act.class);
        for (Step step : side.steps()) {
            if (!TOLD.contains(step.does()) && !ELSEWHERE.contains(step.does())) {
                acts.merge(step.does(), 1, Integer::sum);
            }
        }
        return acts;
    }

    private void instructions(List<Change> changes) {
        Map<String, Integer> before = told(a);
        Map<String, Integer> after = told(b);
        Set<String> texts = new TreeSet<>(before.keySet());
        texts.addAll(after.keySet());
        for (String text : texts) {
            Optional<String> mine = times(before.get(text));
            Optional<String> theirs = times(after.get(text));
            if (!mine.equals(theirs)) {
                changes.add(Change.of(Kind.INSTRUCTION, text, mine, theirs));
            }
        }
    }

    private static Optional<String> times(Integer count) {
        return Optional.ofNullable(count).map(number -> number == 1 ? "once" : number + " times");
    }

    private static Map<String, Integer> told(Side side) {
        Map<String, Integer> told = new LinkedHashMap<>();
        for (Step step : side.steps()) {
            if (TOLD.contains(step.does())) {
                told.merge(side.inWords(step.text()), 1, Integer::sum);
            }
        }
        return told;
    }

    /**
     * Readings that are not where they were among those of both plans: all but a longest run that kept its order.
     *
     * <p>Ties between runs fall the same way whichever plan is the first, since the search starts from the plan whose
     * readings come first by what they mean.
     */
    private void moved(List<Change> changes) {
        List<Pairs.Pair> inA = ordered(a, Comparator.comparing(pair -> number(a, pair.a())));
        List<Pairs.Pair> inB = ordered(b, Comparator.comparing(pair -> number(b, pair.b())));
        boolean forward = line(inA).compareTo(line(inB)) <= 0;
        Set<Pairs.Pair> kept = forward ? longestRun(inA, inB) : longestRun(inB, inA);
        Map<Pairs.Pair, Integer> placeInB = places(inB);
        for (int i = 0; i < inA.size(); i++) {
            Pairs.Pair each = inA.get(i);
            if (!kept.contains(each)) {
                int away = placeInB.get(each) - i;
                changes.add(new Change(
                        Kind.READING_MOVED,
                        away < 0 ? Trend.EARLIER : away > 0 ? Trend.LATER : Trend.OTHERWISE,
                        Names.quantity(each.inA()),
                        names.reading(each),
                        Optional.of("place " + (i + 1)),
                        Optional.of("place " + (i + 1 + away)),
                        List.of(each.a().id()),
                        List.of(each.b().id())));
            }
        }
    }

    private List<Pairs.Pair> ordered(Side side, Comparator<Pairs.Pair> order) {
        return readings.both().stream().sorted(order).toList();
    }

    private static int number(Side side, Reading reading) {
        return side.taking(reading).map(Step::number).orElse(0);
    }

    private static String line(List<Pairs.Pair> order) {
        StringBuilder line = new StringBuilder();
        for (Pairs.Pair pair : order) {
            String inA = Pairs.meaning(pair.inA());
            String inB = Pairs.meaning(pair.inB());
            line.append(inA.compareTo(inB) <= 0 ? inA : inB)
                    .append('\n')
                    .append(pair.inA().key())
                    .append('\n');
        }
        return line.toString();
    }

    private static Map<Pairs.Pair, Integer> places(List<Pairs.Pair> order) {
        Map<Pairs.Pair, Integer> places = new LinkedHashMap<>();
        order.forEach(each -> places.put(each, places.size()));
        return places;
    }

    /** A longest part of the first order that stands in the same order in the second; n² steps. */
    private static Set<Pairs.Pair> longestRun(List<Pairs.Pair> first, List<Pairs.Pair> second) {
        Map<Pairs.Pair, Integer> places = places(second);
        int[] to = first.stream().mapToInt(places::get).toArray();
        int[] length = new int[to.length];
        int[] before = new int[to.length];
        int last = -1;
        for (int i = 0; i < to.length; i++) {
            before[i] = -1;
            for (int j = 0; j < i; j++) {
                if (to[j] < to[i] && length[j] > length[i]) {
                    length[i] = length[j];
                    before[i] = j;
                }
            }
            length[i]++;
            if (last < 0 || length[i] > length[last]) {
                last = i;
            }
        }
        Set<Pairs.Pair> run = new HashSet<>();
        for (int i = last; i >= 0; i = before[i]) {
            run.add(first.get(i));
        }
        return run;
    }
}
