package leadwright.render.sheet;

import java.util.Collection;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;

/** What the bench sheet calls things, for the other editions: one thing has one name on all papers of a plan. */
public final class Vocabulary {

    private final Sheet sheet;

    private Vocabulary(Sheet sheet) {
        this.sheet = sheet;
    }

    public static Vocabulary of(Plan plan) {
        return new Vocabulary(Sheet.of(plan));
    }

    /** The plan's fingerprint as people compare it. */
    public String fingerprint() {
        return sheet.shortFingerprint();
    }

    /** A phrase of the program's own in the department's word for earth. */
    public String say(String phrase) {
        return sheet.say(phrase);
    }

    /** The program's own phrases in a text that also holds names from files, and units in their proper letters. */
    public String prose(String text) {
        return sheet.sayOurs(Amounts.inProse(text));
    }

    /** A set of connections in few words. */
    public String subject(Collection<String> names) {
        return sheet.names().subject(names);
    }

    public String place(String id) {
        return sheet.names().place(id);
    }

    /** What is printed on the wire of a connection, or the name of the place. */
    public String wire(String connection) {
        return sheet.names().wire(connection);
    }

    /** The applied part of a connection, or what kind of place it is. */
    public String group(String connection) {
        return sheet.names().group(connection);
    }

    /** What a reading is of and the jacks it selects. */
    public String what(Obligation reading, Optional<Hookup> hookup) {
        return sheet.words().what(reading, hookup);
    }

    /** The same without the jacks. */
    public String what(Obligation reading) {
        return sheet.words().what(reading, Optional.empty());
    }

    /** The quantity with method and component, and the polarity of a source on a part. */
    public String quantity(Obligation reading) {
        String source = RowWords.source(reading);
        return sheet.words().quantity(reading, true) + (source.isEmpty() ? "" : ", " + source);
    }

    /** The quantity with its method, and with the component where asked. */
    public String quantity(Obligation reading, boolean withComponent) {
        return sheet.words().quantity(reading, withComponent);
    }

    /** What tells readings of one quantity apart beside their subject: component where asked, polarity of a source. */
    public String manner(Obligation reading, boolean withComponent) {
        return RowWords.rest(reading, withComponent);
    }

    public String named(QuantityKind quantity) {
        return say(RowWords.named(quantity));
    }

    /** A state of the mains as a person sets it, with the operating mode where it matters. */
    public String state(Obligation reading) {
        return sheet.words().state(reading.state(), Optional.of(reading.mode()));
    }

    public String state(MainsState state) {
        return sheet.words().state(state, Optional.empty());
    }

    public String caution(MainsState state) {
        return say(RowWords.caution(state));
    }

    /** Which jacks a demand selects; empty where it asks nothing of the wiring. */
    public String jacks(Demand demand, Hookup hookup) {
        return sheet.words().jacks(demand, hookup);
    }

    public String amount(Quantity quantity) {
        return Amounts.text(quantity);
    }

    /** What files write in plain letters, with the proper letters of its units. */
    public String letters(String written) {
        return Amounts.letters(written);
    }

    public String bound(Limit limit) {
        return Amounts.bound(limit);
    }

    public String classAndTypes() {
        return HeadSection.classAndTypes(sheet.plan());
    }
}
