package leadwright.render.edition;

import java.util.List;
import java.util.Optional;
import leadwright.planner.Plan;
import leadwright.render.diagram.Drawing;
import leadwright.render.paper.Document;

/** Editions of a hand-made plan, with a drawing so small that it costs nothing. */
public final class SmallEditions {

    private static final Drawing DRAWING = new Drawing(
            "H1",
            1,
            1,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 40 20\"><title>H1</title>"
                    + "<rect width=\"40\" height=\"20\" fill=\"#eeeeee\"/></svg>");

    private SmallEditions() {}

    public static Document training(Plan plan) {
        return TrainingEdition.of(plan, List.of(DRAWING), List.of("ports lan.surface: not stated, taken as metal"));
    }

    public static Document standing(Plan plan) {
        return StandingEdition.of(
                plan, List.of(DRAWING), List.of("ports lan.surface: not stated, taken as metal"), Optional.empty());
    }
}
