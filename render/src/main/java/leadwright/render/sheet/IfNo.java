package leadwright.render.sheet;

import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;

/**
 * What to do when a value is not in order: at most six numbered lines. 1 and 2 stand under the readings and hold for
 * all; the stop box holds 3 to 6, and each row names the one that it ends at.
 */
enum IfNo {
    RESEAT(1, "re-seat, repeat once, write both;", ""),
    SWAP(2, "swap the lead;", ""),
    EARTH(3, "Check or earth fails: STOP.", " Nothing is powered through the tester."),
    TOUCH(4, "Touch without fault fails:", " no open earth, no mains on a part."),
    PART(5, "Leakage without fault fails:", " no mains on a part."),
    OUT(6, "Any no that stays:", " out of use, quarantine, label, tell the owner.");

    private final int number;
    private final String bold;
    private final String rest;

    IfNo(int number, String bold, String rest) {
        this.number = number;
        this.bold = bold;
        this.rest = rest;
    }

    int number() {
        return number;
    }

    /** The line after 1 and 2 that holds for this reading, in a plan with or without readings with mains on a part. */
    static IfNo of(Obligation reading, boolean mainsOnParts) {
        if (reading.state().fault() != MainsState.Fault.NONE) {
            return OUT;
        }
        return switch (reading.phase()) {
            case CHECK, EARTH, INSULATION -> EARTH;
            case MAINS_ON_PART -> OUT;
            case ORDINARY -> reading.isTouch() ? TOUCH : mainsOnParts ? PART : OUT;
        };
    }

    /** Writes the line with its number; in the stop box its first words are bold. */
    void write(Sheet sheet) {
        boolean insulation = this == EARTH && sheet.has(Obligation.Phase.INSULATION);
        String first = sheet.say(insulation ? bold.replace(" or earth", ", earth or insulation") : bold);
        if (rest.isEmpty()) {
            sheet.page().bold(number + "\u00a0").text(first + " ");
        } else {
            sheet.page().bold(number + "\u00a0" + first).text(sheet.say(rest));
        }
    }

    /** The two lines under the readings. */
    static void underReadings(Sheet sheet) {
        Xhtml page = sheet.page();
        page.in("p", "ifno", () -> {
            page.bold("If no: ");
            RESEAT.write(sheet);
            SWAP.write(sheet);
            page.bold("then the row's number above.");
        });
    }
}
