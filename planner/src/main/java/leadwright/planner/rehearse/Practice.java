package leadwright.planner.rehearse;

import java.util.List;
import java.util.Optional;
import leadwright.planner.mistake.Cause;

/**
 * A practice sheet: the readings of a device that was good last time, as they look now, and what may be the cause.
 *
 * @param seed from which it was made
 * @param rows what is on the sheet, in the plan's order
 * @param choices causes offered; exactly one of them explains all rows
 * @param answer place of that one among the choices
 * @param alike further causes of this plan that give the same readings, or readings that a person cannot tell from them; none of
 *     them is offered
 */
public record Practice(long seed, List<Row> rows, List<Choice> choices, int answer, List<Cause> alike) {
    public Practice {
        rows = List.copyOf(rows);
        choices = List.copyOf(choices);
        alike = List.copyOf(alike);
    }

    /**
     * A reading.
     *
     * @param reading id
     * @param before what it was when the device was good
     * @param now what it is
     * @param moved whether a person sees that it has changed
     */
    public record Row(String reading, Display before, Display now, boolean moved) {}

    /**
     * What may be the cause.
     *
     * @param cause empty: nothing is wrong
     * @param against readings that rule it out, the clearest first; none for the right one
     */
    public record Choice(Optional<Cause> cause, List<Against> against) {
        public Choice {
            against = List.copyOf(against);
        }
    }

    /** @param would what the reading would show if the choice were right */
    public record Against(String reading, Display would) {}

    /** Letter of a choice. */
    public static String letter(int place) {
        return String.valueOf((char) ('A' + place));
    }

    /** Letter of the right one. */
    public String right() {
        return letter(answer);
    }

    /** Place of a letter, in large or small writing; empty for what is no letter of this sheet. */
    public Optional<Integer> place(String letter) {
        for (int i = 0; i < choices.size(); i++) {
            if (letter(i).equalsIgnoreCase(letter)) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    public Choice rightChoice() {
        return choices.get(answer);
    }

    /** Of the wrong choice that is hardest to rule out, the number of readings that do: the fewer, the harder the sheet. */
    public int fewestAgainst() {
        int fewest = Integer.MAX_VALUE;
        for (int i = 0; i < choices.size(); i++) {
            if (i != answer) {
                fewest = Math.min(fewest, choices.get(i).against().size());
            }
        }
        return fewest;
    }
}
