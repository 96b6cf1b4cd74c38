package leadwright.render.edition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.render.circuit.Circuit;
import leadwright.render.circuit.CircuitFigure;
import leadwright.render.sheet.Vocabulary;

/** The figures of the ways of current, numbered through a document; what is alike is drawn once and referred to. */
final class CircuitFigures {

    /**
     * A way of the current, for readings of one kind.
     *
     * @param states in which it is taken, in words
     * @param title what it is of
     * @param again whether an earlier figure shows it
     */
    record Shown(int number, Circuit circuit, List<String> states, String title, boolean again) {
        Shown {
            states = List.copyOf(states);
        }

        String svg() {
            return CircuitFigure.svg(circuit, "Figure " + number + ": " + title);
        }
    }

    private final Plan plan;
    private final Vocabulary words;
    private final List<Circuit> drawn = new ArrayList<>();

    CircuitFigures(Plan plan, Vocabulary words) {
        this.plan = plan;
        this.words = words;
    }

    /** The ways of readings of one kind: one for each way that the state sets the conductors. */
    List<Shown> of(List<Reading> readings) {
        Map<Circuit, Set<String>> ways = new LinkedHashMap<>();
        for (Reading each : readings) {
            Obligation what = each.obligation();
            ways.computeIfAbsent(Ways.of(what, plan).said(words::say), way -> new LinkedHashSet<>())
                    .add(words.state(what));
        }
        String title = Editions.heading(readings.get(0).obligation(), words);
        List<Shown> shown = new ArrayList<>();
        ways.forEach((way, states) -> shown.add(shown(way, List.copyOf(states), title)));
        return shown;
    }

    private Shown shown(Circuit way, List<String> states, String title) {
        for (int i = 0; i < drawn.size(); i++) {
            if (drawn.get(i).looksLike(way)) {
                return new Shown(i + 1, way, states, title, true);
            }
        }
        drawn.add(way);
        return new Shown(drawn.size(), way, states, title, false);
    }
}
